"""What is welded and measured, laid over the drawing: which of it shows, as it stood on a day."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPointF, Signal
from PySide6.QtGui import QPixmapCache

from journal.desktop.desk import MetalKind, MetalSelected
from journal.desktop.widgets.layers import Layer
from journal.desktop.widgets.measure_items import AnchorItem, MeasureItem
from journal.desktop.widgets.metal_items import MarksItem, MetalItem, PatchItem, SeamItem
from journal.domain.anchors import near_patch, near_seam
from journal.domain.ids import MeasureId, ViewId
from journal.domain.patches import Patch
from journal.domain.readings import Measure, MeasureKind, Reading
from journal.domain.seams import Seam, SeamChange, stretches
from journal.domain.shapes import Point, bounds
from journal.domain.strokes import mm_at, point_at
from journal.domain.when import When

if TYPE_CHECKING:
    from journal.actions.metalwork import Metal
    from journal.desktop.widgets.canvas_sheet import CanvasSheet
    from journal.domain.anchors import AnchorPoint

#: A miss by so many pixels still counts.
_REACH = 7.0
#: How much of what was painted is kept to be painted again, in kilobytes.
_KEPT_KB = 96 * 1024


@dataclass(frozen=True, slots=True)
class Laid:
    """All that can lie over the drawing."""

    metal: "Metal"
    measures: tuple[Measure, ...] = ()
    readings: tuple[Reading, ...] = ()


class MetalLayer(QObject):
    """The items of seams, patches, anchor points and measures on one canvas.

    What is dated after the day looked at isn't there yet.

    Attributes:
        unseen: what of it nobody sees now, and nobody points at.
    """

    #: Other items lie there, or another is chosen.
    changed = Signal()

    def __init__(self, canvas: "CanvasSheet", parent: QObject | None = None) -> None:
        super().__init__(parent or canvas)
        self._canvas = canvas
        self._laid: Laid | None = None
        self._on: When | None = None
        self._shown = frozenset(Layer)
        self._chosen: MetalSelected | None = None
        self._items: dict[MetalSelected, MetalItem] = {}
        self.unseen: frozenset[MetalSelected] = frozenset()
        self._marks: list[MarksItem] = []
        self._kept: dict[Seam, SeamItem] = {}
        self._known: dict[tuple[Seam, tuple[AnchorPoint, ...]], tuple[Point, ...]] = {}
        canvas.rebuilt.connect(self._forget_and_lay)
        canvas.installEventFilter(self)
        # What Qt keeps of painted seams by default is too little for a car full of them.
        QPixmapCache.setCacheLimit(max(QPixmapCache.cacheLimit(), _KEPT_KB))

    @property
    def items(self) -> Mapping[MetalSelected, MetalItem]:
        """What lies on the view shown now."""
        return self._items

    @property
    def marks(self) -> "tuple[MarksItem, ...]":
        """What warns of mountings on the view shown now."""
        return tuple(self._marks)

    @property
    def layers(self) -> frozenset[Layer]:
        """The layers that show."""
        return self._shown

    def lay(self, laid: Laid) -> None:
        """Show this metalwork from now on."""
        self._known, self._kept = {}, {}
        self._laid = laid
        self._lay_anew()

    def look_at(self, on: When | None) -> None:
        """Show it as it stood by the end of a date; None for today."""
        self._on = on
        self._lay_anew()

    def show_layers(self, layers: Iterable[Layer]) -> None:
        """Show these layers and no others."""
        self._shown = frozenset(layers)
        self._lay_anew()

    def choose(self, thing: MetalSelected | None) -> None:
        """Show one thing as selected."""
        self._chosen = thing
        for known, item in self._items.items():
            item.choose(chosen=known == thing)
        self.changed.emit()

    def thing_at(
        self, point: Point, kinds: Iterable[MetalKind] = MetalKind
    ) -> MetalSelected | None:
        """The topmost thing at a spot of the view, or just beside it, that is of these kinds."""
        reach = _REACH / (self._canvas.transform().m11() or 1.0)
        wanted, at = frozenset(kinds), QPointF(*point)
        found = [
            (-item.zValue(), _off(item, point), thing)
            for thing, item in self._items.items()
            if thing.kind in wanted and thing not in self.unseen and item.reaches(at, reach)
        ]
        found = [one for one in found if one[1] <= reach]
        return min(found, key=lambda one: one[:2])[2] if found else None

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Paint everything anew when light turns to dark."""
        if event.type() == QEvent.Type.PaletteChange:
            for item in self._items.values():
                item.update()
        return super().eventFilter(watched, event)

    # Laying

    def _forget_and_lay(self) -> None:
        self._items, self._marks, self._kept = {}, [], {}  # The scene has let the items go already.
        self._lay_anew()

    def _lay_anew(self) -> None:
        scene = self._canvas.scene()
        for item in (*self._items.values(), *self._marks):
            scene.removeItem(item)
        view_id, laid = self._canvas.view_id, self._laid
        self._items, self._marks = {}, []
        if view_id is None or laid is None:
            self.changed.emit()
            return
        for thing, item in self._made(laid, view_id):
            item.choose(chosen=thing == self._chosen)
            self._items[thing] = item
            scene.addItem(item)
        spots = [spot for item in self._items.values() for spot in item.load_bearing]
        self._marks = [MarksItem(self._canvas.sceneRect(), spots)] if spots else []
        for mark in self._marks:
            scene.addItem(mark)
        self._canvas.viewport().update()
        self.changed.emit()

    def _made(self, laid: Laid, view_id: ViewId) -> Iterator[tuple[MetalSelected, MetalItem]]:
        metal = laid.metal
        if Layer.ANCHORS in self._shown:
            for anchor in metal.anchors:
                if anchor.view_id == view_id:
                    yield MetalSelected(MetalKind.ANCHOR, anchor.id), AnchorItem(anchor)
        if Layer.PATCHES in self._shown:
            for patch in metal.patches:
                if patch.view_id == view_id and self._is_in(patch):
                    yield MetalSelected(MetalKind.PATCH, patch.id), self._patch(metal, patch)
        if Layer.SEAMS in self._shown:
            yield from self._seams(metal, view_id)
        yield from self._measures(laid, view_id)

    def _seams(self, metal: "Metal", view_id: ViewId) -> Iterator[tuple[MetalSelected, MetalItem]]:
        changes = _by_seam(metal.changes)
        for seam in metal.seams:
            if seam.view_id == view_id:
                item = self._seam(metal, seam, changes.get(seam.id, []))
                if item is not None:
                    yield MetalSelected(MetalKind.SEAM, seam.id), item

    def _is_in(self, patch: Patch) -> bool:
        on = self._on
        return on is None or (patch.when is not None and patch.when.earliest <= on.latest)

    def _patch(self, metal: "Metal", patch: Patch) -> PatchItem:
        item = PatchItem(patch)
        if near_patch(metal.anchors, patch):
            box = bounds(patch.shape)
            item.load_bearing = (Point((box.left + box.right) / 2, (box.top + box.bottom) / 2),)
        return item

    def _seam(self, metal: "Metal", seam: Seam, changes: list[SeamChange]) -> SeamItem | None:
        states = stretches(seam, changes, self._on)
        if not states:
            return None
        item = self._kept.get(seam)
        if item is not None:
            item.show_stretches(states)
            return item
        item = self._kept[seam] = SeamItem(seam, states)
        item.load_bearing = self._near(seam, metal.anchors)
        return item

    def _near(self, seam: Seam, anchors: "tuple[AnchorPoint, ...]") -> tuple[Point, ...]:
        """The spots of a seam nearest to the mountings it is near; looked for once."""
        key = seam, anchors
        if key not in self._known:
            self._known[key] = tuple(
                point_at(seam.stroke, mm_at(seam.stroke, near.anchor.x, near.anchor.y)[0])
                for near in near_seam(anchors, seam)
            )
        return self._known[key]

    def _measures(self, laid: Laid, view_id: ViewId) -> Iterator[tuple[MetalSelected, MetalItem]]:
        latest = _latest(laid.readings, self._on)
        for measure in laid.measures:
            is_film = measure.kind is MeasureKind.FILM
            layer = Layer.FILMS if is_film else Layer.READINGS
            if measure.view_id == view_id and layer in self._shown:
                item = MeasureItem(measure, latest.get(measure.id, {}))
                yield MetalSelected(MetalKind.MEASURE, measure.id), item


