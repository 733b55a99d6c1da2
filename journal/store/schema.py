"""The tables of a journal, and the triggers that write the change log and the word index."""

import sqlite3
from collections.abc import Iterable

#: Tables whose every change is recorded. Their first column is the row number ``id``.
RECORDED: dict[str, str] = {
    "car": """
        id INTEGER PRIMARY KEY CHECK (id = 1),
        title TEXT NOT NULL, body TEXT NOT NULL, wheelbase_mm INTEGER NOT NULL,
        length_mm INTEGER NOT NULL, currency TEXT NOT NULL, maker TEXT NOT NULL,
        model TEXT NOT NULL, year TEXT NOT NULL, chassis_number TEXT NOT NULL,
        engine_number TEXT NOT NULL, registration TEXT NOT NULL, colour TEXT NOT NULL,
        owner TEXT NOT NULL, story TEXT NOT NULL, pause_minutes INTEGER NOT NULL,
        stages TEXT NOT NULL""",
    "milestones": """
        id INTEGER PRIMARY KEY, kind TEXT NOT NULL, edtf TEXT NOT NULL,
        earliest TEXT NOT NULL, latest TEXT NOT NULL, note TEXT NOT NULL""",
    "originals": """
        id INTEGER PRIMARY KEY, sha256 TEXT NOT NULL UNIQUE, suffix TEXT NOT NULL,
        size INTEGER NOT NULL, mime TEXT NOT NULL, added TEXT NOT NULL""",
    "cameras": """
        id INTEGER PRIMARY KEY, make TEXT NOT NULL, model TEXT NOT NULL, serial TEXT NOT NULL,
        shift_seconds INTEGER NOT NULL, UNIQUE (make, model, serial)""",
    "photos": """
        id INTEGER PRIMARY KEY,
        sha256 TEXT NOT NULL UNIQUE REFERENCES originals (sha256),
        name TEXT NOT NULL, kind TEXT NOT NULL, edtf TEXT NOT NULL, earliest TEXT NOT NULL,
        latest TEXT NOT NULL, basis TEXT NOT NULL, utc_offset TEXT, candidates TEXT NOT NULL,
        camera_id INTEGER REFERENCES cameras (id), sequence INTEGER, width INTEGER NOT NULL,
        height INTEGER NOT NULL, orientation INTEGER, turn INTEGER NOT NULL,
        latitude REAL, longitude REAL, caption TEXT NOT NULL, damage TEXT NOT NULL,
        removed INTEGER NOT NULL""",
    "views": """
        id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE, width REAL NOT NULL,
        height REAL NOT NULL, rank INTEGER NOT NULL""",
    "panels": """
        id INTEGER PRIMARY KEY, name TEXT NOT NULL, side TEXT NOT NULL, system TEXT NOT NULL,
        UNIQUE (name, side)""",
    "shapes": """
        id INTEGER PRIMARY KEY, panel_id INTEGER NOT NULL REFERENCES panels (id),
        view_id INTEGER NOT NULL REFERENCES views (id), path TEXT NOT NULL,
        rank INTEGER NOT NULL""",
    "decor": """
        id INTEGER PRIMARY KEY, view_id INTEGER NOT NULL REFERENCES views (id),
        path TEXT NOT NULL, weight TEXT NOT NULL, rank INTEGER NOT NULL""",
    "pins": """
        id INTEGER PRIMARY KEY, photo_id INTEGER NOT NULL REFERENCES photos (id),
        panel_id INTEGER NOT NULL REFERENCES panels (id), view_id INTEGER REFERENCES views (id),
        x REAL, y REAL, facing REAL, UNIQUE (photo_id, panel_id)""",
    "areas": """
        id INTEGER PRIMARY KEY, name TEXT NOT NULL, found TEXT NOT NULL, done TEXT NOT NULL,
        cautions TEXT NOT NULL""",
    "area_panels": """
        id INTEGER PRIMARY KEY, area_id INTEGER NOT NULL REFERENCES areas (id),
        panel_id INTEGER NOT NULL REFERENCES panels (id), UNIQUE (area_id, panel_id)""",
    "stage_changes": """
        id INTEGER PRIMARY KEY, area_id INTEGER NOT NULL REFERENCES areas (id),
        stage TEXT NOT NULL, edtf TEXT NOT NULL, earliest TEXT NOT NULL, latest TEXT NOT NULL,
        note TEXT NOT NULL""",
    "area_photos": """
        id INTEGER PRIMARY KEY, area_id INTEGER NOT NULL REFERENCES areas (id),
        photo_id INTEGER NOT NULL REFERENCES photos (id), role TEXT NOT NULL,
        rank INTEGER NOT NULL, UNIQUE (area_id, photo_id)""",
    "entries": """
        id INTEGER PRIMARY KEY, edtf TEXT NOT NULL, earliest TEXT NOT NULL, latest TEXT NOT NULL,
        text TEXT NOT NULL, area_id INTEGER REFERENCES areas (id),
        panel_id INTEGER REFERENCES panels (id)""",
    "anchors": """
        id INTEGER PRIMARY KEY, view_id INTEGER NOT NULL REFERENCES views (id), x REAL NOT NULL,
        y REAL NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, radius_mm REAL NOT NULL""",
    "seams": """
        id INTEGER PRIMARY KEY, area_id INTEGER NOT NULL REFERENCES areas (id),
        view_id INTEGER NOT NULL REFERENCES views (id), path TEXT NOT NULL, joint TEXT NOT NULL,
        spacing_mm REAL, note TEXT NOT NULL""",
    "seam_changes": """
        id INTEGER PRIMARY KEY, seam_id INTEGER NOT NULL REFERENCES seams (id),
        state TEXT NOT NULL, start_mm REAL NOT NULL, end_mm REAL NOT NULL, edtf TEXT NOT NULL,
        earliest TEXT NOT NULL, latest TEXT NOT NULL, note TEXT NOT NULL, photos TEXT NOT NULL""",
    "patches": """
        id INTEGER PRIMARY KEY, area_id INTEGER NOT NULL REFERENCES areas (id),
        view_id INTEGER NOT NULL REFERENCES views (id), path TEXT NOT NULL,
        thickness_mm REAL NOT NULL, steel TEXT NOT NULL, note TEXT NOT NULL, edtf TEXT NOT NULL,
        earliest TEXT NOT NULL, latest TEXT NOT NULL""",
    "measures": """
        id INTEGER PRIMARY KEY, name TEXT NOT NULL, kind TEXT NOT NULL,
        view_id INTEGER NOT NULL REFERENCES views (id), points TEXT NOT NULL, unit TEXT NOT NULL,
        target TEXT, tolerance TEXT, area_id INTEGER REFERENCES areas (id),
        panel_id INTEGER REFERENCES panels (id)""",
    "readings": """
        id INTEGER PRIMARY KEY, measure_id INTEGER NOT NULL REFERENCES measures (id),
        point INTEGER NOT NULL, value TEXT NOT NULL, edtf TEXT NOT NULL, earliest TEXT NOT NULL,
        latest TEXT NOT NULL, moment TEXT NOT NULL, instrument TEXT NOT NULL, note TEXT NOT NULL""",
    "underlays": """
        id INTEGER PRIMARY KEY, view_id INTEGER NOT NULL UNIQUE REFERENCES views (id),
        sha256 TEXT NOT NULL REFERENCES originals (sha256), matrix TEXT NOT NULL,
        strength REAL NOT NULL, shown INTEGER NOT NULL""",
    "receipts": """
        id INTEGER PRIMARY KEY, supplier TEXT NOT NULL, edtf TEXT NOT NULL,
        earliest TEXT NOT NULL, latest TEXT NOT NULL, currency TEXT NOT NULL, paper TEXT NOT NULL,
        printed_total INTEGER, rate TEXT NOT NULL, stands_in TEXT NOT NULL, note TEXT NOT NULL,
        tax INTEGER, refund_of INTEGER REFERENCES receipts (id), read_text TEXT NOT NULL""",
    "receipt_papers": """
        id INTEGER PRIMARY KEY, receipt_id INTEGER NOT NULL REFERENCES receipts (id),
        sha256 TEXT NOT NULL REFERENCES originals (sha256), rank INTEGER NOT NULL,
        UNIQUE (receipt_id, sha256)""",
    "lines": """
        id INTEGER PRIMARY KEY, receipt_id INTEGER NOT NULL REFERENCES receipts (id),
        rank INTEGER NOT NULL, text TEXT NOT NULL, quantity TEXT NOT NULL,
        amount INTEGER NOT NULL, category TEXT NOT NULL, condition TEXT NOT NULL,
        new_price INTEGER, spread TEXT NOT NULL""",
    "line_shares": """
        id INTEGER PRIMARY KEY, line_id INTEGER NOT NULL REFERENCES lines (id),
        area_id INTEGER NOT NULL REFERENCES areas (id), weight INTEGER NOT NULL,
        rank INTEGER NOT NULL, UNIQUE (line_id, area_id)""",
    "work": """
        id INTEGER PRIMARY KEY, edtf TEXT NOT NULL, earliest TEXT NOT NULL, latest TEXT NOT NULL,
        minutes INTEGER NOT NULL, person TEXT NOT NULL, note TEXT NOT NULL""",
    "work_shares": """
        id INTEGER PRIMARY KEY, work_id INTEGER NOT NULL REFERENCES work (id),
        area_id INTEGER NOT NULL REFERENCES areas (id), weight INTEGER NOT NULL,
        rank INTEGER NOT NULL, UNIQUE (work_id, area_id)""",
}

