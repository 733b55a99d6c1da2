"""Which of the metalwork shows: all of it where it is worked on, thin lines where one looks."""

from collections.abc import Iterable

from PySide6.QtCore import QObject, Qt, Signal, Slot
from PySide6.QtGui import QPainter, QPainterPath
from PySide6.QtWidgets import QGraphicsPathItem, QStyleOptionGraphicsItem, QWidget
from shiboken6 import isValid

from journal.desktop.desk import MetalKind, MetalSelected
from journal.desktop.widgets import metal_pens as pens
from journal.desktop.widgets.canvas_sheet import CanvasSheet
from journal.desktop.widgets.layers import Layer
from journal.desktop.widgets.measure_items import MeasureItem
from journal.desktop.widgets.metal_items import OVER_ALL, MetalItem, colours_for
from journal.desktop.widgets.metal_layer import MetalLayer
from journal.domain.readings import MeasureKind

_THIN = 1.2
#: A line is on a panel where one of its points, so far along it, lies on it.
_ALONG = (0.0, 0.25, 0.5, 0.75, 1.0)
_LINES = frozenset({MetalKind.SEAM, MetalKind.PATCH})
_LAYERS = {
    MetalKind.SEAM: Layer.SEAMS,
    MetalKind.PATCH: Layer.PATCHES,
    MetalKind.ANCHOR: Layer.ANCHORS,
}


class QuietLine(QGraphicsPathItem):
    """A seam or the outline of a patch where one only looks: a thin line."""

    def __init__(self, path: QPainterPath) -> None:
        super().__init__(path)
        self.setZValue(OVER_ALL)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, widget: QWidget | None = None
    ) -> None:
        """Paint it in the colour of words, whatever the theme."""
        painter.strokePath(self.path(), pens.pen(colours_for(widget).text, _THIN))


class QuietMetal(QObject):
    """Keeps metalwork out of the way of pins and stages while nobody works on it.

    Then seams and patches are thin lines, and show near by or on the panel selected alone; what is
    selected itself shows in full.
    """

    #: Other layers show now: a frozenset of Layer.
    shown_changed = Signal(object)

    def __init__(self, canvas: CanvasSheet, layer: MetalLayer) -> None:
        super().__init__(layer)
        self._canvas = canvas
        self._layer = layer
        self._at_work = False
        self._lines: list[QuietLine] = []
        self.shown: frozenset[Layer] = frozenset()
        canvas.scaled.connect(self._show)
        canvas.panel_selected.connect(self._show)
        layer.changed.connect(self._show)

    def work(self, *, at_work: bool) -> None:
        """Show everything, for it is being worked on, or be quiet again."""
        self._at_work = at_work
        self._show()
        self.shown_changed.emit(self.shown)

    @property
    def at_work(self) -> bool:
        """Whether everything shows."""
        return self._at_work

    @Slot()
    def _show(self) -> None:
        # A scene that is being built anew has let lines and items go; items are laid in a moment.
        for line in filter(isValid, self._lines):
            self._canvas.scene().removeItem(line)
        self._lines = []
        seen: list[MetalItem] = []
        unseen: set[MetalSelected] = set()
        items = {thing: item for thing, item in self._layer.items.items() if isValid(item)}
        for thing, item in items.items():
            in_full = self._at_work or item.is_chosen
            item.setVisible(in_full)
            if in_full or self._is_near(thing, item):
                seen.append(item)
                if not in_full:
                    self._add_line(item)
            else:
                unseen.add(thing)
        for mark in filter(isValid, self._layer.marks):
            mark.setVisible(self._at_work)
        self._layer.unseen = frozenset(unseen)
        self._tell(_layers(self._layer, seen))

    def _tell(self, shown: frozenset[Layer]) -> None:
        if shown != self.shown:
            self.shown = shown
            self.shown_changed.emit(shown)

    def _is_near(self, thing: MetalSelected, item: MetalItem) -> bool:
        if thing.kind not in _LINES:
            return False
        return self._canvas.is_near or self._is_on_panel(_path(item))

    def _is_on_panel(self, path: QPainterPath) -> bool:
        panel = self._canvas.selected_panel
        shapes = self._canvas.paths_of(panel) if panel is not None else ()
        points = [path.pointAtPercent(along) for along in _ALONG] if shapes else []
        return any(shape.contains(point) for shape in shapes for point in points)

    def _add_line(self, item: MetalItem) -> None:
        line = QuietLine(_path(item))
        self._lines.append(line)
        self._canvas.scene().addItem(line)


def _path(item: MetalItem) -> QPainterPath:
    path = getattr(item, "path", None)
    return path if isinstance(path, QPainterPath) else QPainterPath()


def _layers(layer: MetalLayer, seen: Iterable[MetalItem]) -> frozenset[Layer]:
    """The layers that these items belong to."""
    wanted = set(seen)
    found = set()
    for thing, item in layer.items.items():
        if item in wanted:
            is_film = isinstance(item, MeasureItem) and item.measure.kind is MeasureKind.FILM
            found.add(_LAYERS.get(thing.kind, Layer.FILMS if is_film else Layer.READINGS))
    return frozenset(found)
