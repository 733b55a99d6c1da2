"""The drawing: views of the car in millimetres, and the panels on them."""

from dataclasses import dataclass
from enum import StrEnum

from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Shape, Stroke


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


class Weight(StrEnum):
    """How strongly a line of the background is drawn."""

    GROUND = "ground"
    DETAIL = "detail"
    CENTRE = "centre line"


@dataclass(frozen=True, slots=True)
class Decor:
    """A line that helps the eye and is no panel: the ground, a swage line, a hub's rim."""

    view_id: ViewId
    stroke: Stroke
    weight: Weight


@dataclass(frozen=True, slots=True)
class Drawing:
    """All views, panels and shapes of one car, and the lines that are no panels."""

    views: tuple[View, ...]
    panels: tuple[Panel, ...]
    shapes: tuple[PanelShape, ...]
    decor: tuple[Decor, ...] = ()

    def view(self, view_id: ViewId) -> View:
        """The view of that number.

        Raises:
            JournalError: the drawing has no such view.
        """
        for view in self.views:
            if view.id == view_id:
                return view
        raise JournalError(f"The drawing has no view number {view_id}.")

    def panel(self, panel_id: PanelId) -> Panel:
        """The panel of that number.

        Raises:
            JournalError: the drawing has no such panel.
        """
        for panel in self.panels:
            if panel.id == panel_id:
                return panel
        raise JournalError(f"The drawing has no panel number {panel_id}.")

    def shapes_on(self, view_id: ViewId) -> tuple[PanelShape, ...]:
        """The shapes of one view, lowest first: the order to paint them in."""
        on_view = (s for s in self.shapes if s.view_id == view_id)
        return tuple(sorted(on_view, key=lambda s: s.order))

    def decor_on(self, view_id: ViewId) -> tuple[Decor, ...]:
        """The lines of one view that are no panels; ground lines lie below all panels."""
        return tuple(line for line in self.decor if line.view_id == view_id)

    def views_of(self, panel_id: PanelId) -> tuple[View, ...]:
        """The views a panel has a shape on, in the drawing's order."""
        shown = {s.view_id for s in self.shapes if s.panel_id == panel_id}
        return tuple(v for v in self.views if v.id in shown)
