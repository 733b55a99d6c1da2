"""What the drawing on screen shows: a view, its panels with their stages, pins, and the scale."""

from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, QPointF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QTransform
from PySide6.QtWidgets import QFrame, QGraphicsItem, QGraphicsScene, QGraphicsView, QWidget

from journal.desktop.theme import colours_of, level_mark, stage_mark
from journal.desktop.widgets.canvas_decor import DecorItem
from journal.desktop.widgets.canvas_items import PanelItem, SheetItem, Touch
from journal.desktop.widgets.canvas_pins import Dot, Gathered, Spot
from journal.desktop.widgets.canvas_signs import Staged, place_signs
from journal.desktop.widgets.pin_places import PinPlaces, sort_pins
from journal.domain.drawing import Drawing, Panel, View
from journal.domain.ids import PanelId, ViewId

if TYPE_CHECKING:
    from collections import Counter

    from PySide6.QtGui import QPainterPath

    from journal.actions.tints import Tinted
    from journal.desktop.widgets.canvas_underlay import Laid, UnderlayItem
    from journal.domain.hits import PanelMap
    from journal.domain.photos import Pin

_MARGIN = 28
_ZOOM_MOST = 12.0
#: Drawn so many times larger than the whole view, pins of one place spread.
_SPREAD_FROM = 2.0
#: A miss by so many pixels still counts, for small pieces and big fingers.
_SLACK = 9


