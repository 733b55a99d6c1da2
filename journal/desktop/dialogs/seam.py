"""Drawing a seam by number, or saying something else of one that is drawn."""

from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from journal.actions import metalwork
from journal.desktop.desk import Desk, MetalKind, MetalSelected
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.metal_fields import AreaBox, ViewBox, mm_box
from journal.desktop.widgets.parts import label
from journal.desktop.widgets.points_edit import PointsEdit
from journal.domain.guidance import PLUG_SPACING_MM, SPOT_SPACING_MM, guidance
from journal.domain.ids import AreaId, SeamId, ViewId
from journal.domain.seams import Joint, Seam, length
from journal.domain.shapes import Curve, Line, Point, Stroke

#: The spacing a new row starts with, and the guidance it is taken from.
SPACINGS = {
    Joint.PLUGS: (PLUG_SPACING_MM, "plugs"),
    Joint.SPOTS: (SPOT_SPACING_MM, "spots"),
}


class SeamDialog(FormDialog):
    """Joint, spacing, repair area, view and the places it runs through."""

    def __init__(
        self,
        desk: Desk,
        parent: QWidget | None = None,
        *,
        seam: Seam | None = None,
        area_id: AreaId | None = None,
        view_id: ViewId | None = None,
    ) -> None:
        title = "New seam" if seam is None else "Seam"
        super().__init__(title, "&Draw it" if seam is None else "&Record", parent)
        self._desk = desk
        self._seam = seam
        self.area = AreaBox(desk, seam.area_id if seam else area_id)
        self.joint = QComboBox()
        self.joint.addItems([joint.value for joint in Joint])
        self.spacing = mm_box(PLUG_SPACING_MM, 1, 1000)
        self._guide = label("", "muted")
        self.view = ViewBox(desk, seam.view_id if seam else view_id)
        self.points = PointsEdit(2)
        self.note = QLineEdit()
        self.add_row("&Repair area", self.area)
        self.add_row("&Joint", self.joint)
        self._spacing_name = self.add_row("&Spacing", self.spacing)
        self.form.addRow("", self._guide)
        self.add_row("&View", self.view)
        self.add_row("&Places", self.points, "Each as “x, y” in mm from the view's top left.")
        self.add_row("&Note", self.note)
        self.joint.currentIndexChanged.connect(self._on_joint)
        if seam is not None:
            self._fill(seam)
        self._show_spacing()

    def _fill(self, seam: Seam) -> None:
        self.joint.setCurrentText(seam.joint.value)
        if seam.spacing_mm:
            self.spacing.setValue(seam.spacing_mm)
        self.note.setText(seam.note)
        self.points.set_points([seam.stroke.start, *(edge.to for edge in seam.stroke.edges)])
        if any(isinstance(edge, Curve) for edge in seam.stroke.edges):
            # Ends of curves alone would straighten it.
            self.points.setEnabled(False)
            self.points.note.setText(f"Drawn with curves, {length(seam):,.0f} mm long.")

    @property
    def chosen_joint(self) -> Joint:
        """The joint picked."""
        return Joint(self.joint.currentText())

    def _on_joint(self) -> None:
        if self.chosen_joint in SPACINGS:
            self.spacing.setValue(SPACINGS[self.chosen_joint][0])
        self._show_spacing()

    def _show_spacing(self) -> None:
        is_row = self.chosen_joint in SPACINGS
        for shown in (self._spacing_name, self.spacing, self._guide):
            shown.setVisible(is_row)
        if is_row:
            piece = guidance(SPACINGS[self.chosen_joint][1])
            self._guide.setText(f"{piece.text} ({piece.source})")

    def submit(self) -> bool:
        """Record the seam."""
        area_id = self.area.area_id()
        assert area_id is not None
        spacing = self.spacing.value() if self.chosen_joint.is_row else None
        seam = Seam(
            SeamId(0) if self._seam is None else self._seam.id,
            area_id,
            self.view.view_id(),
            self._stroke(),
            self.chosen_joint,
            spacing,
            self.note.text().strip(),
        )
        if self._seam is None:
            changes = metalwork.add_seam(self._desk.session, seam)
            self._desk.announce(changes)
            self._desk.select(MetalSelected(MetalKind.SEAM, changes.made or 0))
        elif seam != self._seam:
            self._desk.announce(metalwork.change_seam(self._desk.session, seam))
        return True

    def _stroke(self) -> Stroke:
        if self._seam is not None and not self.points.isEnabled():
            return self._seam.stroke
        return stroke_of(self.points.points())


def stroke_of(points: tuple[Point, ...]) -> Stroke:
    """A line of straight edges through places."""
    first, *rest = points
    return Stroke(first, tuple(Line(point) for point in rest))
