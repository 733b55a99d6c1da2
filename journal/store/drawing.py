"""The drawing: views, panels and their shapes."""

from journal.domain.drawing import Decor, Drawing, Panel, PanelShape, Side, System, View, Weight
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import (
    from_path_data,
    stroke_from_path_data,
    stroke_to_path_data,
    to_path_data,
)
from journal.store.opened import Subject
from journal.store.reshaping import hang_over, hanging, replace_drawing
from journal.store.rows import insert


class DrawingStore(Subject):
    """The owner's drawing of the car."""

    def begin(self, drawing: Drawing) -> None:
        """Record the drawing of a new journal."""
        db = self._db
        for rank, view in enumerate(drawing.views):
            size = {"width": round(view.width, 3), "height": round(view.height, 3)}
            insert(db, "views", {"id": view.id, "name": view.name, **size, "rank": rank})
        for panel in drawing.panels:
            names = {"name": panel.name, "side": panel.side.value, "system": panel.system.value}
            insert(db, "panels", {"id": panel.id, **names})
        for shape in drawing.shapes:
            place = {"panel_id": shape.panel_id, "view_id": shape.view_id}
            path = to_path_data(shape.shape)
            insert(db, "shapes", {**place, "path": path, "rank": shape.order})
        for rank, line in enumerate(drawing.decor):
            path = stroke_to_path_data(line.stroke)
            look = {"path": path, "weight": line.weight.value, "rank": rank}
            insert(db, "decor", {"view_id": line.view_id, **look})

    def redraw(self, drawing: Drawing) -> None:
        """Record a reshaped drawing; see ``reshaping.replace_drawing``."""
        replace_drawing(self._db, drawing)

    def hang_over(self, gone: PanelId, keep: PanelId) -> None:
        """Move all that hangs on a panel to another one, before it goes."""
        hang_over(self._db, gone, keep)

    def hanging(self, panel_id: PanelId) -> dict[str, int]:
        """What hangs on a panel: so many photos, repair areas, entries, measures."""
        return hanging(self._db, panel_id)

    def views(self) -> tuple[View, ...]:
        """The faces of the drawing, in order."""
        found = self._db.execute("SELECT id, name, width, height FROM views ORDER BY rank, id")
        return tuple(View(ViewId(i), name, width, height) for i, name, width, height in found)

    def panels(self) -> tuple[Panel, ...]:
        """Every panel, in order of number."""
        found = self._db.execute("SELECT id, name, side, system FROM panels ORDER BY id")
        return tuple(Panel(PanelId(i), n, Side(side), System(sy)) for i, n, side, sy in found)

    def shapes(self, view_id: ViewId | None = None) -> tuple[PanelShape, ...]:
        """Every outline, or those on one view, the lowest first."""
        found = self._db.execute(
            "SELECT panel_id, view_id, path, rank FROM shapes "
            "WHERE ?1 IS NULL OR view_id = ?1 ORDER BY view_id, rank, id",
            (view_id,),
        )
        return tuple(
            PanelShape(PanelId(panel), ViewId(view), from_path_data(path), rank)
            for panel, view, path, rank in found
        )

    def decor(self, view_id: ViewId | None = None) -> tuple[Decor, ...]:
        """The lines that help the eye and are no panels, or those on one view."""
        found = self._db.execute(
            "SELECT view_id, path, weight FROM decor "
            "WHERE ?1 IS NULL OR view_id = ?1 ORDER BY rank, id",
            (view_id,),
        )
        return tuple(
            Decor(ViewId(view), stroke_from_path_data(path), Weight(weight))
            for view, path, weight in found
        )

    def get(self, view_id: ViewId | None = None) -> Drawing:
        """The whole drawing, or all of it but the outlines and lines of the other views."""
        return Drawing(self.views(), self.panels(), self.shapes(view_id), self.decor(view_id))
