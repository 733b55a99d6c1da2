"""The Timeline page: every photo in the order it was taken, sitting by sitting."""

from PySide6.QtCore import Qt, Slot
from PySide6.QtWidgets import (
    QSizePolicy,
    QStackedLayout,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from journal.actions import timeline
from journal.actions.photos import removed_photos
from journal.desktop.desk import Desk, Nothing, PhotosSelected, Selection
from journal.desktop.pages import Page
from journal.desktop.pages.timeline_acts import TimelineActs
from journal.desktop.pages.timeline_bars import SelectionBar, TimelineBar
from journal.desktop.pages.timeline_bursts import TimelineBursts
from journal.desktop.pages.timeline_groups import (
    Record,
    Shown,
    by_month,
    group_for,
    groups,
    moments_of,
    record,
)
from journal.desktop.tasks import Task
from journal.desktop.widgets.ask_bar import AskBar
from journal.desktop.widgets.parts import EmptyState, button
from journal.desktop.widgets.photo_grid import PhotoGrid
from journal.desktop.widgets.photo_viewer import PhotoViewer
from journal.desktop.widgets.thumb_source import thumb_cache
from journal.desktop.widgets.year_strip import Month, YearStrip
from journal.domain.changes import Changes
from journal.domain.ids import PhotoId
from journal.domain.progress import Context
from journal.domain.sittings import sittings

_ORDER_KINDS = frozenset({"photos", "pins", "car", "cameras"})

#: What bursts rest on: when photos were taken and how they look.
_BURST_KINDS = frozenset({"photos", "cameras"})

_NOTHING_SHOWN = {
    Shown.TO_PLACE: ("Every photo has its place", "Nothing waits to be pinned to the drawing."),
    Shown.UNDATED: ("Every photo has a date", "Some are surer than others: see the inspector."),
    Shown.REMOVED: ("No photo is removed", "What was removed is back in its place."),
}


class TimelinePage(Page):
    """All photos in sittings, the years below, and what can be done with the selected ones."""

    title = "Timeline"
    icon = "timeline"

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._record = Record((), frozenset())
        self._months: tuple[Month | None, ...] = ()
        self._reading: Task | None = None
        self._wanted: tuple[PhotoId, ...] = ()
        self._quiet = self._jumping = self._take_next = self._has_new = False
        self._viewer: PhotoViewer | None = None
        self.bar = TimelineBar()
        self.grid = PhotoGrid(thumb_cache(desk))
        self.ask_bar = AskBar()
        self.acts = TimelineActs(desk, self.grid, self.ask_bar)
        self.selection_bar = SelectionBar(self.acts)
        self.bursts = TimelineBursts(desk, self)
        self.years = YearStrip()
        self._build()
        self._connect()

    def _build(self) -> None:
        add = button("&Add photos", self.desk.add_wanted.emit, icon="add-photos", role="primary")
        add.setEnabled(not self.desk.read_only)
        self._empty = EmptyState(
            "timeline",
            "No photos yet",
            "Add the photos from your phones and cameras, whole folders at once. They are kept "
            "byte for byte, sorted by when they were taken, and gathered into sittings.",
            add,
        )
        self._stack = QStackedLayout()
        self._stack.addWidget(self.grid)
        self._stack.addWidget(self._empty)
        self._filtered: dict[Shown, EmptyState] = {}
        for shown, words in _NOTHING_SHOWN.items():
            show_all = button("Show &all photos", lambda: self.bar.show_only(Shown.ALL))
            self._filtered[shown] = EmptyState("done", *words, show_all)
            self._stack.addWidget(self._filtered[shown])
        self._second = QStackedWidget()
        self._second.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._second.addWidget(self.selection_bar)
        self._second.addWidget(self.ask_bar)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(self.bar)
        layout.addWidget(self._second)
        layout.addLayout(self._stack, 1)
        layout.addWidget(self.years)
        self.grid.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)

    def _connect(self) -> None:
        self.bar.changed.connect(self._show_groups)
        self.bar.folds_wanted.connect(lambda on: self.bursts.fold_all(folded=on))
        self.bursts.changed.connect(self._show_tiles)
        self.grid.fold_wanted.connect(self.bursts.toggle)
        self.bar.edge_wanted.connect(self.grid.set_edge)
        self.grid.edge_changed.connect(self.bar.show_edge)
        self.grid.selection_changed.connect(self._on_selected)
        self.grid.opened.connect(self.open_photo)
        self.grid.customContextMenuRequested.connect(self.acts.show_menu)
        self.grid.scrolled.connect(self._on_scrolled)
        self.years.moved.connect(self._on_year)
        self.acts.last_changed.connect(self._on_pinned)
        self.ask_bar.asked.connect(self._on_asked)
        self.ask_bar.ended.connect(self._on_answered)

    # --- showing ---

    def refresh(self, changes: Changes | None) -> None:
        """Read sittings, places and dates again, in a reader's thread."""
        if changes is not None and not changes.kinds & _ORDER_KINDS:
            return
        self._has_new |= changes is None or bool(changes.kinds & _BURST_KINDS)
        if changes is not None:
            self.grid.refresh_cards()
        session = self.desk.session

        def job(_context: Context) -> Record:
            found = timeline.moments(session)
            pause = timeline.pause_minutes(session, found)
            gone = sittings(moments_of(removed_photos(session)), pause)
            return record(sittings(found, pause), found, gone)

        if self._reading is not None:
            self._reading.cancel()
        self._reading = self.desk.read(job, self._on_read, self)

    def show_selection(self, selection: Selection) -> None:
        """Select the photos that were selected elsewhere and bring them into view."""
        ids = selection.ids if isinstance(selection, PhotosSelected) else ()
        if ids and set(ids) != set(self.grid.selected()):
            self._wanted = ids
            self._select_wanted()

    def _on_read(self, found: Record) -> None:
        self._reading, self._record = None, found
        self._show_groups()
        if self._has_new:
            self._has_new = False
            self.bursts.read()

    @Slot()
    def _show_tiles(self) -> None:
        """Fold and open bursts; what waits for photos to be pinned goes on waiting."""
        waits, self._take_next = self._take_next, False
        self._show_groups()
        self._take_next = waits

    @Slot()
    def _show_groups(self) -> None:
        """Show the sittings in the order and with the filter that are chosen."""
        shown = self.bar.shown
        if shown is Shown.REMOVED and not self._record.removed:
            self.bar.show_only(Shown.ALL)
            return
        self.acts.show_removed(removed=shown is Shown.REMOVED)
        rows, self._months = groups(self._record, shown, newest_first=self.bar.newest_first)
        before = self.grid.selected()
        tiles, folds = self.bursts.folded(rows)
        self._quiet = True
        self.grid.set_groups(tiles, folds)
        self._quiet = False
        self._follow_selection(before)
        self.years.set_counts(by_month(rows, self._months))
        self.years.setVisible(any(self._months))
        self.bar.show_counts(self._record.counts())
        self.bar.show_bursts(self.bursts.count, folded=self.bursts.is_folded)
        self._show_layer(bool(rows), shown)
        self._select_wanted()
        self._on_scrolled()
        self._show_selected()

    def _follow_selection(self, before: tuple[PhotoId, ...]) -> None:
        """Tell everybody when selected photos are gone; take up the next sitting to place."""
        after, take_next = self.grid.selected(), self._take_next
        self._take_next = False
        current = self.grid.selection.current_index
        if take_next and before and not after and current is not None:
            self.grid.select_group(self.grid.grid_layout.group_of(current))
            self.grid.show_current()
        elif len(after) != len(before) and self.desk.selection == PhotosSelected(before):
            self.desk.select(PhotosSelected(after) if after else Nothing())

    def _show_layer(self, has_photos: bool, shown: Shown) -> None:
        if has_photos:
            self._stack.setCurrentWidget(self.grid)
        elif shown is Shown.ALL:
            self._stack.setCurrentWidget(self._empty)
        else:
            self._stack.setCurrentWidget(self._filtered[shown])
        has_any = bool(self._record.count or self._record.removed)
        self.bar.setVisible(has_any)
        self._second.setVisible(has_any)

    def _select_wanted(self) -> None:
        """Select what was selected elsewhere, showing all photos where the filter hides it."""
        if not self._wanted or not self._record.count:
            return
        wanted, self._wanted = self._wanted, ()
        if not any(map(self.grid.holds, wanted)):
            if self.bar.shown is Shown.ALL:
                return
            self._wanted = wanted
            self.bar.show_only(Shown.ALL)
            return
        self.bursts.open_for(wanted)
        self._quiet = True
        self.grid.select(wanted)
        self._quiet = False
        self._show_selected()

    def _show_selected(self) -> None:
        count = len(self.grid.selected())
        removed = self.bar.shown is Shown.REMOVED
        self.selection_bar.show_count(count, writable=not self.desk.read_only, removed=removed)

    # --- reacting ---

    @Slot(object)
    def _on_selected(self, ids: tuple[PhotoId, ...]) -> None:
        self._show_selected()
        if not self._quiet:
            # Removed photos are no matter for the other pages, which would take them in hand.
            has_use = bool(ids) and self.bar.shown is not Shown.REMOVED
            self.desk.select(PhotosSelected(ids) if has_use else Nothing())

    @Slot()
    def _on_pinned(self) -> None:
        """Where only photos to place are shown, the next sitting comes to hand by itself."""
        self._take_next = self.bar.shown is Shown.TO_PLACE

    @Slot()
    def _on_asked(self) -> None:
        self._second.setCurrentWidget(self.ask_bar)

    @Slot()
    def _on_answered(self) -> None:
        self._second.setCurrentWidget(self.selection_bar)
        self.grid.setFocus()

    @Slot(int)
    def open_photo(self, number: int) -> None:
        """Show a photo large; the arrow keys walk through what the timeline shows."""
        if self._viewer is None:
            over = self.window()
            self._viewer = PhotoViewer(self.desk, self.grid.cache, over)
            self._viewer.closed.connect(self._on_viewer_closed)
        self._viewer.open_at(self.grid.all_photos(), PhotoId(number))

    @Slot(int)
    def _on_viewer_closed(self, number: int) -> None:
        self.bursts.open_for([PhotoId(number)])
        self.grid.select([PhotoId(number)])

    @Slot()
    def _on_scrolled(self) -> None:
        if self._jumping:
            return
        group = self.grid.top_group()
        self.years.set_place(self._months[group] if group is not None else None)
        self.bar.show_here(self.grid.heading_words(group) if group is not None else "")

    @Slot(object)
    def _on_year(self, month: Month) -> None:
        group = group_for(self._months, month)
        if group is not None:
            self._jumping = True
            self.grid.scroll_to_group(group)
            self._jumping = False
            self.bar.show_here(self.grid.heading_words(group))
