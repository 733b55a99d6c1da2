"""Marking a load-bearing mounting, or saying something else of one that is marked."""

from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from journal.actions import metalwork
from journal.desktop.desk import Desk, MetalKind, MetalSelected
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.metal_fields import ViewBox, mm_box
from journal.desktop.widgets.points_edit import PointsEdit
from journal.domain.anchors import RADIUS_MM, RADIUS_SOURCE, AnchorKind, AnchorPoint
from journal.domain.ids import AnchorId, ViewId
from journal.domain.shapes import Point


class AnchorDialog(FormDialog):
    """Kind, name, radius and place."""

    def __init__(
        self,
        desk: Desk,
        parent: QWidget | None = None,
        *,
        anchor: AnchorPoint | None = None,
        view_id: ViewId | None = None,
        at: Point | None = None,
    ) -> None:
        title = "New anchor point" if anchor is None else f"Anchor point “{anchor.name}”"
        super().__init__(title, "&Mark it" if anchor is None else "&Record", parent)
        self._desk = desk
        self._anchor = anchor
        self.name = QLineEdit(anchor.name if anchor else "")
        self.name.setPlaceholderText("Belt, left, lower")
        self.kind = QComboBox()
        self.kind.addItems([kind.value for kind in AnchorKind])
        self.radius = mm_box(anchor.radius_mm if anchor else RADIUS_MM, 1, 1000, decimals=0)
        self.view = ViewBox(desk, anchor.view_id if anchor else view_id)
        self.place = PointsEdit(1, 1, lines=1)
        self.add_row("&Name", self.name)
        self.add_row("&Kind", self.kind)
        self.add_row("&Radius", self.radius, f"300 mm after {RADIUS_SOURCE}.")
        self.add_row("&View", self.view)
        self.add_row("&Place", self.place)
        if anchor is not None:
            self.kind.setCurrentText(anchor.kind.value)
            self.place.set_points([Point(anchor.x, anchor.y)])
        elif at is not None:
            self.place.set_points([at])

    def submit(self) -> bool:
        """Record the anchor point."""
        ((x, y),) = self.place.points()
        anchor = AnchorPoint(
            AnchorId(0) if self._anchor is None else self._anchor.id,
            self.view.view_id(),
            x,
            y,
            AnchorKind(self.kind.currentText()),
            self.name.text().strip(),
            self.radius.value(),
        )
        if self._anchor is None:
            changes = metalwork.add_anchor(self._desk.session, anchor)
            self._desk.announce(changes)
            self._desk.select(MetalSelected(MetalKind.ANCHOR, changes.made or 0))
        elif anchor != self._anchor:
            self._desk.announce(metalwork.change_anchor(self._desk.session, anchor))
        return True
