"""The stages of a repair area as a bar of segments, told apart by number, pattern and words."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from journal.desktop import theme
from journal.desktop.theme import Colours, stage_mark

_BAR = 22
_GAP = 2


def stage_words(stages: tuple[str, ...], stage: str) -> str:
    """A stage with how far along it is: "welded, 4 of 7"; what is said where none is recorded."""
    if not stage:
        return "no stage recorded"
    if stage not in stages:
        return stage
    return f"{stage}, {stages.index(stage) + 1} of {len(stages)}"


def paint_stages(
    painter: QPainter,
    area: QRectF,
    stages: tuple[str, ...],
    stage: str,
    colours: Colours,
) -> None:
    """Paint one segment for each stage; those reached are filled, the present one is numbered."""
    if not stages:
        return
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
    reached = stages.index(stage) if stage in stages else -1
    mark = stage_mark(colours, stages, stage)
    width = (area.width() + _GAP) / len(stages)
    for place in range(len(stages)):
        segment = QRectF(area.left() + place * width, area.top(), width - _GAP, area.height())
        painter.setPen(QPen(QColor(colours.edge), 1))
        painter.setBrush(QColor(colours.surface))
        painter.drawRect(segment)
        if place <= reached and mark is not None:
            painter.setPen(QPen(QColor(mark.colour), 1))
            painter.setBrush(QColor(mark.colour) if place == reached else mark.brush())
            painter.drawRect(segment)
        if place == reached and mark is not None:
            _paint_sign(painter, segment, mark.sign, colours)
    painter.restore()


def _paint_sign(painter: QPainter, segment: QRectF, sign: str, colours: Colours) -> None:
    font = QFont(painter.font())
    font.setBold(True)
    font.setPixelSize(max(9, round(segment.height() * 0.7)))
    painter.setFont(font)
    painter.setPen(QColor(colours.surface))
    painter.drawText(segment, Qt.AlignmentFlag.AlignCenter, sign)


class StageBar(QWidget):
    """The stages with their names: those reached filled, the present one in bold."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._stages: tuple[str, ...] = ()
        self._stage = ""
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_stage(self, stages: tuple[str, ...], stage: str) -> None:
        """Show how far it is."""
        self._stages, self._stage = stages, stage
        words = f"Stage: {stage_words(stages, stage)}"
        self.setAccessibleName(words)
        self.setToolTip(words)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """Room for the bar and two lines of names."""
        return QSize(320, _BAR + 4 + 2 * self.fontMetrics().height())

    def minimumSizeHint(self) -> QSize:
        """The same height in less width."""
        return QSize(160, self.sizeHint().height())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the bar, and the names under their segments where they fit."""
        painter = QPainter(self)
        colours = theme.colours_of(self.palette())
        bar = QRectF(0, 0, self.width() - 1, _BAR)
        paint_stages(painter, bar, self._stages, self._stage, colours)
        if self._names_fit():
            self._paint_names(painter, colours)
        else:
            painter.setFont(self._font(bold=True))
            painter.setPen(QColor(colours.text))
            below = QRectF(0, _BAR + 4, self.width(), self.height() - _BAR - 4)
            words = stage_words(self._stages, self._stage)
            painter.drawText(below, Qt.AlignmentFlag.AlignLeft, words)

    def _names_fit(self) -> bool:
        if not self._stages:
            return False
        room = self.width() / len(self._stages) - 4
        metrics = self.fontMetrics()
        words = (word for stage in self._stages for word in stage.split())
        return all(metrics.horizontalAdvance(word) * 1.1 <= room for word in words) and all(
            metrics.horizontalAdvance(stage) * 1.1 <= 1.7 * room for stage in self._stages
        )

    def _paint_names(self, painter: QPainter, colours: Colours) -> None:
        width = (self.width() + _GAP) / len(self._stages)
        for place, stage in enumerate(self._stages):
            current = stage == self._stage
            painter.setFont(self._font(bold=current))
            painter.setPen(QColor(colours.text if current else colours.muted))
            below = QRectF(place * width, _BAR + 4, width - _GAP, self.height() - _BAR - 4)
            how = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop
            painter.drawText(below, how | Qt.TextFlag.TextWordWrap, stage)

    def _font(self, *, bold: bool) -> QFont:
        made = QFont(self.font())
        made.setBold(bold)
        return made
