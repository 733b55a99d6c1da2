"""What is no car can be begun in the New journal dialog too."""

import pytest

from journal.actions.drawings import drawing
from journal.desktop.dialogs.new_journal import NewJournalDialog


@pytest.mark.parametrize(
    ("title", "panels"), [("Motorcycle", True), ("Tractor", True), ("Blank sheet", False)]
)
def test_a_journal_of_it_is_made_with_its_drawing(qtbot, tmp_path, title, panels):
    dialog = NewJournalDialog(tmp_path)
    qtbot.addWidget(dialog)
    dialog.show()
    dialog._name.setText("Mine")
    dialog._body.setCurrentText(title)
    assert dialog._body.currentText() == title
    dialog._draw()
    assert dialog.problem.text() == ""
    assert dialog.submit()
    with dialog.session as made:
        found = drawing(made)
        assert found.views
        assert bool(found.panels) is panels
