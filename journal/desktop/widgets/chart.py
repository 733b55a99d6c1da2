"""A chart on screen: drawn in a reader's thread, its bars pressed, pointed at and walked along."""

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from journal.desktop import theme
from journal.desktop.desk import Desk
from journal.desktop.tasks import Task
from journal.desktop.widgets.announce import announce
from journal.domain.charts import DARK_FILLS, PAPER, Chart, ChartLook, ChartMark, DrawnChart

#: A chart that is being resized is drawn anew when the hand rests this long, in milliseconds.
_REST_MS = 120
_HEAD = 120
_LYING = 44
_STANDING = 300


class ChartView(QWidget):
    """Shows one chart in the colours of the theme."""

    #: A bar was pressed: its key, and the key of its part.
    opened = Signal(str, str)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._chart: Chart | None = None
        self._image: QImage | None = None
        self._marks: tuple[ChartMark, ...] = ()
        self._at: int | None = None
        self._drawing: Task | None = None
        self._drawn_chart: Chart | None = None
        self._again = False
        self._rest = QTimer(self, singleShot=True)
        self._rest.timeout.connect(self._draw)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    @property
    def chart(self) -> Chart | None:
        """The chart shown."""
        return self._chart

    @property
    def marks(self) -> tuple[ChartMark, ...]:
        """What can be pressed, once it is drawn."""
        return self._marks

    def show_chart(self, chart: Chart) -> None:
        """Show a chart."""
        if self._chart is None or self._chart.kind is not chart.kind:
            self._image, self._marks = None, ()  # No picture stands for another chart.
        self._chart = chart
        self._at = None
        self.setAccessibleName(chart.title)
        self.setAccessibleDescription(chart.words)
        self.setMinimumHeight(_HEAD + _LYING * len(chart.bars) if chart.lying else _STANDING)
        self._rest.start(0)

    def sizeHint(self) -> QSize:
        """As large as it may get, and no lower than its bars need."""
        return QSize(700, max(_STANDING, self.minimumHeight()))

    def look(self) -> ChartLook:
        """The theme's colours, as a chart wears them."""
        return look_of(self.palette())

    # --- drawing ---

    def _draw(self) -> None:
        if self._chart is None or not self.isVisible():
            return
        self._again = self._drawing is not None and not self._drawing.is_over
        if self._again:
            return
        job = _job(self._chart, self.look(), self.size(), self.devicePixelRatioF())
        self._drawn_chart = self._chart
        self._drawing = self._desk.read(lambda _context: job(), self._on_drawn, self)
        self.update()

    def _on_drawn(self, made: tuple[QImage, tuple[ChartMark, ...]]) -> None:
        self._drawing = None
        if self._drawn_chart is self._chart:
            self._image, self._marks = made
            if self._at is not None and self._at >= len(self._marks):
                self._at = None
            self.update()
        if self._again:
            self._draw()

    def showEvent(self, _event: QEvent) -> None:
        """Draw once it is in sight."""
        self._rest.start(0)

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Draw anew when the size stays for a moment."""
        self._rest.start(_REST_MS)

    def changeEvent(self, event: QEvent) -> None:
        """Draw anew in other colours."""
        if event.type() == QEvent.Type.PaletteChange:
            self._rest.start(0)
        super().changeEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the picture, stretched where it is of another size, and a ring round the mark."""
        if self._image is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(QRectF(self.rect()), self._image)
        if self.hasFocus():
            colours = theme.colours_of(self.palette())
            painter.setPen(QPen(QColor(colours.focus), 2))
            if self._at is None:
                painter.drawRect(self.rect().adjusted(1, 1, -1, -1))
            else:
                painter.drawRect(self._box(self._marks[self._at]).adjusted(-2, -2, 2, 2))

    def _box(self, mark: ChartMark) -> QRectF:
        wide, high = self.width(), self.height()
        return QRectF(
            mark.left * wide,
            mark.top * high,
            (mark.right - mark.left) * wide,
            (mark.bottom - mark.top) * high,
        )

    # --- the hand ---

    def mark_at(self, x: float, y: float) -> int | None:
        """The place of the mark at a spot of the widget, None for none."""
        across, down = x / max(1, self.width()), y / max(1, self.height())
        found = (n for n, mark in enumerate(self._marks) if mark.holds(across, down))
        return next(found, None)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Say what is under the pointer."""
        place = self.mark_at(event.position().x(), event.position().y())
        pointing = (
            Qt.CursorShape.ArrowCursor if place is None else Qt.CursorShape.PointingHandCursor
        )
        self.setCursor(pointing)
        words = "" if place is None else self._marks[place].words
        QToolTip.showText(event.globalPosition().toPoint(), words, self)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Open what a bar is made of."""
        place = self.mark_at(event.position().x(), event.position().y())
        if place is not None and event.button() is Qt.MouseButton.LeftButton:
            self._at = place
            self.update()
            self._open()
        else:
            super().mousePressEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk along the bars with the arrows, open with Enter."""
        steps = {
            Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1, Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1,
        }  # fmt: skip
        if event.key() in steps and self._marks:
            self._walk(steps[Qt.Key(event.key())])
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self._at is not None:
            self._open()
        else:
            super().keyPressEvent(event)

    def _walk(self, step: int) -> None:
        start = -1 if step > 0 else 0
        self._at = ((start if self._at is None else self._at) + step) % len(self._marks)
        mark = self._marks[self._at]
        announce(self, mark.words)
        below = self._box(mark).bottomRight().toPoint()
        QToolTip.showText(self.mapToGlobal(below), mark.words, self)
        self.update()

    def _open(self) -> None:
        if self._at is not None:
            mark = self._marks[self._at]
            self.opened.emit(mark.bar, mark.part)


def look_of(palette: QPalette) -> ChartLook:
    """A theme's colours, as a chart wears them."""
    colours = theme.colours_of(palette)
    dark = colours is theme.DARK
    return ChartLook(
        ground=colours.surface,
        text=colours.text,
        muted=colours.muted,
        rule=colours.rule,
        outline=colours.surface if dark else colours.text,
        fills=DARK_FILLS if dark else PAPER.fills,
    )


def _job(
    chart: Chart, look: ChartLook, size: QSize, ratio: float
) -> Callable[[], tuple[QImage, tuple[ChartMark, ...]]]:
    """What draws a chart away from the main thread."""
    return partial(_drawn, chart, look, size, ratio)


def _drawn(
    chart: Chart, look: ChartLook, size: QSize, ratio: float
) -> tuple[QImage, tuple[ChartMark, ...]]:
    from journal.actions.charts import draw_chart

    made: DrawnChart = draw_chart(chart, look, size.width(), size.height(), ratio)
    kind = QImage.Format.Format_RGBA8888
    # A copy, since the image would go on using bytes that it doesn't own.
    image = QImage(made.pixels, made.width, made.height, 4 * made.width, kind).copy()
    return image, made.marks
