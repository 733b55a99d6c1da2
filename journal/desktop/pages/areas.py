"""The page of repair areas: all of them in a list, the picked one in full beside it."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QLineEdit, QSplitter, QStackedWidget, QVBoxLayout, QWidget

from journal.actions import areas as actions
from journal.actions import cars, drawings
from journal.actions.costs import costs
from journal.actions.surveys import expected_by_area
from journal.desktop.desk import AreaSelected, Desk, PhotosSelected, Selection
from journal.desktop.dialogs.area import AreaDialog
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.pages import Page
from journal.desktop.pages.area_detail import AreaDetail
from journal.desktop.tasks import Task
from journal.desktop.widgets.area_list import SORTS, AreaList, AreaRow
from journal.desktop.widgets.parts import EmptyState, button, column, label, row, scrolled
from journal.domain.changes import Changes
from journal.domain.ids import AreaId

if TYPE_CHECKING:
    from journal.actions.session import Session

_KINDS = frozenset(
    {
        "areas",
        "pairs",
        "receipts",
        "wanted",
        "work",
        "entries",
        "photos",
        "pins",
        "car",
        "drawing",
        "milestones",
        "metalwork",
        "anchors",
        "readings",
        "claims",
        "surveys",
    }
)
_ALL, _OPEN = "All stages", "Not finished"


class AreasPage(Page):
    """The repair areas of the car."""

    title = "Areas"
    icon = "areas"
    inspects = (PhotosSelected,)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._rows: tuple[AreaRow, ...] = ()
        self._reading: Task | None = None
        self._current: AreaId | None = None
        self.filter = QLineEdit()
        self.stage_filter = QComboBox()
        self.sort = QComboBox()
        self.list = AreaList()
        self.count = label("", "muted", wrap=False)
        self.detail = AreaDetail(desk, self)
        self._detail_area = scrolled(self.detail)
        self._pick_one = label(
            "Pick a repair area on the left to see all that hangs on it.", "muted"
        )
        self._right = QStackedWidget()
        self._stack = QStackedWidget()
        self._build()
        self._connect()

    def _build(self) -> None:
        self.filter.setPlaceholderText("Filter by name, panel or words")
        self.filter.setAccessibleName("Filter the repair areas")
        self.filter.setClearButtonEnabled(True)
        self.stage_filter.setAccessibleName("Show which stages")
        self.sort.setAccessibleName("Sort the repair areas")
        self.sort.addItems([words for words, _, _ in SORTS])
        new = button("&New area", self.new_area, icon="new-area", role="primary")
        new.setToolTip("Mark a repair area on one or more panels")
        new.setEnabled(not self.desk.read_only)
        left = QWidget()
        left_layout = QVBoxLayout(left)
        left_layout.setContentsMargins(12, 12, 8, 8)
        left_layout.setSpacing(8)
        left_layout.addLayout(row(label("Repair areas", "heading", wrap=False), None, new))
        left_layout.addWidget(self.filter)
        left_layout.addLayout(row(self.stage_filter, self.sort))
        left_layout.addWidget(self.list, 1)
        left_layout.addWidget(self.count)
        self._pick_one.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._right.addWidget(self._pick_one)
        self._right.addWidget(self._detail_area)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.setChildrenCollapsible(False)
        split.addWidget(left)
        split.addWidget(self._right)
        split.setStretchFactor(0, 2)
        split.setStretchFactor(1, 3)
        split.setSizes([360, 560])
        self._stack.addWidget(self._make_empty())
        self._stack.addWidget(split)
        self.setLayout(column(self._stack))
        self.setFocusProxy(self.list)

    def _make_empty(self) -> EmptyState:
        new = button("&New repair area", self.new_area, icon="new-area", role="primary")
        new.setEnabled(not self.desk.read_only)
        return EmptyState(
            "areas",
            "No repair area yet",
            "A repair area is one stretch of trouble and its cure: what was found on which panel, "
            "what was done about it, and how far it is. Mark one here, or on a panel of the "
            "drawing.",
            new,
        )

    def _connect(self) -> None:
        self.filter.textChanged.connect(self._show_rows)
        self.stage_filter.currentIndexChanged.connect(self._show_rows)
        self.sort.currentIndexChanged.connect(self._show_rows)
        self.list.picked.connect(self._on_picked)

    # --- reading ---

    def refresh(self, changes: Changes | None) -> None:
        """Read the areas again, in a reader's thread: their costs rest on every receipt."""
        if changes is not None and not changes.kinds & _KINDS:
            return
        session = self.desk.session
        if self._reading is not None:
            self._reading.cancel()
        self._reading = self.desk.read(lambda _context: read_rows(session), self._on_read, self)

    def _on_read(self, rows: tuple[AreaRow, ...]) -> None:
        self._reading, self._rows = None, rows
        self._fill_stages()
        self._stack.setCurrentIndex(1 if rows else 0)
        if self._current not in {row.area.id for row in rows}:
            self._current = None
        self._show_rows()
        self._show_current()

    def show_selection(self, selection: Selection) -> None:
        """Show the area that is selected; other selections leave the page as it is."""
        if isinstance(selection, AreaSelected) and selection.id != self._current:
            self._current = selection.id
            self._show_rows()
            known, shown = self._rows, self.list.rows_model.rows()
            if any(r.area.id == selection.id for r in known if r not in shown):
                self._drop_filters()
            self._show_current()

    def new_area(self) -> None:
        """Ask for a new repair area."""
        open_dialog(AreaDialog(self.desk, self.window()))

    def _fill_stages(self) -> None:
        stages = self._rows[0].stages if self._rows else ()
        wanted = [_ALL, _OPEN, *stages]
        if [self.stage_filter.itemText(i) for i in range(self.stage_filter.count())] != wanted:
            self.stage_filter.blockSignals(True)
            self.stage_filter.clear()
            self.stage_filter.addItems(wanted)
            self.stage_filter.blockSignals(False)

    # --- showing ---

    def _show_rows(self) -> None:
        _, key, largest_first = SORTS[max(0, self.sort.currentIndex())]
        rows = [row for row in self._rows if self._passes(row)]
        rows.sort(key=key, reverse=largest_first)
        self.list.set_rows(rows, self._current)
        shown, all_of_them = len(rows), len(self._rows)
        words = f"{all_of_them:,} repair area{'' if all_of_them == 1 else 's'}"
        self.count.setText(words if shown == all_of_them else f"{shown:,} of {words}")

    def _passes(self, shown: AreaRow) -> bool:
        stage = self.stage_filter.currentText()
        if stage == _OPEN and shown.is_finished:
            return False
        if stage not in ("", _ALL, _OPEN) and shown.area.stage != stage:
            return False
        area = shown.area
        words = " ".join((area.name, shown.panels, area.found, area.done)).casefold()
        return all(word in words for word in self.filter.text().casefold().split())

    def _drop_filters(self) -> None:
        self.filter.clear()
        self.stage_filter.setCurrentIndex(0)

    def _show_current(self) -> None:
        found = [row for row in self._rows if row.area.id == self._current]
        if not found:
            self._right.setCurrentWidget(self._pick_one)
            return
        shown = found[0]
        if self.detail.area_id != shown.area.id:
            self._detail_area.verticalScrollBar().setValue(0)
        self.detail.show_area(shown.area, shown.figures(), shown.expected)
        self._right.setCurrentWidget(self._detail_area)

    def _on_picked(self, number: int) -> None:
        self._current = AreaId(number)
        self._show_current()
        self.desk.select(AreaSelected(AreaId(number)))


def read_rows(session: "Session") -> tuple[AreaRow, ...]:
    """Every repair area with its panels, money and hours."""
    areas = actions.areas(session)
    if not areas:
        return ()
    table, stages = costs(session, "area"), cars.car(session).stages
    labels = {panel.id: panel.label for panel in drawings.panels(session)}
    by_key, expected = {row.key: row for row in table.rows}, expected_by_area(session)
    made = []
    for area in areas:
        figures = by_key.get(str(area.id))
        panels = "; ".join(labels[i] for i in area.panel_ids if i in labels)
        minutes, money = (figures.minutes, figures.money) if figures else (0, 0)
        said = expected.get(area.id, "")
        row = AreaRow(area, panels or "on no panel", minutes, money, table.currency, stages, said)
        made.append(row)
    return tuple(made)
