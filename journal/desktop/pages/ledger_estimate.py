"""What a survey comes to, how sure that is, and later what came of it."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from PySide6.QtCore import Qt, Slot
from PySide6.QtWidgets import QComboBox, QGridLayout, QLabel, QStackedLayout, QTabWidget, QWidget

from journal.actions import cars, surveys
from journal.actions.session import Session
from journal.actions.surveys import Compared
from journal.desktop.desk import AreaSelected, Desk, FindingSelected
from journal.desktop.pages.ledger_tabs import LedgerTab
from journal.desktop.tasks import Task
from journal.desktop.widgets.chart_file import ask_chart_file, proposed_file, write_chart
from journal.desktop.widgets.outlook_chart import OutlookChart
from journal.desktop.widgets.outlook_tables import ComparedTable, OutcomeTable, WeightsTable
from journal.desktop.widgets.parts import EmptyState, button, column, label, row
from journal.domain.changes import Changes
from journal.domain.estimates import LEVELS, Estimate, Outlook, Spread, Weight, ways_in_words
from journal.domain.findings import Survey, SurveySheet
from journal.domain.ids import SurveyId
from journal.domain.money import format_whole
from journal.domain.outcome_words import (
    chance_in_words,
    estimate_in_words,
    outcome_in_words,
    outlook_title,
)
from journal.domain.outcomes import AreaOutcome, Outcome
from journal.domain.when import spoken

_KINDS = frozenset({"surveys", "areas", "receipts", "work", "car", "drawing", "milestones"})
_ROWS = ("Mean", "Spread, ±", *(f"{100 * level:.0f} % stay under" for level in LEVELS), "Ceiling",
         "Chance to stay under")  # fmt: skip
#: Which of the tabs compares two surveys.
_AGAINST = 3
_COLUMNS = ("Money", "by formula", "Hours", "by formula")


@dataclass(frozen=True, slots=True)
class _Found:
    """What was read; ``sheet`` is None where there is no survey."""

    surveys: tuple[Survey, ...]
    currency: str
    sheet: SurveySheet | None = None
    estimate: Estimate | None = None
    outcome: Outcome | None = None
    compared: tuple[Compared, ...] = ()


class EstimateTab(LedgerTab):
    """The estimate of one survey.

    Attributes:
        choose: asks for the file to save the chart to, given the one proposed; None for none.
    """

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.choose: Callable[[Path], Path | None] = partial(ask_chart_file, self)
        self._reading: Task | None = None
        self._found: _Found | None = None
        self.shown: SurveyId | None = None
        self.choice = QComboBox()
        self.choice.setAccessibleName("Which survey")
        self.choice.setMinimumContentsLength(18)
        self.about = label("", "muted", wrap=False)
        self.sum = label("")
        self.cells = {(r, c): _cell() for r in range(len(_ROWS)) for c in range(len(_COLUMNS))}
        self.of = QComboBox()
        self.of.addItems(["Money", "Hours"])
        self.of.setAccessibleName("Chart and weights of")
        self.chart = OutlookChart(desk)
        self.save = button("Save the &chart\N{HORIZONTAL ELLIPSIS}", self._on_save, icon="take-out")
        self.ways = label("", "muted")
        self.weights = WeightsTable()
        self.came = label("", "muted")
        self.outcomes = OutcomeTable()
        self.other = QComboBox()
        self.other.setAccessibleName("The survey to compare with")
        self.other.setMinimumContentsLength(18)
        self.compared = ComparedTable()
        self.tables = QTabWidget()
        self._build()
        self._connect()

    def _build(self) -> None:
        said = label("S&urvey", wrap=False)
        said.setBuddy(self.choice)
        shown = label("Sho&w", wrap=False)
        shown.setBuddy(self.of)
        to_drawing = button("On the &drawing", self._on_drawing, icon="survey")
        head = row(said, self.choice, self.about, None, shown, self.of, to_drawing)
        middle = row(self._grid(), self.chart, spacing=16)
        middle.setStretch(1, 1)
        then = label("Compared &with", wrap=False)
        then.setBuddy(self.other)
        against = column(self.compared)
        against.insertLayout(0, row(then, self.other, None))
        foot = row(self.ways, self.save)
        foot.setStretch(0, 1)
        figures = column()
        figures.addLayout(middle, 1)
        figures.addLayout(foot)
        for title, content in (
            ("What it may come to", figures),
            ("Look at first", column(self.weights)),
            ("Estimated and actual", column(self.came, self.outcomes)),
            ("Against another survey", against),
        ):
            page = QWidget()
            content.setContentsMargins(0, 6, 0, 0)
            page.setLayout(content)
            self.tables.addTab(page, title)
        self.tables.setDocumentMode(True)
        self.tables.setAccessibleName("What the estimate rests on")
        filled = QWidget()
        layout = column(spacing=6)
        layout.setContentsMargins(0, 8, 0, 0)
        layout.addLayout(head)
        layout.addWidget(self.sum)
        layout.addWidget(self.tables, 1)
        filled.setLayout(layout)
        start = button("Start a &survey", self._on_drawing, icon="survey", role="primary")
        start.setEnabled(not self.desk.read_only)
        self.empty = EmptyState(
            "survey",
            "No survey yet",
            "Is this car worth it? Walk round the drawing before the start, mark what you find and "
            "what it may take at best, likely and at worst. What it comes to stands here, with how "
            "sure that is; and later, what came of it.",
            start,
        )
        self._stack = QStackedLayout(self)
        self._stack.addWidget(filled)
        self._stack.addWidget(self.empty)

    def _grid(self) -> QWidget:
        made = QWidget()
        grid = QGridLayout(made)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(14)
        grid.setVerticalSpacing(3)
        for place, title in enumerate(_COLUMNS, start=1):
            heading = label(title, "" if place % 2 else "muted", wrap=False)
            grid.addWidget(heading, 0, place, Qt.AlignmentFlag.AlignRight)
        for place, title in enumerate(_ROWS, start=1):
            grid.addWidget(label(title, "muted", wrap=False), place, 0)
        for (r, c), cell in self.cells.items():
            cell.setAccessibleName(f"{_ROWS[r]}, {_COLUMNS[c]}")
            grid.addWidget(cell, r + 1, c + 1, Qt.AlignmentFlag.AlignRight)
        grid.setRowStretch(len(_ROWS) + 1, 1)
        return made

    def _connect(self) -> None:
        self.choice.activated.connect(self._on_survey)
        self.other.activated.connect(lambda _place: self._read())
        self.of.currentIndexChanged.connect(self._show_one)
        self.weights.on_opened(self._on_weight)
        self.outcomes.on_opened(self._on_area)

    @property
    def is_read(self) -> bool:
        """Whether what is shown is what is recorded."""
        return self._found is not None and self._reading is None

    # Reading

    def refresh(self, changes: Changes | None) -> None:
        """Read the survey again where it, or what it is held against, has changed."""
        if changes is None or changes.kinds & _KINDS:
            self._read()

    def _read(self) -> None:
        session, wanted, other = self.desk.session, self.shown, self.other.currentData()
        if self._reading is not None:
            self._reading.cancel()
        self._reading = self.desk.read(
            lambda _context: _read(session, wanted, other), self._show, self
        )

    # Showing

    def _show(self, found: _Found) -> None:
        self._reading, self._found = None, found
        sheet, estimate = found.sheet, found.estimate
        self._stack.setCurrentIndex(0 if sheet is not None else 1)
        if sheet is None or estimate is None or found.outcome is None:
            return
        self.shown = sheet.survey.id
        self._show_choices(found, sheet.survey)
        state = "closed" if sheet.survey.closed else "still open"
        self.about.setText(f"{spoken(sheet.survey.when)}; {state}; {_count(estimate.count)}")
        self.sum.setText(estimate_in_words(estimate, found.currency))
        for first, outlook, currency in (
            (0, estimate.money, found.currency),
            (2, estimate.minutes, ""),
        ):
            self._show_cells(first, outlook.drawn, outlook.ceiling, currency)
            self._show_cells(first + 1, outlook.formula, outlook.ceiling, currency)
        self.came.setText("\n".join(outcome_in_words(found.outcome, found.currency)))
        self.outcomes.show_areas(found.outcome.areas, found.currency)
        self.compared.show_compared(found.compared, found.currency)
        self._show_one()

    def _show_choices(self, found: _Found, shown: Survey) -> None:
        self.choice.clear()
        others = [survey for survey in found.surveys if survey.id != shown.id]
        for survey in reversed(found.surveys):
            self.choice.addItem(survey.name, survey.id)
        self.choice.setCurrentIndex(self.choice.findData(shown.id))
        kept = self.other.currentData()
        self.other.clear()
        for survey in others:
            self.other.addItem(survey.name, survey.id)
        self.other.setCurrentIndex(max(0, self.other.findData(kept)) if others else -1)
        self.tables.setTabVisible(_AGAINST, bool(others))

    def _show_cells(self, at: int, way: Spread, ceiling: int | None, currency: str) -> None:
        texts = [_amount(n, currency) for n in (way.mean, way.deviation, *way.figures)]
        texts.append("none set" if ceiling is None else _amount(ceiling, currency))
        texts.append("" if way.under is None else chance_in_words(way.under))
        for place, text in enumerate(texts):
            self.cells[place, at].setText(text)

    @Slot()
    def _show_one(self) -> None:
        """The chart and weights of money or of hours."""
        found = self._found
        if found is None or found.estimate is None or found.sheet is None:
            return
        is_money = self.of.currentIndex() == 0
        outlook: Outlook = found.estimate.money if is_money else found.estimate.minutes
        currency = found.currency if is_money else ""
        words = ways_in_words(outlook, has_causes=found.estimate.has_causes)
        self.ways.setText(
            f"Played through {found.estimate.draws:,} times (bars; dashed: the formula). {words}"
        )
        title = outlook_title(of_hours=not is_money)
        said = estimate_in_words(found.estimate, found.currency)
        self.chart.show_outlook(outlook, title, currency, said)
        self.weights.show_weights(outlook.weights, found.sheet.findings, currency)

    # Reacting

    @Slot(int)
    def _on_survey(self, place: int) -> None:
        self.shown = SurveyId(self.choice.itemData(place))
        self._read()

    def _on_drawing(self) -> None:
        self.desk.show_mode("Survey")

    def _on_save(self) -> None:
        session, shown, of_hours = self.desk.session, self.shown, self.of.currentIndex() == 1
        if shown is None:
            return

        def save(out: Path) -> Path:
            from journal.actions.charts import save_estimate

            return save_estimate(session, shown, out, of_hours=of_hours)

        name = f"estimate of {'hours' if of_hours else 'money'}"
        write_chart(self.desk, self.choose(proposed_file(self.desk, name)), save)

    def _on_weight(self, weight: Weight) -> None:
        self.desk.show_page("Drawing")
        self.desk.select(FindingSelected(weight.finding_id))

    def _on_area(self, area: AreaOutcome) -> None:
        self.desk.show_page("Areas")
        self.desk.select(AreaSelected(area.area_id))


def _read(session: Session, wanted: SurveyId | None, other: int | None) -> _Found:
    """The survey wanted, else the latest, with all that is reckoned of it."""
    known, currency = surveys.surveys(session), cars.car(session).currency
    numbers = [survey.id for survey in known]
    if not numbers:
        return _Found(known, currency)
    shown = wanted if wanted in numbers else numbers[-1]
    sheet = surveys.sheet(session, shown)
    others = [number for number in numbers if number != shown]
    against = SurveyId(other) if other in others else (others[0] if others else None)
    return _Found(
        known,
        currency,
        sheet,
        surveys.estimate_of(sheet),
        surveys.outcome(session, shown),
        () if against is None else surveys.compare(session, against, shown),
    )


def _amount(amount: float, currency: str) -> str:
    if currency:
        return format_whole(round(amount), currency)
    return f"{amount / 60:,.0f} h"


def _count(count: int) -> str:
    return "1 finding" if count == 1 else f"{count} findings"


def _cell() -> QLabel:
    return label("", wrap=False)
