"""The view shown: name and size; mirroring it; more views."""

from collections.abc import Callable

from PySide6.QtWidgets import QFormLayout, QLineEdit, QSpinBox, QWidget

from journal.actions import shaping
from journal.desktop.desk import Desk
from journal.desktop.modes.choices import SideEdit
from journal.desktop.widgets.parts import button, column, label
from journal.desktop.widgets.tool_canvas import ToolCanvas
from journal.domain.changes import Changes
from journal.domain.drawing import Drawing, Side, View
from journal.domain.ids import ViewId
from journal.domain.shaping import making
from journal.domain.shaping.making import LEAST_SIZE, LONGEST_NAME, MOST_SIZE
from journal.domain.shaping.mirroring import mirror_view, other_side_name

_NEW_SIZE = (4000, 1600)


class ViewFields(QWidget):
    """Name, width and height of the view shown, and the acts on views."""

    def __init__(self, desk: Desk, canvas: ToolCanvas, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._canvas = canvas
        self.name = _name_edit("Name of the view")
        self.width_box = _size_box("Width of the view")
        self.height_box = _size_box("Height of the view")
        self.dx = _size_box("Move what is drawn to the right", -int(MOST_SIZE))
        self.dy = _size_box("Move what is drawn down", -int(MOST_SIZE))
        self.change = button("&Change the view", self._on_change, role="primary")
        self.side = SideEdit()
        self.side.removeItem(2)
        self.mirror = button("&Mirror this view", self._on_mirror, icon="mirror")
        self._mirrored = label("", "muted")
        self.remove = button("&Remove this view", self._on_remove, icon="remove")
        self.new_name = _name_edit("Name of the new view")
        self.new_name.setPlaceholderText("Boot floor, from above")
        self.new_width = _size_box("Width of the new view")
        self.new_height = _size_box("Height of the new view")
        self.add = button("&Add the view", self._on_add, icon="plus")
        self._build()

    def _build(self) -> None:
        view = QFormLayout()
        view.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
        view.addRow("&Name", self.name)
        view.addRow("&Width", self.width_box)
        view.addRow("&Height", self.height_box)
        view.addRow("Move what is drawn to the ri&ght", self.dx)
        view.addRow("Move what is drawn &down", self.dy)
        new = QFormLayout()
        new.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
        new.addRow("Name", self.new_name)
        new.addRow("Width", self.new_width)
        new.addRow("Height", self.new_height)
        for box, size in zip((self.new_width, self.new_height), _NEW_SIZE, strict=True):
            box.setValue(size)
        layout = column(label("This view", "subheading"))
        layout.addLayout(view)
        layout.addWidget(self.change)
        for widget in (self._mirrored, self.side, self.mirror, self.remove):
            layout.addWidget(widget)
        layout.addSpacing(12)
        layout.addWidget(label("Another view", "subheading"))
        layout.addLayout(new)
        layout.addWidget(self.add)
        self.setLayout(layout)
        self.name.returnPressed.connect(self._on_change)
        self.new_name.returnPressed.connect(self._on_add)

    @property
    def _view(self) -> View | None:
        found = (v for v in self._canvas.drawing.views if v.id == self._canvas.view_id)
        return next(found, None)

    def refresh(self) -> None:
        """Show the view as it is now."""
        view = self._view
        self.setEnabled(view is not None)
        if view is None:
            return
        self.name.setText(view.name)
        self.width_box.setValue(round(view.width))
        self.height_box.setValue(round(view.height))
        self.dx.setValue(0)
        self.dy.setValue(0)
        other = other_side_name(view.name)
        self.side.setVisible(not other)
        self._mirrored.setText(
            f"All its panels to {other}, in place of their fellows there."
            if other
            else "The panels of this side to the other one, over the centre line:"
        )

    def _reshape(self, label: str, change: Callable[[Drawing], Drawing]) -> Changes | None:
        done: Changes | None = self._desk.act(shaping.reshape, label, change)
        self.refresh()
        return done

    def _on_change(self) -> None:
        view, name = self._view, self.name.text()
        if view is None:
            return
        size = float(self.width_box.value()), float(self.height_box.value())
        # A size that wasn't touched keeps its parts of a millimetre.
        kept = (round(view.width), round(view.height)) == size
        width, height = (view.width, view.height) if kept else size
        dx, dy = float(self.dx.value()), float(self.dy.value())

        def change(drawing: Drawing) -> Drawing:
            renamed = making.rename_view(drawing, view.id, name)
            return making.resize_view(renamed, view.id, width, height, dx=dx, dy=dy)

        if name != view.name or not kept or dx or dy:
            self._reshape(f"Change the view {view.name}", change)

    def _on_mirror(self) -> None:
        view, side = self._view, self.side.side
        if view is not None:
            side = side if not other_side_name(view.name) else Side.LEFT
            self._reshape(f"Mirror {view.name}", lambda d: mirror_view(d, view.id, side))

    def _on_remove(self) -> None:
        view = self._view
        if view is not None:
            self._reshape(f"Remove the view {view.name}", lambda d: making.remove_view(d, view.id))

    def _on_add(self) -> None:
        name = self.new_name.text()
        size = float(self.new_width.value()), float(self.new_height.value())
        words = " ".join(name.split())
        if self._reshape(f"Add the view {words}", lambda d: making.add_view(d, name, *size)):
            self.new_name.clear()
            made = ViewId(max(view.id for view in self._canvas.drawing.views))
            self._canvas.set_view(made)


def _name_edit(name: str) -> QLineEdit:
    made = QLineEdit()
    made.setMaxLength(LONGEST_NAME)
    made.setAccessibleName(name)
    return made


def _size_box(name: str, least: int = int(LEAST_SIZE)) -> QSpinBox:
    made = QSpinBox()
    made.setRange(least, int(MOST_SIZE))
    made.setSuffix(" mm")
    made.setSingleStep(10)
    made.lineEdit().setTextMargins(8, 0, 0, 0)
    made.setAccessibleName(name)
    return made
