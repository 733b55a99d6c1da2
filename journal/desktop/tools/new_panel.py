"""The name and the writing of a panel just drawn."""

from journal.desktop.tools.drawing_tool import DrawingTool
from journal.desktop.tools.naming import Naming, side_of_view
from journal.domain.drawing import Drawing, Panel, Side, System
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Shape
from journal.domain.shaping import making


def name_for(drawing: Drawing, view_id: ViewId, beside: PanelId | None) -> Naming:
    """What is proposed for a new panel: the view's side, the system of the panel marked."""
    side = side_of_view(drawing.view(view_id))
    system = drawing.panel(beside).system if beside is not None else System.OUTER
    return Naming("New panel", "", side, system)


def write_panel(tool: DrawingTool, shape: Shape, name: str, side: Side, system: System) -> bool:
    """Write a panel that was drawn, and select it; whether it was taken.

    A panel of that name and side that isn't on the view yet gets the shape there.
    """
    view = tool.view_id
    if view is None:
        return False
    known = _elsewhere(tool.drawing, name, side, view)
    label = Panel(PanelId(0), " ".join(name.split()), side, system).label
    if known is None:
        made = tool.reshape(
            f"Draw {label}", lambda d: making.add_panel(d, name, side, system, view, shape)
        )
    else:
        view_name = tool.drawing.view(view).name
        made = tool.reshape(
            f"Draw {label} on {view_name}",
            lambda d: making.put_shape(d, known.id, view, shape),
        )
    if made is None:
        return False
    panel_id = known.id if known else PanelId(made.made or 0)
    tool.ask_name(None)
    tool.cancel()
    tool.pick(panel_id)
    return True


def _elsewhere(drawing: Drawing, name: str, side: Side, view_id: ViewId) -> Panel | None:
    """The panel of that name and side, where it is drawn on other views only."""
    wanted = " ".join(name.split()).casefold()
    for panel in drawing.panels:
        if panel.name.casefold() == wanted and panel.side == side:
            shown = {view.id for view in drawing.views_of(panel.id)}
            return None if view_id in shown else panel
    return None
