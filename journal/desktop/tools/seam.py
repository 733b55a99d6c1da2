"""The tool for a seam: click along it, end with Enter."""

from PySide6.QtCore import QObject

from journal.actions import metalwork
from journal.desktop.desk import Desk, MetalKind
from journal.desktop.tools.metal_drawing import MetalDrawing
from journal.domain.guidance import PLUG_SPACING_MM
from journal.domain.ids import SeamId
from journal.domain.seams import Joint, Seam
from journal.domain.shapes import Line, Stroke

_FIRST = "Click where the seam starts; it is caught by corners and edges. Arrows and Space do too."
_MORE = "Click along the seam. Enter or a double click ends it; Backspace takes one back."


class SeamTool(MetalDrawing):
    """A line of welding, through point after point.

    Attributes:
        joint: the joint of the next seam.
        spacing_mm: the spacing of the next row.
    """

    name = "Seam"
    icon = "seam"
    what = "Draw a line of welding along a panel"

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        self.joint = Joint.BUTT
        self.spacing_mm = PLUG_SPACING_MM
        super().__init__(desk, parent)

    def guide(self) -> str:
        """What to do next."""
        return _MORE if self.points else _FIRST

    def write(self) -> bool:
        """Write the seam."""
        area_id, view_id = self.area_here(), self.view_id
        if area_id is None or view_id is None:
            return False
        first, *rest = self.points
        seam = Seam(
            SeamId(0),
            area_id,
            view_id,
            Stroke(first, tuple(Line(point) for point in rest)),
            self.joint,
            self.spacing_mm if self.joint.is_row else None,
        )
        changes = self.attempt(metalwork.add_seam, seam)
        if changes is not None:
            self.select(MetalKind.SEAM, changes.made)
        return changes is not None
