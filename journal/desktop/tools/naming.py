"""A piece that was drawn and waits for its name."""

from dataclasses import dataclass

from PySide6.QtCore import Signal

from journal.desktop.tools.shaping_tool import ShapingTool
from journal.domain.drawing import Side, System, View


@dataclass(frozen=True, slots=True)
class Naming:
    """What is to be named and what is proposed for it.

    Attributes:
        title: what it is: "New panel", "The piece cut off Sill, left".
        with_side: whether side and system are asked for, too.
    """

    title: str
    name: str
    side: Side
    system: System
    with_side: bool = True


class NamingTool(ShapingTool):
    """A tool whose piece is written once it has a name."""

    #: A piece waits for its name: the Naming, None once it doesn't any more.
    naming_changed = Signal(object)

    def named(self, name: str, side: Side, system: System) -> bool:
        """Write the piece under that name; whether it was taken."""
        raise NotImplementedError


def side_of_view(view: View) -> Side:
    """The side that a view shows, as its name tells; the centre where it tells none."""
    words = view.name.casefold().split()
    for side in (Side.LEFT, Side.RIGHT):
        if side.value in words:
            return side
    return Side.CENTRE
