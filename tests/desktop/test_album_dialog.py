"""The web album in the window: asked for, made, and told in words."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtWidgets import QLabel, QWidget
from shiboken6 import delete

from journal.actions.cars import change_car
from journal.actions.session import Session
from journal.desktop.desk import Desk
from journal.desktop.dialogs.album import AlbumDialog, AlbumMadeDialog, place_in
from journal.domain.albums import MARKER, START_PAGE, AlbumReport
from journal.domain.cuts import Cut, Part, usual
from journal.domain.private_words import Private
from tests.actions.bundled import small_journal
from tests.desktop.desks import Told, desk_over


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    with small_journal(tmp_path) as made:
        yield made


@pytest.fixture
def desk(qapp, session) -> Iterator[Desk]:
    with desk_over(session) as made:
        yield made


def words(widget: QWidget) -> str:
    return "\n".join(one.text() for one in widget.findChildren(QLabel))


def test_an_album_is_made_for_the_reader_chosen(qtbot, desk, tmp_path):
    dialog, reports = AlbumDialog(desk), []
    qtbot.addWidget(dialog)
    dialog.show()
    assert dialog.cut.currentData() == Cut.BUYER, "the most careful without being asked"
    assert "prices" in dialog.held_back.text()
    dialog.cut.setCurrentIndex(dialog.cut.findData(Cut.VALUER))
    assert "prices" not in dialog.held_back.text()
    assert "addresses" in dialog.held_back.text()
    proposed = []
    dialog.choose = lambda place: proposed.append(place.name) or tmp_path / "album"
    dialog.made = reports.append
    dialog.accept_button.click()
    qtbot.waitUntil(lambda: bool(reports), timeout=20000)
    assert proposed == ["Halden Rook album"]
    assert (tmp_path / "album" / START_PAGE).is_file()
    assert any("Addresses" in said for said in reports[0].withheld)


def test_no_folder_is_proposed_by_a_title_that_holds_what_is_withheld(qtbot, desk, session):
    change_car(
        session, replace(session.journal.car.get(), title="Rook RK 4069", registration="RK 4069")
    )
    dialog, proposed = AlbumDialog(desk), []
    qtbot.addWidget(dialog)
    dialog.choose = lambda place: proposed.append(place.name)
    assert not dialog.submit()
    assert proposed
    assert "RK 4069" not in proposed[0]


def test_the_outcome_is_shown_after_the_dialog_is_gone(qtbot, desk, tmp_path):
    window = QWidget()
    qtbot.addWidget(window)
    dialog = AlbumDialog(desk, window)
    dialog.choose = lambda _place: tmp_path / "album"
    assert dialog.submit()
    delete(dialog)
    qtbot.waitUntil(lambda: bool(window.findChildren(AlbumMadeDialog)), timeout=20000)


def test_the_pages_own_choices_are_taken_for_their_reader(qtbot, desk):
    given = usual(Cut.OWN).with_part(Part.MONEY, wanted=False)
    dialog = AlbumDialog(desk, None, given)
    qtbot.addWidget(dialog)
    assert dialog.cut.currentData() == Cut.OWN
    assert "Nothing is withheld" in dialog.held_back.text()


def test_no_place_chosen_makes_nothing_and_a_taken_one_is_told(qtbot, desk, session):
    dialog = AlbumDialog(desk)
    qtbot.addWidget(dialog)
    dialog.show()
    dialog.choose = lambda _place: None
    dialog.accept_button.click()
    assert dialog.isVisible()
    told = Told(desk)
    dialog.choose = lambda _place: session.folder
    dialog.accept_button.click()
    qtbot.waitUntil(lambda: bool(told.messages))
    assert "inside the journal" in told.messages[0]


def test_an_album_made_before_is_made_anew_and_all_else_is_added_to(tmp_path):
    assert place_in(tmp_path, "Rook album") == tmp_path / "Rook album"
    (tmp_path / "Rook album").mkdir()
    assert place_in(tmp_path, "Rook album") == tmp_path / "Rook album (2)"
    (tmp_path / "Rook album" / MARKER).write_text("{}")
    assert place_in(tmp_path / "Rook album", "Rook album") == tmp_path / "Rook album"


def test_the_outcome_names_what_is_not_in_it_and_opens(qtbot, tmp_path):
    report = AlbumReport(tmp_path, 12, 1, ("A.JPG (P1) isn’t shown.",), ("Prices: every sum.",))
    dialog, opened = AlbumMadeDialog(report), []
    qtbot.addWidget(dialog)
    dialog.show()
    dialog.open_file = opened.append
    assert "12 pages, 1 photo." in words(dialog)
    assert "Prices: every sum." in words(dialog)
    dialog.open_button.click()
    assert opened == [tmp_path / START_PAGE]
    assert Private.PRICES.value == "prices"
