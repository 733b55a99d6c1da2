"""Every photo has a cell of its own, and can be found again from it."""

from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QPoint, QRect, QSize

from journal.desktop.widgets.grid_layout import GridLayout, Group
from journal.domain.ids import PhotoId


def layout_of(counts: list[int], width: int) -> GridLayout:
    groups, first = [], 1
    for count in counts:
        ids = tuple(PhotoId(n) for n in range(first, first + count))
        groups.append(Group("A sitting", f"{count} photos", ids))
        first += count
    return GridLayout(groups, width=width, cell=QSize(100, 90))


layouts = st.builds(
    layout_of,
    st.lists(st.integers(0, 30), min_size=1, max_size=8).filter(any),
    st.integers(0, 1000),
)


@given(layouts)
def test_a_photo_is_found_at_the_middle_of_its_cell(layout):
    for index in range(layout.count):
        assert layout.index_at(layout.rect(index).center()) == index


@given(layouts)
def test_no_two_cells_and_no_heading_touch(layout):
    areas = [layout.rect(index) for index in range(layout.count)]
    areas += [layout.heading_rect(group) for group in range(len(layout.groups))]
    for place, area in enumerate(areas):
        assert not any(area.intersects(other) for other in areas[place + 1 :])


@given(layouts, st.integers(-200, 4000), st.integers(0, 900))
def test_what_runs_is_what_shows(layout, top, room):
    shown = {i for run in layout.runs(top, top + room) for i in range(run.first, run.end)}
    slit = QRect(0, top, max(1, layout.width), room + 1)
    touched = {i for i in range(layout.count) if layout.rect(i).intersects(slit)}
    wide_enough = layout.width >= layout.margin + layout.cell.width()
    assert touched <= shown if wide_enough else True
    assert len(shown) <= (room // layout.pitch + 2) * layout.columns * len(layout.groups)


@given(layouts, st.data())
def test_a_row_down_and_up_keeps_the_column_where_it_can(layout, data):
    index = data.draw(st.integers(0, layout.count - 1))
    below = layout.row_step(index, 1)
    assert below == index or layout.rect(below).top() > layout.rect(index).top()
    if below != index and layout.rect(below).left() == layout.rect(index).left():
        assert layout.row_step(below, -1) == index


def test_the_ground_and_the_headings_hold_no_photo():
    layout = layout_of([3, 2], 330)
    assert layout.index_at(QPoint(5, 60)) is None
    assert layout.index_at(QPoint(50, 10)) is None
    assert layout.heading_at(QPoint(50, 10)) == 0
    assert layout.heading_at(layout.rect(0).center()) is None
    assert layout.heading_at(layout.heading_rect(1).center()) == 1


def test_a_journal_of_fifty_thousand_is_laid_out_at_its_full_height():
    layout = layout_of([25] * 2000, 1300)
    assert layout.count == 50_000
    last = layout.rect(49_999)
    assert last.bottom() < layout.height < last.bottom() + 60
    assert layout.group_of(49_999) == 1999