#: What a change of a table means to those who show it.
KINDS = {
    "originals": "originals",
    "views": "drawing",
    "panels": "drawing",
    "shapes": "drawing",
    "decor": "drawing",
    "seams": "metalwork",
    "seam_changes": "metalwork",
    "patches": "metalwork",
    "measures": "readings",
    "underlays": "drawing",
    "area_panels": "areas",
    "stage_changes": "areas",
    "area_photos": "areas",
    "receipt_papers": "receipts",
    "lines": "receipts",
    "line_shares": "receipts",
    "work_shares": "work",
}

_LOG = """
CREATE TABLE edits (
    id INTEGER PRIMARY KEY, act INTEGER NOT NULL, label TEXT NOT NULL, made TEXT NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN ('do', 'undo', 'redo')), target INTEGER, digest TEXT
) STRICT;
CREATE TABLE changes (
    id INTEGER PRIMARY KEY, edit_id INTEGER NOT NULL REFERENCES edits (id),
    tbl TEXT NOT NULL, row INTEGER NOT NULL, op TEXT NOT NULL, before TEXT, after TEXT
) STRICT;
CREATE TABLE open_edit (id INTEGER PRIMARY KEY CHECK (id = 1), edit_id INTEGER) STRICT;
INSERT INTO open_edit VALUES (1, NULL);
CREATE INDEX changes_by_edit ON changes (edit_id);
CREATE INDEX edits_by_target ON edits (target);
CREATE INDEX edits_by_act ON edits (act);
CREATE TRIGGER edits_kept BEFORE UPDATE ON edits WHEN OLD.digest IS NOT NULL
    BEGIN SELECT RAISE(ABORT, 'the change log is never rewritten'); END;
CREATE TRIGGER edits_stay BEFORE DELETE ON edits
    BEGIN SELECT RAISE(ABORT, 'the change log is never shortened'); END;
CREATE TRIGGER changes_kept BEFORE UPDATE ON changes
    BEGIN SELECT RAISE(ABORT, 'the change log is never rewritten'); END;
CREATE TRIGGER changes_stay BEFORE DELETE ON changes
    BEGIN SELECT RAISE(ABORT, 'the change log is never shortened'); END;
CREATE TRIGGER changes_inside BEFORE INSERT ON changes
    WHEN (SELECT edit_id FROM open_edit) IS NOT NEW.edit_id
    BEGIN SELECT RAISE(ABORT, 'a change belongs to the edit that is open'); END;
"""

