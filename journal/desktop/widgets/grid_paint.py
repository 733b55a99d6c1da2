"""How a cell and a heading of the photo grid look."""

from dataclasses import dataclass

from PySide6.QtCore import QPoint, QPointF, QRect, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter, QPen, QPixmap
from PySide6.QtWidgets import QWidget

from journal.desktop.theme import Colours, colours_of
from journal.desktop.widgets.grid_layout import Group
from journal.desktop.widgets.marks import BASIS_SIGNS, mark
from journal.desktop.widgets.photo_words import cell_words
from journal.desktop.widgets.thumbs import Card, box_height
from journal.domain.photos import Kind

#: The height of the line under a picture.
STRIP = 26

_MARK = 14
#: In less room than this, in pixels, a heading has no detail.
_ROOM_FOR_DETAIL = 50
_CHIP = 22
_FOLD_CHIP = 24


@dataclass(frozen=True, slots=True)
class CellLook:
    """In what state a cell is."""

    selected: bool
    current: bool
    focused: bool
    stands_for: int = 1
    of_open_burst: bool = False
    best: bool = False


def cell_size(edge: int) -> QSize:
    """The size of a cell whose picture is ``edge`` pixels wide."""
    return QSize(edge, box_height(edge) + STRIP)


def fold_chip(box: QRect, width: int = 52) -> QRect:
    """Where on a picture it says for how many photos it stands: what is pressed to open them."""
    return QRect(box.right() - width - 5, box.bottom() - _FOLD_CHIP - 5, width, _FOLD_CHIP)


