"""What the patterns on the drawing mean: one swatch for each stage, or each level of a tint."""

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QToolButton, QWidget

from journal.desktop import theme
from journal.desktop.theme import TARGET, Colours, StageMark, level_mark, stage_mark
from journal.desktop.widgets.layers import Layer
from journal.domain.tints import LegendRow

_SWATCH = 30
_HEIGHT = 26
_GAP = 6
_APART = 14
_PINS = "photos"
_STAGES_HINT = "A panel shows the stage of the area on it that is least far."
_LEVELS_HINT = "What belongs to an area on several panels is shared among them."


@dataclass(frozen=True, slots=True)
class _Entry:
    """A swatch with its words; ``here`` says that the drawing shows it now."""

    words: str
    paint: "Callable[[QPainter, QRectF, Colours], None]"
    here: bool = True


class Legend(QWidget):
    """Swatches with pattern, colour and number, and their words.

    Where they don't fit in one line, those show that the drawing shows now; a button unfolds all.

    Attributes:
        more: the button that unfolds all, and folds them again.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._stages: tuple[str, ...] = ()
        self._here: Collection[str] = ()
        self._rows: tuple[LegendRow, ...] = ()
        self._layers: Collection[Layer] = ()
        self._in_full = True
        self._has_pins = True
        self._name, self._hint = "Stages", _STAGES_HINT
        self.more = QToolButton(self)
        self.more.setCheckable(True)
        self.more.setProperty("role", "quiet")
        self.more.toggled.connect(self._lay_out)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._lay_out()

    def set_stages(self, stages: tuple[str, ...], here: Collection[str] | None = None) -> None:
        """Show a list of stages, of which the drawing shows those ``here``; None: all."""
        self._stages, self._rows = stages, ()
        self._here = stages if here is None else here
        self._name, self._hint = "Stages", _STAGES_HINT
        self._lay_out()

    def set_levels(self, name: str, rows: tuple[LegendRow, ...]) -> None:
        """Show the levels of a tint, ``name`` being what it is by."""
        self._stages, self._rows = (), rows
        self._name, self._hint = name, _LEVELS_HINT
        self._lay_out()

    def set_layers(self, layers: Collection[Layer], *, in_full: bool = True) -> None:
        """Name these layers of the metalwork beside the rest, as thin lines or in full."""
        self._layers, self._in_full = layers, in_full
        self._lay_out()

    def set_pins(self, *, shown: bool) -> None:
        """Name the pins, or leave them out."""
        self._has_pins = shown
        self._lay_out()

    def words(self) -> tuple[str, ...]:
        """What stands beside all the swatches, the pins last."""
        return tuple(entry.words for entry in self._entries())

    def words_shown(self) -> tuple[str, ...]:
        """What stands beside the swatches that show now."""
        return tuple(entry.words for entry, _ in self._placed(self.width()))

    def _lay_out(self) -> None:
        shapes = [f"round dots: {_PINS}"] if self._has_pins else []
        numbered = [f"{n} {stage}" for n, stage in enumerate(self._stages, start=1)]
        numbered += [f"{row.level} {row.text}" for row in self._rows]
        numbered += [layer.value for layer in Layer if layer in self._layers]
        self.setAccessibleName(self._name)
        self.setAccessibleDescription(", ".join([*numbered, *shapes]))
        self.setToolTip(self._hint)
        self._take_room()
        self.update()

    def _entries(self) -> list[_Entry]:
        made = []
        for row in self._rows:
            level = partial(_paint_level, row.level)
            made.append(_Entry(row.text, level))
        for stage in self._stages:
            painted = partial(_paint_stage, self._stages, stage)
            made.append(_Entry(stage, painted, stage in self._here))
        layers = [layer for layer in Layer if layer in self._layers]
        made.extend(
            _Entry(layer.value, partial(_paint_layer, layer, self._in_full)) for layer in layers
        )
        if self._has_pins:
            made.append(_Entry(_PINS, _paint_pins))
        return made

    def heightForWidth(self, width: int) -> int:
        """The height of the lines that show in ``width``."""
        placed = self._placed(width)
        return max(TARGET, round(placed[-1][1].y()) + _HEIGHT if placed else 0)

    def sizeHint(self) -> QSize:
        """One line, as wide as it gets."""
        return QSize(400, self.height())

    def minimumSizeHint(self) -> QSize:
        """Room for a swatch and the button."""
        return QSize(160, self.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Take as many lines as the width asks for."""
        super().resizeEvent(event)
        self._take_room()

    def changeEvent(self, event: QEvent) -> None:
        """Take the measure of the words anew when their font changes."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange):
            self._lay_out()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the swatches and their names."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours = theme.colours_of(self.palette())
        for entry, place in self._placed(self.width()):
            entry.paint(painter, _swatch(place), colours)
            painter.setPen(QColor(colours.text))
            name = QRectF(place.x() + _SWATCH + _GAP, place.y(), self.width(), _HEIGHT)
            painter.drawText(name, Qt.AlignmentFlag.AlignVCenter, entry.words)

    def _take_room(self) -> None:
        # Boxes within boxes lose the height that follows from a width, so it is set.
        self.setFixedHeight(self.heightForWidth(self.width()))
        folds = not self._fits(self._entries(), self.width())
        is_open = self.more.isChecked()
        self.more.setText("Fewer" if is_open else f"All {len(self._entries())}")
        self.more.setToolTip("Fold the legend" if is_open else "Unfold the legend")
        self.more.setVisible(folds)
        size = self.more.sizeHint()
        self.more.setGeometry(self.width() - size.width(), 0, size.width(), TARGET)

    def _fits(self, entries: Sequence[_Entry], width: int) -> bool:
        return sum(self._wide(entry) + _APART for entry in entries) - _APART <= width

    def _wide(self, entry: _Entry) -> int:
        return _SWATCH + _GAP + self.fontMetrics().horizontalAdvance(entry.words)

    def _placed(self, width: int) -> list[tuple[_Entry, QPointF]]:
        """What shows in a width, and where."""
        entries = self._entries()
        is_whole = self._fits(entries, width)
        is_open = self.more.isChecked()
        if not is_whole and not is_open:
            entries = [entry for entry in entries if entry.here]
        beside = 0 if is_whole else self.more.sizeHint().width() + _GAP
        placed: list[tuple[_Entry, QPointF]] = []
        x, y = 0.0, (TARGET - _HEIGHT) / 2
        for entry in entries:
            if x and x + self._wide(entry) > width - beside:
                if not is_open:
                    break
                x, y = 0.0, y + _HEIGHT
            placed.append((entry, QPointF(x, y)))
            x += self._wide(entry) + _APART
        return placed


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


def _paint_stage(
    stages: tuple[str, ...], stage: str, painter: QPainter, area: QRectF, colours: Colours
) -> None:
    paint_swatch(painter, area, stage_mark(colours, stages, stage), colours)


def _paint_level(level: int, painter: QPainter, area: QRectF, colours: Colours) -> None:
    paint_swatch(painter, area, level_mark(colours, level), colours)


def _paint_layer(
    layer: Layer, in_full: bool, painter: QPainter, area: QRectF, colours: Colours
) -> None:
    from journal.desktop.widgets.legend_metal import paint_layer

    paint_layer(painter, area, layer, colours, in_full=in_full)


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
