"""The tool for an anchor point: click the mounting, then say what is mounted there."""

from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.tools.metal_drawing import MetalDrawing
from journal.desktop.tools.tool import Held
from journal.domain.shapes import Point

_GUIDE = "Click a load-bearing mounting, or move the cross with the arrows and press Enter."


class AnchorTool(MetalDrawing):
    """A load-bearing mounting with the radius that counts with it."""

    name = "Anchor point"
    icon = "anchor-point"
    what = "Mark a load-bearing mounting: belt, suspension, steering, subframe"

    def guide(self) -> str:
        """What to do next."""
        return _GUIDE

    def pressed(self, point: Point, held: Held) -> None:
        """Mark it there."""
        self.points = [self.catch(point, held).point]
        self.finish()

    def double_clicked(self, point: Point, held: Held) -> None:
        """The first press has marked it."""

    def put(self, point: Point) -> None:
        """Mark it at a spot given by numbers."""
        self.points = [point]
        self.finish()

    def finish(self) -> None:
        """Mark it where the cross is."""
        if not self.points and self.snap is not None:
            self.points = [self.snap.point]
        super().finish()

    def write(self) -> bool:
        """Ask what is mounted there; the dialog writes it."""
        from journal.desktop.dialogs.anchor import AnchorDialog

        over = self.canvas.window()
        open_dialog(AnchorDialog(self.desk, over, view_id=self.view_id, at=self.points[0]))
        return True
