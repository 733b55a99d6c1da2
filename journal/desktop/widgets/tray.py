"""The tray: sittings whose photos have no place yet, and the photos in hand."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import (
    QAbstractListModel,
    QMimeData,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QSize,
    Qt,
    Signal,
    Slot,
)
from PySide6.QtWidgets import QListView, QSplitter, QVBoxLayout, QWidget

from journal.desktop.desk import Desk
from journal.desktop.widgets.grid_layout import Group
from journal.desktop.widgets.parts import label
from journal.desktop.widgets.photo_drag import photos_to_mime
from journal.desktop.widgets.photo_grid import PhotoGrid
from journal.desktop.widgets.thumb_source import thumb_cache
from journal.domain.ids import PhotoId
from journal.domain.sittings import Sitting
from journal.domain.words import day_in_words

_Index = QModelIndex | QPersistentModelIndex
_ROOT = QModelIndex()
_ROW = QSize(0, 52)
_GRID_EDGE = 96
_ALL_PLACED = "Every photo has its place on the car."
_NO_PHOTOS = (
    "No photos yet. Drop a folder of them anywhere on the window, or press Add photos; "
    "then pin them to the panels they show."
)


@dataclass(frozen=True, slots=True)
class ToPlace:
    """A sitting's photos that have no place yet."""

    title: str
    detail: str
    ids: tuple[PhotoId, ...]


def to_place(sittings: Sequence[Sitting], placed: Collection[PhotoId]) -> tuple[ToPlace, ...]:
    """The sittings with photos that have no place, the latest first, undated ones last."""
    rows = []
    for sitting in sittings:
        ids = tuple(photo for photo in sitting.photo_ids if photo not in placed)
        if ids:
            rows.append((sitting.first is not None, ToPlace(*_words(sitting, len(ids)), ids)))
    dated = [row for is_dated, row in rows if is_dated]
    return (*reversed(dated), *(row for is_dated, row in rows if not is_dated))


def _words(sitting: Sitting, count: int) -> tuple[str, str]:
    whole = len(sitting.photo_ids)
    photos = "1 photo" if whole == 1 else f"{whole:,} photos"
    if count < whole:
        photos = f"{count:,} of {photos}"
    if sitting.first is None or sitting.last is None:
        return "No date known", photos
    day = f"{sitting.first:%a} {day_in_words(sitting.first.date())}"
    if sitting.first.date() != sitting.last.date():
        return day, f"to {day_in_words(sitting.last.date())} \N{MIDDLE DOT} {photos}"
    start, end = f"{sitting.first:%H:%M}", f"{sitting.last:%H:%M}"
    time = start if start == end else f"{start} to {end}"
    return day, f"{time} \N{MIDDLE DOT} {photos}"


class TrayModel(QAbstractListModel):
    """The sittings of the tray, each to be dragged as a whole."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.rows: tuple[ToPlace, ...] = ()

    def set_rows(self, rows: tuple[ToPlace, ...]) -> None:
        """Hold other sittings."""
        self.beginResetModel()
        self.rows = rows
        self.endResetModel()

    def rowCount(self, parent: _Index = _ROOT) -> int:
        """How many sittings there are."""
        return 0 if parent.isValid() else len(self.rows)

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The day, and below it the time and how many photos."""
        if not index.isValid() or index.row() >= len(self.rows):
            return None
        row = self.rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return f"{row.title}\n{row.detail}"
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{row.title}, {row.detail} to place"
        if role == Qt.ItemDataRole.SizeHintRole:
            return _ROW
        return None

    def flags(self, index: _Index) -> Qt.ItemFlag:
        """Sittings can be picked and dragged."""
        flags = super().flags(index)
        return flags | Qt.ItemFlag.ItemIsDragEnabled if index.isValid() else flags

    def mimeData(self, indexes: Iterable[QModelIndex]) -> QMimeData:
        """All photos of the dragged sittings that have no place."""
        return photos_to_mime([photo for index in indexes for photo in self.rows[index.row()].ids])


