"""The dossier as one PDF: archival (PDF/A-2a) and tagged for screen readers (PDF/UA-1)."""

import json
import lzma
import re
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from journal.domain.errors import JournalError
from journal.dossier import glyphs
from journal.dossier.pages import Sheet
from journal.files.assets import asset
from journal.files.scratch import write_scratch

if TYPE_CHECKING:
    import typst

_TEMPLATES = (
    "main.typ", "style.typ", "front.typ", "drawing.typ", "areas.typ", "ledger.typ", "back.typ",
)  # fmt: skip

#: Fonts for writing that no other has; kept compressed, since few records need them.
_LAST_RESORT = ("unifont.otf.xz", "unifont_upper.otf.xz")

#: Ever plainer ways of writing texts, tried in turn when a font lacks a character.
_WAYS: tuple[Callable[[str], str], ...] = (glyphs.literal, glyphs.plainer, glyphs.plainest)

#: What the typesetter says when a text holds a character that can't stand in an archival PDF.
_GLYPH_TROUBLE = ("could not be displayed", "disallowed codepoint", "contains the codepoint")

_PAGE = re.compile(rb"/Type\s*/Page\b")


def typeset(laid: Sheet, folder: Path) -> tuple[bytes, int, tuple[str, ...]]:
    """The PDF, its number of pages, and a note where characters had to be written out.

    ``folder`` holds the pictures that the sheet names; templates and drawings are put beside them.
    The same sheet and pictures always give the same bytes. An OSError says that ``folder`` can't
    be written.
    """
    (pdf,), notes = _set(laid, folder, lambda data: [_compiled(data, folder)])
    return pdf, len(_PAGE.findall(pdf)), notes


def _set(
    laid: Sheet, folder: Path, compiled: Callable[[dict[str, Any]], list[bytes]]
) -> tuple[list[bytes], tuple[str, ...]]:
    import typst

    for name in _TEMPLATES:
        write_scratch(folder / name, asset(f"dossier/{name}").read_bytes())
    for name, content in laid.files.items():
        write_scratch(folder / name, content)
    for way in _WAYS:
        data = glyphs.everywhere(laid.data, way)
        try:
            made = compiled(glyphs.everywhere(data, glyphs.breakable))
        except typst.TypstError as error:
            if any(trouble in str(error) for trouble in _GLYPH_TROUBLE):
                continue
            raise
        written_out = data != glyphs.everywhere(laid.data, glyphs.one_line_end)
        return made, _notes(written_out=written_out)
    raise JournalError("The dossier can’t be typeset, since no font has its characters.")


def _notes(*, written_out: bool) -> tuple[str, ...]:
    if not written_out:
        return ()
    return (
        "Some characters that can’t be printed are written out by their number, as in [U+0007].",
    )


def _compiled(data: dict[str, Any], folder: Path) -> bytes:
    import typst

    text = json.dumps(data, ensure_ascii=False)
    return typst.compile(
        folder / "main.typ",
        root=folder,
        font_paths=fonts(folder, last_resort=not glyphs.is_readable(text)),
        format="pdf",
        sys_inputs={"dossier": text},
        pdf_standards=["a-2a", "ua-1"],
        timestamp=datetime(data["year"], data["month"], data["day"], tzinfo=UTC),
    )


def fonts(folder: Path, *, last_resort: bool) -> "typst.Fonts":
    """The program's own fonts and none of the system's, so that every machine sets one page."""
    import typst

    paths = [str(asset("fonts"))]
    if last_resort:
        for packed in _LAST_RESORT:
            target = folder / packed.removesuffix(".xz")
            if not target.exists():
                write_scratch(target, lzma.decompress(asset(f"fonts/{packed}").read_bytes()))
        paths.append(str(folder))
    return typst.Fonts(include_system_fonts=False, font_paths=paths)
