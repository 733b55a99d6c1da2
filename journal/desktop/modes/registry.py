"""Which modes the drawing has and where each comes from; one is imported when first entered."""

from dataclasses import dataclass
from importlib import import_module
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

if TYPE_CHECKING:
    from journal.desktop.desk import Desk
    from journal.desktop.modes import Mode
    from journal.desktop.widgets.tool_canvas import ToolCanvas


@dataclass(frozen=True, slots=True)
class ModeEntry:
    """A mode that can be made: its title, icon and tool tip, its module and its class.

    ``writes`` says that it is of no use in a journal open for reading only.
    """

    title: str
    icon: str
    what: str
    module: str
    name: str
    writes: bool = True

    def make(self, desk: "Desk", canvas: "ToolCanvas", parent: QObject) -> "Mode":
        """Import and make the mode."""
        made: Mode = getattr(import_module(self.module), self.name)(desk, canvas, parent)
        return made


#: Looking, which every other mode is left for, is no entry of its own.
MODES: tuple[ModeEntry, ...] = (
    ModeEntry(
        title="Shape",
        icon="shape",
        what="Make the drawing yours: corners, panels, cuts, views",
        module="journal.desktop.modes.shaping",
        name="ShapingMode",
    ),
    ModeEntry(
        title="Trace",
        icon="trace",
        what="Lay a photo or a sketch under the view, square it up, and draw over it",
        module="journal.desktop.modes.tracing",
        name="TracingMode",
    ),
    ModeEntry(
        title="Metal",
        icon="seam",
        what="Draw seams, patches, anchor points and measures, and read their sums",
        module="journal.desktop.modes.metal",
        name="MetalMode",
        writes=False,
    ),
    ModeEntry(
        title="Survey",
        icon="survey",
        what="Walk round the car: mark what is found, and what it may take",
        module="journal.desktop.modes.survey",
        name="SurveyMode",
        writes=False,
    ),
)
