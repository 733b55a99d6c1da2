"""Bundles in the window: made, checked, stamped, and every outcome told in words."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget
from shiboken6 import delete

from journal.actions import bundles
from journal.actions.checking import check_bundle
from journal.actions.session import Session
from journal.desktop.desk import Desk, PhotosSelected
from journal.desktop.dialogs.bundle import BundleDialog
from journal.desktop.dialogs.bundle_made import BundleMadeDialog
from journal.desktop.dialogs.bundle_stamp import StampDialog
from journal.desktop.dialogs.check_result import CheckResultDialog, check_and_show, verdict
from journal.desktop.dialogs.check_what import CheckWhatDialog
from journal.desktop.widgets.parts import PlainTree
from journal.domain.bundles import BundleForm, BundleReport, OriginalsIn
from journal.domain.checks import (
    BundleCheck,
    Fault,
    Likeness,
    PictureCheck,
    PictureFound,
    SignatureFound,
)
from journal.domain.cuts import Cut
from journal.domain.ids import PhotoId
from tests.actions.authority import has_openssl, made_in
from tests.actions.bundled import no_dossier, small_journal
from tests.desktop.desks import Told, desk_over


@pytest.fixture
def session(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Session]:
    monkeypatch.setattr(bundles, "make_dossier", no_dossier)
    with small_journal(tmp_path) as made:
        yield made


@pytest.fixture
def desk(qapp, session) -> Iterator[Desk]:
    with desk_over(session) as made:
        yield made


@pytest.fixture
def show(qtbot):
    def shown(dialog):
        qtbot.addWidget(dialog)
        dialog.show()
        return dialog

    return shown


def words(widget: QWidget) -> str:
    return "\n".join(one.text() for one in widget.findChildren(QLabel))


def made(qtbot, dialog: BundleDialog, out: Path) -> BundleReport:
    reports: list[BundleReport] = []
    dialog.choose = lambda _proposed, _form: out
    dialog.made = reports.append
    dialog.accept_button.click()
    qtbot.waitUntil(lambda: bool(reports))
    return reports[0]


def test_a_bundle_is_made_as_it_was_chosen(qtbot, desk, show, tmp_path):
    dialog = show(BundleDialog(desk))
    dialog.form_of.setCurrentIndex(dialog.form_of.findData(BundleForm.ZIP))
    dialog.originals.setCurrentIndex(dialog.originals.findData(OriginalsIn.NONE))
    dialog.sign.setChecked(True)
    dialog.history.setChecked(False)
    report = made(qtbot, dialog, tmp_path / "for you")
    assert report.path == tmp_path / "for you.zip"
    checked = check_bundle(tmp_path / "for you.zip")
    assert checked.whole
    assert checked.signature is not None
    assert checked.chain is None
    assert report.originals == 0


def test_the_outcome_is_shown_after_the_dialog_is_gone(qtbot, desk, tmp_path):
    window = QWidget()
    qtbot.addWidget(window)
    dialog = BundleDialog(desk, window)
    dialog.choose = lambda _proposed, _form: tmp_path / "kept"
    assert dialog.submit()
    delete(dialog)
    qtbot.waitUntil(lambda: bool(window.findChildren(BundleMadeDialog)))


def test_the_photos_selected_may_be_the_only_ones(qtbot, desk, show, session, tmp_path):
    ids = tuple(photo.id for photo in session.journal.photos.all()[:2])
    desk.select(PhotosSelected(ids))
    dialog = show(BundleDialog(desk))
    dialog.originals.setCurrentIndex(dialog.originals.findText("The 2 photos selected"))
    report = made(qtbot, dialog, tmp_path / "two")
    assert report.originals == 2


def test_what_withholds_leaves_no_choice_of_what_would_show_it(qtbot, desk, show, tmp_path):
    dialog = show(BundleDialog(desk))
    assert dialog.originals.isEnabled()
    assert not dialog.held_back.isVisible()
    dialog.cut.setCurrentIndex(dialog.cut.findData(Cut.BUYER))
    assert not dialog.originals.isEnabled()
    assert not dialog.history.isEnabled()
    assert "prices" in dialog.held_back.text()
    report = made(qtbot, dialog, tmp_path / "b")
    assert report.originals == 0
    assert not (tmp_path / "b" / "data" / "record" / "history.txt").exists()


def test_no_place_chosen_makes_nothing_and_a_taken_one_is_told(qtbot, desk, show, tmp_path):
    told = Told(desk)
    dialog = show(BundleDialog(desk))
    dialog.choose = lambda _proposed, _form: None
    dialog.accept_button.click()
    assert dialog.isVisible()
    (tmp_path / "taken").mkdir()
    dialog.choose = lambda _proposed, _form: tmp_path / "taken"
    dialog.accept_button.click()
    qtbot.waitUntil(lambda: any("exists already" in message for message in told.messages))


def test_the_outcome_names_what_is_not_in_it(desk, show, tmp_path):
    missing = (Fault("data/originals/photos/00001-a.jpg", "It is gone."),)
    report = BundleReport(tmp_path, 12, 4_200_000, 3, missing, ("A note.",), "aaaa bbbb")
    dialog = show(BundleMadeDialog(report, desk))
    opened: list[Path] = []
    dialog.open_file = opened.append
    said = words(dialog)
    for part in ("but not all is in it", "12 files, 4.2 MB, 3 originals", "A note.", "aaaa bbbb"):
        assert part in said


@pytest.mark.parametrize(
    ("report", "said"),
    [
        (BundleCheck("b", "ZIP", refused="It is a bomb."), "Refused"),
        (BundleCheck("b", "ZIP", faults=(Fault("a", "It is gone."),)), "changed or is missing"),
        (BundleCheck("b", "ZIP"), "Whole"),
        (
            PictureCheck("p", "ab", (PictureFound("p", Likeness.ORIGINAL),)),
            "an original of this journal",
        ),
        (
            PictureCheck("p", "ab", (PictureFound("p", Likeness.SAME_PICTURE),)),
            "not the same bytes",
        ),
        (PictureCheck("p", "ab", (PictureFound("p", Likeness.UNKNOWN),)), "Not in this journal"),
    ],
)
def test_every_verdict_is_in_words(show, report, said):
    dialog = show(CheckResultDialog(report))
    assert said in verdict(report)
    assert said in words(dialog)


def test_a_picture_that_was_found_leads_to_its_photo(qtbot, show):
    found = (
        PictureFound("page 1, picture 1", Likeness.UNKNOWN),
        PictureFound("page 1, picture 2", Likeness.SAME_PICTURE, PhotoId(7), "IMG_7.jpg"),
    )
    seen: list[PhotoId] = []
    dialog = show(CheckResultDialog(PictureCheck("p", "ab", found), None, seen.append))
    (table,) = dialog.findChildren(PlainTree)
    for row, after in ((0, []), (1, [7])):
        table.setCurrentItem(table.topLevelItem(row))
        qtbot.keyClick(table, Qt.Key.Key_Return)
        assert seen == after
    assert not dialog.isVisible()


def test_a_stranger_is_told_to_compare_the_fingerprint(show):
    report = BundleCheck("b", "folder", signature=SignatureFound("cafe 1234", good=True))
    assert "by another way" in words(show(CheckResultDialog(report)))
    unsigned = words(show(CheckResultDialog(BundleCheck("b", "folder"))))
    assert "whoever could change it" in unsigned


def test_what_is_chosen_is_checked_and_shown(qtbot, desk, session, tmp_path):
    bundles.make_bundle(session, tmp_path / "b")
    (tmp_path / "b" / "data" / "dossier.pdf").write_bytes(b"other")
    chosen = CheckWhatDialog()
    qtbot.addWidget(chosen)
    chosen.choose_folder = lambda: tmp_path / "b"
    chosen.take_folder()
    window = QWidget()
    qtbot.addWidget(window)
    failures: list[Exception] = []
    check_and_show(desk.tasks, chosen.path, session, window, failures.append)
    qtbot.waitUntil(lambda: bool(window.findChildren(CheckResultDialog)))
    (dialog,) = window.findChildren(CheckResultDialog)
    assert "changed or is missing" in words(dialog)
    dialog.close()
    check_and_show(desk.tasks, tmp_path / "nowhere", session, window, failures.append)
    qtbot.waitUntil(lambda: bool(failures))
    assert "There is nothing at" in str(failures[0])


def test_a_stamp_is_asked_for_and_brought_back_in_two_steps(qtbot, desk, session, show, tmp_path):
    if not has_openssl():
        pytest.skip("there is no openssl on this computer to make an authority with")
    bundles.make_bundle(session, tmp_path / "b")
    told = Told(desk)
    dialog = show(StampDialog(desk, tmp_path / "b"))
    dialog.ask_where = lambda proposed: proposed
    dialog.ask_button.click()
    request = tmp_path / "b.tsq"
    qtbot.waitUntil(lambda: "The request is" in dialog.state.text())
    authority = made_in(tmp_path / "tsa")
    dialog.ask_certificate = lambda: authority.root
    dialog.trust()
    dialog.ask_reply = lambda: authority.answer(request, tmp_path / "b.tsr")
    dialog.bring_button.click()
    qtbot.waitUntil(lambda: "by CN=Stamper" in dialog.state.text())
    assert "root.pem" in dialog.trusted.text()
    assert told.labels == ["Ask for a time stamp on “b”", "Keep the time stamp on “b”"]
    assert check_bundle(tmp_path / "b").whole
    shutil.rmtree(tmp_path / "b" / "timestamp")
    assert not check_bundle(tmp_path / "b").whole
