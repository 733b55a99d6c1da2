"""The tool for a patch: click its corners, close it on the first one or with Enter."""

from datetime import date

from PySide6.QtCore import QObject

from journal.actions import metalwork
from journal.desktop.desk import Desk, MetalKind
from journal.desktop.tools.metal_drawing import MetalDrawing
from journal.domain.errors import JournalError
from journal.domain.ids import PatchId
from journal.domain.patches import Patch
from journal.domain.shapes import polygon
from journal.domain.when import When

_FIRST = "Click the first corner of the new metal; it is caught by corners and edges."
_MORE = "Click the next corner. Enter, or the first corner again, closes the patch."
_USUAL_MM = 1.0


class PatchTool(MetalDrawing):
    """A piece of new metal, corner by corner.

    Attributes:
        thickness_mm: the thickness of the next patch.
        steel: what it is made of, in the owner's words.
        when: the day it went in; None where it isn't in yet.
    """

    name = "Patch"
    icon = "patch"
    what = "Draw a piece of new metal"
    closes = True

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        self.thickness_mm = _USUAL_MM
        self.steel = ""
        self.when: When | None = When.on(date.today())
        super().__init__(desk, parent)

    def guide(self) -> str:
        """What to do next."""
        return _MORE if self.points else _FIRST

    def write(self) -> bool:
        """Write the patch."""
        area_id, view_id = self.area_here(), self.view_id
        if area_id is None or view_id is None:
            return False
        try:
            shape = polygon(self.points)
        except JournalError as error:
            self.refuse(str(error))
            return False
        patch = Patch(
            PatchId(0), area_id, view_id, shape, self.thickness_mm, self.steel, when=self.when
        )
        changes = self.attempt(metalwork.add_patch, patch)
        if changes is not None:
            self.select(MetalKind.PATCH, changes.made)
        return changes is not None
