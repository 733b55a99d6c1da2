"""The left side of a survey: which one, what it comes to, and all that was found as a list."""

from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QListWidgetItem, QWidget

from journal.desktop import icons
from journal.desktop.widgets.checked import repolish
from journal.desktop.widgets.finding_rows import ROW_ROLE, FindingRow, MarkDelegate
from journal.desktop.widgets.flow import FlowLayout
from journal.desktop.widgets.parts import PlainList, button, column, label
from journal.domain.estimates import Estimate
from journal.domain.findings import Survey, SurveySheet
from journal.domain.ids import FindingId, SurveyId
from journal.domain.outcome_words import estimate_in_words
from journal.domain.when import spoken

_NONE_YET = (
    "Walk round the car before the start: click what you find, say how bad it is and what it may"
    " take at best, likely and at worst. The sum follows, with what is sure of it and what isn't."
)


class SurveyPane(QWidget):
    """The surveys, the findings of one, and the acts on them."""

    #: Another survey is to be shown: its number.
    survey_wanted = Signal(object)
    #: A finding was picked in the list: its number.
    picked = Signal(object)
    #: What a button is for: "start", "go on", "change", "close", "remove" of surveys; "add",
    #: "edit", "take out" of findings; "estimate" for what it comes to.
    act_wanted = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Survey")
        self.surveys = QComboBox()
        self.surveys.setAccessibleName("Which survey")
        self.about = label("", "muted")
        self.sum = label("")
        self.list = PlainList("What was found")
        self.list.setItemDelegate(MarkDelegate(self.list))
        self.detail = label("", "muted")
        self.acts = {
            name: button(text, partial(self.act_wanted.emit, name), icon=icon, role=role)
            for name, text, icon, role in (
                ("start", "New &survey", "survey", ""),
                ("go on", "&Go on from it", "next", ""),
                ("change", "Change", "edit", "quiet"),
                ("close", "&Close it", "lock", "quiet"),
                ("remove", "Remove", "remove", "quiet"),
                ("add", "&Add finding", "plus", "primary"),
                ("edit", "Change it", "edit", ""),
                ("take out", "Take it out", "remove", "quiet"),
                ("estimate", "What it comes to", "ledger", ""),
            )
        }
        self.acts["close"].setToolTip("Keep it as it is now, for good")
        self.acts["add"].setToolTip("On the panel marked on the drawing")
        heads, findings = QWidget(), QWidget()
        for holder, names in (
            (heads, ("start", "go on", "change", "close", "remove")),
            (findings, ("add", "edit", "take out")),
        ):
            flow = FlowLayout(holder)
            for name in names:
                flow.addWidget(self.acts[name])
        layout = column(
            self.surveys, self.about, heads, self.sum, self.acts["estimate"], self.list,
            self.detail, findings, None, margin=8,
        )  # fmt: skip
        layout.setStretchFactor(self.list, 100)
        self.setLayout(layout)
        self.surveys.activated.connect(
            lambda place: self.survey_wanted.emit(SurveyId(self.surveys.itemData(place)))
        )
        self.list.currentItemChanged.connect(self._on_current)
        self.list.itemActivated.connect(lambda _item: self.act_wanted.emit("edit"))

    def show_surveys(
        self, surveys: tuple[Survey, ...], sheet: SurveySheet | None, *, read_only: bool
    ) -> None:
        """Offer these surveys, and say of the one shown what it is."""
        self.surveys.clear()
        for survey in reversed(surveys):
            self.surveys.addItem(survey.name, survey.id)
        self.surveys.setVisible(bool(surveys))
        is_open = sheet is not None and sheet.survey.closed is None and not read_only
        if sheet is not None:
            self.surveys.setCurrentIndex(self.surveys.findData(sheet.survey.id))
            note = f" {sheet.survey.note}" if sheet.survey.note else ""
            state = "still open" if sheet.survey.closed is None else "closed, kept as it was"
            self.about.setText(f"{spoken(sheet.survey.when)}; {state}.{note}")
        else:
            self.about.setText(_NONE_YET)
        shown = {
            "start": not read_only,
            "go on": sheet is not None and not read_only,
            "remove": sheet is not None and not read_only,
            "estimate": sheet is not None and bool(sheet.findings),
        }
        for name, act in self.acts.items():
            act.setVisible(shown.get(name, is_open))
        start = self.acts["start"]
        start.setProperty("role", "" if surveys else "primary")
        repolish(start)
        icons.put(start, "survey")
        self.list.setVisible(sheet is not None)
        self.sum.setVisible(sheet is not None)

    def show_findings(self, rows: tuple[FindingRow, ...]) -> None:
        """List what was found."""
        picked = self.finding_id()
        self.list.blockSignals(True)
        self.list.clear()
        for one in rows:
            item = QListWidgetItem(one.words)
            item.setData(ROW_ROLE, one)
            self.list.addItem(item)
        self.list.blockSignals(False)
        self.pick(picked)

    def show_sum(self, estimate: Estimate | None, currency: str) -> None:
        """Say in two lines what the survey comes to; None while that is reckoned."""
        if estimate is None or not estimate.count:
            self.sum.setText("Nothing found yet." if estimate is not None else "")
            return
        count = "1 finding" if estimate.count == 1 else f"{estimate.count} findings"
        self.sum.setText(f"{count}. {estimate_in_words(estimate, currency)}")

    def finding_id(self) -> FindingId | None:
        """The finding picked."""
        item = self.list.currentItem()
        return None if item is None else item.data(ROW_ROLE).id  # type: ignore[no-any-return]

    def pick(self, finding_id: FindingId | None) -> None:
        """Pick a finding without telling of it."""
        self.list.blockSignals(True)
        self.list.setCurrentRow(-1)
        for place in range(self.list.count()):
            if self.list.item(place).data(ROW_ROLE).id == finding_id:
                self.list.setCurrentRow(place)
        self.list.blockSignals(False)
        self._show_acts()

    def _on_current(self) -> None:
        self._show_acts()
        self.picked.emit(self.finding_id())

    def _show_acts(self) -> None:
        item = self.list.currentItem()
        for name in ("edit", "take out"):
            self.acts[name].setEnabled(item is not None)
        self.detail.setText("" if item is None else item.data(ROW_ROLE).detail)
        self.detail.setVisible(item is not None)
