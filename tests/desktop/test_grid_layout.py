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
    shown = [i for run in layout.runs(top, top + room) for i in range(run.first, run.end)]
    slit = QRect(-1, top, layout.width + 2000, room + 1)
    touched = [i for i in range(layout.count) if layout.rect(i).intersects(slit)]
    assert shown == sorted(set(shown))
    assert set(touched) <= set(shown)
    assert len(shown) <= len(touched) + 2 * layout.columns


@given(layouts, st.data())
def test_a_row_down_and_up_moves_by_rows_and_comes_back(layout, data):
    index = data.draw(st.integers(0, layout.count - 1))
    below = layout.row_step(index, 1)
    assert below == index or layout.rect(below).top() > layout.rect(index).top()
    if below != index and layout.rect(below).left() == layout.rect(index).left():
        assert layout.rect(layout.row_step(below, -1)).top() >= layout.rect(index).top()


@given(layouts)
def test_every_row_is_reached_by_going_down(layout):
    tops = {layout.rect(index).top() for index in range(layout.count)}
    index, seen = 0, {layout.rect(0).top()}
    while (below := layout.row_step(index, 1)) != index:
        index = below
        seen.add(layout.rect(index).top())
    bands = {layout.heading_rect(layout.group_of(i)).top() for i in range(layout.count)}
    reached = {top for top in bands if any(top < row < top + 200 for row in seen)}
    assert reached == bands
    assert seen <= tops


def test_small_sittings_share_a_row_and_large_ones_do_not():
    layout = layout_of([2, 1, 9, 1], 650)
    assert layout.columns == 5
    tops = [layout.heading_rect(group).top() for group in range(4)]
    assert tops[0] == tops[1] < tops[2] < tops[3]
    assert layout.rect(2).left() > layout.rect(1).right()
    assert layout.heading_rect(0).right() < layout.heading_rect(1).left()


def test_the_ground_and_the_headings_hold_no_photo():
    layout = layout_of([3, 2], 360)
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
