"""A strip of photos in one row: photos are dropped on it, dragged off it, taken out and opened."""

from collections.abc import Sequence

from PySide6.QtCore import QMimeData, QModelIndex, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QDragEnterEvent,
    QDragLeaveEvent,
    QDragMoveEvent,
    QDropEvent,
    QIcon,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
    QStandardItem,
    QStandardItemModel,
)
from PySide6.QtWidgets import QAbstractItemView, QListView, QWidget

from journal.desktop import theme
from journal.desktop.widgets.photo_drag import PHOTOS_MIME, photos_from_mime, photos_to_mime
from journal.desktop.widgets.photo_words import cell_words, mark_words
from journal.desktop.widgets.thumbs import ThumbCache, box_height
from journal.domain.ids import PhotoId
from journal.domain.photos import Photo
from journal.domain.when import spoken

_EDGE = 128
_ID_ROLE = Qt.ItemDataRole.UserRole


class PhotoStrip(QListView):
    """Photos side by side; it scrolls sideways."""

    #: Photos were dropped on the strip: a tuple of photo numbers.
    dropped = Signal(object)
    #: Photos are to be taken out of the strip: a tuple of photo numbers.
    taken_out = Signal(object)
    #: A photo is to be shown large: its number.
    opened = Signal(int)
    #: The photo picked is another: its number.
    picked = Signal(int)

    def __init__(
        self, name: str, hint: str, cache: ThumbCache, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._hint = hint
        self._cache = cache
        self._under_drag = False
        self._strip_model = _StripModel(self)
        self.setModel(self._strip_model)
        self.setAccessibleName(name)
        self.setViewMode(QListView.ViewMode.IconMode)
        self.setFlow(QListView.Flow.LeftToRight)
        self.setWrapping(False)
        self.setMovement(QListView.Movement.Static)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setIconSize(QSize(_EDGE, box_height(_EDGE)))
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setDragEnabled(True)
        self.setAcceptDrops(True)
        self.setDragDropMode(QAbstractItemView.DragDropMode.DragDrop)
        # A list of pictures that stay in place closes its viewport to drops; this one takes them.
        self.viewport().setAcceptDrops(True)
        self.setDropIndicatorShown(False)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._size_to_content()
        cache.arrived.connect(self._on_arrived)
        self.selectionModel().currentChanged.connect(self._on_current)
        self.doubleClicked.connect(self._on_double_clicked)

    def set_photos(self, photos: Sequence[Photo]) -> None:
        """Show these photos; those that were picked stay so."""
        before = set(self.chosen())
        self._strip_model.clear()
        for photo in photos:
            self._strip_model.appendRow(_item(photo))
        self._show_pictures()
        for place, photo in enumerate(photos):
            if photo.id in before:
                index = self._strip_model.index(place, 0)
                self.selectionModel().select(index, self.selectionModel().SelectionFlag.Select)
        self._size_to_content()
        QTimer.singleShot(0, self, self._want)

    def ids(self) -> tuple[PhotoId, ...]:
        """The photos shown, from the left."""
        return tuple(self._id(place) for place in range(self._strip_model.rowCount()))

    def chosen(self) -> tuple[PhotoId, ...]:
        """The photos picked, from the left."""
        places = sorted(index.row() for index in self.selectionModel().selectedIndexes())
        return tuple(self._id(place) for place in places)

    # --- pictures ---

    def _want(self) -> None:
        ratio = self.devicePixelRatioF()
        self._cache.want(self.ids(), round(_EDGE * ratio))

    def _on_arrived(self, _photos: object) -> None:
        self._show_pictures()

    def _show_pictures(self) -> None:
        for place in range(self._strip_model.rowCount()):
            item = self._strip_model.item(place)
            card = self._cache.card(self._id(place))
            if card is not None and card.pixmap is not None:
                item.setIcon(QIcon(_framed(card.pixmap)))
            elif item.icon().isNull():
                item.setIcon(QIcon(self._blank()))

    def _blank(self) -> QPixmap:
        made = QPixmap(_EDGE, box_height(_EDGE))
        made.fill(theme.colours_of(self.palette()).panel)
        return made

    # --- hands ---

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Delete takes out, Enter opens."""
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace) and self.chosen():
            self.taken_out.emit(self.chosen())
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.chosen():
            self.opened.emit(self.chosen()[0])
        else:
            super().keyPressEvent(event)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take photos that don't come from this strip."""
        if event.mimeData().hasFormat(PHOTOS_MIME) and event.source() is not self:
            self._mark_drag(under=True)
            event.acceptProposedAction()
        else:
            event.ignore()

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Go on taking them."""
        if event.mimeData().hasFormat(PHOTOS_MIME) and event.source() is not self:
            event.acceptProposedAction()
        else:
            event.ignore()

    def dragLeaveEvent(self, _event: QDragLeaveEvent) -> None:
        """Forget the drag."""
        self._mark_drag(under=False)

    def dropEvent(self, event: QDropEvent) -> None:
        """Tell what was dropped."""
        self._mark_drag(under=False)
        photos = photos_from_mime(event.mimeData())
        if photos:
            event.acceptProposedAction()
            self.dropped.emit(photos)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Say what belongs here where there is nothing, and frame it under a drag."""
        super().paintEvent(event)
        if self._strip_model.rowCount() and not self._under_drag:
            return
        painter = QPainter(self.viewport())
        colours = theme.colours_of(self.palette())
        area = self.viewport().rect()
        if not self._strip_model.rowCount():
            painter.setPen(colours.muted)
            how = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            painter.drawText(area.adjusted(12, 0, -12, 0), how, self._hint)
        if self._under_drag:
            painter.setPen(colours.accent)
            for inset in range(3):
                painter.drawRect(area.adjusted(inset, inset, -inset - 1, -inset - 1))
        painter.end()

    # --- small things ---

    def _id(self, place: int) -> PhotoId:
        return PhotoId(self._strip_model.item(place).data(_ID_ROLE))

    def _mark_drag(self, *, under: bool) -> None:
        self._under_drag = under
        self.viewport().update()

    def _on_current(self, current: QModelIndex, _before: QModelIndex) -> None:
        if current.isValid():
            self.picked.emit(self._id(current.row()))

    def _on_double_clicked(self, index: QModelIndex) -> None:
        self.opened.emit(self._id(index.row()))

    def _size_to_content(self) -> None:
        line = self.fontMetrics().height()
        full = box_height(_EDGE) + line + 46
        self.setFixedHeight(full if self._strip_model.rowCount() else 2 * line + 24)


class _StripModel(QStandardItemModel):
    """Photos that travel by drag as the grids' do."""

    def mimeTypes(self) -> list[str]:
        """Photos alone."""
        return [PHOTOS_MIME]

    def mimeData(self, indexes: Sequence[QModelIndex]) -> QMimeData:
        """The photos dragged."""
        places = sorted({index.row() for index in indexes})
        return photos_to_mime([PhotoId(self.item(place).data(_ID_ROLE)) for place in places])


def _item(photo: Photo) -> QStandardItem:
    when = spoken(photo.when) if photo.when is not None else "no date"
    day = when.split(",")[0]
    item = QStandardItem(day)
    item.setData(int(photo.id), _ID_ROLE)
    item.setSizeHint(QSize(_EDGE + 12, box_height(_EDGE) + 34))
    words = ", ".join([photo.name, when, cell_words(photo), *mark_words(photo)])
    item.setToolTip(words)
    item.setData(words, Qt.ItemDataRole.AccessibleTextRole)
    return item


def _framed(picture: QPixmap) -> QPixmap:
    """The picture in the middle of a box of the strip's size, so that all boxes are alike."""
    ratio = picture.width() / max(1, picture.height())
    width, height = _EDGE, box_height(_EDGE)
    made = QPixmap(2 * width, 2 * height)
    made.fill(Qt.GlobalColor.transparent)
    painter = QPainter(made)
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
    wide = min(2 * width, round(2 * height * ratio))
    high = min(2 * height, round(wide / ratio)) if ratio else 2 * height
    painter.drawPixmap((2 * width - wide) // 2, (2 * height - high) // 2, wide, high, picture)
    painter.end()
    made.setDevicePixelRatio(2)
    return made
