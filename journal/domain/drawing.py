"""The drawing: views of the car in millimetres, and the panels on them."""

from dataclasses import dataclass
from enum import StrEnum

from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Shape


class Side(StrEnum):
    """Which side of the car a panel is on, as seen by somebody sitting in it."""

    LEFT = "left"
    RIGHT = "right"
    CENTRE = ""


class System(StrEnum):
    """What a panel belongs to."""

    OUTER = "outer panels"
    STRUCTURE = "structure"
    FLOOR = "floor"
    OPENINGS = "doors and lids"
    GLASS = "glass"
    TRIM = "trim"
    RUNNING_GEAR = "running gear"
    ENGINE = "engine and fuel"
    ELECTRICAL = "electrical"
    CABIN = "cabin"


@dataclass(frozen=True, slots=True)
class View:
    """One face of the drawing: x to the right, y down, from the top left corner, in millimetres."""

    id: ViewId
    name: str
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Panel:
    """A named piece of the car with a side."""

    id: PanelId
    name: str
    side: Side
    system: System

    @property
    def label(self) -> str:
        """The name with its side, as every screen and page writes it: "Sill, left"."""
        return f"{self.name}, {self.side.value}" if self.side.value else self.name


@dataclass(frozen=True, slots=True)
class PanelShape:
    """A panel's outline on one view; shapes of a higher ``order`` lie on top."""

    panel_id: PanelId
    view_id: ViewId
    shape: Shape
    order: int


@dataclass(frozen=True, slots=True)
class Drawing:
    """All views, panels and shapes of one car."""

    views: tuple[View, ...]
    panels: tuple[Panel, ...]
    shapes: tuple[PanelShape, ...]