def _by_seam(changes: Iterable[SeamChange]) -> dict[int, list[SeamChange]]:
    found: dict[int, list[SeamChange]] = {}
    for change in changes:
        found.setdefault(change.seam_id, []).append(change)
    return found


def _latest(readings: Iterable[Reading], on: When | None) -> dict[MeasureId, dict[int, Reading]]:
    """The last reading by that day at each place of each measure."""
    found: dict[MeasureId, dict[int, Reading]] = {}
    for reading in sorted(readings, key=lambda r: (r.when, r.id)):
        if on is None or reading.when.earliest <= on.latest:
            found.setdefault(reading.measure_id, {})[reading.point] = reading
    return found


def _off(item: MetalItem, point: Point) -> float:
    """How far off a thing a spot lies, in millimetres; 0 on a patch."""
    if isinstance(item, SeamItem):
        return mm_at(item.seam.stroke, point.x, point.y)[1]
    if isinstance(item, AnchorItem):
        return _apart(point, Point(item.anchor.x, item.anchor.y))
    if isinstance(item, MeasureItem):
        return min(_apart(point, spot) for spot in item.measure.points)
    return 0.0 if item.contains(QPointF(*point)) else float("inf")


def _apart(one: Point, other: Point) -> float:
    return float(((one.x - other.x) ** 2 + (one.y - other.y) ** 2) ** 0.5)
