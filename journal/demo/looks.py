"""The looks of a place, one for each moment a person takes a picture of it."""

from collections.abc import Callable

from journal.demo.canvas import Canvas
from journal.demo.metal import (
    RED_OXIDE,
    ZINC,
    Wound,
    bare_ring,
    bubbles,
    dressed,
    marker,
    new_paint,
    old_paint,
    opening,
    patch,
    primer,
    rust_through,
    sealer,
    seam_ghost,
    stone_chip,
    wax,
    weld,
)
from journal.demo.outlines import Box
from journal.demo.solids import brush, cable, grip, label, magnet, rule, screwdriver


def _bought(w: Wound) -> None:
    old_paint(w)
    bubbles(w, 0.7)


def _rusty(w: Wound) -> None:
    old_paint(w)
    bubbles(w, 1.0)
    rust_through(w, 0.0, 0.0)


def _holed(w: Wound) -> None:
    old_paint(w)
    bubbles(w, 1.0)
    rust_through(w, 0.25, 0.85)


def _marked(w: Wound) -> None:
    old_paint(w)
    bare_ring(w, 30, pits=0.8)
    rust_through(w, -0.1, 0.75)
    marker(w, 2)


def _cut(w: Wound) -> None:
    old_paint(w)
    bare_ring(w, 34)
    opening(w, behind="rust")


def _behind(w: Wound) -> None:
    old_paint(w)
    bare_ring(w, 36, pits=0.1)
    opening(w, behind="zinc", jag=0.25)


def _inner(w: Wound) -> None:
    old_paint(w)
    bare_ring(w, 36, pits=0.1)
    opening(w, behind="steel", jag=0.25)


def _clamped(w: Wound) -> None:
    old_paint(w)
    bare_ring(w, 36, pits=0.1)
    patch(w, gap=1.6, proud=0.5)


def _tacked(w: Wound) -> None:
    _clamped(w)
    weld(w, every=38)


def _welded(w: Wound) -> None:
    old_paint(w)
    bare_ring(w, 38, pits=0.1)
    patch(w, gap=0)
    weld(w)


def _dressed(w: Wound) -> None:
    old_paint(w)
    bare_ring(w, 44, pits=0.05)
    dressed(w)


def _zinc(w: Wound) -> None:
    _dressed(w)
    primer(w, 40, ZINC)
    seam_ghost(w, 0.4)


def _red(w: Wound) -> None:
    old_paint(w)
    primer(w, 60, RED_OXIDE)
    seam_ghost(w, 0.3)


def _sealed(w: Wound) -> None:
    old_paint(w)
    primer(w, 60, ZINC)
    sealer(w)


def _painted(w: Wound) -> None:
    new_paint(w)


def _satin(w: Wound) -> None:
    new_paint(w, gloss=0.45)
    seam_ghost(w, 0.5)


def _chipped(w: Wound) -> None:
    stone_chip(w)
    seam_ghost(w, 0.6)


def _waxed(w: Wound) -> None:
    new_paint(w, gloss=0.5)
    wax(w)


LOOKS: dict[str, Callable[[Wound], None]] = {
    "bought": _bought,
    "rusty": _rusty,
    "holed": _holed,
    "marked": _marked,
    "cut": _cut,
    "behind": _behind,
    "inner": _inner,
    "clamped": _clamped,
    "tacked": _tacked,
    "welded": _welded,
    "dressed": _dressed,
    "zinc": _zinc,
    "red": _red,
    "sealed": _sealed,
    "painted": _painted,
    "satin": _satin,
    "chipped": _chipped,
    "waxed": _waxed,
}

#: A thing that lies or is held in a picture, set by where the trouble is.
Tool = Callable[[Canvas, Box, int], None]


def _top(box: Box, share: float) -> tuple[float, float]:
    """A spot on the upper edge of the box, ``share`` from -1 to 1 along it."""
    return box.x + share * box.width / 2, box.y - box.height / 2


def _grips(canvas: Canvas, box: Box, seed: int) -> None:
    for step, share in enumerate((-0.6, 0.05, 0.66)):
        if seed >> step & 1 or step == 0:
            x, y = _top(box, share)
            grip(canvas, x, y, -90 + share * 26 + seed % 13)


def _magnet(canvas: Canvas, box: Box, seed: int) -> None:
    if seed % 3 == 0:
        magnet(canvas, box.x + box.width / 2, box.y + box.height * 0.2, seed % 40 - 20)


def _cable(canvas: Canvas, box: Box, seed: int) -> None:
    if seed % 3 == 1:
        cable(canvas, box.x, box.y + box.height / 2 + 110)


def _poke(canvas: Canvas, box: Box, seed: int) -> None:
    if seed % 2 == 0:
        screwdriver(canvas, box.x + 4, box.y + 2, 18 + seed % 45)


def _rule(canvas: Canvas, box: Box, seed: int) -> None:
    if seed % 3 == 0:
        rule(canvas, box.x - 10, box.y + box.height / 2 + 46, seed % 9 - 4)


def _tag(canvas: Canvas, box: Box, seed: int) -> None:
    if seed % 4 == 0:
        label(canvas, box.x - box.width * 0.4, box.y - box.height / 2 - 70, seed % 17 - 8)


def _brush(canvas: Canvas, box: Box, seed: int) -> None:
    if seed % 3 == 0:
        brush(canvas, box.x + box.width * 0.4, box.y + box.height / 2 + 60, seed % 30)


TOOLS: dict[str, tuple[Tool, ...]] = {
    "rusty": (_tag,),
    "holed": (_poke, _rule),
    "marked": (_rule,),
    "cut": (_rule, _tag),
    "inner": (_tag,),
    "clamped": (_grips, _magnet, _cable),
    "tacked": (_grips,),
    "welded": (_cable,),
    "zinc": (_brush,),
    "red": (_brush,),
}
