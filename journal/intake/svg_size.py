"""How large an SVG picture is, and how many millimetres its units are."""

import re
from dataclasses import dataclass
from xml.etree import ElementTree

from journal.domain.errors import JournalError

#: Millimetres of the units of length that mean one (CSS 2.1, 4.3.2).
_MILLIMETRES = {
    "mm": 1.0,
    "cm": 10.0,
    "q": 0.25,
    "in": 25.4,
    "pt": 25.4 / 72,
    "pc": 25.4 / 6,
}

_LENGTH = re.compile(r"\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*([A-Za-z%]*)\s*")


@dataclass(frozen=True, slots=True)
class Scale:
    """How the picture's numbers become millimetres.

    Attributes:
        mm_per_unit: of the picture as it is laid out with the root's width and height as set.
        known: whether the file or the person said so; else a unit is taken for a millimetre.
        width, height: of the picture in its units, 0 where the file says nothing of it.
    """

    mm_per_unit: float
    known: bool
    width: float
    height: float


def set_size(root: ElementTree.Element, mm_per_unit: float | None, name: str) -> Scale:
    """Give the root a plain width and height, and tell what a unit of them is.

    With ``mm_per_unit`` a unit of the picture (of its viewBox, where it has one) is so long,
    whatever the file says. Else a width in a unit of length tells; pixels don't.

    Raises:
        JournalError: the scale is not a positive number.
    """
    if mm_per_unit is not None and not 1e-6 < mm_per_unit < 1e6:
        raise JournalError(f"A scale of {mm_per_unit:g} mm a unit can't be used for {name}.")
    box = _view_box(root)
    width, height = _length(root.get("width", "")), _length(root.get("height", ""))
    physical = [w for w in (width, height) if w is not None and w[1]]
    if mm_per_unit is None and physical:
        wide, high = _millimetres(width, height, box)
        return _set(root, wide, high, Scale(1.0, True, wide, high))
    if box is None:
        wide, high = (value[0] if value else 0.0 for value in (width, height))
    else:
        wide, high = box[2], box[3]
    known = mm_per_unit is not None
    return _set(root, wide, high, Scale(mm_per_unit or 1.0, known, wide, high))


def _set(root: ElementTree.Element, width: float, height: float, scale: Scale) -> Scale:
    for key, value in (("width", width), ("height", height)):
        if value > 0:
            root.set(key, f"{value:.9g}")
        else:
            root.attrib.pop(key, None)
    return scale


def _view_box(root: ElementTree.Element) -> tuple[float, float, float, float] | None:
    """The viewBox, None where there is none that can be used."""
    try:
        left, top, width, height = map(float, re.split(r"[\s,]+", root.get("viewBox", "").strip()))
    except ValueError:
        return None
    return (left, top, width, height) if width > 0 and height > 0 else None


def _length(text: str) -> tuple[float, str] | None:
    """A number with its unit, "" for pixels; None for what tells no length."""
    found = _LENGTH.fullmatch(text)
    if found is None:
        return None
    unit = found[2].lower()
    if unit not in ("", "px") and unit not in _MILLIMETRES:
        return None
    value = float(found[1])
    return (value, "" if unit == "px" else unit) if value > 0 else None


def _millimetres(
    width: tuple[float, str] | None,
    height: tuple[float, str] | None,
    box: tuple[float, float, float, float] | None,
) -> tuple[float, float]:
    """Width and height in millimetres, each found from the other where only one is told."""
    wide = width[0] * _MILLIMETRES[width[1]] if width and width[1] else 0.0
    high = height[0] * _MILLIMETRES[height[1]] if height and height[1] else 0.0
    if box is not None:
        wide = wide or high * box[2] / box[3]
        high = high or wide * box[3] / box[2]
    return wide, high
