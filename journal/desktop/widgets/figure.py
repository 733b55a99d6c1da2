"""A figure on a card: a number and what it is; a press opens what it rests on."""

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from journal.desktop import theme

_PAD = 12
_SLIM = 6


class Figure(QAbstractButton):
    """A number to press; ``compact`` is a smaller one, its words in one line."""

    def __init__(self, name: str, parent: QWidget | None = None, *, compact: bool = False) -> None:
        super().__init__(parent)
        self._name = name
        self._compact = compact
        self._number = ""
        self._words = ""
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_figure(self, number: str, words: str, *, can_open: bool = True) -> None:
        """Show a number, and under it the words that qualify it."""
        self._number, self._words = number, words
        self.setText(f"{self._name}: {number}. {words}")
        self.setAccessibleName(self.text())
        self.setToolTip(f"{words}\nPress to see what it is made of." if can_open else words)
        self.setEnabled(can_open)
        self.update()

    @property
    def number(self) -> str:
        """The number shown."""
        return self._number

    @property
    def words(self) -> str:
        """The words under it."""
        return self._words

    def sizeHint(self) -> QSize:
        """A line of name, a large number, two lines of words; compact all in three lines."""
        line = self.fontMetrics().height()
        if self._compact:
            return QSize(120, round(line * 3.2) + 2 * _SLIM)
        return QSize(150, round(line * 4.7) + 2 * _PAD)

    def minimumSizeHint(self) -> QSize:
        """As high, and narrower."""
        return QSize(104, self.sizeHint().height())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the card."""
        colours = theme.colours_of(self.palette())
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        over = self.underMouse() and self.isEnabled()
        ring = self.hasFocus()
        painter.setPen(QPen(QColor(colours.focus if ring else colours.rule), 2 if ring else 1))
        painter.setBrush(QColor(colours.hover if over else colours.surface))
        painter.drawRoundedRect(self.rect().adjusted(1, 1, -2, -2), 6, 6)
        pad = _SLIM if self._compact else _PAD - 2
        inner = self.rect().adjusted(_PAD, pad, -_PAD, -pad)
        line = self.fontMetrics().height()
        painter.setPen(QColor(colours.muted))
        painter.drawText(QRect(inner.left(), inner.top(), inner.width(), line), self._name)
        painter.setPen(QColor(colours.text))
        painter.setFont(self._fitting(inner.width()))
        high = round(line * (1.2 if self._compact else 1.8))
        below = QRect(inner.left(), inner.top() + line, inner.width(), high)
        middle = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
        painter.drawText(below, middle, self._number)
        painter.setFont(self.font())
        painter.setPen(QColor(colours.muted))
        words = QRect(inner.left(), below.bottom(), inner.width(), inner.bottom() - below.bottom())
        if self._compact:
            one_line = self.fontMetrics().elidedText(
                self._words, Qt.TextElideMode.ElideRight, words.width()
            )
            painter.drawText(words, middle, one_line)
        else:
            painter.drawText(words, Qt.TextFlag.TextWordWrap, self._words)

    def _fitting(self, width: int) -> QFont:
        """The large font, made smaller until the number fits."""
        font = theme.heading_font(self.font(), 2 if self._compact else 1)
        while (
            font.pointSizeF() > self.font().pointSizeF()
            and QFontMetrics(font).horizontalAdvance(self._number) > width
        ):
            font.setPointSizeF(font.pointSizeF() - 0.5)
        return font
