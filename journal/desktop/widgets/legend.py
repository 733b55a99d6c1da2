"""What the patterns on the drawing mean: one swatch for each stage."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from journal.desktop import theme
from journal.desktop.theme import Colours, StageMark, stage_mark

_SWATCH = 30
_HEIGHT = 26
_GAP = 6
_APART = 14


class Legend(QWidget):
    """The stages in order, with pattern, colour and number; it breaks into lines as it must."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._stages: tuple[str, ...] = ()
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setAccessibleName("Stages")

    def set_stages(self, stages: tuple[str, ...]) -> None:
        """Show another list of stages."""
        self._stages = stages
        words = ", ".join(f"{n} {stage}" for n, stage in enumerate(stages, start=1))
        self.setAccessibleDescription(words)
        self.setToolTip("A panel shows the stage of the area on it that is least far.")
        self.updateGeometry()
        self.update()

    def heightForWidth(self, width: int) -> int:
        """The height of the lines that fit into ``width``."""
        places = self._places(width)
        return round(places[-1].y()) + _HEIGHT if places else 0

    def sizeHint(self) -> QSize:
        """One line, as wide as it gets."""
        return QSize(400, self.heightForWidth(max(self.width(), 400)))

    def minimumSizeHint(self) -> QSize:
        """Room for the lines at the present width."""
        return QSize(160, self.heightForWidth(max(self.width(), 160)))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the swatches and their names."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours = theme.colours_of(self.palette())
        for stage, place in zip(self._stages, self._places(self.width()), strict=True):
            mark = stage_mark(colours, self._stages, stage)
            if mark:
                swatch = QRectF(place.x(), place.y() + 3, _SWATCH, _HEIGHT - 6)
                paint_swatch(painter, swatch, mark, colours)
            painter.setPen(QColor(colours.text))
            name = QRectF(place.x() + _SWATCH + _GAP, place.y(), self.width(), _HEIGHT)
            painter.drawText(name, Qt.AlignmentFlag.AlignVCenter, stage)

    def _places(self, width: int) -> list[QPointF]:
        places, x, y = [], 0.0, 0.0
        for stage in self._stages:
            needed = _SWATCH + _GAP + self.fontMetrics().horizontalAdvance(stage)
            if x and x + needed > width:
                x, y = 0.0, y + _HEIGHT
            places.append(QPointF(x, y))
            x += needed + _APART
        return places


def paint_swatch(painter: QPainter, area: QRectF, mark: StageMark, colours: Colours) -> None:
    """Paint a stage's pattern with its number, as the drawing shows it."""
    painter.save()
    painter.setPen(QPen(QColor(colours.panel_edge), 1))
    painter.setBrush(QColor(colours.panel))
    painter.drawRoundedRect(area, 3, 3)
    painter.setBrush(mark.brush())
    painter.drawRoundedRect(area, 3, 3)
    disc = QRectF(0, 0, 16, 16)
    disc.moveCenter(area.center())
    painter.setPen(QPen(QColor(mark.colour), 1.5))
    painter.setBrush(QColor(colours.surface))
    painter.drawEllipse(disc)
    font = QFont(painter.font())
    font.setPixelSize(11)
    font.setBold(True)
    painter.setFont(font)
    painter.setPen(QColor(colours.text))
    painter.drawText(disc, Qt.AlignmentFlag.AlignCenter, mark.sign)
    painter.restore()
