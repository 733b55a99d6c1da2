"""The layers that metalwork and measures lie over the drawing in."""

from enum import StrEnum


class Layer(StrEnum):
    """What can be shown or left out, in the order of its buttons."""

    SEAMS = "seams"
    PATCHES = "patches"
    ANCHORS = "anchor points"
    READINGS = "readings"
    FILMS = "paint thickness"
