"""What makes a journal's tables, with the triggers that write the change log and word index."""

import sqlite3
from collections.abc import Iterable

from journal.store.tables import FIRST, RECORDED, SECOND

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
#: The same for the tables that version 2 adds.
_SEARCHED_SECOND: dict[str, tuple[int, str, str, str, str]] = {
    "findings": (9, "finding", "id", "{r}.text || ' ' || {r}.note", "1"),
    "wanted": (10, "wanted", "id", "{r}.text || ' ' || {r}.note", "1"),
}

_INDEXES_SECOND = """
CREATE INDEX index_values_by_index ON index_values (index_id);
CREATE INDEX findings_by_survey ON findings (survey_id);
CREATE INDEX findings_by_area ON findings (area_id);
CREATE INDEX findings_by_panel ON findings (panel_id);
CREATE INDEX wanted_by_line ON wanted (line_id);
CREATE INDEX sightings_by_wanted ON sightings (wanted_id);
CREATE INDEX wanted_changes_by_wanted ON wanted_changes (wanted_id);
CREATE INDEX imported_rows_by_receipt ON imported_rows (receipt_id);
CREATE INDEX imported_rows_by_work ON imported_rows (work_id);
CREATE INDEX pairs_by_area ON pairs (area_id);
CREATE INDEX pairs_by_before ON pairs (before_id);
CREATE INDEX pairs_by_after ON pairs (after_id);
CREATE INDEX claim_words_by_area ON claim_words (area_id);
CREATE INDEX cover_boxes_by_photo ON cover_boxes (photo_id);
"""


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
    code, kind, ref, words, condition = (_SEARCHED | _SEARCHED_SECOND)[table]
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
    return [*_statements(_LOG), *_schema(FIRST, _INDEXES, _SEARCHED)]


def second_schema() -> list[str]:
    """The statements that make version 2 out of version 1: new tables, none changed."""
    return _schema(SECOND, _INDEXES_SECOND, _SEARCHED_SECOND)


def _schema(tables: Iterable[str], indexes: str, searched: Iterable[str]) -> list[str]:
    statements = []
    for table in tables:
        statements.append(f"CREATE TABLE {table} ({RECORDED[table]}) STRICT;")
        statements.extend(f"{trigger};" for trigger in _record_triggers(table))
    statements.extend(_statements(indexes))
    for table in searched:
        statements.extend(f"{trigger};" for trigger in _search_triggers(table))
    return statements
