"""Recording a drawing that was reshaped: only what differs is written."""

import sqlite3
from collections import defaultdict
from collections.abc import Iterable, Mapping
from typing import Any

from journal.domain.drawing import Drawing
from journal.domain.shapes import stroke_to_path_data, to_path_data
from journal.store.rows import delete, insert, update

_Rows = dict[Any, dict[str, Any]]


def replace_drawing(db: sqlite3.Connection, drawing: Drawing) -> None:
    """Make the recorded drawing exactly this one.

    Views and panels keep their numbers; those of a number not recorded yet are new. What hangs on
    a panel or a view that goes must have been taken off before.
    """
    views, panels = _views(drawing), _panels(drawing)
    gone = _write_by_id(db, "views", views), _write_by_id(db, "panels", panels)
    _write_listed(db, "shapes", _shapes(drawing), ("panel_id", "view_id"))
    _write_listed(db, "decor", _decor(drawing), ("view_id",))
    for table, ids in zip(("views", "panels"), gone, strict=True):
        for row in ids:
            delete(db, table, row)


def _views(drawing: Drawing) -> _Rows:
    return {
        view.id: {
            "name": view.name,
            "width": round(view.width, 3),
            "height": round(view.height, 3),
            "rank": rank,
        }
        for rank, view in enumerate(drawing.views)
    }


def _panels(drawing: Drawing) -> _Rows:
    return {
        panel.id: {"name": panel.name, "side": panel.side.value, "system": panel.system.value}
        for panel in drawing.panels
    }


def _shapes(drawing: Drawing) -> Iterable[dict[str, Any]]:
    for shape in drawing.shapes:
        place = {"panel_id": shape.panel_id, "view_id": shape.view_id}
        yield {**place, "path": to_path_data(shape.shape), "rank": shape.order}


def _decor(drawing: Drawing) -> Iterable[dict[str, Any]]:
    for rank, line in enumerate(drawing.decor):
        look = {"path": stroke_to_path_data(line.stroke), "weight": line.weight.value}
        yield {"view_id": line.view_id, **look, "rank": rank}


def _write_by_id(db: sqlite3.Connection, table: str, wanted: _Rows) -> list[int]:
    """Write rows under their own numbers; gives the numbers of those that must go."""
    known = {row for (row,) in db.execute(f"SELECT id FROM {table}").fetchall()}
    for row, values in wanted.items():
        # Two names may change places: the one that gives way is written first.
        if row in known:
            _make_way(db, table, row, values)
            update(db, table, row, values)
        else:
            insert(db, table, {"id": row, **values})
    return sorted(known - set(wanted))


def _make_way(db: sqlite3.Connection, table: str, row: int, values: Mapping[str, Any]) -> None:
    keys = ["name", "side"] if table == "panels" else ["name"]
    same = " AND ".join(f"{key} = ?" for key in keys)
    found = db.execute(
        f"SELECT id FROM {table} WHERE {same} AND id <> ?", (*(values[k] for k in keys), row)
    ).fetchone()
    if found:
        update(db, table, found[0], {"name": f"{values['name']} (was {found[0]})"})


def _write_listed(
    db: sqlite3.Connection, table: str, wanted: Iterable[dict[str, Any]], key: tuple[str, ...]
) -> None:
    """Write rows that have no number of their own, matched by ``key`` and their order in it."""
    kept: dict[tuple[Any, ...], list[int]] = defaultdict(list)
    listed = ", ".join(key)
    for row, *found in db.execute(f"SELECT id, {listed} FROM {table} ORDER BY id").fetchall():
        kept[tuple(found)].append(row)
    for values in wanted:
        own = kept[tuple(values[name] for name in key)]
        if own:
            update(db, table, own.pop(0), values)
        else:
            insert(db, table, values)
    for rows in kept.values():
        for row in rows:
            delete(db, table, row)


#: Tables with rows that hang on a panel, and what a person calls them.
_HANGING = {
    "pins": "photo",
    "area_panels": "repair area",
    "entries": "entry",
    "measures": "measure",
    "findings": "finding",
    "wanted": "wanted part",
}


def hanging(db: sqlite3.Connection, panel_id: int) -> dict[str, int]:
    """What hangs on a panel, by the word for it; kinds with nothing are left out."""
    found = {}
    for table, word in _HANGING.items():
        (count,) = db.execute(
            f"SELECT count(*) FROM {table} WHERE panel_id = ?", (panel_id,)
        ).fetchone()
        if count:
            found[word] = int(count)
    return found


def hang_over(db: sqlite3.Connection, gone: int, keep: int) -> None:
    """Move all that hangs on one panel to another; what hangs there already isn't doubled."""
    for table, other in (("pins", "photo_id"), ("area_panels", "area_id")):
        there = {
            row for (row,) in db.execute(f"SELECT {other} FROM {table} WHERE panel_id = ?", (keep,))
        }
        for row, owner in db.execute(
            f"SELECT id, {other} FROM {table} WHERE panel_id = ?", (gone,)
        ).fetchall():
            if owner in there:
                delete(db, table, row)
            else:
                update(db, table, row, {"panel_id": keep})
    for table in ("entries", "measures", "wanted", "findings"):
        for (row,) in db.execute(f"SELECT id FROM {table} WHERE panel_id = ?", (gone,)).fetchall():
            update(db, table, row, {"panel_id": keep})
