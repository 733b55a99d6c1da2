"""Pages of a document to be looked at: small ones in a list, one of them large, drawn as needed."""

from collections import OrderedDict
from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt, QTimer
from PySide6.QtGui import QColor, QIcon, QImage, QKeyEvent, QPainter, QPixmap, QResizeEvent
from PySide6.QtWidgets import QListView, QListWidget, QListWidgetItem, QWidget

from journal.desktop.desk import Desk
from journal.desktop.tasks import Task
from journal.desktop.widgets.parts import column, label, row, tool
from journal.desktop.widgets.picture_view import PictureView
from journal.domain.progress import Context

if TYPE_CHECKING:
    from journal.actions.dossier_preview import Proof

_SMALL = QSize(84, 119)
_LIST_WIDTH = 124
#: So many small pages are drawn in one go, so that a large one needn't wait long.
_AT_ONCE = 6
#: Large pages kept, and their greatest width in pixels.
_KEPT, _WIDEST = 8, 2400
#: Widths are rounded up to steps, in pixels, so that small changes of size draw nothing anew.
_STEP = 200


class PagePreview(QWidget):
    """Shows the pages last given; while others are being set it says so and keeps these.

    Attributes:
        view: the page looked at.
        list: the small pages.
    """

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._pages: Proof | None = None
        self._small: Task | None = None
        self._large: Task | None = None
        self._stale: set[int] = set()
        self._drawn: OrderedDict[int, tuple[int, QPixmap]] = OrderedDict()
        self.view = _PageView(self)
        self.list = QListWidget()
        self.count = label("", wrap=False)
        self.state = label("", "muted")
        self.previous = tool("previous", "Previous page (Page Up)", lambda: self.step(-1))
        self.next = tool("next", "Next page (Page Down)", lambda: self.step(1))
        self._later = QTimer(self, interval=60, singleShot=True)
        self._build()
        self.list.currentRowChanged.connect(self._on_page)
        self.list.verticalScrollBar().valueChanged.connect(lambda: self._later.start())
        self._later.timeout.connect(self._draw_small)
        self.view.looked.connect(self._on_looked)

    def _build(self) -> None:
        self.list.setAccessibleName("Pages")
        self.list.setViewMode(QListView.ViewMode.IconMode)
        self.list.setFlow(QListView.Flow.TopToBottom)
        self.list.setWrapping(False)
        self.list.setMovement(QListView.Movement.Static)
        self.list.setIconSize(_SMALL)
        self.list.setFixedWidth(_LIST_WIDTH)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.view.setAccessibleName("The page")
        tools = row(
            self.previous,
            self.count,
            self.next,
            None,
            tool("zoom-out", "Smaller (-)", lambda: self.view.zoom_by(-1)),
            tool("fit", "The whole page (0)", self.view.fit),
            tool("zoom-in", "Larger (+)", lambda: self.view.zoom_by(1)),
        )
        whole = row(self.list)
        right = column(spacing=6)
        right.addWidget(self.view, 1)
        right.addLayout(tools)
        whole.addLayout(right, 1)
        layout = column(self.state, spacing=6)
        layout.addLayout(whole, 1)
        layout.setContentsMargins(8, 0, 0, 0)
        self.setLayout(layout)
        self._show_count()

    # --- what is shown ---

    @property
    def pages(self) -> "Proof | None":
        """The pages shown."""
        return self._pages

    def say(self, words: str) -> None:
        """Say over the pages what is being done about them; "" for nothing."""
        self.state.setText(words)

    def show_pages(self, pages: "Proof") -> None:
        """Show these in the place of those before; the place looked at stays."""
        self._stop()
        self._pages = pages
        self._drawn.clear()
        place = max(0, min(self.list.currentRow(), pages.count - 1))
        self.list.blockSignals(True)
        while self.list.count() > pages.count:
            self.list.takeItem(self.list.count() - 1)
        while self.list.count() < pages.count:
            self.list.addItem(_blank(self.list.count() + 1))
        self.list.setCurrentRow(place)
        self.list.blockSignals(False)
        self._stale = set(range(pages.count))
        self._later.start()
        self._on_page(place)

    def step(self, pages: int) -> None:
        """Show a page so many places on; stops at the ends."""
        if self.list.count():
            place = max(0, min(self.list.count() - 1, self.list.currentRow() + pages))
            self.list.setCurrentRow(place)

    def _on_page(self, _place: int) -> None:
        self._show_count()
        self.view.look_at(1.0, 0.5, 0.5)
        self._draw_large()

    def _show_count(self) -> None:
        place, count = self.list.currentRow(), self.list.count()
        words = f"Page {place + 1:,} of {count:,}" if count else "No page yet"
        self.count.setText(words)
        self.view.setAccessibleDescription(words)
        self.previous.setEnabled(place > 0)
        self.next.setEnabled(place < count - 1)

    def _stop(self) -> None:
        for task in (self._small, self._large):
            if task is not None:
                task.cancel()
        self._small = self._large = None

    # --- drawing ---

    def _on_looked(self, _zoom: float, _x: float, _y: float) -> None:
        self._draw_large()

    def draw_again(self) -> None:
        """Draw the page for the size that the view has now, where it grew."""
        self._draw_large()

    def _draw_large(self) -> None:
        pages, place = self._pages, self.list.currentRow()
        if pages is None or place < 0:
            return
        width = self._needed()
        known = self._drawn.get(place)
        if known is not None:
            self._drawn.move_to_end(place)
            self.view.show_picture(known[1])
            if known[0] >= width:
                return
        if self._large is not None:
            self._large.cancel()

        def job(context: Context) -> tuple[int, QImage]:
            context.checkpoint()
            return place, _page(pages, place, width)

        def done(found: tuple[int, QImage]) -> None:
            self._take_large(found[0], width, found[1])

        self._large = self._desk.read(job, done, self)

    def _needed(self) -> int:
        """Pixels of a page's width that fill the view at the size looked at."""
        side = min(self.view.width(), self.view.height() / 1.3)
        wanted = side * self.view.zoom * self.view.devicePixelRatioF()
        return min(_WIDEST, -int(-wanted // _STEP) * _STEP or _STEP)

    def _take_large(self, place: int, width: int, image: QImage) -> None:
        self._large = None
        pixmap = QPixmap.fromImage(image)
        self._drawn[place] = width, pixmap
        self._drawn.move_to_end(place)
        while len(self._drawn) > _KEPT:
            self._drawn.popitem(last=False)
        if place == self.list.currentRow():
            self.view.show_picture(pixmap)

    def _draw_small(self) -> None:
        """Draw the small pages in sight that are not drawn, a few at a time."""
        pages = self._pages
        if pages is None or self._small is not None or not self.isVisible():
            return
        wanted = [place for place in self._in_sight() if place in self._stale][:_AT_ONCE]
        if not wanted:
            return
        width = round(_SMALL.width() * self.devicePixelRatioF())

        def job(context: Context) -> list[tuple[int, QImage]]:
            made = []
            for place in wanted:
                context.checkpoint()
                made.append((place, _page(pages, place, width)))
            return made

        self._small = self._desk.read(job, self._take_small, self)

    def _in_sight(self) -> list[int]:
        area = self.list.viewport().rect().adjusted(0, 0, 0, _SMALL.height())
        places = range(self.list.count())
        return [n for n in places if self.list.visualItemRect(self.list.item(n)).intersects(area)]

    def _take_small(self, made: list[tuple[int, QImage]]) -> None:
        self._small = None
        for place, image in made:
            self._stale.discard(place)
            if (item := self.list.item(place)) is not None:
                item.setIcon(_icon(_framed(image)))
        self._draw_small()


class _PageView(PictureView):
    """The large page; turns pages by key."""

    def __init__(self, preview: PagePreview) -> None:
        super().__init__(preview, dark_ground=False)
        self._preview = preview
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._grown = QTimer(self, interval=120, singleShot=True)
        self._grown.timeout.connect(preview.draw_again)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Have the page drawn for the new size, once it stays."""
        super().resizeEvent(event)
        self._grown.start()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Turn pages, zoom."""
        preview = self._preview
        acts = {
            Qt.Key.Key_PageUp: lambda: preview.step(-1),
            Qt.Key.Key_PageDown: lambda: preview.step(1),
            Qt.Key.Key_Left: lambda: preview.step(-1),
            Qt.Key.Key_Right: lambda: preview.step(1),
            Qt.Key.Key_Up: lambda: self.move_by(-1),
            Qt.Key.Key_Down: lambda: self.move_by(1),
            Qt.Key.Key_Home: lambda: preview.step(-preview.list.count()),
            Qt.Key.Key_End: lambda: preview.step(preview.list.count()),
            Qt.Key.Key_Plus: lambda: self.zoom_by(1),
            Qt.Key.Key_Equal: lambda: self.zoom_by(1),
            Qt.Key.Key_Minus: lambda: self.zoom_by(-1),
            Qt.Key.Key_0: self.fit,
        }
        act = acts.get(Qt.Key(event.key()))
        if act is None:
            super().keyPressEvent(event)
        else:
            act()

    def move_by(self, down: int) -> None:
        """Move what is seen a quarter of the view up or down, where it is larger than the view."""
        self.look_at(self.zoom, self.middle.x(), self.middle.y() + down * 0.25 / self.zoom)


def _blank(number: int) -> QListWidgetItem:
    item = QListWidgetItem(f"{number:,}")
    item.setSizeHint(QSize(_LIST_WIDTH - 24, _SMALL.height() + 34))
    item.setData(Qt.ItemDataRole.AccessibleTextRole, f"Page {number:,}")
    item.setIcon(_icon(_framed(None)))
    item.setTextAlignment(Qt.AlignmentFlag.AlignHCenter)
    return item


def _icon(pixmap: QPixmap) -> QIcon:
    """A page looks the same where it is the one looked at."""
    made = QIcon(pixmap)
    made.addPixmap(pixmap, QIcon.Mode.Selected)
    return made


def _framed(image: QImage | None) -> QPixmap:
    """A small page with a line round it, so that white paper shows on any ground."""
    if image is None:
        image = QImage(_SMALL, QImage.Format.Format_RGB32)
        image.fill(QColor("white"))
    pixmap = QPixmap.fromImage(image)
    painter = QPainter(pixmap)
    painter.setPen(QColor("#857D72"))
    painter.drawRect(pixmap.rect().adjusted(0, 0, -1, -1))
    painter.end()
    return pixmap


def _page(pages: "Proof", place: int, width: int) -> QImage:
    """A page drawn, for reader jobs; all that makes dossiers is loaded there too."""
    from journal.actions.dossier_preview import page_picture

    made = page_picture(pages, place, width)
    image = QImage(made.rgb, made.width, made.height, made.width * 3, QImage.Format.Format_RGB888)
    return image.convertToFormat(QImage.Format.Format_RGB32)
