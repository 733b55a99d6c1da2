"""Tables of rows: sorting, the total that stays last, and opening."""

import pytest
from PySide6.QtCore import Qt

from journal.desktop.widgets.rows import Column, RowsModel, RowsTable

COLUMNS = (
    Column("Name", lambda row: row[0], wide=True),
    Column("Number", lambda row: f"{row[1]} h", lambda row: row[1], number=True),
)
ROWS = (("Boot lid", 9), ("sill", 100), ("Arch", 20))


@pytest.fixture
def table(qtbot):
    made = RowsTable("Things", COLUMNS)
    qtbot.addWidget(made)
    made.set_rows(ROWS, ("total", 129))
    made.show()
    return made


def test_the_model_keeps_qts_rules(qtmodeltester):
    model = RowsModel(COLUMNS)
    model.set_rows(ROWS, ("total", 129))
    qtmodeltester.check(model)
    model.sort(1, Qt.SortOrder.DescendingOrder)
    model.set_rows((), None)
    qtmodeltester.check(model)


def test_sorts_by_the_number_and_not_by_its_text_and_keeps_the_total_last(table):
    table.sortByColumn(1, Qt.SortOrder.AscendingOrder)
    model = table.model()
    assert [model.index(n, 0).data() for n in range(4)] == ["Boot lid", "Arch", "sill", "total"]
    table.sortByColumn(0, Qt.SortOrder.DescendingOrder)
    assert [model.index(n, 0).data() for n in range(4)] == ["sill", "Boot lid", "Arch", "total"]


def test_the_picked_row_stays_picked_when_sorted(table):
    table.selectRow(0)
    table.sortByColumn(1, Qt.SortOrder.DescendingOrder)
    assert table.picked() == ("Boot lid", 9)


def test_enter_and_a_double_click_open_a_row_but_not_the_total(qtbot, table):
    opened = []
    table.on_opened(opened.append)
    table.selectRow(1)
    qtbot.keyClick(table, Qt.Key.Key_Return)
    assert opened == [("sill", 100)]
    table.selectRow(3)
    qtbot.keyClick(table, Qt.Key.Key_Return)
    assert opened == [("sill", 100)]
    spot = table.visualRect(table.model().index(2, 0)).center()
    qtbot.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=spot)
    qtbot.mouseDClick(table.viewport(), Qt.MouseButton.LeftButton, pos=spot)
    assert opened[-1] == ("Arch", 20)
