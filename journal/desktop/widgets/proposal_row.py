"""One proposed place of the photos in hand: number, look-alike, panel and reason."""

from PySide6.QtCore import QRect, QRectF, QSize, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetrics,
    QImage,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from journal.desktop.theme import colours_of
from journal.desktop.widgets.proposal_rings import paint_number

_HEIGHT = 64
_MARGIN = 6
_DISC = 20
#: The box of the look-alike's thumbnail, in pixels.
THUMB = QSize(60, 45)


class ProposalRow(QAbstractButton):
    """A button that tells a panel, why it is proposed, and shows what pinned there looks alike."""

    def __init__(self, number: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._number = number
        self._reason = ""
        self._image: QImage | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def show_proposal(self, label: str, reason: str, image: QImage | None) -> None:
        """Show a proposal; ``reason`` in words, ``image`` the pinned photo that looks alike."""
        self.setText(label)
        self._reason, self._image = reason, image
        self.setAccessibleName(f"{self._number}: {label}")
        self.setAccessibleDescription(reason)
        self.setToolTip(f"Pin to {label} ({self._number}): {reason}")
        self.update()

    @property
    def reason(self) -> str:
        """Why the panel is proposed."""
        return self._reason

    def sizeHint(self) -> QSize:
        """Room for three lines of reason."""
        return QSize(240, _HEIGHT)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter chooses as Space does."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint number, picture and words."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours = colours_of(self.palette())
        area = QRectF(self.rect()).adjusted(1, 1, -1, -1)
        lit = self.isEnabled() and (self.underMouse() or self.isDown())
        painter.setBrush(QColor(colours.hover if lit else colours.surface))
        edge, width = (colours.focus, 2) if self.hasFocus() else (colours.edge, 1)
        painter.setPen(QPen(QColor(edge), width))
        painter.drawRoundedRect(area, 4, 4)
        disc = QRect(_MARGIN, (self.height() - _DISC) // 2, _DISC, _DISC)
        paint_number(painter, QRectF(disc), self._number, self.font(), colours)
        left = disc.right() + _MARGIN
        if self._image is not None:
            left = self._paint_image(painter, left)
        self._paint_words(painter, QRect(left, 4, self.width() - left - _MARGIN, self.height() - 8))

    def _paint_image(self, painter: QPainter, left: int) -> int:
        assert self._image is not None
        size = self._image.size() / self._image.devicePixelRatio()
        box = QRect(left, (self.height() - THUMB.height()) // 2, THUMB.width(), THUMB.height())
        shown = QRect(0, 0, min(size.width(), box.width()), min(size.height(), box.height()))
        shown.moveCenter(box.center())
        painter.drawImage(shown, self._image)
        return box.right() + _MARGIN + 2

    def _paint_words(self, painter: QPainter, area: QRect) -> None:
        colours = colours_of(self.palette())
        bold = QFont(self.font())
        bold.setWeight(QFont.Weight.DemiBold)
        metrics = QFontMetrics(bold)
        painter.setFont(bold)
        painter.setPen(QColor(colours.text if self.isEnabled() else colours.muted))
        label = metrics.elidedText(self.text(), Qt.TextElideMode.ElideRight, area.width())
        painter.drawText(area, Qt.AlignmentFlag.AlignTop, label)
        small = QFont(self.font())
        small.setPixelSize(max(11, QFontMetrics(self.font()).height() - 6))
        painter.setFont(small)
        painter.setPen(QColor(colours.muted))
        rest = area.adjusted(0, metrics.height(), 0, 0)
        wrap = Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap
        painter.drawText(rest, wrap, self._reason)
