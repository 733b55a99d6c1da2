"""Thumbnails in memory: asked for by what shows, decoded by reader jobs, bounded by bytes."""

from collections import OrderedDict
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QImage, QPixmap

from journal.desktop.tasks import Task, TaskRunner
from journal.desktop.widgets.image_bytes import image_of
from journal.domain.ids import PhotoId
from journal.domain.photos import Photo
from journal.domain.progress import Context

#: What is asked for a run of photos: each with the bytes of its thumbnail, None where it has none.
#: Called on a reader's thread.
Load = Callable[[Sequence[PhotoId]], Iterable[tuple[Photo, bytes | None]]]

#: The memory that pixels may take, in bytes, until a grid asks for more room.
DEFAULT_BUDGET = 16 * 2**20

_BATCH = 12
_AT_ONCE = 2
#: What a card costs besides its pixels, in bytes (from memory of Python's own sizes).
_CARD_BYTES = 1500


@dataclass(slots=True)
class Card:
    """What the grid knows of a photo: its record and its picture, scaled into a box of ``edge``.

    ``pixmap`` is None where the photo has no picture. ``stale`` cards are shown until a fresh one
    comes.
    """

    photo: Photo
    pixmap: QPixmap | None
    edge: int
    stale: bool = False

    @property
    def cost(self) -> int:
        """The memory it takes, in bytes."""
        pixels = 0 if self.pixmap is None else self.pixmap.width() * self.pixmap.height() * 4
        return pixels + _CARD_BYTES


class ThumbCache(QObject):
    """Cards of photos, the ones looked at last first; the oldest go when the memory is full."""

    #: Cards have come: a tuple of photo numbers.
    arrived = Signal(object)

    def __init__(
        self,
        load: Load,
        tasks: TaskRunner,
        parent: QObject | None = None,
        *,
        budget: int = DEFAULT_BUDGET,
    ) -> None:
        super().__init__(parent)
        self._load = load
        self._tasks = tasks
        self._budget = budget
        self._cards: OrderedDict[PhotoId, Card] = OrderedDict()
        self._bytes = 0
        self._wanted: list[PhotoId] = []
        self._edge = 160
        self._coming: dict[PhotoId, Task] = {}

    @property
    def bytes_held(self) -> int:
        """The memory that the cards take, in bytes."""
        return self._bytes

    def make_room(self, needed: int) -> None:
        """Let the pixels take at least so many bytes: what shows must fit, with its neighbours."""
        self._budget = max(self._budget, needed)

    def card(self, photo: PhotoId) -> Card | None:
        """What is known of a photo now; never reads or decodes anything."""
        card = self._cards.get(photo)
        if card is not None:
            self._cards.move_to_end(photo)
        return card

    def want(self, photos: Sequence[PhotoId], edge: int) -> None:
        """Say what shows now, first what matters most; earlier wishes are forgotten.

        ``edge`` is the width of the box they are drawn in, in device pixels; it is 3/4 as high.
        """
        self._edge = edge
        self._wanted = [photo for photo in photos if self._lacks(photo)]
        self._wanted.reverse()
        self._pump()

    def mark_stale(self) -> None:
        """Read every card again when it is next wanted; until then the old one shows."""
        for card in self._cards.values():
            card.stale = True
        for task in self._coming.values():
            task.cancel()
        self._coming.clear()

    def _lacks(self, photo: PhotoId) -> bool:
        card = self._cards.get(photo)
        return card is None or card.stale or card.edge != self._edge

    def _pump(self) -> None:
        while self._wanted and len(set(self._coming.values())) < _AT_ONCE:
            batch: list[PhotoId] = []
            while self._wanted and len(batch) < _BATCH:
                photo = self._wanted.pop()
                if photo not in self._coming and self._lacks(photo):
                    batch.append(photo)
            if batch:
                self._start(tuple(batch))

    def _start(self, batch: tuple[PhotoId, ...]) -> None:
        edge, load = self._edge, self._load

        def job(context: Context) -> list[tuple[Photo, QImage | None]]:
            ready = []
            for photo, data in load(batch):
                context.checkpoint()
                ready.append((photo, decode(data, edge)))
            return ready

        def done(ready: list[tuple[Photo, QImage | None]]) -> None:
            self._take(batch, ready, edge)

        def failed(_error: Exception) -> None:
            self._forget(batch)
            self._pump()

        task = self._tasks.read(job, owner=self, on_done=done, on_failed=failed)
        for photo in batch:
            self._coming[photo] = task

    def _take(
        self, batch: tuple[PhotoId, ...], ready: list[tuple[Photo, QImage | None]], edge: int
    ) -> None:
        self._forget(batch)
        for photo, image in ready:
            pixmap = None if image is None else QPixmap.fromImage(image)
            self._keep(Card(photo, pixmap, edge))
        self._pump()
        self.arrived.emit(tuple(photo.id for photo, _ in ready))

    def _forget(self, batch: tuple[PhotoId, ...]) -> None:
        for photo in batch:
            self._coming.pop(photo, None)

    def _keep(self, card: Card) -> None:
        old = self._cards.pop(card.photo.id, None)
        if old is not None:
            self._bytes -= old.cost
        self._cards[card.photo.id] = card
        self._bytes += card.cost
        while self._bytes > self._budget and len(self._cards) > 1:
            _, oldest = self._cards.popitem(last=False)
            self._bytes -= oldest.cost


def box_height(edge: int) -> int:
    """How high the box of a thumbnail is that is ``edge`` wide: landscape photos fill it."""
    return edge * 3 // 4


def decode(data: bytes | None, edge: int) -> QImage | None:
    """A picture's bytes as pixels, scaled into ``edge`` by 3/4 ``edge``; None if unreadable."""
    if not data:
        return None
    image = image_of(data)
    if image.isNull():
        return None
    if image.width() > edge or image.height() > box_height(edge):
        image = image.scaled(
            edge,
            box_height(edge),
            Qt.AspectRatioMode.KeepAspectRatio,
            Qt.TransformationMode.SmoothTransformation,
        )
    return image.convertToFormat(QImage.Format.Format_RGB32)
