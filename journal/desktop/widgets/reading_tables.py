"""Readings before against after, diagonals of an opening side by side, and a plot over time."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from journal.desktop.theme import TARGET, colours_of
from journal.desktop.widgets.rows import Column, RowsTable
from journal.domain.diagonals import DiagonalPair
from journal.domain.metal_words import number, signed
from journal.domain.readings import Compared, Measure, Moment, Reading, compare, remark, series
from journal.domain.when import spoken

_MOST_SHOWN = 8
_HEIGHT = 120


@dataclass(frozen=True, slots=True)
class ComparedRow:
    """One place of one measure, before against after."""

    measure: Measure
    compared: Compared

    @property
    def name(self) -> str:
        """The measure, with the number of the place where it has several."""
        name = self.measure.name
        return name if self.measure.places == 1 else f"{name}, place {self.compared.point + 1}"

    @property
    def note(self) -> str:
        """What is said beside the last number."""
        last = self.compared.after or self.compared.before
        return remark(self.measure, last.value) if last else "not read yet"


def _value(reading: Reading | None) -> str:
    return "" if reading is None else number(reading.value)


def _difference(row: ComparedRow) -> str:
    found = row.compared.difference
    return "" if found is None else f"{signed(found)} {row.measure.unit}"


class ComparedTable(RowsTable):
    """Every place measured: its number before, after, and the difference.

    A ``narrow`` one is for the places of one measure; its remarks are said elsewhere.
    """

    def __init__(self, parent: QWidget | None = None, *, narrow: bool = False) -> None:
        name = Column("Measure", lambda row: row.name, wide=True)
        place = Column("Place", lambda row: str(row.compared.point + 1), wide=True)
        numbers = (
            Column("Before", lambda row: _value(row.compared.before), number=True),
            Column("After", lambda row: _value(row.compared.after), number=True),
            Column("Change" if narrow else "Difference", _difference, number=True),
        )
        note = Column("", lambda row: row.note)
        columns = (place, *numbers) if narrow else (name, *numbers, note)
        super().__init__("Readings, before against after", columns, parent)

    def show_measures(self, measures: Sequence[Measure], readings: Sequence[Reading]) -> None:
        """Show these measures."""
        rows = [ComparedRow(m, found) for m in measures for found in compare(m, readings)]
        self.set_rows(rows)
        self.setVisible(bool(rows))
        self.setFixedHeight((min(len(rows), _MOST_SHOWN) + 1) * TARGET + 10)


def pair_words(pair: DiagonalPair) -> str:
    """Two diagonals side by side, before cutting and after welding, with what changed."""
    unit = pair.first.unit
    lines = [f"{pair.first.name} against {pair.second.name}:"]
    sides = (
        ("before cutting", pair.first_readings.before, pair.second_readings.before, pair.before),
        ("after welding", pair.first_readings.after, pair.second_readings.after, pair.after),
    )
    for words, one, other, apart in sides:
        if one is not None and other is not None and apart is not None:
            said = f"{number(one.value)} and {number(other.value)} {unit}"
            lines.append(f"{words}: {said}, {signed(apart)} {unit} apart")
        else:
            lines.append(f"{words}: not both read yet")
    if pair.change is not None:
        lines.append(f"The difference between them changed by {signed(pair.change)} {unit}.")
    return "\n".join(lines)


class ReadingPlot(QWidget):
    """The numbers of one measure over time, with the owner's target and tolerance as a band."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._measure: Measure | None = None
        self._readings: tuple[Reading, ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_measure(self, measure: Measure, readings: Sequence[Reading]) -> None:
        """Show a measure; with fewer than two dates there is nothing to plot."""
        self._measure = measure
        self._readings = series(measure, readings)
        dates = {reading.when.edtf for reading in self._readings}
        self.setVisible(len(dates) > 1)
        self.setAccessibleName(f"{measure.name} over time")
        said = "; ".join(
            f"{spoken(r.when)} {r.moment.value}: {number(r.value)}" for r in self._readings
        )
        self.setAccessibleDescription(said)
        self.update()

    def sizeHint(self) -> QSize:
        """Wide and low."""
        return QSize(260, _HEIGHT)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the band of the owner's target, then each place's numbers joined by a line."""
        if self._measure is None or not self._readings:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        room = QRectF(self.rect()).adjusted(56, 10, -12, -22)
        self._paint_band(painter, room)
        self._paint_axes(painter, room)
        for place in range(self._measure.places):
            own = [r for r in self._readings if r.point == place]
            self._paint_row(painter, room, own)

    def _bounds(self) -> tuple[float, float]:
        measure = self._measure
        values = [float(r.value) for r in self._readings]
        if measure is not None and measure.target is not None:
            off = float(measure.tolerance or 0)
            values += [float(measure.target) - off, float(measure.target) + off]
        low, high = min(values), max(values)
        edge = (high - low) * 0.1 or 1.0
        return low - edge, high + edge

    def _y(self, value: float, room: QRectF) -> float:
        low, high = self._bounds()
        return room.bottom() - room.height() * (value - low) / (high - low)

    def _x(self, reading: Reading, room: QRectF) -> float:
        first = self._readings[0].when.earliest
        last = max(r.when.earliest for r in self._readings)
        whole = (last - first).total_seconds() or 1.0
        return room.left() + room.width() * (
            (reading.when.earliest - first).total_seconds() / whole
        )

    def _paint_band(self, painter: QPainter, room: QRectF) -> None:
        measure = self._measure
        if measure is None or measure.target is None:
            return
        colours = colours_of(self.palette())
        target, off = float(measure.target), float(measure.tolerance or 0)
        band = QRectF(QPointF(room.left(), self._y(target + off, room)), room.bottomRight())
        band.setBottom(self._y(target - off, room))
        wash = QColor(colours.good)
        wash.setAlpha(36)
        painter.fillRect(band, wash)
        painter.setPen(QPen(QColor(colours.good), 1, Qt.PenStyle.DashLine))
        y = self._y(target, room)
        painter.drawLine(QPointF(room.left(), y), QPointF(room.right(), y))

    def _paint_axes(self, painter: QPainter, room: QRectF) -> None:
        colours = colours_of(self.palette())
        font = painter.font()
        font.setPixelSize(11)
        painter.setFont(font)
        painter.setPen(QPen(QColor(colours.rule), 1))
        painter.drawLine(room.bottomLeft(), room.bottomRight())
        painter.setPen(QColor(colours.muted))
        low, high = self._bounds()
        right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        for value in (low, high):
            words = QRectF(0, self._y(value, room) - 9, room.left() - 6, 18)
            painter.drawText(words, right, f"{value:.5g}")
        below = QRectF(room.left() - 10, room.bottom() + 4, room.width() + 20, 16)
        first, last = self._readings[0], max(self._readings, key=lambda r: r.when)
        painter.drawText(below, Qt.AlignmentFlag.AlignLeft, spoken(first.when))
        painter.drawText(below, Qt.AlignmentFlag.AlignRight, spoken(last.when))

    def _paint_row(self, painter: QPainter, room: QRectF, own: Sequence[Reading]) -> None:
        colours = colours_of(self.palette())
        spots = [QPointF(self._x(r, room), self._y(float(r.value), room)) for r in own]
        painter.setPen(QPen(QColor(colours.pin), 1.6))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPolyline(spots)
        for reading, spot in zip(own, spots, strict=True):
            # The moment is told by the shape: open before, half-way a square, filled after.
            is_after = reading.moment is Moment.AFTER
            painter.setBrush(QColor(colours.pin if is_after else colours.surface))
            if reading.moment is Moment.DURING:
                painter.drawRect(QRectF(spot.x() - 4, spot.y() - 4, 8, 8))
            else:
                painter.drawEllipse(spot, 4.5, 4.5)
