"""The tool that gives two neighbours one edge."""

from journal.desktop.tools.pick_two import PickTwoTool
from journal.domain.ids import PanelId
from journal.domain.shaping.sharing import WITHIN, share_edge

#: How far apart on screen two edges may lie that are meant to be one, in pixels.
_REACH = 10.0


class ShareTool(PickTwoTool):
    """The panel whose edge stays, then the neighbour whose edge is laid upon it."""

    name = "Share edge"
    icon = "share-edge"
    what = "Lay a neighbour's edge upon a panel's, so that they move as one"

    def guide(self, first: str | None) -> str:
        """What to do next."""
        if first is None:
            return "Click the panel whose edge stays, then the neighbour that is drawn up to it."
        return f"Click the neighbour whose edge is to be laid upon that of {first}."

    def do(self, first: PanelId, second: PanelId) -> None:
        """Give them one edge, as far apart as the eye takes for near at this scale."""
        view = self.view_id
        if view is None:
            return
        within = max(WITHIN, round(self.canvas.mm(_REACH)))
        label = f"Give {self.label_of(first)} and {self.label_of(second)} one edge"
        if self.reshape(label, lambda d: share_edge(d, view, first, second, within)) is not None:
            self.pick(first)
