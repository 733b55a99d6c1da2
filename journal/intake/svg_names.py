"""What the figures of an SVG file are called, and what the file says of them."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from xml.etree import ElementTree

from journal.domain.drawing import Side, System
from journal.domain.starters.parts import SYSTEMS
from journal.intake.svg_guard import local

#: The figures that can become panels, and what else is drawn and can't.
FIGURES = frozenset(("path", "rect", "circle", "ellipse", "polygon", "polyline", "line"))
OTHERS = {
    "text": "it is writing; only its outlines as paths could be panels",
    "image": "it is a picture",
    "foreignObject": "it isn't of SVG",
}

#: What is only drawn where something refers to it.
_UNSEEN = frozenset(
    ("defs", "symbol", "clipPath", "mask", "pattern", "marker", "linearGradient", "filter")
)

#: The attribute that numbers the figures on their way through the geometry.
NUMBER = "data-journal-figure"

#: Geometry that a figure leaves out is nought; it must not be taken from what it stands in.
_DEFAULTS = {
    "rect": ("x", "y", "width", "height"),
    "use": ("x", "y"),
    "circle": ("cx", "cy", "r"),
    "ellipse": ("cx", "cy", "rx", "ry"),
    "line": ("x1", "y1", "x2", "y2"),
}

_SIDE = re.compile(r"[\s,_(\-]+(left|right)\)?$", re.IGNORECASE)

#: Names that drawing programs give of themselves.
_NO_NAME = re.compile(
    r"(path|rect|circle|ellipse|polygon|polyline|line|use|g|group|shape|layer|svg|object)"
    r"[\s_-]*[\d_-]*",
    re.IGNORECASE,
)

_KNOWN = {name.casefold(): system for name, system in SYSTEMS.items()}

_LABEL = "{http://www.inkscape.org/namespaces/inkscape}label"


@dataclass(frozen=True, slots=True)
class Figure:
    """One element of the file that draws something.

    Attributes:
        name: what the file calls it, without its side; empty where it has no name of its own.
        look: what it is in a drawing of ours: "frame", "pattern", "line" or "".
        weight: of a line of ours.
        view: which group of ours that shows a view it is in, counted from 0; -1 for none.
        panel, number: whether it says itself to be a panel, and the number it had.
        unseen: whether it is only drawn where something refers to it.
        clipped: whether a part of it is hidden by a clip or a mask.
    """

    tag: str
    name: str
    side: Side
    system: System
    look: str = ""
    weight: str = ""
    view: int = -1
    panel: bool = False
    number: int = 0
    unseen: bool = False
    clipped: bool = False


@dataclass(frozen=True, slots=True)
class ViewGroup:
    """A group of ours that shows a view."""

    name: str
    width: float
    height: float
    number: int


@dataclass(frozen=True, slots=True)
class Contents:
    """The figures of a file by their number, and the views and undrawn panels of ours in it."""

    figures: tuple[Figure, ...]
    views: tuple[ViewGroup, ...]
    undrawn: tuple[Figure, ...]


def number_figures(root: ElementTree.Element) -> Contents:
    """Number every figure of a tree, in an attribute put on it, and tell what it is."""
    figures: list[Figure] = []
    views: list[ViewGroup] = []
    undrawn: list[Figure] = []
    for element, above in _with_ancestors(root, ()):
        tag = local(element.tag)
        if tag == "g" and "data-view" in element.attrib:
            views.append(_view_group(element))
        elif tag == "g" and "data-panel" in element.attrib:
            undrawn.append(_figure(element, tag, (), -1))
        elif tag in FIGURES or tag in OTHERS or tag == "use":
            for key in _DEFAULTS.get(tag, ()):
                element.attrib.setdefault(key, "0")
            element.set(NUMBER, str(len(figures)))
            inside = any("data-view" in a.attrib for a in above)
            figures.append(_figure(element, tag, above, len(views) - 1 if inside else -1))
    return Contents(tuple(figures), tuple(views), tuple(undrawn))


def _with_ancestors(
    element: ElementTree.Element, above: tuple[ElementTree.Element, ...]
) -> Iterator[tuple[ElementTree.Element, tuple[ElementTree.Element, ...]]]:
    yield element, above
    for child in element:
        yield from _with_ancestors(child, (*above, element))


def _view_group(element: ElementTree.Element) -> ViewGroup:
    """The group's view; a frame that lost its size is found out when the frame is read."""
    frame = next((e for e in element.iter() if e.get("data-look") == "frame"), None)
    width, height = (_float(frame, key) for key in ("width", "height"))
    return ViewGroup(element.get("data-view", ""), width, height, _int(element))


def _float(element: ElementTree.Element | None, key: str) -> float:
    try:
        return float(element.get(key, "")) if element is not None else 0.0
    except ValueError:
        return 0.0


def _int(element: ElementTree.Element) -> int:
    text = element.get("data-number", "")
    return int(text) if text.isascii() and text.isdigit() and len(text) < 10 else 0


def _figure(
    element: ElementTree.Element, tag: str, above: tuple[ElementTree.Element, ...], view: int
) -> Figure:
    name = element.get("data-panel")
    if name is None:
        name, side = _split_side(_own_name(element) or _group_name(above))
    else:
        side = _side(element.get("data-side", ""))
    weight = element.get("data-line", "")
    return Figure(
        tag=tag,
        name=" ".join(name.split()),
        side=side,
        system=_system(element.get("data-system", ""), name),
        look="line" if weight else element.get("data-look", ""),
        weight=weight,
        view=view,
        panel="data-panel" in element.attrib,
        number=_int(element),
        unseen=any(local(a.tag) in _UNSEEN for a in above),
        clipped=any(
            key in ("clip-path", "mask") or "clip-path:" in value or "mask:" in value
            for e in (element, *above)
            for key, value in e.attrib.items()
            if key in ("clip-path", "mask", "style")
        ),
    )


def _own_name(element: ElementTree.Element) -> str:
    """The title, else the label, else the id, unless a program gave it of itself."""
    title = next((e for e in element if local(e.tag) == "title"), None)
    for text in ("".join(title.itertext()) if title is not None else "", element.get(_LABEL, "")):
        if text.strip() and not _NO_NAME.fullmatch(text.strip()):
            return text.strip()
    name = element.get("id", "").strip()
    if not name or _NO_NAME.fullmatch(name):
        return ""
    name = re.sub(r"[\s_-]+", " ", name).strip()
    return name[:1].upper() + name[1:]


def _group_name(above: tuple[ElementTree.Element, ...]) -> str:
    """The name of the nearest group that holds this one figure alone."""
    group = above[-1] if above else None
    if group is None or local(group.tag) != "g":
        return ""
    drawn = [e for e in group if local(e.tag) in (*FIGURES, *OTHERS, "use", "g")]
    return _own_name(group) if len(drawn) == 1 else ""


def _split_side(name: str) -> tuple[str, Side]:
    found = _SIDE.search(name)
    if found is None or not name[: found.start()].strip():
        return name, Side.CENTRE
    return name[: found.start()].strip(), Side(found[1].lower())


def _side(text: str) -> Side:
    return Side(text) if text in {side.value for side in Side} else Side.CENTRE


def _system(text: str, name: str) -> System:
    """What the file says, else what panels of that name belong to."""
    if text in {system.value for system in System}:
        return System(text)
    return _KNOWN.get(name.casefold(), System.OUTER)