_INDEXES = """
CREATE INDEX photos_by_time ON photos (removed, earliest, latest, sequence, id);
CREATE INDEX photos_by_camera ON photos (camera_id);
CREATE INDEX pins_by_panel ON pins (panel_id);
CREATE INDEX shapes_by_view ON shapes (view_id);
CREATE INDEX area_panels_by_panel ON area_panels (panel_id);
CREATE INDEX stage_changes_by_area ON stage_changes (area_id);
CREATE INDEX area_photos_by_photo ON area_photos (photo_id);
CREATE INDEX entries_by_area ON entries (area_id);
CREATE INDEX entries_by_panel ON entries (panel_id);
CREATE INDEX seams_by_area ON seams (area_id);
CREATE INDEX seam_changes_by_seam ON seam_changes (seam_id);
CREATE INDEX patches_by_area ON patches (area_id);
CREATE INDEX readings_by_measure ON readings (measure_id);
CREATE INDEX receipts_by_time ON receipts (earliest);
CREATE INDEX lines_by_receipt ON lines (receipt_id);
CREATE INDEX line_shares_by_area ON line_shares (area_id);
CREATE INDEX receipt_papers_by_original ON receipt_papers (sha256);
CREATE INDEX work_by_time ON work (earliest);
CREATE INDEX work_shares_by_area ON work_shares (area_id);
CREATE VIRTUAL TABLE search USING fts5 (
    words, kind UNINDEXED, ref UNINDEXED, prefix = '2 3', tokenize = 'unicode61 remove_diacritics 2'
);
"""

