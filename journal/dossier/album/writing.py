"""Making the album's folder: pictures, pages, look and marker, and the whole put in its place."""

from collections.abc import Iterable, Iterator, Mapping
from html.parser import HTMLParser
from pathlib import Path

from journal.domain.albums import MARKER, START_PAGE, AlbumReport
from journal.domain.errors import JournalError
from journal.domain.hidden_words import Finder
from journal.domain.private_words import Private
from journal.domain.progress import Context
from journal.domain.record import Record
from journal.dossier.album import links, marker
from journal.dossier.album.pages import all_pairs, site
from journal.dossier.album.plates import Plates, plates
from journal.dossier.album.render import rendered
from journal.dossier.document import Dossier
from journal.dossier.printing import Pictures
from journal.dossier.words import excerpt, listed
from journal.files.assets import asset
from journal.files.scratch import write_scratch
from journal.files.swapping import new_folder

#: What lies in the look's folder, and where it comes from among the program's own files.
_LOOK = {
    "album.css": "album/album.css",
    "album.js": "album/album.js",
    "Cabin-Regular.otf": "fonts/Cabin-Regular.otf",
    "Cabin-SemiBold.otf": "fonts/Cabin-SemiBold.otf",
    "Cabin-Bold.otf": "fonts/Cabin-Bold.otf",
    "Cabin-Italic.otf": "fonts/Cabin-Italic.otf",
    "Cabin.licence.txt": "fonts/Cabin.licence.txt",
}

#: Attributes that are no words: addresses within the album, and the shapes of the drawing.
_NO_WORDS = frozenset({"d", "src", "srcset", "href", "class", "viewbox", "content", "sizes"})


def write_album(
    dossier: Dossier,
    record: Record,
    pictures: Pictures,
    out: Path,
    context: Context,
    withheld: Finder | None = None,
) -> AlbumReport:
    """Make the album at ``out``, which appears whole or not at all.

    ``record`` is the one that ``dossier`` was told from, without what is withheld. An album of ours
    at ``out`` is replaced, and whatever else lies in its folder stays. A photo that can't be shown
    leaves a word on its page and a note in the report; so does what ``withheld`` still finds.

    Raises:
        JournalError: ``out`` holds something else, or can't be written.
        Cancelled: the person asked to stop; what was at ``out`` stays as it was.
    """
    own = marker.own_files(out)
    try:
        with new_folder(out, own) as folder:
            made = plates(dossier.shown, all_pairs(dossier), pictures, folder, context)
            pages = _write(dossier, record, made, folder, context)
    except FileExistsError as error:
        raise JournalError(
            f"“{error.filename}” in “{out.name}” is not the program's; choose another folder."
        ) from error
    except OSError as error:
        said = error.strerror or str(error)
        raise JournalError(f"The album was not made at “{out}”: {said}.") from error
    notes = (*_photo_notes(dossier, made), *_leak_notes(pages, dossier, withheld))
    return AlbumReport(out, len(pages), made.whole, notes, dossier.withheld)


def _write(
    dossier: Dossier, record: Record, made: Plates, folder: Path, context: Context
) -> Mapping[str, str]:
    """Write everything beside the pictures; the pages' texts by file."""
    found = site(dossier, record, made)
    pages: dict[str, str] = {}
    for number, (file, text) in enumerate(rendered(found), 1):
        context.checkpoint()
        context.report(number, len(found.pages), "Writing pages")
        pages[file] = text
        write_scratch(folder / file, text.encode())
    for file, data in found.files.items():
        write_scratch(folder / file, data)
    for name, source in _LOOK.items():
        write_scratch(folder / links.LOOK / name, asset(source).read_bytes())
    marked = marker.text(folder, dossier.program_version)
    write_scratch(folder / MARKER, marked.encode())
    context.checkpoint()
    assert START_PAGE in pages
    return pages


def _photo_notes(dossier: Dossier, made: Plates) -> Iterator[str]:
    """One sentence on each photo that isn't shown, or shown in part."""
    for shown in dossier.shown:
        plate = made.photos[shown.number]
        name = excerpt(shown.photo.name, 80)
        if plate.reason:
            yield f"{name} (P{shown.number}) isn’t shown: {plate.reason}."
        elif shown.photo.damage:
            yield f"{name} (P{shown.number}) is damaged: {shown.photo.damage.rstrip('.')}."


def _leak_notes(
    pages: Mapping[str, str], dossier: Dossier, withheld: Finder | None
) -> Iterator[str]:
    """One sentence for each sort of withheld thing that the finished pages still hold."""
    if withheld is None or not dossier.choices.withheld:
        return
    for kind, files in leaks(pages, withheld).items():
        yield (
            f"A word to be withheld ({kind.value}) still stands in {listed(list(files)[:6])}. It "
            "may be a word of the program’s own that is spelt alike; look before you give the "
            "album away."
        )


def leaks(pages: Mapping[str, str], withheld: Finder) -> dict[Private, Iterable[str]]:
    """The sorts of withheld things that the pages' texts still hold, with the pages' files.

    Looked at is all that is read or read aloud. What is private by its form alone isn't looked for,
    as in ``journal.dossier.leaks``.
    """
    found: dict[Private, list[str]] = {}
    for file, text in pages.items():
        for kind in withheld.found(said_on(text), by_form=False):
            found.setdefault(kind, []).append(file)
    return dict(found)


def said_on(page: str) -> str:
    """All texts of a page, those of its attributes too, each on a line of its own."""
    said = _Said()
    said.feed(page)
    said.close()
    return "\n".join(said.texts)


class _Said(HTMLParser):
    """Collects a page's texts."""

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []

    def handle_data(self, data: str) -> None:
        if data.strip():
            self.texts.append(data.strip())

    def handle_starttag(self, _tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.texts += [value for name, value in attrs if value and name not in _NO_WORDS]
