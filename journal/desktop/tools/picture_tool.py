"""What the tools for the picture under a view have in common: handles that stick to it."""

import math

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QTransform

from journal.desktop.desk import Desk
from journal.desktop.theme import Colours, colours_of
from journal.desktop.tools.overlay import on_screen, paint_corner, paint_words
from journal.desktop.tools.shaping_tool import REACH, arrow_step
from journal.desktop.tools.tool import Held, Tool
from journal.desktop.widgets.canvas_underlay import Laid
from journal.domain.errors import JournalError
from journal.domain.homographies import inverse, mapped
from journal.domain.ids import Sha256, ViewId
from journal.domain.shapes import Point

NOTHING_LAID = "Lay a picture under this view first, on the left."


class PictureTool(Tool):
    """A tool for the picture under the view shown.

    Its handles are spots of the picture (pixels): however the picture is placed, they stay on it.
    By keys: Tab steps through them, arrows move the chosen one 1 mm, with Shift 10.
    """

    hides_pins = True
    cursor = Qt.CursorShape.CrossCursor

    #: Another handle is chosen, or a handle moved.
    here_changed = Signal()

    #: Where the handles are at first, in shares of the picture's width and height.
    starts: tuple[tuple[float, float], ...] = ()

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(desk, parent)
        self._of: tuple[ViewId, Sha256] | None = None
        self._pixels: list[Point] = []
        self._chosen = 0
        self._drags = False
        self.say(NOTHING_LAID)

    # What each of them says

    def guide(self) -> str:
        """What to do next while a picture is there."""
        raise NotImplementedError

    def labels(self) -> tuple[str, ...]:
        """A letter for each handle."""
        raise NotImplementedError

    def apply(self) -> None:
        """Do what the tool is for, with the handles where they are."""

    # What the pane asks

    @property
    def laid(self) -> Laid | None:
        """The picture under the view shown."""
        return self.canvas.laid() if self.at_work else None

    @property
    def handles(self) -> tuple[Point, ...]:
        """The handles as spots of the picture, in pixels."""
        return tuple(self._pixels)

    @property
    def places(self) -> tuple[Point, ...]:
        """The handles as they lie on the view, in millimetres."""
        laid = self.laid
        if laid is None:
            return ()
        try:
            return tuple(mapped(laid.underlay.matrix, pixel) for pixel in self._pixels)
        except JournalError:
            return ()

    @property
    def chosen(self) -> int:
        """The place of the handle chosen."""
        return self._chosen

    def here(self) -> Point | None:
        """The chosen handle in millimetres."""
        places = self.places
        return places[self._chosen] if places else None

    def put(self, point: Point) -> None:
        """Move the chosen handle to a spot of the view."""
        laid = self.laid
        if laid is None:
            return
        pixel = mapped(inverse(laid.underlay.matrix), point)
        self._pixels[self._chosen] = Point(
            min(max(pixel.x, 0.0), laid.width), min(max(pixel.y, 0.0), laid.height)
        )
        self.tell()

    def choose(self, place: int) -> None:
        """Choose a handle."""
        self._chosen = place % max(1, len(self._pixels))
        self.tell()

    def spot(self) -> Point | None:
        """Where a refusal is marked: the chosen handle."""
        return self.here() or super().spot()

    def tell(self) -> None:
        """Say what can be done now, and show it."""
        self.say(self.guide() if self.laid is not None else NOTHING_LAID)
        self.here_changed.emit()
        self.repaint()

    # What it is told

    def begin(self, canvas: object) -> None:
        """Put the handles on the picture."""
        super().begin(canvas)  # type: ignore[arg-type]
        self.canvas.underlay_changed.connect(self.shown_changed)
        self.shown_changed()

    def end(self) -> None:
        """Let go of the canvas."""
        self.canvas.underlay_changed.disconnect(self.shown_changed)
        super().end()

    def shown_changed(self) -> None:
        """Put the handles back to where they begin, where another picture lies here now."""
        laid = self.laid
        now = (laid.underlay.view_id, laid.underlay.sha256) if laid else None
        if laid is not None and now != self._of:
            self._pixels = [Point(x * laid.width, y * laid.height) for x, y in self.starts]
            self._chosen = 0
        if laid is None:
            self._pixels = []
        self._of, self._drags = now, False
        self.tell()

    def cancel(self) -> bool:
        """Let go of the handle."""
        had, self._drags = self._drags, False
        return had

    def pressed(self, point: Point, _held: Held) -> None:
        """Take hold of the nearest handle."""
        near = [(math.dist(point, place), n) for n, place in enumerate(self.places)]
        if near and min(near)[0] <= self.canvas.mm(2 * REACH):
            self._drags = True
            self.choose(min(near)[1])

    def moved(self, point: Point, _held: Held) -> None:
        """Drag the handle."""
        if self._drags:
            self.put(point)

    def released(self, _point: Point, _held: Held) -> None:
        """Leave it there."""
        self._drags = False
        self.tell()

    def key(self, event: QKeyEvent) -> bool:
        """Step through the handles, move the chosen one, do it."""
        step, here = arrow_step(event), self.here()
        if here is None:
            return False
        if step is not None:
            self.put(Point(here.x + step[0], here.y + step[1]))
        elif event.key() in (Qt.Key.Key_Tab, Qt.Key.Key_Backtab):
            self.choose(self._chosen + (1 if event.key() == Qt.Key.Key_Tab else -1))
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.apply()
        else:
            return False
        return True

    # Painting

    @property
    def colours(self) -> Colours:
        """The colours of the theme in use."""
        return colours_of(self.canvas.palette())

    def paint_handles(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint the handles with their letters."""
        for n, (place, words) in enumerate(zip(self.places, self.labels(), strict=False)):
            at = on_screen(place, to_screen)
            paint_corner(painter, at, self.colours, chosen=n == self._chosen)
            at.setY(at.y() - 22)
            paint_words(painter, at, words, self.colours, self.canvas.font())
