"""Albums made for the tests, and what a parser that had no part in making them reads in them."""

from collections import Counter
from dataclasses import dataclass, field, replace
from datetime import date
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

from journal.domain.albums import AlbumReport
from journal.domain.cuts import Choices, Cut, usual
from journal.domain.hidden_words import Finder
from journal.domain.progress import Silent
from journal.domain.record import Record
from journal.dossier.album.writing import write_album
from journal.dossier.compose import Beside, compose
from journal.dossier.document import ChartShown, Dossier
from journal.dossier.gaps import gaps
from tests.dossier import records

#: Elements that end where they begin (HTML Living Standard, 13.1.2, void elements).
VOID = frozenset(
    "area base br col embed hr img input link meta source track wbr".split()  # noqa: SIM905
)

CHART = ChartShown(
    "Spent", b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"/>', "A chart."
)


def dossier_of(rec: Record, choices: Choices | None = None) -> Dossier:
    """A dossier of ``rec`` with every part unless told otherwise."""
    return compose(
        rec,
        records.summary(),
        records.tables(),
        gaps(rec),
        date(2026, 11, 28),
        "0.1.0",
        choices or usual(Cut.OWN),
        Beside(charts=(CHART,)),
    )


def album(
    rec: Record,
    out: Path,
    pictures: Any = records.picture,
    choices: Choices | None = None,
    finder: Finder | None = None,
) -> AlbumReport:
    return write_album(dossier_of(rec, choices), rec, pictures, out, Silent(), finder)


def captioned(caption: str) -> Record:
    """A record whose first photo, area, title and panel bear ``caption``."""
    rec = records.finished_record()
    first, *rest = rec.photos
    return replace(
        rec,
        car=replace(rec.car, title=caption, story=caption),
        photos=(replace(first, caption=caption, name=caption), *rest),
        areas=(replace(rec.areas[0], name=caption, found=caption),),
        drawing=replace(
            rec.drawing,
            panels=(replace(rec.drawing.panels[0], name=caption), rec.drawing.panels[1]),
        ),
    )


@dataclass
class Read(HTMLParser):
    """A page read: elements with their attributes, texts, and what was never closed."""

    elements: list[tuple[str, dict[str, str]]] = field(default_factory=list)
    texts: list[str] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)
    open: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        super().__init__()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = [name for name, _ in attrs]
        if len(set(names)) != len(names):
            self.faults.append(f"<{tag}> has an attribute twice")
        self.elements.append((tag, {name: value or "" for name, value in attrs}))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, {name: value or "" for name, value in attrs}))

    def handle_endtag(self, tag: str) -> None:
        if not self.open or self.open.pop() != tag:
            self.faults.append(f"</{tag}> closes nothing")

    def handle_data(self, data: str) -> None:
        self.texts.append(data)

    @property
    def text(self) -> str:
        return " ".join(" ".join(self.texts).split())

    def all(self, tag: str) -> list[dict[str, str]]:
        return [attributes for name, attributes in self.elements if name == tag]

    def shape(self) -> Counter[str]:
        """How often each element and attribute is on the page, paragraphs and words aside."""
        return Counter(
            f"{tag} {sorted(attributes)}"
            for tag, attributes in self.elements
            if tag not in ("p", "span")
        )


def read(text: str) -> Read:
    page = Read()
    page.feed(text)
    page.close()
    page.faults += [f"<{tag}> is never closed" for tag in page.open]
    return page


def pages(out: Path) -> dict[str, Read]:
    """Every page of an album, by its file."""
    found = sorted(out.rglob("*.html"))
    return {p.relative_to(out).as_posix(): read(p.read_text("utf-8")) for p in found}
