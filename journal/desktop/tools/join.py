"""The tool that makes one panel of two neighbours."""

from journal.actions import shaping
from journal.desktop.tools.pick_two import PickTwoTool
from journal.domain.ids import PanelId


class JoinTool(PickTwoTool):
    """The panel that stays, then the neighbour that goes into it with all that hangs on it."""

    name = "Join"
    icon = "join"
    what = "Make one panel of two neighbours"

    def guide(self, first: str | None) -> str:
        """What to do next."""
        if first is None:
            return "Click the panel that keeps its name, then the neighbour that goes into it."
        return f"Click the neighbour that goes into {first}, with all that hangs on it."

    def do(self, first: PanelId, second: PanelId) -> None:
        """Join them."""
        if self.attempt(shaping.join_panels, first, second) is not None:
            self.pick(first)
