"""The dossier's page: choosing what it holds, looking at its pages, making it."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QListWidget, QPushButton

from journal.actions import areas, dossier_cuts, history
from journal.desktop.desk import Desk
from journal.desktop.dialogs.private_words import PrivateWordsDialog
from journal.desktop.dialogs.standard_views import StandardViewsDialog
from journal.desktop.pages.dossier import DossierPage
from journal.domain.cuts import Cut, Part, usual
from journal.domain.errors import JournalError
from journal.domain.private_words import Private
from tests.desktop import workshop
from tests.desktop.desks import Told, desk_over, opened_dialog, put_away

_LONG = 30_000


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
    made.resize(1180, 660)
    made.refresh(None)
    made.show()
    yield made
    put_away(made)


@pytest.fixture
def shown(qtbot, page):
    qtbot.waitUntil(lambda: page.preview.pages is not None, timeout=_LONG)
    return page


def settled(qtbot, page):
    """Wait until the pages shown are those of what is chosen now."""
    qtbot.waitUntil(lambda: not page._calm.isActive() and page._reading is None, timeout=_LONG)


def shown_labels(widget):
    return [one for one in widget.findChildren(QLabel) if one.isVisible()]


def texts(page):
    return [one.text() for one in shown_labels(page.made)]


# --- choosing ---


def test_a_tick_is_kept_for_its_cut_alone_and_can_be_undone(page, desk, session):
    assert page.cut is Cut.BUYER
    assert not page.panel.parts[Part.MONEY].isChecked()
    page.panel.parts[Part.MONEY].click()
    assert dossier_cuts.choices_of(session, Cut.BUYER).has(Part.MONEY)
    page.cuts.buttons[Cut.OWN].click()
    assert page.choices == usual(Cut.OWN)
    page.cuts.buttons[Cut.BUYER].click()
    assert page.panel.parts[Part.MONEY].isChecked()
    desk.act(history.undo)
    assert not page.panel.parts[Part.MONEY].isChecked()


def test_what_is_withheld_is_said_in_words_beside_the_ticks(qapp, page, session):
    def unseen():
        qapp.processEvents()
        return " ".join(w.text() for w in shown_labels(page.panel.withheld))

    assert "No sum of money anywhere" in unseen()
    page.panel.withheld.ticks[Private.PRICES].click()
    assert "No sum of money anywhere" not in unseen()
    assert Private.PRICES not in dossier_cuts.choices_of(session, Cut.BUYER).withheld
    page.usual_button.click()
    assert "No sum of money anywhere" in unseen()
    assert dossier_cuts.choices_of(session, Cut.BUYER) == usual(Cut.BUYER)
    page.cuts.buttons[Cut.OWN].click()
    assert "Nothing is withheld" in unseen()


def test_some_areas_paper_and_photos_are_chosen(page, session):
    panel = page.panel
    panel.some_areas.click()
    assert panel.areas_note.isVisible()
    panel.areas.item(1).setCheckState(Qt.CheckState.Checked)
    assert not panel.areas_note.isVisible()
    panel.letter.click()
    panel.for_screen.click()
    panel.photos.setValue(2)
    kept = dossier_cuts.choices_of(session, Cut.BUYER)
    assert [int(a) for a in kept.areas] == [panel.areas.item(1).data(Qt.ItemDataRole.UserRole)]
    assert (kept.paper, kept.pictures, kept.photos) == ("letter", "screen", 2)
    panel.all_areas.click()
    assert not dossier_cuts.choices_of(session, Cut.BUYER).areas


def test_tab_goes_down_the_page(page):
    list(page.panel.parts.values())[-1].setFocus()
    passed = []
    for _ in range(10):
        page.focusNextChild()
        passed.append(page.focusWidget().text().replace("&", ""))
    ticks = [kind.value.capitalize() for kind in Private]
    assert passed == ["Standard views…", *ticks, "Private words…", "Covered photos…"]


def test_an_area_that_is_gone_is_asked_for_no_longer(page, desk, session):
    page.panel.some_areas.click()
    page.panel.areas.item(0).setCheckState(Qt.CheckState.Checked)
    (chosen,) = page.choices.areas
    desk.act(areas.remove_area, chosen)
    assert not page.choices.areas
    assert page.panel.all_areas.isChecked()


def test_words_and_views_are_a_press_away(page):
    for text, kind in (("words", PrivateWordsDialog), ("views", StandardViewsDialog)):
        press = next(b for b in page.findChildren(QPushButton) if text in b.text().replace("&", ""))
        press.click()
        opened_dialog(kind).reject()


# --- looking ---


def test_the_pages_are_those_of_what_is_chosen(qtbot, shown, desk):
    before = shown.preview.pages.count
    assert shown.preview.list.count() == before
    shown.panel.parts[Part.AREAS].click()
    settled(qtbot, shown)
    assert shown.preview.list.count() < before
    desk.act(history.undo)
    settled(qtbot, shown)
    assert shown.preview.list.count() == before


def test_many_choices_in_a_row_set_the_pages_once_more(qtbot, shown, monkeypatch):
    from journal.actions import dossier_preview

    set_for, real = [], dossier_preview.preview_pages
    monkeypatch.setattr(
        dossier_preview,
        "preview_pages",
        lambda session, choices, context: (
            set_for.append(choices) or real(session, choices, context)
        ),
    )
    for part in (Part.STORY, Part.GAPS, Part.CLAIMS):
        shown.panel.parts[part].click()
    settled(qtbot, shown)
    assert [choices.parts for choices in set_for] == [shown.choices.parts]


def test_pages_are_turned_and_made_larger_by_key(qtbot, shown):
    view = shown.preview.view
    qtbot.waitUntil(lambda: view.pixmap is not None, timeout=_LONG)
    view.setFocus()
    qtbot.keyClick(view, Qt.Key.Key_PageDown)
    assert shown.preview.count.text().startswith("Page 2 of ")
    qtbot.keyClick(view, Qt.Key.Key_Plus)
    assert view.zoom > 1
    qtbot.keyClick(view, Qt.Key.Key_End)
    assert not shown.preview.next.isEnabled()
    assert view.zoom == 1
    qtbot.keyClick(view, Qt.Key.Key_Home)
    assert not shown.preview.previous.isEnabled()


def test_a_page_that_is_looked_at_stays_when_another_part_is_left_out(qtbot, shown):
    shown.preview.list.setCurrentRow(2)
    shown.panel.parts[Part.GAPS].click()
    settled(qtbot, shown)
    assert shown.preview.list.currentRow() == 2


def test_pages_that_cannot_be_set_are_told_in_words(qtbot, shown, desk, monkeypatch):
    from journal.actions import dossier_preview

    def fails(*_arguments):
        raise JournalError("No font has these signs.")

    told = Told(desk)
    monkeypatch.setattr(dossier_preview, "preview_pages", fails)
    shown.panel.parts[Part.GAPS].click()
    settled(qtbot, shown)
    assert told.messages == ["No font has these signs."]
    assert shown.preview.state.text() == "The pages can’t be shown."


# --- making ---


def test_one_press_makes_what_is_chosen_and_offers_to_open_it(qtbot, shown, tmp_path):
    out = tmp_path / "rook.pdf"
    proposed, opened = [], []
    shown.choose = lambda _page, path: proposed.append(path) or out
    shown.made.open_file = opened.append
    qtbot.mouseClick(shown.make_button, Qt.MouseButton.LeftButton)
    assert not shown.make_button.isEnabled()
    qtbot.waitUntil(lambda: shown.made.isVisible(), timeout=_LONG)
    assert out.read_bytes().startswith(b"%PDF-")
    assert proposed[0].name == "Halden Rook dossier for a buyer.pdf"
    pages = shown.preview.pages.count
    assert any(words.startswith(f"Made: rook.pdf, {pages} pages with ") for words in texts(shown))
    assert shown.focusWidget().text() == "&Open"
    for text in ("&Open", "Show in &folder"):
        next(b for b in shown.made.findChildren(QPushButton) if b.text() == text).click()
    assert opened == [out, tmp_path]
    assert shown.make_button.isEnabled()


def test_what_could_not_be_shown_is_listed(page):
    class Report:
        path, pages, photos, notes = None, 3, 1, ("IMG_1.jpg (P1) isn’t shown: it is gone.",)

    from pathlib import Path

    Report.path = Path("/nowhere/rook.pdf")
    page.made.show_report(Report)
    rows = page.made.findChild(QListWidget)
    assert [rows.item(n).text() for n in range(rows.count())] == list(Report.notes)


def test_no_file_chosen_makes_nothing(qtbot, page):
    page.choose = lambda _page, _path: None
    qtbot.mouseClick(page.make_button, Qt.MouseButton.LeftButton)
    assert page.make_button.isEnabled()
    assert not page.made.isVisible()


def test_an_obstacle_is_told_and_the_press_can_be_repeated(qtbot, page, desk, tmp_path):
    told = Told(desk)
    page.choose = lambda _page, _path: tmp_path / "no such folder" / "rook.pdf"
    qtbot.mouseClick(page.make_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: bool(told.messages), timeout=_LONG)
    assert page.state.text() == "It could not be made."
    assert page.make_button.isEnabled()


def test_stopping_it_is_said(qtbot, page, tmp_path):
    page.choose = lambda _page, _path: tmp_path / "rook.pdf"
    qtbot.mouseClick(page.make_button, Qt.MouseButton.LeftButton)
    page._task.cancel()
    qtbot.waitUntil(lambda: page.make_button.isEnabled(), timeout=_LONG)
    assert page.state.text() == "Stopped; no file was made."
    assert not (tmp_path / "rook.pdf").exists()


# --- journals open for reading, and empty ones ---


def test_in_a_journal_open_for_reading_choices_hold_for_this_time(qtbot, tmp_path):
    from journal.actions.journals import open_journal
    from journal.actions.settings import Settings
    from journal.desktop.tasks import TaskRunner

    with workshop.furnished(tmp_path / "a") as made:
        folder = made.folder
    tasks = TaskRunner()
    with open_journal(folder, read_only=True) as session:
        page = DossierPage(Desk(session, tasks, Settings()))
        qtbot.addWidget(page)
        page.refresh(None)
        page.panel.parts[Part.MONEY].click()
        assert page.choices.has(Part.MONEY)
        assert dossier_cuts.choices_of(session, Cut.BUYER) == usual(Cut.BUYER)
        tasks.close()


def test_an_empty_journal_has_pages_too(qtbot, tmp_path):
    with workshop.empty(tmp_path) as session, desk_over(session) as desk:
        page = DossierPage(desk)
        qtbot.addWidget(page)
        page.refresh(None)
        page.show()
        qtbot.waitUntil(lambda: page.preview.pages is not None, timeout=_LONG)
        assert page.preview.pages.count >= 3
        settled(qtbot, page)
        page.hide()
