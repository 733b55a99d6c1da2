"""The chart of an estimate on screen, drawn in a reader's thread in the colours of the theme."""

from functools import partial

from PySide6.QtCore import QEvent, QRectF, QSize, QTimer
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from journal.actions.surveys import draw_outlook
from journal.desktop.desk import Desk
from journal.desktop.tasks import Task
from journal.desktop.widgets.chart import look_of
from journal.domain.charts import ChartLook, DrawnChart
from journal.domain.estimates import Outlook

#: A chart that is being resized is drawn anew when the hand rests this long, in milliseconds.
_REST_MS = 120


class OutlookChart(QWidget):
    """How often each sum came, with the ceiling and the figures of 50, 80 and 90 per cent."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._shown: tuple[Outlook, str, str] | None = None
        self._drawing: Task | None = None
        self.image: QImage | None = None
        self._rest = QTimer(self, singleShot=True, interval=_REST_MS)
        self._rest.timeout.connect(self._draw)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(300, 180)

    def show_outlook(self, outlook: Outlook, title: str, currency: str, words: str) -> None:
        """Show a sum; ``currency`` is "" for time, ``words`` say it to those who don't see it."""
        self._shown = outlook, title, currency
        self.setAccessibleName(title)
        self.setAccessibleDescription(words)
        self._draw()

    def sizeHint(self) -> QSize:
        """As wide as it may get."""
        return QSize(560, 220)

    def _draw(self) -> None:
        if self._shown is None or not self.isVisible():
            return
        if self._drawing is not None:
            self._drawing.cancel()
        size = self.width(), self.height(), self.devicePixelRatioF()
        job = partial(_drawn, self._shown, look_of(self.palette()), size)
        self._drawing = self._desk.read(lambda _context: job(), self._on_drawn, self)

    def _on_drawn(self, image: QImage) -> None:
        self._drawing, self.image = None, image
        self.update()

    def showEvent(self, _event: QEvent) -> None:
        """Draw once it is in sight."""
        self._draw()

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Draw anew when the size stays for a moment."""
        self._rest.start()

    def changeEvent(self, event: QEvent) -> None:
        """Draw anew in other colours."""
        if event.type() == QEvent.Type.PaletteChange:
            self._rest.start()
        super().changeEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the picture, stretched where it is of another size."""
        if self.image is not None:
            painter = QPainter(self)
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            painter.drawImage(QRectF(self.rect()), self.image)


def _drawn(
    shown: tuple[Outlook, str, str], look: ChartLook, size: tuple[int, int, float]
) -> QImage:
    made: DrawnChart = draw_outlook(*shown, look, size)
    kind = QImage.Format.Format_RGBA8888
    # A copy, since the image would go on using bytes that it doesn't own.
    return QImage(made.pixels, made.width, made.height, 4 * made.width, kind).copy()
