"""What a grid of photos holds and where it stands: groups, selection, scrolling."""

from collections.abc import Iterable, Sequence

from PySide6.QtCore import QPoint, QRect, QTimer, Signal
from PySide6.QtGui import QAccessible, QAccessibleEvent, QPixmap
from PySide6.QtWidgets import QAbstractScrollArea, QWidget

from journal.desktop.widgets.grid_folds import Folds
from journal.desktop.widgets.grid_layout import GridLayout, Group
from journal.desktop.widgets.grid_paint import cell_size
from journal.desktop.widgets.grid_selection import Selection
from journal.desktop.widgets.photo_words import cell_words, mark_words
from journal.desktop.widgets.thumbs import Card, ThumbCache
from journal.domain.ids import PhotoId

#: The least widths a cell can have, in pixels; cells widen until their rows fill the grid.
EDGES = (96, 128, 160, 192, 224, 256)

#: Between cells, and between them and the edge, in pixels.
GAP, MARGIN = 8, 12

_WANT_DELAY_MS = 15
_PIXEL_BYTES = 4
#: The screen that shows, the one above, the one below, and one to spare.
_SCREENS_HELD = 4


class GridBase(QAbstractScrollArea):
    """Photos in rows under the headings of their sittings, without hands and without paint."""

    #: Other photos are selected: a tuple of photo numbers in the order of the grid.
    selection_changed = Signal(object)
    #: A photo is to be shown large: its number.
    opened = Signal(int)
    #: The width of the cells has changed, in pixels.
    edge_changed = Signal(int)
    #: Something else shows at the top, by scrolling or by another layout.
    scrolled = Signal()
    #: The keyboard is on another photo: its number.
    current_changed = Signal(int)
    #: A tile that stands for several photos is to be opened, or these to be folded again.
    fold_wanted = Signal(int)

    def __init__(self, cache: ThumbCache, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.cache = cache
        self.selection = Selection()
        self.folds = Folds()
        self._groups: tuple[Group, ...] = ()
        self._edge = 160
        self._layout = self._lay_out()
        self._want_timer = QTimer(self, singleShot=True, interval=_WANT_DELAY_MS)
        self._want_timer.timeout.connect(self._want)
        cache.arrived.connect(self._on_arrived)

    # What is shown

    def set_groups(self, groups: Sequence[Group], folds: Folds | None = None) -> None:
        """Show these sittings; what stays in the grid keeps its selection and its place.

        ``folds`` are the photos that stand for several; selecting one selects all it stands for.
        """
        at_top = self.photo_at_top()
        self.folds = folds or Folds()
        self._groups = tuple(groups)
        self._relayout()
        order = tuple(photo for group in self._groups for photo in group.ids)
        changed = self.selection.set_order(order)
        if at_top is not None and self.verticalScrollBar().value() > 0:
            self._put_at_top(*at_top)
        self._refresh_view()
        if changed:
            self._tell_selection()

    @property
    def grid_layout(self) -> GridLayout:
        """Where everything lies."""
        return self._layout

    @property
    def edge(self) -> int:
        """The least width of a cell, in pixels."""
        return self._edge

    def set_edge(self, edge: int) -> None:
        """Make the cells at least so wide, and keep the photo at the top where it is."""
        edge = min(EDGES, key=lambda known: abs(known - edge))
        if edge == self._edge:
            return
        at_top = self.photo_at_top()
        self._edge = edge
        self._relayout()
        if at_top is not None:
            self._put_at_top(*at_top)
        self._refresh_view()
        self.edge_changed.emit(edge)

    def step_edge(self, steps: int) -> None:
        """Make the cells larger (or smaller, if negative) by so many steps."""
        place = EDGES.index(self._edge) + steps
        self.set_edge(EDGES[max(0, min(len(EDGES) - 1, place))])

    def refresh_cards(self) -> None:
        """Read thumbnails and marks again, since the photos have changed."""
        self.cache.mark_stale()
        self._want_timer.start()

    # Selection

    def selected(self) -> tuple[PhotoId, ...]:
        """The selected photos in the order of the grid, those folded away among them."""
        return self.folds.unfolded(self.selection.ids())

    def all_photos(self) -> tuple[PhotoId, ...]:
        """Every photo in the order of the grid, those folded away among them."""
        return self.folds.unfolded(self.selection.order)

    def holds(self, photo: PhotoId) -> bool:
        """Whether a photo is in the grid, be it folded away."""
        return self.folds.front(photo) in self.selection.places

    def select(self, photos: Iterable[PhotoId]) -> None:
        """Select exactly these photos and bring the first of them into view."""
        before = set(self.selection.chosen)
        self.selection.replace(map(self.folds.front, photos))
        if self.selection.chosen == before:
            return
        self._bring_current()
        self.selection_applied()

    def select_group(self, group: int, *, keep: bool = False) -> None:
        """Select a whole sitting; ``keep`` leaves what was selected before."""
        span = self._layout.span(group)
        if not span:
            return
        if not keep:
            self.selection.clear()
        self.selection.chosen.update(self.selection.order[span.start : span.stop])
        self.selection.go(span.start)
        self.selection.anchor = self.selection.current
        self.selection_applied()

    def selection_applied(self) -> None:
        """Show and tell what the selection has become; called by whoever changed it."""
        self.viewport().update()
        self._tell_selection()
        self.current_moved()

    def current_moved(self) -> None:
        """Show and tell where the keyboard has gone."""
        self.viewport().update()
        current = self.selection.current
        if current is None:
            return
        self.current_changed.emit(current)
        self.setAccessibleDescription(self.current_words())
        event = QAccessibleEvent(self, QAccessible.Event.DescriptionChanged)
        QAccessible.updateAccessibility(event)

    def current_words(self) -> str:
        """The current photo in words: what its cell shows, and how many are selected."""
        index = self.selection.current_index
        if index is None:
            return f"{self._layout.count:,} photos, none selected"
        group = self._groups[self._layout.group_of(index)]
        card = self.cache.card(self.selection.order[index])
        words = [self.words_of(card)] if card else []
        words += self.folds.words(self.selection.order[index])
        words.append(f"sitting {group.title}")
        words.append(f"photo {index + 1:,} of {self._layout.count:,}")
        words.append(f"{len(self.selected()):,} selected")
        return "; ".join(words)

    def _tell_selection(self) -> None:
        self.selection_changed.emit(self.selected())

    # Places

    def content_spot(self, spot: QPoint) -> QPoint:
        """A spot of the viewport as a place in the whole grid."""
        return spot + QPoint(0, self.verticalScrollBar().value())

    def cell_rect(self, photo: PhotoId) -> QRect:
        """Where a photo's cell lies in the viewport; it may be out of sight."""
        index = self.selection.places[photo]
        return self._layout.rect(index).translated(0, -self.verticalScrollBar().value())

    def heading_rect(self, group: int) -> QRect:
        """Where a sitting's heading lies in the viewport; it may be out of sight."""
        top = self.verticalScrollBar().value()
        return self._layout.heading_rect(group).translated(0, -top)

    def show_current(self) -> None:
        """Bring the current photo into view, with its heading if it is in the first row."""
        index = self.selection.current_index
        if index is None:
            return
        rect = self._layout.rect(index)
        first = self._layout.span(self._layout.group_of(index)).start
        if index - first < self._layout.columns:
            rect.setTop(rect.top() - self._layout.heading)
        bar, room = self.verticalScrollBar(), self.viewport().height()
        if rect.top() < bar.value():
            bar.setValue(rect.top())
        elif rect.bottom() > bar.value() + room:
            bar.setValue(rect.bottom() - room + self._layout.gap)

    def _bring_current(self) -> None:
        """Bring the current photo to where it and what follows can be seen."""
        index = self.selection.current_index
        if index is not None and self.isVisible():
            rect, room = self._layout.rect(index), self.viewport().height()
            top = self.verticalScrollBar().value()
            if not (top <= rect.top() and rect.bottom() <= top + room):
                self.verticalScrollBar().setValue(rect.top() - room // 4)

    def scroll_to_group(self, group: int) -> None:
        """Bring a sitting's heading to the top."""
        if 0 <= group < len(self._groups):
            self.verticalScrollBar().setValue(self._layout.heading_rect(group).top())

    def top_group(self) -> int | None:
        """The sitting at the top of what shows."""
        if not self._layout.count:
            return None
        return self._layout.group_at(self.verticalScrollBar().value())

    def heading_words(self, group: int) -> str:
        """A sitting's heading."""
        return self._groups[group].title

    def visible_photos(self) -> list[PhotoId]:
        """The photos that show, from the top."""
        top = self.verticalScrollBar().value()
        order = self.selection.order
        runs = self._layout.runs(top, top + self.viewport().height())
        return [photo for run in runs for photo in order[run.first : run.end]]

    def photo_at_top(self) -> tuple[PhotoId, int] | None:
        """The first photo that shows, and how far below its top the view begins, in pixels."""
        top = self.verticalScrollBar().value()
        for run in self._layout.runs(top, top + self.viewport().height()):
            if run.first < run.end:
                above = top - self._layout.rect(run.first).top()
                return self.selection.order[run.first], above
        return None

    def _put_at_top(self, photo: PhotoId, offset: int) -> None:
        index = self.selection.places.get(photo)
        if index is not None:
            self.verticalScrollBar().setValue(self._layout.rect(index).top() + offset)

    # Pictures

    def pictures_of(self, photos: Sequence[PhotoId]) -> list[QPixmap]:
        """The thumbnails at hand of these photos."""
        cards = (self.cache.card(photo) for photo in photos)
        return [card.pixmap for card in cards if card is not None and card.pixmap is not None]

    def _want(self) -> None:
        """Ask for what shows, then for one more screen below and above."""
        top, room = self.verticalScrollBar().value(), self.viewport().height()
        order = self.selection.order
        wanted = self.visible_photos()
        for start, end in ((top + room, top + 2 * room), (top - room, top)):
            for run in self._layout.runs(max(0, start), max(0, end)):
                wanted.extend(order[run.first : run.end])
        ratio = self.devicePixelRatioF()
        edge = round(self._layout.cell.width() * ratio)
        screen = round(self.viewport().width() * room * ratio * ratio) * _PIXEL_BYTES
        self.cache.make_room(_SCREENS_HELD * screen)
        self.cache.want(wanted, edge)

    def _on_arrived(self, photos: tuple[PhotoId, ...]) -> None:
        room = self.viewport().rect()
        if self.selection.current in photos:
            self.setAccessibleDescription(self.current_words())
        for photo in photos:
            if photo in self.selection.places:
                rect = self.cell_rect(photo)
                if rect.intersects(room):
                    self.viewport().update(rect)

    def words_of(self, card: Card) -> str:
        """A photo in words: its name, caption and marks."""
        return ", ".join([card.photo.name, cell_words(card.photo), *mark_words(card.photo)])

    # Layout

    def _lay_out(self) -> GridLayout:
        width = self.viewport().width()
        room = width - 2 * MARGIN + GAP
        columns = max(1, room // (self._edge + GAP))
        wide = max(self._edge, min(room // columns - GAP, self._edge * 3 // 2))
        return GridLayout(self._groups, width=width, cell=cell_size(wide), gap=GAP, margin=MARGIN)

    def _relayout(self) -> None:
        self._layout = self._lay_out()
        bar, room = self.verticalScrollBar(), self.viewport().height()
        bar.setRange(0, max(0, self._layout.height - room))
        bar.setPageStep(room)
        bar.setSingleStep(max(1, self._layout.pitch // 2))

    def _refresh_view(self) -> None:
        self.viewport().update()
        self._want_timer.start()
        self.scrolled.emit()
