"""How reading costs grow with a journal: python -m tests.benchmarks.reading [photos ...]

Each figure is a median in milliseconds. The reference is a bare SQLite query that fetches the same
number of rows by their primary key, on the same file.
"""

import sqlite3
import sys
import tempfile
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

from journal.actions import costs, drawings, find, gaps, panels, timeline
from journal.actions.journals import open_journal
from journal.actions.session import Session
from tests.benchmarks.journals import large_journal, median_ms


def acts(session: Session) -> dict[str, Callable[[], object]]:
    """What is timed, by name."""
    sill = drawings.find_panel(session, "Sill, left").id
    return {
        "open and close": lambda: open_journal(session.folder, read_only=True).close(),
        "timeline": lambda: timeline.sittings(session),
        "panel history": lambda: panels.history(session, sill),
        "find, 3 letters": lambda: find.find(session, "wel"),
        "find, 2 words": lambda: find.find(session, "captive flange"),
        "panel stages": lambda: drawings.panel_stages(session),
        "costs by area": lambda: costs.costs(session, "area"),
        "gaps": lambda: gaps.gaps(session),
    }


def reference(folder: Path, photos: int) -> float:
    """A bare query for (id, earliest) of every photo."""
    with closing(sqlite3.connect(folder / "journal.db")) as db:
        query = "SELECT id, earliest FROM photos ORDER BY id"
        assert len(db.execute(query).fetchall()) == photos
        return median_ms(lambda: db.execute(query).fetchall())


def main() -> None:
    """Print a column of figures for every size asked for."""
    sizes = [int(size) for size in sys.argv[1:]] or [500, 5_000, 50_000]
    for photos in sizes:
        with tempfile.TemporaryDirectory() as scratch:
            session = large_journal(Path(scratch) / "Rook", photos)
            size = (session.folder / "journal.db").stat().st_size / 1e6
            print(f"{photos:,} photos, database {size:.1f} MB")  # noqa: T201
            base = reference(session.folder, photos)
            print(f"  {'bare query of all photos':<26}{base:8.1f} ms")  # noqa: T201
            for name, act in acts(session).items():
                took = median_ms(act)
                print(f"  {name:<26}{took:8.1f} ms  {took / base:7.2f} x bare")  # noqa: T201
            session.close()


if __name__ == "__main__":
    main()
