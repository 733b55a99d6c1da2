"""An after picture lying over a before: divided by a handle, faded, blinking, or side by side."""

from enum import StrEnum

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QHideEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
    QResizeEvent,
)
from PySide6.QtWidgets import QWidget

from journal.desktop.theme import colours_of
from journal.desktop.widgets.announce import announce

#: Blinking ends by itself after so many changes, and is never quicker than the first figure.
QUICKEST_MS, SLOWEST_MS, USUAL_MS = 400, 2000, 900
_MOST_BLINKS = 20
_STEP, _FINE = 0.05, 0.01
_HANDLE = 22
_GAP = 8


class Look(StrEnum):
    """How two pictures are shown."""

    DIVIDED = "Divided"
    FADED = "Faded"
    BLINKING = "Blinking"
    SIDE_BY_SIDE = "Side by side"


class OverlayView(QWidget):
    """Two equally framed pictures; where they only stand side by side, of one height.

    ``at`` is how far the handle is from the left, or how much of the after picture shows, 0 to 1.
    """

    #: The handle or the fading is elsewhere, 0 to 1.
    moved = Signal(float)
    #: It blinks now, or has stopped.
    blinking = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._pictures: tuple[QPixmap, QPixmap] | None = None
        self._words = ""
        self._look = Look.DIVIDED
        self._at = 0.5
        self._shows_after = False
        self._blinks = 0
        self._timer = QTimer(self, interval=USUAL_MS)
        self._timer.timeout.connect(self._blink)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(240, 180)
        self.setAccessibleName("Before and after, laid over each other")
        self._describe()

    # --- what is shown

    @property
    def look(self) -> Look:
        """How they are shown."""
        return self._look

    @property
    def at(self) -> float:
        """Where the handle is, or how far it is faded."""
        return self._at

    @property
    def is_blinking(self) -> bool:
        """Whether it blinks now."""
        return self._timer.isActive()

    @property
    def interval(self) -> int:
        """How long each picture stays while blinking, in milliseconds."""
        return self._timer.interval()

    def show_pair(self, before: QPixmap, after: QPixmap) -> None:
        """Show two pictures."""
        self._pictures, self._words = (before, after), ""
        self.update()

    def say(self, words: str) -> None:
        """Show words in the place of pictures."""
        self.stop()
        self._pictures, self._words = None, words
        self.update()

    def set_look(self, look: Look) -> None:
        """Show them another way; blinking has to be begun, it never begins by itself."""
        self.stop()
        self._look, self._shows_after = look, False
        self._describe()
        self.update()

    def set_at(self, at: float) -> None:
        """Move the handle, or fade."""
        at = min(max(at, 0.0), 1.0)
        if at != self._at:
            self._at = at
            self._describe()
            self.update()
            self.moved.emit(at)

    def set_interval(self, milliseconds: int) -> None:
        """Let each picture stay so long while blinking."""
        self._timer.setInterval(min(max(milliseconds, QUICKEST_MS), SLOWEST_MS))

    def start(self) -> None:
        """Begin to blink; it stops by itself."""
        if self._pictures is not None and self._look is Look.BLINKING:
            self._blinks = 0
            self._timer.start()
            self.blinking.emit(True)

    def stop(self) -> None:
        """Stand still."""
        if self._timer.isActive():
            self._timer.stop()
            self.blinking.emit(False)

    def swap(self) -> None:
        """Show the other picture, where one shows at a time."""
        self._shows_after = not self._shows_after
        self._describe()
        self.update()

    def _blink(self) -> None:
        self._blinks += 1
        self._shows_after = not self._shows_after
        if self._blinks >= _MOST_BLINKS:
            self.stop()
        self.update()

    def _describe(self) -> None:
        words = {
            Look.DIVIDED: f"before on the left {self._at:.0%}, after on the right; arrow keys move",
            Look.FADED: f"after shows to {self._at:.0%}; arrow keys fade",
            Look.BLINKING: "space starts and stops; arrow keys show one or the other",
            Look.SIDE_BY_SIDE: "before on the left, after on the right",
        }[self._look]
        self.setAccessibleDescription(f"{self._look.value}: {words}")

    # --- painting

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the pictures as they are to be shown."""
        painter = QPainter(self)
        colours = colours_of(self.palette())
        painter.fillRect(self.rect(), QColor(colours.rail))
        if self._pictures is None:
            painter.setPen(QColor(colours.muted))
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            painter.drawText(self.rect().adjusted(24, 24, -24, -24), flags, self._words)
            return
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._look is Look.SIDE_BY_SIDE:
            self._paint_both(painter, self._pictures)
        elif self._look is Look.DIVIDED:
            self._paint_divided(painter, self._pictures, colours.focus)
        else:
            self._paint_one(painter, self._pictures)
        if self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(QColor(colours.focus), 2))
            painter.drawRect(self.rect().adjusted(1, 1, -2, -2))

    def _paint_both(self, painter: QPainter, pictures: tuple[QPixmap, QPixmap]) -> None:
        for picture, name, area in zip(pictures, ("Before", "After"), self.halves(), strict=True):
            painter.drawPixmap(area, picture, QRectF(picture.rect()))
            self._name(painter, name, area.topLeft() + QPointF(10, 10))

    def _paint_divided(
        self, painter: QPainter, pictures: tuple[QPixmap, QPixmap], focus: str
    ) -> None:
        area = self.area()
        x = area.left() + area.width() * self._at
        painter.drawPixmap(area, pictures[1], QRectF(pictures[1].rect()))
        painter.save()
        painter.setClipRect(QRectF(area.left(), area.top(), x - area.left(), area.height()))
        painter.drawPixmap(area, pictures[0], QRectF(pictures[0].rect()))
        self._name(painter, "Before", area.topLeft() + QPointF(10, 10))
        painter.restore()
        painter.save()
        painter.setClipRect(QRectF(x, area.top(), area.right() - x, area.height()))
        self._name(painter, "After", area.topRight() + QPointF(-10, 10), right=True)
        painter.restore()
        self._handle(painter, x, area, focus)

    def _handle(self, painter: QPainter, x: float, area: QRectF, focus: str) -> None:
        for width, colour in ((5.0, QColor(0, 0, 0, 120)), (2.0, QColor("white"))):
            painter.setPen(QPen(colour, width))
            painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()))
        middle = QPointF(x, area.center().y())
        painter.setPen(QPen(QColor(focus if self.hasFocus() else "#202020"), 3))
        painter.setBrush(QColor("white"))
        painter.drawEllipse(middle, _HANDLE, _HANDLE)
        painter.setPen(QPen(QColor("#202020"), 3, c=Qt.PenCapStyle.RoundCap))
        for side in (-1, 1):
            tip = middle + QPointF(side * 13, 0)
            for rise in (-6, 6):
                painter.drawLine(tip, tip + QPointF(-side * 6, rise))

    def _paint_one(self, painter: QPainter, pictures: tuple[QPixmap, QPixmap]) -> None:
        area = self.area()
        if self._look is Look.FADED:
            painter.drawPixmap(area, pictures[0], QRectF(pictures[0].rect()))
            painter.setOpacity(self._at)
            painter.drawPixmap(area, pictures[1], QRectF(pictures[1].rect()))
            painter.setOpacity(1.0)
            name = f"After {self._at:.0%}" if self._at else "Before"
        else:
            picture = pictures[self._shows_after]
            painter.drawPixmap(area, picture, QRectF(picture.rect()))
            name = "After" if self._shows_after else "Before"
        self._name(painter, name, area.topLeft() + QPointF(10, 10))

    def _name(self, painter: QPainter, words: str, spot: QPointF, *, right: bool = False) -> None:
        """A name on a ground of its own, so that it reads on any picture."""
        font = QFont(self.font())
        font.setWeight(QFont.Weight.DemiBold)
        metrics = QFontMetricsF(font)
        wide, high = metrics.horizontalAdvance(words) + 16, metrics.height() + 8
        left = spot.x() - (wide if right else 0)
        box = QRectF(left, spot.y(), wide, high)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(20, 20, 20, 200))
        painter.drawRoundedRect(box, 4, 4)
        painter.setPen(QColor("white"))
        painter.setFont(font)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, words)

    # --- places

    def area(self) -> QRectF:
        """Where the common frame lies."""
        if self._pictures is None:
            return QRectF(self.rect())
        # Photos that don't lie on each other are of one height and may differ in width.
        widest = max(self._pictures, key=QPixmap.width)
        return _fitted(QRectF(self.rect()), widest.size())

    def halves(self) -> tuple[QRectF, QRectF]:
        """Where the two pictures lie side by side, of one height."""
        first, second = (QSize(1, 1),) * 2 if self._pictures is None else (
            self._pictures[0].size(), self._pictures[1].size(),
        )  # fmt: skip
        wide = first.width() / first.height() + second.width() / second.height()
        high = min(self.height(), (self.width() - _GAP) / wide)
        left = (self.width() - _GAP - high * wide) / 2
        top = (self.height() - high) / 2
        one = QRectF(left, top, high * first.width() / first.height(), high)
        other = high * second.width() / second.height()
        return one, QRectF(one.right() + _GAP, top, other, high)

    # --- hands

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take the handle, fade by hand, or show the other picture."""
        if event.button() != Qt.MouseButton.LeftButton or self._pictures is None:
            return
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        if self._look is Look.BLINKING:
            self.stop()
            self.swap()
        else:
            self._follow(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Move the handle along."""
        if event.buttons() & Qt.MouseButton.LeftButton and self._pictures is not None:
            self._follow(event)

    def _follow(self, event: QMouseEvent) -> None:
        area = self.area()
        if self._look in (Look.DIVIDED, Look.FADED) and area.width():
            self.set_at((event.position().x() - area.left()) / area.width())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move the handle, fade, start and stop blinking."""
        key = Qt.Key(event.key())
        step = _FINE if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else _STEP
        ways = {Qt.Key.Key_Left: -step, Qt.Key.Key_Right: step}
        ends = {Qt.Key.Key_Home: 0.0, Qt.Key.Key_End: 1.0}
        if self._look is Look.BLINKING and key == Qt.Key.Key_Space:
            self.stop() if self.is_blinking else self.start()
        elif self._look is Look.BLINKING and key in ways:
            self.stop()
            self.swap()
            announce(self, "After" if self._shows_after else "Before")
        elif self._look in (Look.DIVIDED, Look.FADED) and key in ways:
            self.set_at(self._at + ways[key])
        elif self._look in (Look.DIVIDED, Look.FADED) and key in ends:
            self.set_at(ends[key])
        else:
            event.ignore()

    def hideEvent(self, event: QHideEvent) -> None:
        """Stand still where nobody looks."""
        super().hideEvent(event)
        self.stop()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay the pictures out anew."""
        super().resizeEvent(event)
        self.update()

    def sizeHint(self) -> QSize:
        """Room to see something."""
        return QSize(720, 480)


def _fitted(room: QRectF, size: QSize) -> QRectF:
    if not (size.width() and size.height()):
        return room
    scale = min(room.width() / size.width(), room.height() / size.height())
    wide, high = size.width() * scale, size.height() * scale
    return QRectF(room.center().x() - wide / 2, room.center().y() - high / 2, wide, high)
