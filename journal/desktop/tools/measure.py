"""The tool for a measure: one point, two for a distance, or a row of them."""

from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.tools.metal_drawing import MetalDrawing

_FIRST = "Click where it is measured: one spot, two for a distance, or a row. Enter ends."
_MORE = "Click the next spot, or press Enter to define the measure; Backspace takes one back."


class MeasureTool(MetalDrawing):
    """A place to be measured, defined once and read before, during and after."""

    name = "Measure"
    icon = "measure"
    what = "Define a gap, diagonal, height or film thickness to be read"

    def guide(self) -> str:
        """What to do next."""
        return _MORE if self.points else _FIRST

    def write(self) -> bool:
        """Ask what is measured there; the dialog writes it."""
        from journal.desktop.dialogs.measure import MeasureDialog

        dialog = MeasureDialog(
            self.desk,
            self.canvas.window(),
            view_id=self.view_id,
            points=tuple(self.points),
            area_id=self.area_id,
            panel_id=self.canvas.panel_under(self.points[0]),
        )
        open_dialog(dialog)
        return True
