"""Showing by hand how one photo lies on another: the same spots of the car on both."""

from PySide6.QtCore import QPointF, Signal
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QHBoxLayout, QWidget

from journal.desktop.widgets.announce import announce
from journal.desktop.widgets.parts import button, column, label, row
from journal.desktop.widgets.point_view import PointView
from journal.domain.pairs import FEWEST_POINTS, MOST_POINTS, WANTED_POINTS, PointPair
from journal.domain.shapes import Point

_ASK = (
    f"Click the same spot on both photos: a bolt, a corner, an edge that the repair left alone. "
    f"{WANTED_POINTS} spots spread wide are best, {FEWEST_POINTS} the fewest."
)


class PairPoints(QWidget):
    """Two pictures with numbered marks.

    A spot clicked on one picture waits for its twin on the other; marks can be pulled elsewhere.
    """

    #: Whole pairs of points have changed: a tuple of PointPair.
    changed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows: list[list[QPointF | None]] = []
        self._chosen = -1
        self.views = (PointView("Before photo"), PointView("After photo"))
        self.hint = label(_ASK, "muted")
        self.remove = button("&Remove spot", self._on_remove, icon="remove", role="quiet")
        self.clear = button("C&lear", self._on_clear, role="quiet", hint="Take every spot away")
        both = QHBoxLayout()
        both.setSpacing(8)
        for side, (name, view) in enumerate(zip(("Before", "After"), self.views, strict=True)):
            half = column(label(name, "subheading", wrap=False), view, spacing=4)
            half.setStretch(1, 1)
            both.addLayout(half, 1)
            view.placed.connect(lambda at, side=side: self._on_placed(side, at))
            view.mark_moved.connect(lambda n, at, side=side: self._on_moved(side, n, at))
            view.mark_chosen.connect(self._on_chosen)
            view.mark_removed.connect(lambda _number: self._on_remove())
        layout = column(spacing=6)
        head = row(self.hint, self.remove, self.clear)
        head.setStretch(0, 1)
        layout.addLayout(head)
        layout.addLayout(both, 1)
        self.setLayout(layout)
        self._show()

    def show_pictures(self, before: QPixmap | None, after: QPixmap | None) -> None:
        """Show two photos whole."""
        for view, pixmap in zip(self.views, (before, after), strict=True):
            view.show_picture(pixmap, "There is no picture to show.")

    def set_points(self, points: tuple[PointPair, ...]) -> None:
        """Show these points without telling anybody."""
        self._rows = [[QPointF(*p.before), QPointF(*p.after)] for p in points]
        self._chosen = -1
        self._show()

    def points(self) -> tuple[PointPair, ...]:
        """The points that are on both photos."""
        return tuple(
            PointPair(Point(one.x(), one.y()), Point(other.x(), other.y()))
            for one, other in self._rows
            if one is not None and other is not None
        )

    def _on_placed(self, side: int, at: QPointF) -> None:
        waiting = next((n for n, marks in enumerate(self._rows) if marks[side] is None), None)
        if waiting is None:
            if len(self._rows) >= MOST_POINTS:
                return
            self._rows.append([None, None])
            waiting = len(self._rows) - 1
        self._rows[waiting][side] = at
        self._chosen = waiting
        self._show()
        other = 1 - side
        if self._rows[waiting][other] is None:
            name = ("before", "after")[other]
            announce(self, f"Spot {waiting + 1}: now show it on the {name} photo")
            self.views[other].setFocus()
        self.changed.emit(self.points())

    def _on_moved(self, side: int, number: int, at: QPointF) -> None:
        self._rows[number][side] = at
        self._chosen = number
        self._show()
        self.changed.emit(self.points())

    def _on_chosen(self, number: int) -> None:
        self._chosen = number
        self._show()

    def _on_remove(self) -> None:
        if self._rows:
            del self._rows[self._chosen if 0 <= self._chosen < len(self._rows) else -1]
            self._chosen = min(self._chosen, len(self._rows) - 1)
            self._show()
            self.changed.emit(self.points())

    def _on_clear(self) -> None:
        self._rows, self._chosen = [], -1
        self._show()
        self.changed.emit(())

    def _show(self) -> None:
        for side, view in enumerate(self.views):
            view.show_marks([marks[side] for marks in self._rows], self._chosen)
        half = next((n for n, marks in enumerate(self._rows) if None in marks), None)
        if half is None:
            self.hint.setText(_ASK)
        else:
            name = ("before", "after")[self._rows[half].index(None)]
            self.hint.setText(f"Now click spot {half + 1} on the {name} photo.")
        for act in (self.remove, self.clear):
            act.setEnabled(bool(self._rows))
