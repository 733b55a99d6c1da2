"""The dossier's page: what will be in it, making it, and what came of it."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton

from journal.desktop.pages.dossier import DossierPage
from journal.domain.errors import JournalError
from tests.desktop import workshop
from tests.desktop.desks import Told, desk_over


@pytest.fixture
def session(tmp_path):
    with workshop.furnished(tmp_path) as made:
        yield made


@pytest.fixture
def desk(qapp, session):
    with desk_over(session) as made:
        yield made


@pytest.fixture
def page(qtbot, desk):
    made = DossierPage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    made.refresh(None)
    made.show()
    qtbot.waitUntil(lambda: bool(made.contents()))
    yield made
    made.hide()


def texts(page):
    return [w.text() for w in page.result.findChildren(QLabel)]


def test_it_says_what_will_be_in_it(page):
    said = page.contents()
    assert any(words.startswith("4 repair areas") for words in said)
    assert any(words.startswith("4 receipts") for words in said)
    assert any("gaps, stated openly" in words for words in said)


def test_one_press_makes_it_and_offers_to_open_it(qtbot, page, tmp_path):
    out = tmp_path / "rook.pdf"
    proposed, opened = [], []
    page.choose = lambda _page, path: proposed.append(path) or out
    page.open_file = opened.append
    qtbot.mouseClick(page.make_button, Qt.MouseButton.LeftButton)
    assert not page.make_button.isEnabled()
    qtbot.waitUntil(lambda: page.result.isVisible(), timeout=30_000)
    assert out.read_bytes().startswith(b"%PDF-")
    assert proposed[0].name == "Halden Rook dossier.pdf"
    assert any(words.startswith("Made: rook.pdf, ") for words in texts(page))
    assert page.focusWidget().text() == "&Open"
    for text in ("&Open", "Show in &folder"):
        next(b for b in page.result.findChildren(QPushButton) if b.text() == text).click()
    assert opened == [out, tmp_path]
    assert page.make_button.isEnabled()


def test_no_file_chosen_makes_nothing(qtbot, page):
    page.choose = lambda _page, _path: None
    qtbot.mouseClick(page.make_button, Qt.MouseButton.LeftButton)
    assert page.make_button.isEnabled()
    assert not page.result.isVisible()


def test_an_obstacle_is_told_and_the_press_can_be_repeated(qtbot, page, desk, tmp_path):
    told = Told(desk)
    page.choose = lambda _page, _path: tmp_path / "no such folder" / "rook.pdf"
    qtbot.mouseClick(page.make_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: bool(told.messages), timeout=30_000)
    assert page.state.text() == "It could not be made."
    assert page.make_button.isEnabled()


def test_stopping_it_is_said(qtbot, page, desk, tmp_path):
    page.choose = lambda _page, _path: tmp_path / "rook.pdf"
    qtbot.mouseClick(page.make_button, Qt.MouseButton.LeftButton)
    page._task.cancel()
    qtbot.waitUntil(lambda: page.make_button.isEnabled(), timeout=30_000)
    assert page.state.text() == "Stopped; no file was made."
    assert not (tmp_path / "rook.pdf").exists()


def test_failures_are_plain_sentences(page, desk):
    told = Told(desk)
    page._on_failed(JournalError("The disk is full."))
    assert told.messages == ["The disk is full."]


def test_the_gaps_are_a_press_away(page, desk):
    told = Told(desk)
    next(b for b in page.findChildren(QPushButton) if b.text() == "See the gaps").click()
    assert told.pages == ["Gaps"]
