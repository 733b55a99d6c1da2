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
_PINS = "photos pinned"


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
        """What stands beside the swatches, the pins last."""
        return (*(text for _, text in self._marked(theme.colours_of(self.palette()))), _PINS)

    def _tell(self, name: str, words: list[str], hint: str) -> None:
        self.setAccessibleName(name)
        self.setAccessibleDescription(", ".join([*words, f"round dots: {_PINS}"]))
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
        places = self._places(self.width())
        for (mark, words), place in zip(self._marked(colours), places, strict=False):
            paint_swatch(painter, _swatch(place), mark, colours)
            self._paint_words(painter, place, words, colours)
        _paint_pins(painter, _swatch(places[-1]), colours)
        self._paint_words(painter, places[-1], _PINS, colours)

    def _paint_words(self, painter: QPainter, place: QPointF, words: str, colours: Colours) -> None:
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


def _swatch(place: QPointF) -> QRectF:
    return QRectF(place.x(), place.y() + 3, _SWATCH, _HEIGHT - 6)


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
    plate = QRectF(0, 0, 15, 15)
    plate.moveCenter(area.center())
    painter.setPen(QPen(QColor(mark.colour), 1.5))
    painter.setBrush(QColor(colours.surface))
    painter.drawRoundedRect(plate, 3, 3)
    _paint_number(painter, plate, mark.sign, colours.text)
    painter.restore()


def _paint_pins(painter: QPainter, area: QRectF, colours: Colours) -> None:
    """A dot and a count of photos, as pins look on the drawing."""
    painter.save()
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(colours.pin))
    painter.drawEllipse(QPointF(area.left() + 5, area.center().y()), 4, 4)
    disc = QRectF(area.right() - 18, area.center().y() - 9, 18, 18)
    painter.drawEllipse(disc)
    _paint_number(painter, disc, "2", colours.surface)
    painter.restore()


def _paint_number(painter: QPainter, area: QRectF, number: str, colour: str) -> None:
    font = QFont(painter.font())
    font.setPixelSize(11)
    font.setBold(True)
    painter.setFont(font)
    painter.setPen(QColor(colour))
    painter.drawText(area, Qt.AlignmentFlag.AlignCenter, number)
