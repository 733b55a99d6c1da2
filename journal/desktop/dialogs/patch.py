"""Drawing a patch by number, or saying something else of one that is drawn."""

from PySide6.QtWidgets import QLineEdit, QWidget

from journal.actions import metalwork
from journal.desktop.desk import Desk, MetalKind, MetalSelected
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.metal_fields import AreaBox, ViewBox, mm_box
from journal.desktop.widgets.parts import label
from journal.desktop.widgets.points_edit import PointsEdit
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.guidance import guidance, mig_current
from journal.domain.ids import AreaId, PatchId, ViewId
from journal.domain.patches import Patch
from journal.domain.shapes import Curve, Point, Shape, polygon
from journal.domain.sheet import THICKEST_MM, THINNEST_MM, nearest_gauge

#: What a new patch is made of unless the owner says otherwise: the commonest sheet of outer panels.
USUAL_MM = 1.0


class PatchDialog(FormDialog):
    """Repair area, thickness, steel, the day it went in, and its corners."""

    def __init__(
        self,
        desk: Desk,
        parent: QWidget | None = None,
        *,
        patch: Patch | None = None,
        area_id: AreaId | None = None,
        view_id: ViewId | None = None,
        points: tuple[Point, ...] = (),
    ) -> None:
        super().__init__(
            "New patch" if patch is None else "Patch",
            "&Draw it" if patch is None else "&Record",
            parent,
        )
        self._desk = desk
        self._patch = patch
        self.area = AreaBox(desk, patch.area_id if patch else area_id)
        self.thickness = mm_box(
            patch.thickness_mm if patch else USUAL_MM, THINNEST_MM, THICKEST_MM, decimals=2
        )
        self._gauge = label("", "muted")
        self.steel = QLineEdit(patch.steel if patch else "")
        self.steel.setPlaceholderText("Zinc-coated sheet, repair panel from ...")
        self.when = WhenEdit(optional=True)
        self.view = ViewBox(desk, patch.view_id if patch else view_id)
        self.points = PointsEdit(3)
        self.note = QLineEdit(patch.note if patch else "")
        self.add_row("&Repair area", self.area)
        self.add_row("&Thickness", self.thickness)
        self.form.addRow("", self._gauge)
        self.add_row("&Steel", self.steel)
        self.add_row("&Went in on", self.when, "Empty while it isn't in yet, or not known.")
        self.add_row("&View", self.view)
        self.add_row("&Corners", self.points, "Each as “x, y” in mm from the view's top left.")
        self.add_row("&Note", self.note)
        self.thickness.valueChanged.connect(self._show_gauge)
        self._show_gauge()
        if patch is not None:
            self.when.set_when(patch.when)
            self._show_corners(patch.shape)
        else:
            self.when.set_today()
            self.points.set_points(points)

    def _show_corners(self, shape: Shape) -> None:
        contour = shape.contours[0]
        corners = [contour.start, *(edge.to for edge in contour.edges)]
        self.points.set_points(corners[:-1] if corners[-1] == corners[0] else corners)
        if len(shape.contours) > 1 or any(isinstance(e, Curve) for e in contour.edges):
            # Corners alone would lose its curves and holes.
            self.points.setEnabled(False)
            self.points.note.setText("Drawn with curves or holes.")

    def _show_gauge(self) -> None:
        thick = self.thickness.value()
        near = nearest_gauge(thick)
        words = f"About {near.number} gauge; " if near else ""
        self._gauge.setText(
            f"{words}MIG current to begin with about {mig_current(thick):.0f} A"
            f" ({guidance('current').source})"
        )

    def submit(self) -> bool:
        """Record the patch."""
        area_id = self.area.area_id()
        assert area_id is not None
        kept = self._patch is not None and not self.points.isEnabled()
        patch = Patch(
            PatchId(0) if self._patch is None else self._patch.id,
            area_id,
            self.view.view_id(),
            self._patch.shape if self._patch and kept else polygon(self.points.points()),
            round(self.thickness.value(), 2),
            self.steel.text().strip(),
            self.note.text().strip(),
            self.when.value(),
        )
        if self._patch is None:
            changes = metalwork.add_patch(self._desk.session, patch)
            self._desk.announce(changes)
            self._desk.select(MetalSelected(MetalKind.PATCH, changes.made or 0))
        elif patch != self._patch:
            self._desk.announce(metalwork.change_patch(self._desk.session, patch))
        return True
