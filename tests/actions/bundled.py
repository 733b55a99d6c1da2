"""A small journal with photos, papers and edits taken back, for the tests of bundles."""

from pathlib import Path

from journal.actions import areas, history
from journal.actions.add_photos import add_photos
from journal.actions.journals import new_journal
from journal.actions.receipts import record_receipt
from journal.actions.session import Session
from journal.domain.car import Car
from tests.intake.made import jpeg
from tests.store.values import receipt


def small_journal(folder: Path) -> Session:
    """Three photos, one of them with an awkward name, a receipt with its paper, some edits."""
    session = new_journal(folder / "Halden Rook", Car("Halden Rook", chassis_number="HR 10482"))
    names = ("IMG_0001.JPG", "Schweller links, außen (2).jpg", "=cmd.jpg")
    paths = []
    for number, name in enumerate(names):
        path = folder / name
        path.write_bytes(jpeg(f"2016:03:0{number + 1} 14:00:00", seed=number + 1))
        paths.append(path)
    add_photos(session, paths)
    scan = folder / "scan.jpg"
    scan.write_bytes(jpeg(seed=99))
    record_receipt(session, receipt(), [scan])
    areas.add_area(session, "Sill, left “lower” rust", (), found="holes & gaps <through>")
    areas.add_area(session, "Not wanted", ())
    history.undo(session)
    return session
