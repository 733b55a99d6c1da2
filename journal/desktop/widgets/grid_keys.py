"""What the keys do in the photo grid."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QKeySequence

from journal.desktop.widgets.grid_base import GridBase

_Key = Qt.Key
_CONTROL = Qt.KeyboardModifier.ControlModifier
_SHIFT = Qt.KeyboardModifier.ShiftModifier


def key_pressed(grid: GridBase, event: QKeyEvent) -> bool:
    """Do what a key asks for; False if it means nothing here."""
    if not grid.grid_layout.count:
        return False
    if event.matches(QKeySequence.StandardKey.SelectAll):
        grid.selection.all()
        grid.selection_applied()
        return True
    return _act(grid, event) or _travel(grid, event)


def _act(grid: GridBase, event: QKeyEvent) -> bool:
    key, current = event.key(), grid.selection.current_index
    if key in {_Key.Key_Plus, _Key.Key_Equal, _Key.Key_Minus} and event.modifiers() & _CONTROL:
        grid.step_edge(-1 if key == _Key.Key_Minus else 1)
    elif key == _Key.Key_Escape and grid.selection.chosen:
        grid.selection.clear()
        grid.selection_applied()
    elif current is None:
        return False
    elif key in {_Key.Key_Return, _Key.Key_Enter}:
        grid.opened.emit(grid.selection.order[current])
    elif key == _Key.Key_F and grid.folds.is_of_burst(grid.selection.order[current]):
        grid.fold_wanted.emit(grid.selection.order[current])
    elif key == _Key.Key_Space:
        _space(grid, event, current)
    elif key == _Key.Key_S and event.modifiers() in {Qt.KeyboardModifier.NoModifier, _SHIFT}:
        group = grid.grid_layout.group_of(current)
        grid.select_group(group, keep=bool(event.modifiers() & _SHIFT))
    else:
        return False
    return True


def _space(grid: GridBase, event: QKeyEvent, current: int) -> None:
    if event.modifiers() & _SHIFT:
        grid.selection.extend(current, keep=True)
    else:
        grid.selection.toggle(current)
    grid.selection_applied()


def _travel(grid: GridBase, event: QKeyEvent) -> bool:
    goal = _goal(grid, event)
    if goal is None:
        return False
    modifiers = event.modifiers()
    if modifiers & _SHIFT:
        grid.selection.extend(goal, keep=bool(modifiers & _CONTROL))
    elif modifiers & _CONTROL and event.key() not in {_Key.Key_PageUp, _Key.Key_PageDown}:
        grid.selection.go(goal)
    else:
        grid.selection.only(goal)
    grid.show_current()
    if modifiers & _CONTROL and not modifiers & _SHIFT:
        grid.current_moved()
    else:
        grid.selection_applied()
    return True


def _goal(grid: GridBase, event: QKeyEvent) -> int | None:
    layout, key, current = grid.grid_layout, event.key(), grid.selection.current_index
    steps = {_Key.Key_Left: -1, _Key.Key_Right: 1}
    rows = {_Key.Key_Up: -1, _Key.Key_Down: 1}
    page = max(1, grid.viewport().height() // layout.pitch)
    pages = {_Key.Key_PageUp: -page, _Key.Key_PageDown: page}
    if key not in {*steps, *rows, *pages, _Key.Key_Home, _Key.Key_End}:
        return None
    if key == _Key.Key_Home:
        return 0
    if key == _Key.Key_End:
        return layout.count - 1
    if current is None:
        shown = grid.visible_photos()
        return grid.selection.places[shown[0]] if shown else 0
    if key in steps:
        return max(0, min(layout.count - 1, current + steps[_Key(key)]))
    if key in pages and event.modifiers() & _CONTROL:
        return _next_sitting(grid, current, forward=key == _Key.Key_PageDown)
    return layout.row_step(current, {**rows, **pages}[_Key(key)])


def _next_sitting(grid: GridBase, current: int, *, forward: bool) -> int:
    """The first photo of the next sitting, or of this one, then of the one before."""
    layout = grid.grid_layout
    span = layout.span(layout.group_of(current))
    if forward:
        return span.stop if span.stop < layout.count else current
    if current > span.start or span.start == 0:
        return span.start
    return layout.span(layout.group_of(span.start - 1)).start
