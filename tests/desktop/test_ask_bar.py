"""The line that asks: proposals by words in any order, refusals with the reason, Esc."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from journal.desktop.widgets.ask_bar import AskBar
from journal.desktop.widgets.parts import column
from journal.domain.errors import JournalError

PANELS = ("Boot lid", "Front wing, left", "Inner sill, left", "Sill, left", "Sill, right")


@pytest.fixture
def bar(qtbot):
    window = QWidget()
    qtbot.addWidget(window)
    made = AskBar()
    window.setLayout(column(made, None))
    window.resize(900, 400)
    window.show()
    yield made
    window.close()


def ask(bar, choices=PANELS):
    answers = []
    bar.ask("Pin 3 photos to", "&Pin", answers.append, choices=choices)
    return answers


def test_words_in_any_order_find_the_panel(qtbot, bar):
    answers = ask(bar)
    qtbot.keyClicks(bar.edit, "left inn")
    assert bar.edit.matches("left inn") == ["Inner sill, left"]
    qtbot.keyClick(bar.edit, Qt.Key.Key_Return)
    assert answers == ["Inner sill, left"]
    assert bar.isHidden()


def test_what_begins_with_the_word_is_proposed_first(bar):
    ask(bar)
    assert bar.edit.matches("sill left") == ["Sill, left", "Inner sill, left"]


def test_a_proposal_is_taken_from_the_list_by_key(qtbot, bar):
    answers = ask(bar)
    qtbot.keyClicks(bar.edit, "sill")
    popup = bar.edit.completer().popup()
    qtbot.waitUntil(popup.isVisible)
    qtbot.keyClick(popup, Qt.Key.Key_Down)
    qtbot.keyClick(popup, Qt.Key.Key_Down)
    qtbot.keyClick(popup, Qt.Key.Key_Return)
    assert answers == ["Sill, right"]


def test_a_refusal_is_gone_once_the_answer_is_taken(qtbot, bar):
    ask(bar)
    height = bar.sizeHint().height()

    def pin(text):
        if text not in PANELS:
            raise JournalError("Several panels are called that; say which one is meant. " * 3)

    bar.ask("Pin 3 photos to", "&Pin", pin, choices=PANELS)
    qtbot.keyClicks(bar.edit, "sill")
    bar._done.click()
    assert bar._problem.isVisible()
    bar.edit.setText("Sill, left")
    bar._done.click()
    bar.show()
    assert bar.sizeHint().height() == height


def test_a_refusal_is_told_and_asked_again(qtbot, bar):
    def refuse(text):
        raise JournalError(f"There is no {text}.")

    bar.ask("Pin to", "&Pin", refuse)
    qtbot.keyClicks(bar.edit, "ashtray")
    qtbot.keyClick(bar.edit, Qt.Key.Key_Return)
    assert bar.isVisible()
    assert bar._problem.text() == "There is no ashtray."
    qtbot.keyClicks(bar.edit, "s")
    assert bar._problem.isHidden()


def test_escape_takes_the_question_back(qtbot, bar):
    answers = ask(bar)
    with qtbot.waitSignal(bar.ended):
        qtbot.keyClick(bar.edit, Qt.Key.Key_Escape)
    assert answers == []
    assert bar.isHidden()


def test_free_words_are_answered_as_they_are(qtbot, bar):
    answers = ask(bar, choices=())
    qtbot.keyClicks(bar.edit, "The sill, cut back")
    qtbot.keyClick(bar.edit, Qt.Key.Key_Return)
    assert answers == ["The sill, cut back"]
