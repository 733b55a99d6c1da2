"""Charts of the Ledger: money and hours over time, on the car, for each metre, and proven."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QComboBox, QStackedWidget, QWidget

from journal.desktop import locales
from journal.desktop.desk import Desk
from journal.desktop.pages import ledger_filters
from journal.desktop.pages.ledger_tabs import LedgerTab
from journal.desktop.tasks import Task
from journal.desktop.widgets.chart import ChartView
from journal.desktop.widgets.chart_file import ask_chart_file, proposed_file, write_chart
from journal.desktop.widgets.parts import EmptyState, button, column, label, row, scrolled
from journal.domain.charts import CHART_TITLES, Chart, ChartKind
from journal.domain.series import Step

if TYPE_CHECKING:
    from journal.actions.ledger_page import LedgerRead
    from journal.desktop.widgets.money_car import MoneyCar

_CAR = "car"
_STEPS: tuple[tuple[str, Step | None], ...] = (
    ("as it fits", None),
    ("a month", "month"),
    ("a year", "year"),
)
_HINT = "Press a {}, or walk with the arrow keys and press Enter: the lines it is made of."
_OVER_TIME = frozenset({ChartKind.SPEND, ChartKind.HOURS})
_NOTHING = {
    ChartKind.SPEND: "Record receipts, and what was spent stands here by month or year.",
    ChartKind.HOURS: "Record hours, and what was worked stands here by month or year.",
    ChartKind.METRE: "Draw seams on the Drawing, let them come to “welded”, name the repair area "
    "they belong to and share receipts to it: then a metre has a cost.",
    ChartKind.PROVEN: "Record receipts, and what a paper proves stands here by category.",
}


class ChartsTab(LedgerTab):
    """One chart at a time, chosen above it.

    Attributes:
        choose: asks for the file to save to, given the one proposed; None for none.
    """

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.choose: Callable[[Path], Path | None] = partial(ask_chart_file, self)
        self._found: LedgerRead | None = None
        self._reading: Task | None = None
        self.kind, self.step = QComboBox(), QComboBox()
        for kind in ChartKind:
            self.kind.addItem(CHART_TITLES[kind], kind)
        self.kind.insertItem(2, "Where the money went on the car", _CAR)
        for words, step in _STEPS:
            self.step.addItem(words, step)
        self.kind.setAccessibleName("Chart shown")
        self.step.setAccessibleName("What each bar stands for")
        self.view = ChartView(desk)
        self._car: MoneyCar | None = None
        self.save = button("&Save the chart\N{HORIZONTAL ELLIPSIS}", self._on_save, icon="take-out")
        self.empty = EmptyState("ledger", "Nothing to draw yet", "")
        self.hint = label("", "muted", wrap=False)
        self._stack = QStackedWidget()
        # The content of an area that scrolls has no colours of its own, and a chart wants some.
        content = QWidget()
        content.setLayout(column(self.view))
        self._area = scrolled(content)
        for page in (self._area, self.empty):
            self._stack.addWidget(page)
        self._build()

    def _build(self) -> None:
        shown, each = label("Sho&w", wrap=False), label("Each b&ar", wrap=False)
        shown.setBuddy(self.kind)
        each.setBuddy(self.step)
        self._each = each
        layout = column(self._stack, self.hint)
        layout.insertLayout(0, row(shown, self.kind, each, self.step, None, self.save))
        layout.setStretch(1, 1)
        layout.setContentsMargins(0, 8, 0, 0)
        self.setLayout(layout)
        self.kind.currentIndexChanged.connect(self._read)
        self.step.currentIndexChanged.connect(self._read)
        self.view.opened.connect(self._on_mark)

    @property
    def car(self) -> "MoneyCar":
        """The drawing of where the money went, made when it is first asked for."""
        if self._car is None:
            from journal.desktop.widgets.money_car import MoneyCar

            self._car = MoneyCar(self.desk)
            self._car.opened.connect(self._on_panel)
            self._stack.addWidget(self._car)
        return self._car

    def show_found(self, found: "LedgerRead") -> None:
        """Draw what the page has read."""
        self._found = found
        self._read()

    def show_chart(self, kind: ChartKind) -> None:
        """Choose a chart."""
        self.kind.setCurrentIndex(self.kind.findData(kind))

    def _read(self) -> None:
        if self._found is None:
            return
        kind, wish = self.kind.currentData(), self._found.wish
        over_time = kind in _OVER_TIME
        for piece in (self._each, self.step):
            piece.setVisible(over_time)
        self.save.setVisible(kind != _CAR)
        self.hint.setText(_HINT.format("panel" if kind == _CAR else "bar"))
        if self._reading is not None:
            self._reading.cancel()
            self._reading = None
        if kind == _CAR:
            self._stack.setCurrentWidget(self.car)
            self.car.read(wish)
            return
        step: Step | None = self.step.currentData() if over_time else None
        session, locale = self.desk.session, locales.owner_locale()

        def job(_context: object) -> Chart:
            from journal.actions.charts import ledger_chart

            return ledger_chart(session, ChartKind(kind), step=step, wish=wish, locale=locale)

        self._reading = self.desk.read(job, self._on_read, self)

    def _on_read(self, chart: Chart) -> None:
        self._reading = None
        self.save.setEnabled(not chart.is_empty)
        if chart.is_empty:
            self.hint.clear()
            self._stack.removeWidget(self.empty)
            self.empty.deleteLater()
            self.empty = EmptyState("ledger", "Nothing to draw yet", _NOTHING[chart.kind])
            self._stack.addWidget(self.empty)
            self._stack.setCurrentWidget(self.empty)
            return
        self._stack.setCurrentWidget(self._area)
        self.view.show_chart(chart)

    # --- what is pressed ---

    def _on_mark(self, bar: str, part: str) -> None:
        chart, found = self.view.chart, self._found
        if chart is None or found is None:
            return
        words = next((one.label for one in chart.bars if one.key == bar), bar)
        if len(chart.parts) > 1:
            words += f", {next((one.label for one in chart.parts if one.key == part), part)}"
        currency, wish = found.summary.currency, found.wish
        wanted = ledger_filters.of_mark(chart, bar, part, words, currency, wish)
        self.lines_wanted.emit(wanted)

    def _on_panel(self, panel_id: int, words: str) -> None:
        if self._found is not None:
            currency, wish = self._found.summary.currency, self._found.wish
            self.lines_wanted.emit(ledger_filters.of_panel(panel_id, words, currency, wish))

    def _on_save(self) -> None:
        chart, session = self.view.chart, self.desk.session
        if chart is None:
            return

        def save(out: Path) -> Path:
            from journal.actions.charts import save_chart

            return save_chart(session, chart, out)

        write_chart(self.desk, self.choose(proposed_file(self.desk, chart.kind.value)), save)