class GridPainter:
    """Paints in the colours and the font of a widget, kept between frames."""

    def __init__(self, widget: QWidget) -> None:
        self._widget = widget
        self.reset()

    def reset(self) -> None:
        """Take the widget's colours and font anew."""
        self._colours: Colours = colours_of(self._widget.palette())
        self._bold = QFont(self._widget.font())
        self._bold.setWeight(QFont.Weight.DemiBold)
        self._bold_metrics = QFontMetrics(self._bold)
        self._metrics = QFontMetrics(self._widget.font())
        c = self._colours
        self._page, self._surface, self._rule = QColor(c.page), QColor(c.surface), QColor(c.rule)
        self._text, self._muted = QColor(c.text), QColor(c.muted)
        self._accent, self._on_accent = QColor(c.accent), QColor(c.on_accent)
        self._focus = QPen(QColor(c.focus), 3)
        self._chosen = QPen(self._accent, 3)

    def fill(self, painter: QPainter, area: QRect) -> None:
        """Paint the ground."""
        painter.fillRect(area, self._page)

    def heading(self, painter: QPainter, rect: QRect, group: Group) -> None:
        """Paint a sitting's heading: its title, how many photos, how many of them placed."""
        line = rect.adjusted(2, 8, -8, 0)
        painter.setFont(self._bold)
        painter.setPen(self._text)
        elide = Qt.TextElideMode.ElideRight
        fits = self._bold_metrics.horizontalAdvance(group.title) <= line.width()
        title = group.title if fits or not group.short else group.short
        title = self._bold_metrics.elidedText(title, elide, line.width())
        painter.drawText(line, Qt.AlignmentFlag.AlignVCenter, title)
        line.setLeft(line.left() + self._bold_metrics.horizontalAdvance(title) + 14)
        if line.width() < _ROOM_FOR_DETAIL:
            return
        painter.setFont(self._widget.font())
        painter.setPen(self._muted)
        detail = self._metrics.elidedText(group.detail, elide, line.width())
        painter.drawText(line, Qt.AlignmentFlag.AlignVCenter, detail)
        line.setLeft(line.left() + self._metrics.horizontalAdvance(detail) + 14)
        if line.width() > 0:
            painter.setPen(self._rule)
            painter.drawLine(line.left(), line.center().y(), line.right(), line.center().y())

    def cell(self, painter: QPainter, rect: QRect, card: Card | None, look: CellLook) -> None:
        """Paint one cell; a card that hasn't come yet leaves an empty frame."""
        box = QRect(rect.topLeft(), QSize(rect.width(), rect.height() - STRIP))
        painter.fillRect(box, self._surface)
        if card is not None:
            self._picture(painter, box, card)
            self._corner_marks(painter, box, card)
        strip = QRect(rect.left(), box.bottom() + 1, rect.width(), STRIP)
        if look.selected:
            painter.fillRect(strip, self._accent)
        if card is not None:
            self._strip(painter, strip, card, selected=look.selected)
        if look.stands_for > 1 or look.of_open_burst:
            self._burst(painter, box, look)
        self._frame(painter, rect, box, look)

    def _burst(self, painter: QPainter, box: QRect, look: CellLook) -> None:
        """The edges of photos behind, and how many; or a line along those of one burst."""
        if look.of_open_burst:
            painter.fillRect(QRect(box.left() - 4, box.top(), box.width() + 8, 4), self._accent)
            words = "sharpest" if look.best else ""
        else:
            for step in (1, 2):
                line = QRect(
                    box.left() + 6 * step, box.top() - 3 * step, box.width() - 12 * step, 2
                )
                painter.fillRect(line, self._muted)
            words = f"\N{MULTIPLICATION SIGN} {look.stands_for}"
        if words:
            chip = fold_chip(box, self._bold_metrics.horizontalAdvance(words) + 14)
            painter.fillRect(chip, self._surface)
            painter.setFont(self._bold)
            painter.setPen(self._text)
            painter.drawText(chip, Qt.AlignmentFlag.AlignCenter, words)

    def _frame(self, painter: QPainter, rect: QRect, box: QRect, look: CellLook) -> None:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if look.selected:
            painter.setPen(self._chosen)
            painter.drawRect(rect.adjusted(1, 1, -2, -2))
            tick = self._mark("tick", self._colours.on_accent, _CHIP, self._colours.accent)
            painter.drawPixmap(box.topLeft() + QPoint(6, 6), tick)
        if look.current and look.focused:
            painter.setPen(self._focus)
            painter.drawRect(rect.adjusted(-3, -3, 2, 2))

    def _picture(self, painter: QPainter, box: QRect, card: Card) -> None:
        pixmap = card.pixmap
        if pixmap is None:
            painter.setFont(self._widget.font())
            painter.setPen(self._muted)
            words = "no picture" if card.photo.kind is Kind.PICTURE else card.photo.kind.value
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, words)
            return
        ratio = self._widget.devicePixelRatioF()
        wide, high = pixmap.width() / ratio, pixmap.height() / ratio
        if card.edge != round(box.width() * ratio):
            scale = min(box.width() / wide, box.height() / high)
            wide, high = wide * scale, high * scale
        target = QRect(0, 0, round(wide), round(high))
        target.moveCenter(box.center())
        painter.drawPixmap(target, pixmap)

    def _corner_marks(self, painter: QPainter, box: QRect, card: Card) -> None:
        spot = box.topRight() - QPoint(_CHIP + 5, -6)
        if card.photo.damage:
            self._chip(painter, spot, "damage", self._colours.danger)
            spot -= QPoint(_CHIP + 4, 0)
        if card.photo.kind is not Kind.PICTURE:
            sign = "raw" if card.photo.kind is Kind.RAW else "video"
            self._chip(painter, spot, sign, self._colours.text)

    def _chip(self, painter: QPainter, spot: QPoint, sign: str, colour: str) -> None:
        """A sign on a plain ground, so that it can be seen on any picture."""
        chip = QRect(spot, QSize(_CHIP, _CHIP))
        painter.fillRect(chip, self._surface)
        inset = (_CHIP - 16) // 2
        painter.drawPixmap(spot + QPoint(inset, inset), self._mark(sign, colour, 16))

    def _strip(self, painter: QPainter, strip: QRect, card: Card, *, selected: bool) -> None:
        c = self._colours
        quiet = c.on_accent if selected else c.muted
        drop = (STRIP - _MARK) // 2
        left, right = strip.left() + 6, strip.right() - 5
        sign = self._mark(BASIS_SIGNS[card.photo.basis], quiet, _MARK)
        painter.drawPixmap(left, strip.top() + drop, sign)
        left += _MARK + 6
        if card.photo.placed:
            right -= _MARK
            pin = self._mark("pin", c.on_accent if selected else c.pin, _MARK)
            painter.drawPixmap(right, strip.top() + drop, pin)
            right -= 4
        painter.setFont(self._widget.font())
        painter.setPen(self._on_accent if selected else self._text)
        words = cell_words(card.photo)
        words = self._metrics.elidedText(words, Qt.TextElideMode.ElideRight, right - left)
        base = strip.top() + (STRIP + self._metrics.ascent() - self._metrics.descent()) / 2
        painter.drawText(QPointF(left, base), words)

    def _mark(self, name: str, colour: str, size: int, ground: str = "") -> QPixmap:
        return mark(name, colour, size, self._widget.devicePixelRatioF(), ground)
