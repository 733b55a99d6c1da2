"""The drawing's items as pictures, so that what moves over them is painted within a frame."""

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPixmap, QTransform
from PySide6.QtWidgets import QGraphicsItem, QGraphicsScene, QStyleOptionGraphicsItem, QWidget

#: Round what moves, so many pixels are painted with what lies over it.
_AROUND = 160.0


class Still:
    """A picture of all items of a scene, or of all but some that move.

    Attributes:
        below: the items that lie under those that move; all of them where nothing moves.
        above: the items near them that lie over those that move; None where nothing moves.
    """

    def __init__(self, scene: QGraphicsScene, to_screen: QTransform, viewport: QWidget) -> None:
        self._items = scene.items(Qt.SortOrder.AscendingOrder)
        self._to_screen = QTransform(to_screen)
        self._viewport = viewport
        self._whole = self._blank()
        self._paint(self._whole, self._items)
        self._moving: tuple[QGraphicsItem, ...] = ()
        self.below = self._whole
        self.above: QPixmap | None = None

    def fits(self, to_screen: QTransform, viewport: QWidget) -> bool:
        """Whether it is of this size and scale."""
        ratio = viewport.devicePixelRatioF()
        return (
            to_screen == self._to_screen
            and self._whole.size() == _pixels(viewport)
            and self._whole.devicePixelRatioF() == ratio
        )

    def leave_out(self, moving: Iterable[QGraphicsItem]) -> None:
        """Be a picture without these items."""
        gone = tuple(moving)
        if gone == self._moving:
            return
        self._moving = gone
        if not gone:
            self.below, self.above = self._whole, None
            return
        top = max(item.zValue() for item in gone)
        old = QRectF()
        for item in gone:
            old = old.united(self._to_screen.mapRect(item.sceneBoundingRect()))
        around = old.adjusted(-_AROUND, -_AROUND, _AROUND, _AROUND)
        near = [i for i in self._items if self._shows(i).intersects(around) and i not in gone]
        self.below = QPixmap(self._whole)
        self._paint(self.below, [i for i in near if i.zValue() <= top], clip=old)
        self.above = self._blank()
        self._paint(self.above, [i for i in near if i.zValue() > top], clip=around)

    def _shows(self, item: QGraphicsItem) -> QRectF:
        return self._to_screen.mapRect(item.sceneBoundingRect())

    def _blank(self) -> QPixmap:
        made = QPixmap(_pixels(self._viewport))
        made.setDevicePixelRatio(self._viewport.devicePixelRatioF())
        made.fill(Qt.GlobalColor.transparent)
        return made

    def _paint(
        self, picture: QPixmap, items: Iterable[QGraphicsItem], clip: QRectF | None = None
    ) -> None:
        painter = QPainter(picture)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if clip is not None:
            painter.setClipRect(clip)
            painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_Clear)
            painter.fillRect(clip, Qt.GlobalColor.transparent)
            painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_SourceOver)
        paint_items(painter, items, self._to_screen, self._viewport)
        painter.end()


def paint_items(
    painter: QPainter, items: Iterable[QGraphicsItem], to_screen: QTransform, viewport: QWidget
) -> None:
    """Paint items as their scene would."""
    option = QStyleOptionGraphicsItem()
    room = QRectF(QPointF(), QRectF(viewport.rect()).size())
    for item in items:
        if to_screen.mapRect(item.sceneBoundingRect()).intersects(room):
            painter.save()
            painter.setTransform(item.sceneTransform() * to_screen)
            item.paint(painter, option, viewport)
            painter.restore()


def _pixels(viewport: QWidget) -> QSize:
    return viewport.size() * viewport.devicePixelRatioF()
