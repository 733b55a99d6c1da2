"""The tool of a survey: click what was found, or travel to a panel and press Enter."""

from collections.abc import Iterable, Mapping

from PySide6.QtCore import QObject, QPointF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QTransform

from journal.desktop.desk import Desk
from journal.desktop.theme import colours_of
from journal.desktop.tools.overlay import on_screen
from journal.desktop.tools.tool import Held, Tool
from journal.desktop.widgets.survey_marks import REACH, paint_mark
from journal.domain.findings import Finding
from journal.domain.ids import FindingId
from journal.domain.shapes import Point

_GUIDE = "Click where something was found; or go to a panel with the arrows and press Enter."
_CHOSEN = "Enter or a double click changes the finding, Delete takes it out; Esc lets go of it."
_LOOK = "Click a mark to read the finding."
_ARROWS = {
    Qt.Key.Key_Left: "left",
    Qt.Key.Key_Right: "right",
    Qt.Key.Key_Up: "up",
    Qt.Key.Key_Down: "down",
}


class FindingTool(Tool):
    """Marks findings on the drawing and picks those that are marked.

    Attributes:
        findings: what is marked, of all views.
        chosen: the finding picked.
        load_bearing: findings within an anchor point's radius.
        writable: whether findings can be added.
    """

    name = "Finding"
    icon = "survey"
    what = "Mark what was found on a panel, with three figures each for money and hours"
    hides_pins = True

    #: Something was found at a spot: a Point, and the number of the panel there or None.
    spotted = Signal(object, object)
    #: A finding was picked: its number, None for none.
    picked = Signal(object)
    #: The finding picked is to be changed.
    change_wanted = Signal()
    #: The finding picked is to be taken out.
    remove_wanted = Signal()

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(desk, parent)
        self.findings: tuple[Finding, ...] = ()
        self.load_bearing: frozenset[FindingId] = frozenset()
        self.chosen: FindingId | None = None
        self.writable = True
        self.say(_GUIDE)

    def show_findings(
        self, findings: Iterable[Finding], load_bearing: Iterable[FindingId], *, writable: bool
    ) -> None:
        """Mark these from now on."""
        self.findings, self.load_bearing = tuple(findings), frozenset(load_bearing)
        self.writable = writable
        self.choose(self.chosen if self.chosen in {f.id for f in self.findings} else None)

    def choose(self, finding_id: FindingId | None) -> None:
        """Show one finding as picked."""
        self.chosen = finding_id
        if not self.writable:
            self.say(_LOOK)
        else:
            self.say(_GUIDE if finding_id is None else _CHOSEN)
        self.repaint()

    def spots(self) -> Mapping[FindingId, Point]:
        """Where the marks of the view shown stand: on their spot, else amid their panel."""
        if not self.at_work:
            return {}
        view_id, found = self.canvas.view_id, {}
        crowd: dict[int, int] = {}
        for one in self.findings:
            if one.x is not None and one.y is not None:
                if one.view_id == view_id:
                    found[one.id] = Point(one.x, one.y)
            elif one.panel_id is not None and self.canvas.outline_of(one.panel_id) is not None:
                at, beside = self.canvas.spot_on(one.panel_id), crowd.get(one.panel_id, 0)
                crowd[one.panel_id] = beside + 1
                found[one.id] = Point(at.x() + self.canvas.mm(2.2 * REACH * beside), at.y())
        return found

    def finding_at(self, point: Point) -> FindingId | None:
        """The finding whose mark is there, the one on top first."""
        reach = self.canvas.mm(REACH)
        near = [
            (number != self.chosen, -place, number)
            for place, (number, at) in enumerate(self.spots().items())
            if abs(at.x - point.x) <= reach and abs(at.y - point.y) <= reach
        ]
        return min(near)[2] if near else None

    def pressed(self, point: Point, held: Held) -> None:
        """Pick the mark there, or find something."""
        del held
        number = self.finding_at(point)
        if number is None and self.writable:
            self.spotted.emit(point, self.canvas.panel_under(point))
        else:
            self.choose(number)
            self.picked.emit(number)

    def double_clicked(self, point: Point, held: Held) -> None:
        """Change the finding whose mark is there."""
        del held
        if self.writable and self.finding_at(point) is not None:
            self.change_wanted.emit()

    def key(self, event: QKeyEvent) -> bool:
        """Travel from panel to panel, find something there, change or take out what is picked."""
        which = event.key()
        if which in _ARROWS:
            self.canvas.travel(_ARROWS[Qt.Key(which)])
        elif which in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self._enter()
        elif which in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace) and self.chosen is not None:
            self.remove_wanted.emit()
        else:
            return False
        return True

    def _enter(self) -> None:
        panel = self.canvas.selected_panel
        if not self.writable:
            return
        if self.chosen is not None:
            self.change_wanted.emit()
        elif panel is not None:
            at = self.canvas.spot_on(panel)
            self.spotted.emit(Point(at.x(), at.y()), panel)

    def cancel(self) -> bool:
        """Let go of the finding picked."""
        had = self.chosen is not None
        if had:
            self.choose(None)
            self.picked.emit(None)
        return had

    def end(self) -> None:
        """Leave the canvas; what is picked stays so."""
        self._canvas = None

    def shown_changed(self) -> None:
        """Nothing is half done."""
        self.repaint()

    def paint_over(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint the marks, the one picked on top."""
        colours = colours_of(self.canvas.palette())
        known = {one.id: one for one in self.findings}
        spots = sorted(self.spots().items(), key=lambda one: one[0] == self.chosen)
        for number, point in spots:
            one, at = known[number], on_screen(point, to_screen)
            paint_mark(
                painter,
                QPointF(at),
                one.severity,
                one.rank,
                colours,
                chosen=number == self.chosen,
                load_bearing=number in self.load_bearing,
                font=self.canvas.font(),
            )
