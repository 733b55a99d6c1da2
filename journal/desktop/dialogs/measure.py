"""Defining a place to be measured, or saying something else of it."""

from typing import cast

from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from journal.actions import readings
from journal.desktop.desk import Desk, MetalKind, MetalSelected
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.metal_fields import AreaBox, NumberField, ViewBox
from journal.desktop.widgets.points_edit import PointsEdit
from journal.domain.ids import AreaId, MeasureId, PanelId, ViewId
from journal.domain.readings import UNITS, Measure, MeasureKind, Unit
from journal.domain.shapes import Point


class MeasureDialog(FormDialog):
    """Name, kind, unit, the owner's target and tolerance, and one point, two, or a row."""

    def __init__(
        self,
        desk: Desk,
        parent: QWidget | None = None,
        *,
        measure: Measure | None = None,
        kind: MeasureKind | None = None,
        view_id: ViewId | None = None,
        points: tuple[Point, ...] = (),
        area_id: AreaId | None = None,
        panel_id: PanelId | None = None,
    ) -> None:
        title = "New measure" if measure is None else f"Measure “{measure.name}”"
        super().__init__(title, "&Define it" if measure is None else "&Record", parent)
        self._desk = desk
        self._measure = measure
        self._panel_id = measure.panel_id if measure else panel_id
        self.name = QLineEdit(measure.name if measure else "")
        self.name.setPlaceholderText("Door aperture, A low to B high")
        self.kind = QComboBox()
        self.kind.addItems([each.value for each in MeasureKind])
        self.unit = QComboBox()
        self.unit.addItems(list(UNITS))
        self.target = NumberField("none set")
        self.tolerance = NumberField("none set")
        self.area = AreaBox(desk, measure.area_id if measure else area_id, optional=True)
        self.view = ViewBox(desk, measure.view_id if measure else view_id)
        self.points = PointsEdit(1)
        self._build()
        self._fill(measure, kind, points)

    def _build(self) -> None:
        self.add_row("&Name", self.name)
        self.add_row("&Kind", self.kind)
        self.add_row("&Unit", self.unit)
        self.add_row("Your &target", self.target)
        self.add_row(
            "Your t&olerance",
            self.tolerance,
            "A reading further off is shown as “outside what you set”, no more.",
        )
        self.add_row("&Repair area", self.area)
        self.add_row("&View", self.view)
        self.add_row("&Places", self.points, "One, two for a distance, or a row of them.")

    def _fill(
        self, measure: Measure | None, kind: MeasureKind | None, points: tuple[Point, ...]
    ) -> None:
        if measure is None:
            likely = MeasureKind.DIAGONAL if len(points) == 2 else MeasureKind.GAP
            self.kind.setCurrentText((kind or likely).value)
            self.points.set_points(points)
            self._on_kind()
            self.kind.currentIndexChanged.connect(self._on_kind)
            return
        self.kind.setCurrentText(measure.kind.value)
        self.unit.setCurrentText(measure.unit)
        self.target.set_number(measure.target)
        self.tolerance.set_number(measure.tolerance)
        self.points.set_points(measure.points)

    def _on_kind(self) -> None:
        self.unit.setCurrentText(MeasureKind(self.kind.currentText()).unit)

    def submit(self) -> bool:
        """Record the measure."""
        measure = Measure(
            MeasureId(0) if self._measure is None else self._measure.id,
            self.name.text().strip(),
            MeasureKind(self.kind.currentText()),
            self.view.view_id(),
            self.points.points(),
            cast("Unit", self.unit.currentText()),
            self.target.number(),
            self.tolerance.number(),
            self.area.area_id(),
            self._panel_id,
        )
        if self._measure is None:
            changes = readings.add_measure(self._desk.session, measure)
            self._desk.announce(changes)
            self._desk.select(MetalSelected(MetalKind.MEASURE, changes.made or 0))
        elif measure != self._measure:
            self._desk.announce(readings.change_measure(self._desk.session, measure))
        return True
