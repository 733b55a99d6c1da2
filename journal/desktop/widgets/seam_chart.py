"""Metres of seam over the years: one stepped line a state, each in the state's own pattern."""

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from journal.desktop.theme import Colours, colours_of
from journal.desktop.widgets import metal_pens
from journal.domain.metal_words import metres, sums_in_words
from journal.domain.seam_sums import SumsOn
from journal.domain.seams import SeamState
from journal.domain.when import When, spoken

_HEIGHT = 150
_LEFT, _TOP, _RIGHT, _BOTTOM = 46, 10, 10, 22


class SeamChart(QWidget):
    """How many metres were planned, tacked, welded and dressed, from the first day to today."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._days: tuple[SumsOn, ...] = ()
        self._on: When | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("Metres of seam over the years")

    def set_days(self, days: Sequence[SumsOn]) -> None:
        """Show these sums; days before the first change of all are left out."""
        self._days = tuple(one for one in days if one.day.year > 1)
        self.setVisible(bool(self._days))
        said = "; ".join(
            f"{spoken(When.on(one.day))}: {sums_in_words(one.sums)}" for one in self._days[-6:]
        )
        self.setAccessibleDescription(said)
        self.setToolTip(sums_in_words(self._days[-1].sums) if self._days else "")
        self.update()

    def look_at(self, on: When | None) -> None:
        """Mark the day looked at."""
        self._on = on
        self.update()

    def sizeHint(self) -> QSize:
        """Wide and low."""
        return QSize(260, _HEIGHT)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the axes, the four lines and the day looked at."""
        if not self._days:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours = colours_of(self.palette())
        room = QRectF(self.rect()).adjusted(_LEFT, _TOP, -_RIGHT, -_BOTTOM)
        most = max(one.sums.planned for one in self._days) or 1.0
        first, last = self._span()
        self._paint_axes(painter, room, colours, most)
        for state in SeamState:
            path = self._line(state, room, most, first, last)
            metal_pens.paint_line(painter, path, state, colours)
        if self._on is not None:
            x = _across(min(self._on.latest.date(), last), first, last, room)
            painter.setPen(QPen(QColor(colours.accent), 1.5))
            painter.drawLine(QPointF(x, room.top()), QPointF(x, room.bottom()))

    def _span(self) -> tuple[date, date]:
        first, last = self._days[0].day, max(self._days[-1].day, date.today())
        return first, last if last > first else date(first.year + 1, 1, 1)

    def _paint_axes(self, painter: QPainter, room: QRectF, colours: Colours, most: float) -> None:
        painter.setPen(QPen(QColor(colours.rule), 1))
        for share in (0.0, 0.5, 1.0):
            y = room.bottom() - room.height() * share
            painter.drawLine(QPointF(room.left(), y), QPointF(room.right(), y))
        painter.setPen(QColor(colours.muted))
        font = painter.font()
        font.setPixelSize(11)
        painter.setFont(font)
        for share in (0.0, 0.5, 1.0):
            y = room.bottom() - room.height() * share
            words = QRectF(0, y - 9, _LEFT - 6, 18)
            how = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(words, how, metres(most * share))
        first, last = self._span()
        below = QRectF(room.left(), room.bottom() + 4, room.width(), 16)
        painter.drawText(below, Qt.AlignmentFlag.AlignLeft, f"{first:%Y-%m}")
        painter.drawText(below, Qt.AlignmentFlag.AlignRight, f"{last:%Y-%m}")

    def _line(
        self, state: SeamState, room: QRectF, most: float, first: date, last: date
    ) -> QPainterPath:
        path = QPainterPath()
        height = room.bottom()
        for place, one in enumerate(self._days):
            x = _across(one.day, first, last, room)
            y = room.bottom() - room.height() * one.sums.at_least(state) / most
            if place == 0:
                path.moveTo(x, y)
            else:
                path.lineTo(x, height)
                path.lineTo(x, y)
            height = y
        path.lineTo(room.right(), height)
        return path


def _across(day: date, first: date, last: date, room: QRectF) -> float:
    share = (day - first).days / max((last - first).days, 1)
    return room.left() + room.width() * min(max(share, 0.0), 1.0)
