"""What stands in a bundle's way, and what is left out of one."""

import shutil
from pathlib import Path

import pytest

from journal.actions.bundles import make_bundle
from journal.actions.checking import check_bundle
from journal.actions.session import Session
from journal.domain.bundles import BundleChoice, BundleForm, OriginalsIn
from journal.domain.cuts import Cut, usual
from journal.domain.errors import Cancelled, JournalError
from journal.domain.progress import Silent
from journal.dossier.bundle import layout
from tests.actions.bundled import made, quick, small_journal
from tests.files.faults import FullDisk, full_disk

__all__ = ["full_disk", "made", "quick"]

# What stands in the way


@pytest.mark.usefixtures("quick")
def test_a_missing_and_an_altered_original_are_named_and_the_rest_goes_on(tmp_path: Path) -> None:
    with small_journal(tmp_path) as session:
        gone, changed, *_ = sorted(session.folder.glob("originals/??/*"))
        gone.unlink()
        changed.chmod(0o644)
        changed.write_bytes(changed.read_bytes()[:-1] + b"x")
        for form in BundleForm:
            out = tmp_path / f"out{form.suffix}"
            report = make_bundle(session, out, BundleChoice(form=form))
            assert report.originals == 2
            said = " ".join(fault.what for fault in report.missing)
            assert gone.name[:64] in said
            assert changed.name[:64] in said
            assert "altered since it came in" in said
            checked = check_bundle(out)
            assert checked.whole
        assert (tmp_path / "out" / layout.MISSING).read_text().count("\n") == 2
        assert gone.name[:64] in (tmp_path / "out" / layout.READ_ME).read_text("utf-8").replace(
            "\n", ""
        )


@pytest.mark.usefixtures("quick")
@pytest.mark.parametrize("form", list(BundleForm))
def test_a_full_disk_leaves_nothing_under_the_name(
    made: tuple[Session, Path], tmp_path: Path, full_disk: FullDisk, form: BundleForm
) -> None:
    out = tmp_path / "place" / f"out{form.suffix}"
    make_bundle(made[0], out, BundleChoice(form=form))
    writes = full_disk.writes
    shutil.rmtree(out.parent)
    for at in (1, writes // 3, writes - 3, writes):
        full_disk.fill(at)
        with pytest.raises(JournalError, match="No space left"):
            make_bundle(made[0], out, BundleChoice(form=form))
        full_disk.fill(0)
        assert list(out.parent.iterdir()) == []


@pytest.mark.usefixtures("quick")
def test_what_is_there_and_the_journal_itself_are_refused_as_places(
    made: tuple[Session, Path], tmp_path: Path
) -> None:
    session, folder = made[0], made[0].folder
    taken = tmp_path / "taken.zip"
    taken.write_bytes(b"mine")
    with pytest.raises(JournalError, match="exists already"):
        make_bundle(session, taken)
    assert taken.read_bytes() == b"mine"
    (tmp_path / "link").symlink_to(tmp_path / "nowhere")
    with pytest.raises(JournalError, match="exists already"):
        make_bundle(session, tmp_path / "link")
    for place in (folder / "bundle", folder / "originals" / "b.zip"):
        with pytest.raises(JournalError, match="inside the journal"):
            make_bundle(session, place)
    with pytest.raises(JournalError):
        make_bundle(session, taken / "below a file")


@pytest.mark.usefixtures("quick")
def test_stopping_leaves_nothing(made: tuple[Session, Path], tmp_path: Path) -> None:
    class Stopping(Silent):
        asked = 0

        def checkpoint(self) -> None:
            self.asked += 1
            if self.asked > 3:
                raise Cancelled

    for form in BundleForm:
        out = tmp_path / f"out{form.suffix}"
        with pytest.raises(Cancelled):
            make_bundle(made[0], out, BundleChoice(form=form), Stopping())
    assert list(tmp_path.iterdir()) == []


# What is left out


@pytest.mark.usefixtures("quick")
def test_what_is_withheld_is_nowhere_in_the_bytes(
    made: tuple[Session, Path], tmp_path: Path
) -> None:
    out = tmp_path / "for a buyer"
    choice = BundleChoice(dossier=usual(Cut.BUYER))
    report = make_bundle(made[0], out, choice)
    assert report.originals == 0
    assert not (out / layout.HISTORY).exists()
    assert not (out / "data" / "originals").exists()
    files = {path: path.read_bytes() for path in out.rglob("*") if path.is_file()}
    for private in (b"Marrow & Quill", b"HR 10482", b"89.50", b"8950"):
        assert [path for path, data in files.items() if private in data] == []
    assert "prices" in (out / layout.READ_ME).read_text("utf-8")
    assert check_bundle(out).whole


@pytest.mark.usefixtures("quick")
def test_originals_may_be_all_those_used_chosen_or_none(
    made: tuple[Session, Path], tmp_path: Path
) -> None:
    session = made[0]
    photo = session.journal.photos.all()[0].id
    choices = {
        "none": BundleChoice(originals=OriginalsIn.NONE),
        "used": BundleChoice(originals=OriginalsIn.USED),
        "one": BundleChoice(only=frozenset({photo})),
    }
    counts = {
        name: make_bundle(session, tmp_path / name, choice).originals
        for name, choice in choices.items()
    }
    # No photo belongs to a repair area: there are the cover and the paper of the receipt.
    assert counts == {"none": 0, "used": 2, "one": 1}


@pytest.mark.usefixtures("quick")
def test_a_history_that_was_tampered_with_is_told_when_the_bundle_is_made(tmp_path: Path) -> None:
    with small_journal(tmp_path) as session:
        session.journal.db.execute("DROP TRIGGER changes_kept")
        session.journal.db.execute("UPDATE changes SET after = '{}' WHERE id = 1")
        report = make_bundle(session, tmp_path / "out")
        assert any("does not hold from edit 1" in note for note in report.notes)
