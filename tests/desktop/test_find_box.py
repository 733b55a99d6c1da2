"""The find field: words, the list, and where a find leads."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit, QWidget

from journal.actions import areas as area_actions
from journal.actions import drawings
from journal.actions import photos as photo_actions
from journal.actions.settings import Settings
from journal.desktop.desk import AreaSelected, Desk, PanelSelected, PhotosSelected, ReceiptSelected
from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets.find_box import FindBox
from journal.domain.ids import PhotoId
from journal.domain.when import parse
from tests.desktop.garage import add_sittings
from tests.desktop.workshop import furnished


@pytest.fixture
def session(tmp_path):
    with furnished(tmp_path) as made:
        add_sittings(made, 3)
        photo_actions.set_caption(made, [PhotoId(2)], "Zinc primer on the inner sill")
        sill = drawings.find_panel(made, "sill left")
        area_actions.add_entry(made, parse("2016-03-05"), "Lent the grinder to Tom")
        area_actions.add_entry(made, parse("2016-03-06"), "Wax sprayed behind", panel_id=sill.id)
        yield made


@pytest.fixture
def runner(qapp, session):
    made = TaskRunner()
    yield made
    made.close()


@pytest.fixture
def box(qtbot, session, runner):
    window = QWidget()
    qtbot.addWidget(window)
    window.resize(900, 700)
    made = FindBox(Desk(session, runner, Settings()), window)
    made.setGeometry(200, 10, 400, 40)
    QLineEdit(window).setGeometry(10, 600, 100, 30)
    window.show()
    made.setFocus()
    yield made
    window.close()


def find(qtbot, box, words):
    qtbot.keyClicks(box, words)
    qtbot.waitUntil(box.found.isVisible)


def titles(box):
    return [box.found.item(n).text() for n in range(box.found.count())]


def choose(qtbot, box, start):
    """Walk down to the find whose line begins so, and press Enter."""
    goal = next(n for n, title in enumerate(titles(box)) if title.startswith(start))
    for _ in range(goal):
        qtbot.keyClick(box, Qt.Key.Key_Down)
    with qtbot.waitSignal(box.chosen):
        qtbot.keyClick(box, Qt.Key.Key_Return)


def test_words_bring_up_what_holds_them(qtbot, box):
    find(qtbot, box, "sill inn")
    assert "Photo: Zinc primer on the inner sill" in titles(box)
    assert "Entry: Entry" in titles(box)
    assert "Panel: Boot lid" not in titles(box)


@pytest.mark.parametrize(
    ("words", "start", "kind", "page"),
    [
        ("zinc primer", "Photo", PhotosSelected, "Timeline"),
        ("jacking", "Repair area", AreaSelected, "Areas"),
        ("brandt", "Receipt", ReceiptSelected, "Ledger"),
        ("boot lid", "Panel: Boot lid", PanelSelected, "Drawing"),
        ("grinder", "Entry", type(None), "Areas"),
        ("wax", "Entry", PanelSelected, "Drawing"),
    ],
)
def test_a_find_leads_to_its_page_and_is_selected(qtbot, box, words, start, kind, page):
    pages, chosen, said = [], [], []
    box._desk.page_wanted.connect(pages.append)
    box._desk.selected.connect(chosen.append)
    box._desk.message.connect(lambda text, level: said.append(text))
    find(qtbot, box, words)
    choose(qtbot, box, start)
    assert pages[-1] == page
    if kind is type(None):
        assert chosen == []
        assert said == ["Lent the grinder to Tom"]
    else:
        assert isinstance(chosen[-1], kind)
    assert not box.found.isVisible()
    assert box.text() == ""


def test_a_click_chooses_too(qtbot, box):
    find(qtbot, box, "zinc primer on")
    item = box.found.item(0)
    with qtbot.waitSignal(box.chosen) as told:
        spot = box.found.visualItemRect(item).center()
        qtbot.mouseClick(box.found.viewport(), Qt.MouseButton.LeftButton, pos=spot)
    assert told.args[0].kind == "photo"


def test_nothing_found_is_said(qtbot, box):
    find(qtbot, box, "unobtainium")
    assert titles(box) == ["Nothing in the journal holds all these words."]
    with qtbot.assertNotEmitted(box.chosen):
        qtbot.keyClick(box, Qt.Key.Key_Return)


def test_escape_and_leaving_put_the_list_away(qtbot, box):
    find(qtbot, box, "sill")
    qtbot.keyClick(box, Qt.Key.Key_Escape)
    assert not box.found.isVisible()
    assert box.text() == ""
    find(qtbot, box, "sill")
    box.window().findChildren(QLineEdit)[-1].setFocus()
    assert not box.found.isVisible()


def test_what_is_marked_is_told_to_the_reader(qtbot, box):
    find(qtbot, box, "zinc primer on")
    assert "Zinc primer on the inner sill; 1 found" in box.accessibleDescription()


def test_the_list_is_painted_in_both_themes(qtbot, box):
    find(qtbot, box, "sill")
    before = box.found.grab().toImage()
    from journal.desktop import theme

    box.found.setPalette(theme.palette(theme.DARK))
    assert box.found.grab().toImage() != before
