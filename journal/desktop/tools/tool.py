"""What every tool is to the canvas: it is told what the hand does, and paints over the drawing."""

from collections.abc import Callable
from typing import TYPE_CHECKING, Concatenate, ParamSpec, TypeVar

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QTransform

from journal.domain.errors import JournalError
from journal.domain.shapes import Point

if TYPE_CHECKING:
    from journal.actions.session import Session
    from journal.desktop.desk import Desk
    from journal.desktop.widgets.tool_canvas import ToolCanvas

P = ParamSpec("P")
T = TypeVar("T")

#: Keys held while the mouse did something.
Held = Qt.KeyboardModifier


class Tool(QObject):
    """One thing to do on the drawing by hand or key, while it is the canvas's tool.

    Spots are millimetres on the view shown, not caught by anything yet. Between ``begin`` and
    ``end`` the canvas tells it everything; what is half done is dropped by ``cancel`` and never
    written: a tool writes once, when the person lets go or presses Enter.

    Attributes:
        name: what its button says: "Corners".
        icon: the name of its drawn icon.
        what: one sentence for its tool tip.
        cursor: how the pointer looks over the canvas.
        hides_pins: whether photos and signs of stages are out of the way while it is in hand.
    """

    name: str = ""
    icon: str = ""
    what: str = ""
    cursor: Qt.CursorShape = Qt.CursorShape.CrossCursor
    hides_pins: bool = False

    #: What to do next has changed: the line of words.
    hint_changed = Signal(str)

    def __init__(self, desk: "Desk", parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self._canvas: ToolCanvas | None = None
        self._hint = ""

    # What the canvas and the bar ask

    @property
    def canvas(self) -> "ToolCanvas":
        """The canvas it is at work on; only between ``begin`` and ``end``."""
        assert self._canvas is not None, f"{self.name} isn't at work"
        return self._canvas

    @property
    def at_work(self) -> bool:
        """Whether it is some canvas's tool now."""
        return self._canvas is not None

    @property
    def hint(self) -> str:
        """What to do next, in one line."""
        return self._hint

    def say(self, hint: str) -> None:
        """Show what to do next."""
        if hint != self._hint:
            self._hint = hint
            self.hint_changed.emit(hint)

    # What it is told

    def begin(self, canvas: "ToolCanvas") -> None:
        """Be the canvas's tool from now on."""
        self._canvas = canvas

    def end(self) -> None:
        """Be it no more; what is half done is dropped."""
        while self.cancel():
            pass
        self._canvas = None

    def pressed(self, point: Point, held: Held) -> None:
        """The left button went down."""

    def moved(self, point: Point, held: Held) -> None:
        """The pointer moved, with the left button down or without."""

    def released(self, point: Point, held: Held) -> None:
        """The left button went up."""

    def double_clicked(self, point: Point, held: Held) -> None:
        """The left button went down a second time; a press like any other unless said otherwise."""
        self.pressed(point, held)

    def key(self, event: QKeyEvent) -> bool:
        """A key went down; whether the tool had a use for it."""
        del event
        return False

    @property
    def is_half_done(self) -> bool:
        """Whether something was begun that isn't written yet: Ctrl+Z steps back in it then."""
        return False

    def step_back(self) -> None:
        """Take back the last step of what is half done; all of it, unless said otherwise."""
        self.cancel()

    def cancel(self) -> bool:
        """Drop what is half done (Esc); whether there was anything."""
        return False

    def shown_changed(self) -> None:
        """The canvas shows another drawing or another view now."""
        self.cancel()

    def paint_over(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint over the drawing, in pixels; ``to_screen`` takes millimetres to pixels."""

    # What it does

    def attempt(
        self,
        function: "Callable[Concatenate[Session, P], T]",
        *args: P.args,
        **kwargs: P.kwargs,
    ) -> T | None:
        """Do an action now and tell everybody what changed.

        An obstacle becomes a message and a mark where the hand was last (see ``spot``), and None.
        """
        try:
            result = function(self.desk.session, *args, **kwargs)
        except JournalError as error:
            self.refuse(str(error))
            return None
        self.desk.announce(result)
        return result

    def refuse(self, words: str) -> None:
        """Say why something can't be done, above the page and at the place."""
        self.desk.message.emit(words, "error")
        self.canvas.mark_fault(self.spot(), words)

    def spot(self) -> Point | None:
        """Where a refusal is marked: what is being worked on, else where the pointer is."""
        return self.canvas.pointer

    def repaint(self) -> None:
        """Have the canvas painted anew soon."""
        if self._canvas is not None:
            self._canvas.viewport().update()