class Tray(QWidget):
    """The sittings to place, the photos of the one picked, and what is in hand.

    In hand are the photos that pinning takes: those picked below, else the whole sitting, else
    what was selected on another page.
    """

    #: Other photos are in hand by the person's own pick: a tuple of photo numbers.
    picked = Signal(object)
    #: What is in hand has changed, whoever changed it.
    hand_changed = Signal()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.model = TrayModel(self)
        self._from_elsewhere: tuple[PhotoId, ...] = ()
        self._next: tuple[PhotoId, ...] = ()
        self._one_by_one = False
        self._quiet = False
        self.list = QListView()
        self.list.setModel(self.model)
        self.list.setUniformItemSizes(True)
        self.list.setDragEnabled(True)
        self.list.setAccessibleName("Sittings to place")
        self.grid = PhotoGrid(thumb_cache(desk))
        self.grid.set_edge(_GRID_EDGE)
        self.grid.setAccessibleName("Photos of the sitting")
        self.grid.setMinimumHeight(140)
        self._done = label("", "muted")
        self._hand = label("", "muted")
        self._build()
        self._connect()

    def _build(self) -> None:
        self._split = QSplitter(Qt.Orientation.Vertical)
        self._split.setChildrenCollapsible(False)
        self._split.addWidget(self.list)
        self._split.addWidget(self.grid)
        self._split.setSizes([260, 240])
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self._done)
        layout.addWidget(self._split, 1)
        layout.addWidget(self._hand)
        layout.addStretch()
        self._show_hand()

    def _connect(self) -> None:
        self.list.selectionModel().currentChanged.connect(self._on_current)
        self.list.clicked.connect(self._on_clicked)
        self.grid.selection_changed.connect(self._on_grid_selection)

    def set_sittings(self, rows: tuple[ToPlace, ...], *, any_photos: bool) -> None:
        """Show what is to be placed now; what was picked stays picked where it is still there."""
        self._done.setText(_ALL_PLACED if any_photos else _NO_PHOTOS)
        picked = self._row()
        wanted = self._next or (picked.ids if picked else ())
        self._next = ()
        self._quiet = True
        self.model.set_rows(rows)
        row = next((n for n, r in enumerate(rows) if set(r.ids) & set(wanted)), -1)
        self.list.setCurrentIndex(self.model.index(row) if row >= 0 else QModelIndex())
        self._show_photos(wanted)
        self._quiet = False
        self._show_hand()
        if self._one_by_one and row >= 0 and wanted:
            self.picked.emit(self.in_hand())

    def in_hand(self) -> tuple[PhotoId, ...]:
        """The photos that pinning takes now."""
        if self._from_elsewhere:
            return self._from_elsewhere
        row = self._row()
        return (self.grid.selected() or row.ids) if row else ()

    def next_in_hand(self) -> tuple[PhotoId, ...]:
        """The photos in hand, else those of the first sitting to place."""
        return self.in_hand() or (self.model.rows[0].ids if self.model.rows else ())

    def take(self, ids: tuple[PhotoId, ...]) -> None:
        """Take photos selected elsewhere in hand."""
        if ids and set(ids) != set(self.in_hand()):
            self._from_elsewhere = ids
            self._show_hand()

    def let_go(self) -> None:
        """Have nothing in hand."""
        self._from_elsewhere = ()
        self._quiet = True
        self.list.setCurrentIndex(QModelIndex())
        self._show_photos()
        self._quiet = False
        self._show_hand()

    def was_pinned(self, ids: Collection[PhotoId]) -> None:
        """Make the next sitting the one in hand once the tray is read again."""
        self._from_elsewhere = ()
        rows, gone = self.model.rows, set(ids)
        touched = [n for n, row in enumerate(rows) if gone.intersection(row.ids)]
        start = touched[0] if touched else 0
        for row in rows[start:]:
            last = max((n for n, photo in enumerate(row.ids) if photo in gone), default=-1)
            # What comes after the photos pinned, then what was left before them.
            order = (*row.ids[last + 1 :], *row.ids[: last + 1])
            self._next = tuple(photo for photo in order if photo not in gone)
            if self._next:
                break
        self._show_hand()

    def set_one_by_one(self, on: bool) -> None:
        """Take the photos of a sitting in hand one by one, or all that are left of it at once."""
        self._one_by_one = on
        if self._row() is not None:
            self._pick()

    def skip(self) -> None:
        """Leave what is in hand for now: take the next sitting in hand, or the next photo."""
        if not self.model.rows:
            return
        row, index = self._row(), self.list.currentIndex().row()
        if row is not None and self._one_by_one and not self._from_elsewhere:
            place = row.ids.index(self.in_hand()[-1]) + 1
            if place < len(row.ids):
                self.grid.select((row.ids[place],))
                return
        if self._from_elsewhere and row is not None:
            self._pick()
            return
        goal = self.model.index((index + 1) % len(self.model.rows))
        if goal.row() == index:
            self._pick()
        self.list.setCurrentIndex(goal)

    def _row(self) -> ToPlace | None:
        index = self.list.currentIndex()
        return self.model.rows[index.row()] if index.isValid() else None

    def _show_photos(self, wanted: Sequence[PhotoId] = ()) -> None:
        """Show the sitting's photos; one by one, the first that is wanted is picked."""
        row = self._row()
        self.grid.setVisible(row is not None)
        self.grid.set_groups([Group(row.title, "", row.ids)] if row else [])
        if row is not None and self._one_by_one:
            here = set(row.ids)
            first = next((photo for photo in wanted if photo in here), row.ids[0])
            self.grid.select((first,))

    def _show_hand(self) -> None:
        self._done.setVisible(not self.model.rows)
        self._split.setVisible(bool(self.model.rows))
        count = len(self.in_hand())
        photos = "1 photo" if count == 1 else f"{count:,} photos"
        if self._from_elsewhere:
            words = f"In hand: {photos} selected elsewhere."
        elif count:
            words = f"In hand: {photos}. Drag to a panel, or go to one and press Enter."
        else:
            words = "Pick a sitting to take it in hand." if self.model.rows else ""
        self._hand.setText(words)
        self.hand_changed.emit()

    @Slot(QModelIndex, QModelIndex)
    def _on_current(self, _current: QModelIndex, _previous: QModelIndex) -> None:
        if not self._quiet:
            self._pick()

    @Slot(QModelIndex)
    def _on_clicked(self, _index: QModelIndex) -> None:
        if self._from_elsewhere:
            self._pick()

    def _pick(self) -> None:
        self._from_elsewhere = ()
        self._quiet = True
        self._show_photos()
        self._quiet = False
        self._show_hand()
        self.picked.emit(self.in_hand())

    @Slot(object)
    def _on_grid_selection(self, _ids: object) -> None:
        if not self._quiet:
            self._from_elsewhere = ()
            self._show_hand()
            self.picked.emit(self.in_hand())