class CanvasSheet(QGraphicsView):
    """One view of the drawing at a time, in millimetres, fitted to the window; no hands yet."""

    #: A panel was clicked: its number.
    panel_clicked = Signal(int)
    #: A panel was chosen, by Enter or a double click: its number.
    panel_chosen = Signal(int)
    #: The keyboard or the pointer is on another panel: its number, 0 for none.
    panel_pointed = Signal(int)
    #: Dots were clicked: a tuple of photo numbers.
    pins_clicked = Signal(object)
    #: Photos were dropped on a panel: their numbers, panel, view, and x, y in millimetres.
    photos_dropped = Signal(object, int, int, float, float)
    #: Another picture lies under the view shown, or none, or otherwise.
    underlay_changed = Signal()
    #: Another view is shown: its number.
    view_changed = Signal(int)
    #: The scene was made anew: what is laid over the panels is to be laid there again.
    rebuilt = Signal()
    #: The scale is another.
    scaled = Signal()
    #: Another panel is marked as the one looked at.
    panel_selected = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._drawing = Drawing((), (), ())
        self._view: View | None = None
        self._stages: dict[PanelId, str] = {}
        self._stage_names: tuple[str, ...] = ()
        self._tinted: Tinted | None = None
        self._laid: dict[ViewId, Laid] = {}
        self.underlay_item: UnderlayItem | None = None
        self._places = PinPlaces()
        self._spots: tuple[Spot, ...] = ()
        self._dots: tuple[Dot, ...] | None = None
        self._gathered = Gathered()
        self._signs: dict[PanelId, QPointF] | None = None
        self._items: dict[PanelId, list[PanelItem]] = {}
        self._map: PanelMap | None = None
        self._selected: PanelId | None = None
        self._hovered: PanelId | None = None
        self._drop: PanelId | None = None
        self._zoom = 1.0
        #: Asked first about a click, at a spot of the viewport; one that says yes has it.
        self.takers: list[Callable[[QPoint], bool]] = []
        self.setScene(QGraphicsScene(self))
        self._dress()

    def _dress(self) -> None:
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.setViewportUpdateMode(QGraphicsView.ViewportUpdateMode.FullViewportUpdate)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.AnchorUnderMouse)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setAcceptDrops(True)
        self.setMinimumSize(320, 220)
        self.setAccessibleName("Drawing of the car")
        self.setAccessibleDescription("Arrow keys travel from panel to panel, Enter chooses.")
        self._recolour()

    # What is shown

    def set_drawing(self, drawing: Drawing) -> None:
        """Show this drawing; the view and the panel stay where they still exist."""
        self._drawing, self._map = drawing, None
        views = {view.id: view for view in drawing.views}
        kept = views.get(self._view.id) if self._view else None
        self._view = kept or (drawing.views[0] if drawing.views else None)
        self._rebuild()

    def set_view(self, view_id: ViewId) -> None:
        """Show another view of the drawing."""
        view = next((v for v in self._drawing.views if v.id == view_id), None)
        if view is None or view == self._view:
            return
        self._view = view
        self._zoom = 1.0
        self._rebuild()
        self.view_changed.emit(view.id)

    @property
    def view_id(self) -> ViewId | None:
        """The view shown."""
        return self._view.id if self._view else None

    def set_stages(self, stages: dict[PanelId, str], names: tuple[str, ...]) -> None:
        """Show how far each panel is; ``names`` are the journal's stages in order."""
        self._stages, self._stage_names = stages, names
        self._apply_stages()

    def set_tint(self, tinted: "Tinted | None") -> None:
        """Show this tint in place of the stages; None: the stages."""
        self._tinted = tinted
        self._apply_stages()

    def set_underlays(self, laid: "Iterable[Laid]") -> None:
        """Take the pictures under the views."""
        self._laid = {one.underlay.view_id: one for one in laid}
        self._lay_under()

    def laid(self) -> "Laid | None":
        """The picture under the view shown, hidden or not."""
        return self._laid.get(self._view.id) if self._view else None

    def _lay_under(self) -> None:
        """Show the picture under the view, and let it be seen through the panels."""
        if self.underlay_item is not None:
            self.scene().removeItem(self.underlay_item)
            self.underlay_item = None
        laid = self.laid()
        is_shown = laid is not None and laid.underlay.shown
        if laid is not None and is_shown:
            from journal.desktop.widgets.canvas_underlay import UnderlayItem

            self.underlay_item = UnderlayItem(laid, self.sceneRect())
            self.scene().addItem(self.underlay_item)
        for items in self._items.values():
            for item in items:
                item.is_hollow = is_shown
        self.viewport().update()
        self.underlay_changed.emit()

    def set_pins(self, pins: "Iterable[Pin]") -> None:
        """Show these photos' places."""
        self.set_places(sort_pins(pins))

    def set_places(self, places: PinPlaces) -> None:
        """Show photos whose places are sorted already."""
        self._places = places
        self._place_pins()

    @property
    def photo_counts(self) -> "Counter[PanelId]":
        """How many photos each panel has."""
        return self._places.counts

    def select_panel(self, panel_id: PanelId | None) -> None:
        """Mark a panel as the one looked at; it may be on another view."""
        self._selected = panel_id
        self._apply_touch()
        self._tell_reader()
        self.panel_selected.emit()

    @property
    def selected_panel(self) -> PanelId | None:
        """The panel marked as the one looked at."""
        return self._selected

    def panels_shown(self) -> tuple[Panel, ...]:
        """The panels on this view."""
        return tuple(items[0].piece for items in self._items.values())

    def panel_spot(self, panel_id: PanelId) -> QPoint | None:
        """A spot of the viewport that is on a panel; None if it isn't on this view."""
        items = self._items.get(panel_id)
        return self.mapFromScene(self.spot_on(panel_id)) if items else None

    def panel_at(self, spot: QPoint) -> PanelId | None:
        """The panel under a spot of the viewport, or just beside it."""
        found = self._panel_under(self.items(spot))
        if found is None:
            around = spot - QPoint(_SLACK, _SLACK)
            near = self.items(around.x(), around.y(), 2 * _SLACK, 2 * _SLACK)
            found = self._panel_under(near)
        return found

    def dots(self) -> tuple[Dot, ...]:
        """The pins as they show now."""
        if self._dots is None:
            transform = self.viewportTransform()
            self._dots = self._gathered.dots(self._spots, transform, spread=self.is_near)
        return self._dots

    @property
    def is_near(self) -> bool:
        """Whether it is drawn so large that small things have room."""
        return self._zoom >= _SPREAD_FROM

    def paths_of(self, panel_id: PanelId) -> "tuple[QPainterPath, ...]":
        """The outlines of a panel on this view, in millimetres."""
        return tuple(item.path for item in self._items.get(panel_id, ()))

    def panel_map(self) -> "PanelMap":
        """The drawing's geometry; its library is slow to import: the first paint goes without."""
        from journal.domain.hits import PanelMap

        if self._map is None:
            self._map = PanelMap(self._drawing)
        return self._map

    def spot_on(self, panel_id: PanelId) -> QPointF:
        """A spot on a panel, in millimetres: the roomiest, once the geometry is there."""
        if self._map is not None and self._view is not None:
            return QPointF(*self._map.centre(self._view.id, panel_id))
        return self._items[panel_id][0].middle

    def set_map(self, panel_map: "PanelMap") -> None:
        """Take the geometry of the drawing shown: signs and dots go where there is most room."""
        self._map = panel_map
        self._place_pins()

    def signs(self) -> dict[PanelId, QPointF]:
        """Where the signs of stages stand now, in pixels."""
        if self._signs is None:
            staged = {
                panel_id: Staged(items[0].path, spot, items[0].stage)
                for panel_id, items in self._items.items()
                if items[0].stage is not None
                and self._is_seen(panel_id, spot := self.spot_on(panel_id))
            }
            self._signs = place_signs(staged, self.viewportTransform(), self.dots())
            for panel_id, items in self._items.items():
                for item in items:
                    item.is_signed = panel_id in self._signs
        return self._signs

    def _is_seen(self, panel_id: PanelId, spot: QPointF) -> bool:
        return self._panel_under(self.scene().items(spot)) == panel_id

    # Building

    def _rebuild(self) -> None:
        self.underlay_item = None
        self.scene().clear()
        self._items = {}
        self._hovered = self._drop = None
        view = self._view
        if view is not None:
            colours = colours_of(self.palette())
            self.scene().setSceneRect(0, 0, view.width, view.height)
            self.scene().addItem(SheetItem(view.width, view.height, colours))
            panels = {panel.id: panel for panel in self._drawing.panels}
            for one in self._drawing.shapes:
                if one.view_id == view.id and one.panel_id in panels:
                    item = PanelItem(panels[one.panel_id], one.shape, one.order, colours)
                    self.scene().addItem(item)
                    self._items.setdefault(one.panel_id, []).append(item)
            for line in self._drawing.decor_on(view.id):
                self.scene().addItem(DecorItem(line, colours))
            self.setAccessibleName(f"Drawing of the car, {view.name}")
        self._lay_under()
        self._apply_stages()
        self._apply_touch()
        self._place_pins()
        self.fit()
        self.rebuilt.emit()

    def _apply_stages(self) -> None:
        colours = colours_of(self.palette())
        for panel_id, items in self._items.items():
            if self._tinted is None:
                mark = stage_mark(colours, self._stage_names, self._stages.get(panel_id, ""))
            else:
                mark = level_mark(colours, self._tinted.levels.get(panel_id, 0))
            for item in items:
                item.stage = mark
        self._forget_dots()

    def _apply_touch(self) -> None:
        for panel_id, items in self._items.items():
            touch = Touch.NONE
            if panel_id == self._drop:
                touch = Touch.DROP
            elif panel_id == self._selected:
                touch = Touch.SELECTED
            elif panel_id == self._hovered:
                touch = Touch.HOVERED
            for item in items:
                item.set_touch(touch)
        self.viewport().update()

    def _place_pins(self) -> None:
        spots = []
        for panel_id in self._items:
            if ids := self._places.loose.get(panel_id):
                at = self.spot_on(panel_id)
                spots.append(Spot(ids, at.x(), at.y(), panel_id=panel_id))
        exact = self._places.exact.get(self._view.id, ()) if self._view else ()
        spots.extend(
            Spot((pin.photo_id,), pin.x, pin.y, pin.facing, pin.panel_id)
            for pin in exact
            if pin.panel_id in self._items and pin.x is not None and pin.y is not None
        )
        self._spots = tuple(spots)
        self._forget_dots()

    def _forget_dots(self) -> None:
        self._dots = self._signs = None
        self.viewport().update()

    def _recolour(self) -> None:
        colours = colours_of(self.palette())
        self.setBackgroundBrush(Qt.GlobalColor.transparent)
        for item in self.scene().items():
            if isinstance(item, PanelItem | SheetItem):
                item.colours = colours
        self._apply_stages()

    # Scale

    def fit(self) -> None:
        """Show the whole view as large as it goes."""
        self._zoom = 1.0
        self._apply_scale()

    def zoom(self, factor: float) -> None:
        """Draw larger or smaller, never smaller than the whole view."""
        self._zoom = max(1.0, min(_ZOOM_MOST, self._zoom * factor))
        self._apply_scale()

    def _apply_scale(self) -> None:
        if self._view is None:
            return
        room = self.viewport().rect().adjusted(_MARGIN, _MARGIN, -_MARGIN, -_MARGIN)
        scale = min(room.width() / self._view.width, room.height() / self._view.height)
        scale = max(scale, 1e-3) * self._zoom
        self.setTransform(QTransform.fromScale(scale, scale))
        self._forget_dots()
        self.scaled.emit()

    # Pointing

    def _panel_under(self, items: Sequence[QGraphicsItem]) -> PanelId | None:
        return next((item.piece.id for item in items if isinstance(item, PanelItem)), None)

    def _point_at(self, panel_id: PanelId | None) -> None:
        if panel_id == self._hovered:
            return
        self._hovered = panel_id
        self.viewport().setCursor(
            Qt.CursorShape.ArrowCursor if panel_id is None else Qt.CursorShape.PointingHandCursor
        )
        self._apply_touch()
        self.panel_pointed.emit(panel_id or 0)

    def words_of(self, panel_id: PanelId) -> str:
        """A panel in words: label, stage, photos."""
        items = self._items.get(panel_id)
        if not items:
            return ""
        words = [items[0].piece.label]
        if stage := self._stages.get(panel_id):
            words.append(stage)
        if self._tinted is not None and (value := self._tinted.words.get(panel_id)):
            words.append(value)
        if count := self._places.counts[panel_id]:
            words.append(f"{count:,} photo" + ("s" if count > 1 else ""))
        return " \u00b7 ".join(words)

    def _tell_reader(self) -> None:
        if self._selected is not None and self._selected in self._items:
            self.setAccessibleDescription(self.words_of(self._selected))

    def sizeHint(self) -> QSize:
        """Room for a car in profile."""
        return QSize(900, 480)
