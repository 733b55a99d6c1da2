"""The years along the bottom: how much each month holds, with a handle to go there."""

from bisect import bisect_left, bisect_right
from collections.abc import Mapping

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetrics,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPolygonF,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from journal.desktop.theme import Colours, colours_of
from journal.desktop.widgets.year_scale import Month, YearScale

_HEIGHT = 76
_SIDE = 16
_TOP = 24
_YEARS = 20
_GRIP = 7


class YearStrip(QWidget):
    """Bars by month with a handle. Arrow keys go to the next month that holds something."""

    #: The handle was moved by the person: a Month.
    moved = Signal(object)

    def __init__(self, noun: str = "photo", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._noun = noun
        self._counts: dict[Month, int] = {}
        self._months: list[Month] = []
        self._scale = YearScale((), 0, 0)
        self._place: Month | None = None
        self._hover: Month | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setFixedHeight(_HEIGHT)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAccessibleName("Years")

    def set_counts(self, counts: Mapping[Month, int]) -> None:
        """Show how much each month holds."""
        self._counts = {month: count for month, count in counts.items() if count}
        self._months = sorted(self._counts)
        self._fit()

    @property
    def place(self) -> Month | None:
        """Where the handle is."""
        return self._place

    def set_place(self, place: Month | None) -> None:
        """Put the handle somewhere without telling anybody."""
        if place != self._place:
            self._place = place
            self.setAccessibleDescription(self.words())
            self.update()

    def words(self) -> str:
        """Where the handle is, in words."""
        if self._place is None:
            return "no month"
        return self._month_words(self._place)

    def x_of(self, month: Month) -> int:
        """The middle of a month, in pixels."""
        start, wide = self._scale.month_span(month)
        return round(start + wide / 2)

    def handle_x(self, place: Month) -> float:
        """Where the handle is painted, in pixels."""
        return float(self.x_of(place))

    def _month_words(self, month: Month) -> str:
        import calendar

        count = self._counts.get(month, 0)
        things = f"{count:,} {self._noun}{'' if count == 1 else 's'}"
        return f"{calendar.month_name[month.month]} {month.year} \u00b7 {things}"

    def _fit(self) -> None:
        self._scale = YearScale(self._months, _SIDE, max(1, self.width() - 2 * _SIDE))
        self.update()

    def _go(self, place: Month | None) -> None:
        if place is None or place == self._place:
            return
        from PySide6.QtGui import QAccessible, QAccessibleEvent

        self.set_place(place)
        event = QAccessibleEvent(self, QAccessible.Event.DescriptionChanged)
        QAccessible.updateAccessibility(event)
        self.moved.emit(place)

    def _step(self, forward: bool) -> Month | None:
        if not self._months:
            return None
        if self._place is None:
            return self._months[0 if forward else -1]
        if forward:
            after = bisect_right(self._months, self._place)
            return self._months[min(after, len(self._months) - 1)]
        return self._months[max(0, bisect_left(self._months, self._place) - 1)]

    def _step_year(self, years: int) -> Month | None:
        if not self._months:
            return None
        start = self._place or self._months[0]
        goal = start.moved(12 * years)
        return max(self._months[0], min(self._months[-1], goal))

    # Qt

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go month by month, year by year, or to an end."""
        key = event.key()
        if not self._months:
            event.ignore()
        elif key in {Qt.Key.Key_Left, Qt.Key.Key_Right}:
            self._go(self._step(forward=key == Qt.Key.Key_Right))
        elif key in {Qt.Key.Key_PageUp, Qt.Key.Key_PageDown}:
            self._go(self._step_year(1 if key == Qt.Key.Key_PageDown else -1))
        elif key in {Qt.Key.Key_Home, Qt.Key.Key_End}:
            self._go(self._months[0 if key == Qt.Key.Key_Home else -1])
        else:
            event.ignore()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Go to the month under the pointer."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._go(self._scale.month_at(event.position().x()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Pull the handle along, or name the month under the pointer."""
        month = self._scale.month_at(event.position().x())
        if event.buttons() & Qt.MouseButton.LeftButton:
            self._go(month)
        if month != self._hover:
            self._hover = month
            self.update()

    def leaveEvent(self, event: QEvent) -> None:
        """Name the handle's month again."""
        self._hover = None
        self.update()
        super().leaveEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay the years out over the width."""
        super().resizeEvent(event)
        self._fit()

    def sizeHint(self) -> QSize:
        """As wide as there is room."""
        return QSize(600, _HEIGHT)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint years, bars, the handle, and the name of a month."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours = colours_of(self.palette())
        painter.fillRect(self.rect(), QColor(colours.rail))
        painter.setPen(QColor(colours.rule))
        painter.drawLine(0, 0, self.width(), 0)
        self._paint_years(painter, colours)
        self._paint_bars(painter, colours)
        if self._place is not None and self._months:
            self._paint_handle(painter, colours, self._place)
        if self.hasFocus():
            painter.setPen(QPen(QColor(colours.focus), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))

    def _paint_years(self, painter: QPainter, colours: Colours) -> None:
        floor = _HEIGHT - _YEARS
        metrics = QFontMetrics(self.font())
        painter.setPen(QColor(colours.edge))
        painter.drawLine(_SIDE, floor, self.width() - _SIDE, floor)
        free_from = 0.0
        for year in self._scale.years:
            start, wide = self._scale.year_span(year)
            painter.setPen(QColor(colours.edge))
            painter.drawLine(round(start), floor, round(start), floor + 5)
            text = str(year)
            reach = metrics.horizontalAdvance(text)
            if year in self._scale.full_years and start >= free_from and wide >= reach / 2:
                painter.setPen(QColor(colours.muted))
                painter.drawText(QPointF(start + 4, _HEIGHT - 5), text)
                free_from = start + reach + 8

    def _paint_bars(self, painter: QPainter, colours: Colours) -> None:
        most = max(self._counts.values(), default=1)
        room = _HEIGHT - _YEARS - _TOP
        painter.setPen(Qt.PenStyle.NoPen)
        for month, count in self._counts.items():
            start, wide = self._scale.month_span(month)
            high = max(3.0, room * (count / most) ** 0.5)
            here = month in {self._place, self._hover}
            painter.setBrush(QColor(colours.accent if here else colours.edge))
            thick = max(1.5, wide - 1.5)
            painter.drawRect(QRectF(start, _HEIGHT - _YEARS - high, thick, high))

    def _paint_handle(self, painter: QPainter, colours: Colours, place: Month) -> None:
        x = self.handle_x(place)
        accent = QColor(colours.accent)
        painter.setPen(QPen(accent, 2))
        painter.drawLine(QPointF(x, 8), QPointF(x, _HEIGHT - _YEARS + 6))
        painter.setBrush(accent)
        painter.setPen(Qt.PenStyle.NoPen)
        grip = [QPointF(x - _GRIP, 3), QPointF(x + _GRIP, 3), QPointF(x, 3 + 1.6 * _GRIP)]
        painter.drawPolygon(QPolygonF(grip))
        words = self._month_words(self._hover) if self._hover else self.words()
        font = QFont(self.font())
        font.setWeight(QFont.Weight.DemiBold)
        painter.setFont(font)
        reach = QFontMetrics(font).horizontalAdvance(words)
        left = x + _GRIP + 6
        if left + reach > self.width() - 6:
            left = x - _GRIP - 6 - reach
        plate = QRectF(left - 4, 3, reach + 8, 18)
        painter.fillRect(plate, QColor(colours.rail))
        painter.setPen(QColor(colours.text))
        painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, words)


__all__ = ["Month", "YearStrip"]
