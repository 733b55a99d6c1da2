"""Drawings in SVG set on paper: as a picture of pixels, as a PDF, or many on one sheet."""

import re
from collections.abc import Sequence
from pathlib import Path
from typing import Literal, NamedTuple

from journal.domain.errors import JournalError
from journal.dossier import glyphs
from journal.dossier.pdf import fonts
from journal.files.scratch import scratch_folder, write_scratch

#: Width of the page that a picture is taken of, and what a point is, in millimetres.
_PAGE, _INCH = 400.0, 25.4

#: The longest side of a picture, in pixels.
MOST_PIXELS = 12_000

#: Margin of a printed page in millimetres.
_MARGIN = 12

#: Room for drawings on an A4 page across, the words below one, what is between two; millimetres.
_ACROSS, _DOWN, _WORDS, _GUTTER = 273.0, 156.0, 6.0, 6.0

#: What is set.
Kind = Literal["png", "pdf"]

_SIZE = re.compile(r'<svg[^>]* width="([\d.]+)mm" height="([\d.]+)mm"')
_FILE = "drawing-{}.svg"


class Cell(NamedTuple):
    """One drawing of a sheet of many, with the words below it."""

    words: str
    svg: str


class Setting:
    """Sets drawings one after another, in a folder of its own; a context manager.

    The typesetter keeps what it has worked out once: a second drawing is set much sooner.
    """

    def __init__(self) -> None:
        self._scratch = scratch_folder("drawing")
        self._folder = Path()
        self._count = 0

    def __enter__(self) -> "Setting":
        self._folder = self._scratch.__enter__()
        return self

    def __exit__(self, *reason: object) -> None:
        self._scratch.__exit__(None, None, None)

    def picture(self, svg: str, longest: int) -> bytes:
        """A drawing as PNG on white paper, its longer side ``longest`` pixels.

        Raises:
            JournalError: so large a picture can't be made.
        """
        if not 1 <= longest <= MOST_PIXELS:
            raise JournalError(
                f"A picture of {longest} pixels can't be made; up to {MOST_PIXELS} can."
            )
        width, height = size_of(svg)
        wide, high = _page(width, height)
        page = f"#set page(width: {wide}mm, height: {high}mm, margin: 0mm, fill: white)\n"
        source = f'{page}#image("{self._file(svg)}", width: 100%, height: 100%)'
        per_inch = longest / max(wide, high) * _INCH
        return self._set(source, svg, "png", per_inch)

    def page(self, svg: str, *, title: str, alt: str) -> bytes:
        """A drawing as a PDF of one A4 page, upright or across, whichever it fills better."""
        width, height = size_of(svg)
        source = (
            f"{_a4(across=width >= height)}{_named(title)}"
            f'#align(center + horizon, image("{self._file(svg)}", width: 100%, height: 100%,'
            f' fit: "contain", alt: {_literal(alt)}))'
        )
        return self._set(source, svg + title, "pdf")

    def sheet(self, cells: Sequence[Cell], *, title: str, foot: str, kind: Kind) -> bytes:
        """Many drawings on one sheet (A4, or a picture of 2400 pixels), each over its words.

        ``foot`` is a drawing too (a legend), set below them all.
        """
        columns = _columns(cells)
        boxes = "".join(
            f'[#image("{self._file(cell.svg)}", width: 100%, alt: {_literal(cell.words)})'
            f"#text(weight: 600, {_literal(cell.words)})],\n"
            for cell in cells
        )
        legend = f'#v(3mm)#image("{self._file(foot)}", width: 100%)' if foot else ""
        words = "".join(cell.words for cell in cells) + title + foot
        page = _a4(across=True)
        if kind == "png":
            page = f"#set page(width: 297mm, height: auto, margin: {_MARGIN}mm, fill: white)\n"
        source = (
            f"{page}{_named(title)}"
            f"#text(size: 16pt, weight: 600, {_literal(title)})\n#v(3mm)\n"
            f"#grid(columns: {columns}, gutter: {_GUTTER}mm, align: center,\n{boxes})\n{legend}"
        )
        return self._set(source, words, kind, 2400 / 297 * _INCH)

    def _file(self, svg: str) -> str:
        name = _FILE.format(self._count)
        self._count += 1
        write_scratch(self._folder / name, svg.encode())
        return name

    def _set(self, source: str, words: str, kind: Kind, per_inch: float = 144.0) -> bytes:
        import typst

        main = self._folder / f"main-{self._count}.typ"
        self._count += 1
        write_scratch(main, source.encode())
        made: bytes | list[bytes] = typst.compile(
            main,
            root=self._folder,
            font_paths=fonts(self._folder, last_resort=not glyphs.is_readable(words)),
            format=kind,
            ppi=per_inch,
        )
        return made[0] if isinstance(made, list) else made


def _columns(cells: Sequence[Cell]) -> int:
    """The fewest columns with which all the drawings stand on one page."""
    for columns in range(1, len(cells)):
        wide = (_ACROSS - (columns - 1) * _GUTTER) / columns
        rows = -(-len(cells) // columns)
        width, height = size_of(cells[0].svg)
        if rows * (wide * height / width + _WORDS + _GUTTER) <= _DOWN:
            return columns
    return max(1, len(cells))


def size_of(svg: str) -> tuple[float, float]:
    """Width and height that a drawing in SVG states of itself, in millimetres."""
    found = _SIZE.search(svg)
    assert found is not None, "a drawing of ours states its size"
    return float(found[1]), float(found[2])


def _page(width: float, height: float) -> tuple[float, float]:
    longest = max(width, height)
    return _PAGE * width / longest, _PAGE * height / longest


def _a4(*, across: bool) -> str:
    flipped = "true" if across else "false"
    return f'#set page(paper: "a4", flipped: {flipped}, margin: {_MARGIN}mm)\n'


def _named(title: str) -> str:
    return (
        f"#set document(title: {_literal(title)}, date: none)\n"
        '#set text(font: ("Cabin", "Unifont"), size: 9pt, lang: "en")\n'
    )


def _literal(words: str) -> str:
    """A text as the typesetter reads it, nothing in it meaning anything."""
    plain = "".join(sign if sign.isprintable() else " " for sign in words)
    return '"' + plain.replace("\\", "\\\\").replace('"', '\\"') + '"'
