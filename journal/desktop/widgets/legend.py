"""What the patterns on the drawing mean: one swatch for each stage, or each level of a tint."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from journal.desktop import theme
from journal.desktop.theme import Colours, StageMark, level_mark, stage_mark
from journal.domain.tints import LegendRow

_SWATCH = 30
_HEIGHT = 26
_GAP = 6
_APART = 14


class Legend(QWidget):
    """Swatches with pattern, colour and number, and their words; they break into lines."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._stages: tuple[str, ...] = ()
        self._rows: tuple[LegendRow, ...] = ()
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setAccessibleName("Stages")

    def set_stages(self, stages: tuple[str, ...]) -> None:
        """Show a list of stages."""
        self._stages, self._rows = stages, ()
        words = [f"{n} {stage}" for n, stage in enumerate(stages, start=1)]
        self._tell("Stages", words, "A panel shows the stage of the area on it that is least far.")

    def set_levels(self, name: str, rows: tuple[LegendRow, ...]) -> None:
        """Show the levels of a tint, ``name`` being what it is by."""
        self._stages, self._rows = (), rows
        words = [f"{row.level} {row.text}" for row in rows]
        self._tell(name, words, "What belongs to an area on several panels is shared among them.")

    def words(self) -> tuple[str, ...]:
        """What stands beside the swatches."""
        return tuple(text for _, text in self._marked(theme.colours_of(self.palette())))

    def _tell(self, name: str, words: list[str], hint: str) -> None:
        self.setAccessibleName(name)
        self.setAccessibleDescription(", ".join(words))
        self.setToolTip(hint)
        self.updateGeometry()
        self.update()

    def _marked(self, colours: Colours) -> list[tuple[StageMark | None, str]]:
        if self._rows:
            return [(level_mark(colours, row.level), row.text) for row in self._rows]
        return [(stage_mark(colours, self._stages, stage), stage) for stage in self._stages]

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
        marked = self._marked(colours)
        for (mark, words), place in zip(marked, self._places(self.width()), strict=True):
            swatch = QRectF(place.x(), place.y() + 3, _SWATCH, _HEIGHT - 6)
            paint_swatch(painter, swatch, mark, colours)
            painter.setPen(QColor(colours.text))
            name = QRectF(place.x() + _SWATCH + _GAP, place.y(), self.width(), _HEIGHT)
            painter.drawText(name, Qt.AlignmentFlag.AlignVCenter, words)

    def _places(self, width: int) -> list[QPointF]:
        places, x, y = [], 0.0, 0.0
        for words in self.words():
            needed = _SWATCH + _GAP + self.fontMetrics().horizontalAdvance(words)
            if x and x + needed > width:
                x, y = 0.0, y + _HEIGHT
            places.append(QPointF(x, y))
            x += needed + _APART
        return places


def paint_swatch(painter: QPainter, area: QRectF, mark: StageMark | None, colours: Colours) -> None:
    """Paint a mark's pattern with its number, as the drawing shows it; None is a plain panel."""
    painter.save()
    painter.setPen(QPen(QColor(colours.panel_edge), 1))
    painter.setBrush(QColor(colours.panel))
    painter.drawRoundedRect(area, 3, 3)
    if mark is None:
        painter.restore()
        return
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
