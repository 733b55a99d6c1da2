"""A spot in numbers: where it is, or how far and which way from the one before."""

import math

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QDoubleSpinBox, QGridLayout, QLabel, QWidget

from journal.desktop.widgets.parts import button, label
from journal.domain.shapes import Point

_FARTHEST = 100_000.0


class PointFields(QWidget):
    """X and Y from the top left of the view in millimetres, or length and angle.

    Shown are those of the corner chosen, or of where the hand is; Enter in a field puts it there.
    """

    #: The person has given a spot: a Point.
    put = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._origin: Point | None = None
        self._title = label("", "subheading")
        self.x_box = _box("X", -_FARTHEST, " mm", "Millimetres from the left edge of the view")
        self.y_box = _box("Y", -_FARTHEST, " mm", "Millimetres from the top edge of the view")
        self.length = _box("Length", 0.0, " mm", "Millimetres from the corner before")
        self.angle = _box("Angle", -360.0, "\N{DEGREE SIGN}", "0 is to the right, 90 upwards", 360)
        self.go = button("&Put", self._put_by_place)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.addWidget(self._title, 0, 0, 1, 4)
        for place, (words, box) in enumerate(
            (
                ("&X", self.x_box),
                ("&Y", self.y_box),
                ("Len&gth", self.length),
                ("&Angle", self.angle),
            )
        ):
            line, side = divmod(place, 2)
            name = QLabel(words)
            name.setBuddy(box)
            grid.addWidget(name, 1 + 2 * line, side)
            grid.addWidget(box, 2 + 2 * line, side)
        grid.addWidget(self.go, 5, 0)
        for box in (self.x_box, self.y_box):
            box.lineEdit().returnPressed.connect(self._put_by_place)
        for box in (self.length, self.angle):
            box.lineEdit().returnPressed.connect(self._put_by_angle)

    def show_point(self, here: Point | None, origin: Point | None, *, draws: bool) -> None:
        """Show a spot; ``draws`` says that it is the next point of something being drawn."""
        self._origin = origin
        self._title.setText("The next point" if draws else "The corner chosen")
        self.go.setText("&Put the point" if draws else "&Move it there")
        self.setVisible(here is not None or draws)
        if here is None:
            here = origin or Point(0.0, 0.0)
        self._show(self.x_box, here.x)
        self._show(self.y_box, here.y)
        for box in (self.length, self.angle):
            box.setEnabled(origin is not None)
        if origin is not None:
            self._show(self.length, math.dist(origin, here))
            across, up = here.x - origin.x, origin.y - here.y
            self._show(self.angle, math.degrees(math.atan2(up, across)) % 360)

    @staticmethod
    def _show(box: QDoubleSpinBox, value: float) -> None:
        """Show a number, unless the person is about to type another."""
        if not box.hasFocus():
            box.setValue(value)

    def _put_by_place(self) -> None:
        self.put.emit(Point(self.x_box.value(), self.y_box.value()))

    def _put_by_angle(self) -> None:
        if self._origin is None:
            return
        turn, length = math.radians(self.angle.value()), self.length.value()
        x = self._origin.x + length * math.cos(turn)
        y = self._origin.y - length * math.sin(turn)
        self.put.emit(Point(round(x, 2), round(y, 2)))


def _box(name: str, least: float, unit: str, hint: str, most: float = _FARTHEST) -> QDoubleSpinBox:
    made = QDoubleSpinBox()
    made.setRange(least, most)
    made.setDecimals(1)
    made.setSuffix(unit)
    made.setKeyboardTracking(False)
    made.setAccessibleName(name)
    made.setToolTip(hint)
    made.setMinimumWidth(96)
    made.lineEdit().setTextMargins(8, 0, 0, 0)
    return made
