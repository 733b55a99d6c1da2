"""Pages filled in: whatever anybody typed is written as text, and never read as markup."""

from collections.abc import Iterator
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from journal.dossier.album import links
from journal.dossier.album.pages import Site
from journal.dossier.glyphs import literal, one_line_end
from journal.dossier.words import excerpt
from journal.files.assets import asset

if TYPE_CHECKING:
    from jinja2 import Environment

#: Nothing is fetched but what lies in the folder, opened from disk or from a place on the web;
#: "file:" stands there since some browsers take no file from disk for the page's own.
POLICY = (
    "default-src 'none'; img-src 'self' file:; style-src 'self' file:; script-src 'self' file:; "
    "font-src 'self' file:; base-uri 'none'; form-action 'none'"
)


def rendered(site: Site) -> Iterator[tuple[str, str]]:
    """Every page's file and its text, in order."""
    for page in site.pages:
        here, up = (links.PAGES + "/", "") if page.is_start else ("", "../")
        template = _environment().get_template(page.template)
        values: dict[str, Any] = {**site.shared, **page.values}
        yield (
            page.file,
            template.render(
                values, page_title=page.title, file=page.file, here=here, up=up, policy=POLICY
            ),
        )


@lru_cache(maxsize=1)
def _environment() -> "Environment":
    # Templates are wanted for this act alone.
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    made = Environment(
        loader=FileSystemLoader(asset("album")),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=_plain,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.filters |= {"excerpt": excerpt, "paragraphs": _paragraphs, "first_large": _first_large}
    made.globals |= {
        "area_file": links.area_file,
        "panel_file": links.panel_file,
        "photo_file": links.photo_file,
        "reference": _reference,
    }
    return made


def _plain(value: Any) -> Any:
    """Text without what no page can hold; what is markup of our own goes as it is."""
    return literal(value) if type(value) is str else value


def _paragraphs(text: str) -> list[str]:
    return [part.strip() for part in one_line_end(text).split("\n") if part.strip()]


def _first_large(text: str) -> str:
    return text[:1].upper() + text[1:]


def _reference(ref: str, has_receipts: bool) -> str:
    """The page that "P3" or "R24" leads to; "" where it isn't in the album."""
    kind, number = ref[:1], ref[1:]
    if kind == "P" and number.isdigit():
        return links.photo_file(int(number))
    if kind == "R" and has_receipts:
        return f"{links.COSTS}#receipt-{number}"
    return ""