#: Table -> (code in the word index, kind of hit, column naming what is hit, words, condition).
_SEARCHED: dict[str, tuple[int, str, str, str, str]] = {
    "photos": (1, "photo", "id", "{r}.caption || ' ' || {r}.name", "{r}.removed = 0"),
    "areas": (2, "area", "id", "{r}.name || ' ' || {r}.found || ' ' || {r}.done", "1"),
    "panels": (3, "panel", "id", "{r}.name || ' ' || {r}.side", "1"),
    "entries": (4, "entry", "id", "{r}.text", "1"),
    "receipts": (
        5,
        "receipt",
        "id",
        "{r}.supplier || ' ' || {r}.stands_in || ' ' || {r}.note || ' ' || {r}.read_text",
        "1",
    ),
    "lines": (6, "receipt", "receipt_id", "{r}.text", "1"),
    "stage_changes": (7, "area", "area_id", "{r}.note", "{r}.note <> ''"),
    "work": (8, "work", "id", "{r}.note", "{r}.note <> ''"),
}


def columns(table: str) -> tuple[str, ...]:
    """The column names of a recorded table, in order."""
    parts = _split(RECORDED[table])
    return tuple(p.split()[0] for p in parts if not p.startswith("UNIQUE"))


def _split(definition: str) -> list[str]:
    parts, depth, current = [], 0, ""
    for char in definition:
        depth += (char == "(") - (char == ")")
        if char == "," and depth == 0:
            parts.append(current.strip())
            current = ""
        else:
            current += char
    return [*parts, current.strip()]


def as_json(table: str, row: str) -> str:
    """SQL that gives a row as JSON; ``row`` is NEW, OLD or the table's name."""
    return "json_object(" + ", ".join(f"'{c}', {row}.{c}" for c in columns(table)) + ")"


def _record_triggers(table: str) -> Iterable[str]:
    for op, row in (("INSERT", "NEW"), ("UPDATE", "NEW"), ("DELETE", "OLD")):
        yield (
            f"CREATE TRIGGER {table}_{op.lower()}_guard BEFORE {op} ON {table} "
            "WHEN (SELECT edit_id FROM open_edit) IS NULL "
            "BEGIN SELECT RAISE(ABORT, 'a change is made inside an edit'); END"
        )
        before = "NULL" if op == "INSERT" else as_json(table, "OLD")
        after = "NULL" if op == "DELETE" else as_json(table, "NEW")
        yield (
            f"CREATE TRIGGER {table}_{op.lower()}_log AFTER {op} ON {table} BEGIN "
            "INSERT INTO changes (edit_id, tbl, row, op, before, after) VALUES "
            f"((SELECT edit_id FROM open_edit), '{table}', {row}.id, '{op.lower()}', "
            f"{before}, {after}); END"
        )


def _search_triggers(table: str) -> Iterable[str]:
    code, kind, ref, words, condition = _SEARCHED[table]
    drop = f"DELETE FROM search WHERE rowid = OLD.id * 16 + {code};"
    put = (
        f"INSERT INTO search (rowid, words, kind, ref) SELECT NEW.id * 16 + {code}, "
        f"{words.format(r='NEW')}, '{kind}', NEW.{ref} WHERE {condition.format(r='NEW')};"
    )
    yield f"CREATE TRIGGER {table}_words_in AFTER INSERT ON {table} BEGIN {put} END"
    yield f"CREATE TRIGGER {table}_words_out AFTER DELETE ON {table} BEGIN {drop} END"
    yield f"CREATE TRIGGER {table}_words_new AFTER UPDATE ON {table} BEGIN {drop} {put} END"


def _statements(script: str) -> Iterable[str]:
    # One by one, since ``executescript`` would commit the migration's transaction.
    statement = ""
    for line in script.splitlines():
        statement += line + "\n"
        if sqlite3.complete_statement(statement):
            yield statement
            statement = ""


def first_schema() -> list[str]:
    """The statements that make version 1 of a journal's database."""
    statements = list(_statements(_LOG))
    for table, definition in RECORDED.items():
        statements.append(f"CREATE TABLE {table} ({definition}) STRICT;")
        statements.extend(f"{trigger};" for trigger in _record_triggers(table))
    statements.extend(_statements(_INDEXES))
    for table in _SEARCHED:
        statements.extend(f"{trigger};" for trigger in _search_triggers(table))
    return statements
