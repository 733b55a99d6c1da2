"""Bringing in a spreadsheet or a bank's export: what its columns are, then what would come in."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QDialogButtonBox, QFileDialog, QStackedWidget, QWidget

from journal.actions.bring_in import (
    BroughtIn,
    OpenSheet,
    Plan,
    ask_again,
    bring_in,
    look_again,
    open_sheet,
    plan,
)
from journal.desktop.desk import Desk
from journal.desktop.dialogs.bring_in_sheet_columns import ColumnsPane
from journal.desktop.dialogs.bring_in_sheet_preview import PreviewPane
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.tasks import Task
from journal.domain.errors import JournalError
from journal.domain.progress import Context
from journal.domain.sheet_rows import Choices, Proposal

_FILES = "Spreadsheets and tables (*.csv *.tsv *.xlsx *.xlsm *.ods *.txt);;All files (*)"


def choose_sheet(desk: Desk, over: QWidget) -> None:
    """Ask which file, and show what it would bring in."""
    name, _ = QFileDialog.getOpenFileName(over, "Bring in which spreadsheet?", "", _FILES)
    if name:
        open_dialog(BringInSheetDialog(desk, Path(name), over))


class BringInSheetDialog(FormDialog):
    """Two steps: the columns on the real rows, then every item before anything is recorded.

    Attributes:
        columns, preview: the two steps.
    """

    def __init__(self, desk: Desk, path: Path, parent: QWidget | None = None) -> None:
        super().__init__(f"Bring in {path.name}", "&See what would come in", parent)
        self._desk = desk
        self._path = path
        self._sheet: OpenSheet | None = None
        self._plan: Plan | None = None
        self._reading: Task | None = None
        self.columns, self.preview = ColumnsPane(), PreviewPane()
        self._steps = QStackedWidget()
        self._steps.addWidget(self.columns)
        self._steps.addWidget(self.preview)
        self.outer.insertWidget(0, self._steps)
        for place in range(self.outer.count()):
            self.outer.setStretch(place, 0 if place else 1)
        self.back = self.buttons.addButton("&Back", QDialogButtonBox.ButtonRole.ActionRole)
        self.back.setAutoDefault(False)
        self.back.clicked.connect(self._go_back)
        self.columns.sheet_wanted.connect(self._open)
        self.columns.heading_wanted.connect(self._look_again)
        self.columns.columns_changed.connect(self._ask_again)
        self.preview.changed.connect(self._name_act)
        self.resize(1080, 700)
        self._go_back()
        self._open("")

    # --- the first step ---

    @Slot(str)
    def _open(self, name: str) -> None:
        session, path = self._desk.session, self._path
        self._read(lambda _context: open_sheet(session, path, name), self._show_sheet)

    @Slot(int)
    def _look_again(self, heading: int) -> None:
        session, sheet = self._desk.session, self._sheet
        if sheet is not None:
            self._read(lambda _context: look_again(session, sheet, heading), self._show_sheet)

    @Slot(object)
    def _ask_again(self, choices: Choices) -> None:
        """Have the whole sheet looked at for what only the person can say."""
        sheet = self._sheet
        if sheet is None:
            return
        self.accept_button.setEnabled(False)

        def done(proposal: Proposal) -> None:
            self.columns.show_answers(proposal)
            self.accept_button.setEnabled(True)

        self._desk.read(lambda _context: ask_again(sheet, choices), done, self)

    def _show_sheet(self, sheet: OpenSheet) -> None:
        self._sheet = sheet
        self.columns.show_sheet(sheet)

    @Slot()
    def _go_back(self) -> None:
        self._steps.setCurrentWidget(self.columns)
        self.back.hide()
        self.show_problem("")
        self.accept_button.setText("&See what would come in")
        self.accept_button.setEnabled(self._sheet is not None)

    # --- the second ---

    def submit(self) -> bool:
        """Go on to what would come in, and from there bring it in."""
        if self._sheet is None:
            return False
        if self._steps.currentWidget() is self.columns:
            self._see(self._sheet, self.columns.settled())
            return False
        if self._plan is not None:
            self._bring_in(self._plan)
        return True

    def _see(self, sheet: OpenSheet, choices: Choices) -> None:
        session = self._desk.session
        # What is chosen stays chosen when the person comes back to it.
        self._sheet = replace(sheet, proposal=replace(sheet.proposal, choices=choices))
        self._read(lambda context: plan(session, sheet, choices, context), self._show_plan)

    def _show_plan(self, found: Plan) -> None:
        self._plan = found
        self._steps.setCurrentWidget(self.preview)
        self.back.show()
        self.preview.show_plan(found)
        self.preview.items.setFocus()

    @Slot()
    def _name_act(self) -> None:
        """Say on the button what it would bring in."""
        if self._plan is not None:
            coming = self._plan.coming_in(self.preview.fates)
            self.accept_button.setEnabled(not coming.is_nothing)
            self.accept_button.setText(f"&Bring in {coming.words()}")

    def _bring_in(self, found: Plan) -> None:
        desk, session, fates = self._desk, self._desk.session, self.preview.fates

        def job(context: Context) -> BroughtIn:
            return bring_in(session, found, fates, context)

        def done(made: BroughtIn) -> None:
            words = made.incoming.words()
            desk.message.emit(
                f"{words[:1].upper()}{words[1:]} came in; undo takes all back.", "done"
            )
            desk.show_page("Ledger")

        desk.run(f"Bringing in {found.source.file}", job, done)

    # --- reading ---

    def _next_field(self) -> QWidget:
        """Where the keyboard goes on: to what is open, else to the button."""
        return self.columns.open_question() or self.accept_button

    def _read(self, act: Callable[[Context], Any], react: Callable[[Any], None]) -> None:
        """Read in the background; an obstacle is said in the dialog."""
        if self._reading is not None:
            self._reading.cancel()
        at = self.focusWidget()
        self.accept_button.setEnabled(False)
        self.columns.setEnabled(False)

        def job(context: Context) -> Any:
            try:
                return act(context)
            except JournalError as error:
                return error

        def done(result: Any) -> None:
            self.columns.setEnabled(True)
            self.accept_button.setEnabled(self._sheet is not None)
            if isinstance(result, JournalError):
                self.show_problem(str(result))
                return
            self.show_problem("")
            react(result)
            if self._steps.currentWidget() is self.columns:
                self.accept_button.setEnabled(True)
                stays = at is not None and self.columns.isAncestorOf(at) and at.isVisibleTo(self)
                (at if at is not None and stays else self._next_field()).setFocus()

        self._reading = self._desk.read(job, done, self)

    def done(self, result: int) -> None:
        """Stop what is still being read for it."""
        if self._reading is not None:
            self._reading.cancel()
        super().done(result)
