"""A small journal with photos, papers and edits taken back, for the tests of bundles."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from journal.actions import areas, bundles, history, signing
from journal.actions.add_photos import add_photos
from journal.actions.bundles import make_bundle
from journal.actions.journals import new_journal
from journal.actions.receipts import record_receipt
from journal.actions.session import Session
from journal.domain.bundles import BundleChoice
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


EVERYTHING = BundleChoice(sign=True)


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Session, Path]]:
    """A journal, and a signed bundle of it as a folder."""
    folder = tmp_path_factory.mktemp("bundles")
    with pytest.MonkeyPatch.context() as patch, small_journal(folder) as session:
        # This outlives a test's own home.
        patch.setattr(signing, "key_path", lambda: folder / "keys" / "signing-key.pem")
        patch.setattr(bundles, "make_dossier", no_dossier)
        out = folder / "bundle"
        report = make_bundle(session, out, EVERYTHING)
        assert (report.originals, report.missing) == (4, ())
        yield session, out


@pytest.fixture
def quick(monkeypatch: pytest.MonkeyPatch) -> None:
    """A dossier without typesetting, where only the bag around it matters."""
    monkeypatch.setattr(bundles, "make_dossier", no_dossier)


def no_dossier(_session: Session, out: Path, *_rest: object) -> object:
    out.write_bytes(b"%PDF-1.7")
    return type("Report", (), {"notes": ()})()
