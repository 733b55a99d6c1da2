"""Price indices: the list, one brought in from a file or typed, and which one the Ledger uses."""

from collections.abc import Mapping
from decimal import Decimal
from pathlib import Path

from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QLineEdit,
    QPlainTextEdit,
    QWidget,
)

from journal.actions import cars
from journal.actions import price_indices as actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.widgets.list_pane import ListPane
from journal.desktop.widgets.parts import EmptyState, button, column
from journal.desktop.widgets.rows import Column
from journal.domain.errors import JournalError
from journal.domain.price_index import PriceIndex, read_index, span

_KINDS = frozenset({"price_indices", "car"})


class PriceIndicesDialog(QDialog):
    """Lists the price indices; one is brought in, used, or taken out."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setWindowTitle("Price indices")
        self.resize(760, 440)
        self.use = button("&Use it", self._on_use, icon="done")
        self.list = ListPane(
            "Price indices",
            (
                Column("Used", lambda one: "in use" if one.chosen else ""),
                Column("Name", lambda one: one.name, wide=True),
                Column("Currency", lambda one: one.currency),
                Column("From", span),
                Column("Where from", lambda one: one.source, wide=True),
            ),
            EmptyState(
                "ledger",
                "No price index yet",
                "A price index says how much dearer a year was than another. None comes with the "
                "program, since each holds for one currency and country: take the one your "
                "statistical office publishes, as a file of two columns, period and value.",
            ),
            "With an index in use, the Ledger can show all sums in the money of one year.",
            add=("&Add an index", self._on_add),
            change=("C&hange", self._on_change),
            remove=lambda one: self._desk.act(actions.remove_index, one.id),
            more=(self.use,),
            can_write=not desk.read_only,
        )
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.reject)
        self.setLayout(column(self.list, close, margin=16))
        self.list.table.selectionModel().currentRowChanged.connect(self._show_use)
        desk.changed.connect(self._on_changed)
        self._refresh()

    def _on_changed(self, changes: object) -> None:
        if getattr(changes, "kinds", frozenset()) & _KINDS:
            self._refresh()

    def _refresh(self) -> None:
        self.list.show_rows(self._desk.ask(actions.price_indices) or ())
        self._show_use()

    def _show_use(self) -> None:
        picked: PriceIndex | None = self.list.picked()
        self.use.setEnabled(picked is not None and not self._desk.read_only)
        self.use.setText("Use &none" if picked is not None and picked.chosen else "&Use it")

    def _on_use(self) -> None:
        picked: PriceIndex | None = self.list.picked()
        if picked is not None:
            self._desk.act(actions.choose_index, None if picked.chosen else picked.id)

    def _on_add(self) -> None:
        open_dialog(PriceIndexDialog(self._desk, self))

    def _on_change(self, one: PriceIndex) -> None:
        open_dialog(PriceIndexDialog(self._desk, self, index=one))


class PriceIndexDialog(FormDialog):
    """Asks for one index: its name, where it is from, and its values, typed or from a file.

    Attributes:
        choose: asks for the file; None for none.
    """

    def __init__(
        self, desk: Desk, parent: QWidget | None = None, *, index: PriceIndex | None = None
    ) -> None:
        super().__init__(
            "Add a price index" if index is None else "Change the price index", "&Record", parent
        )
        self._desk = desk
        self.choose = self._ask_file
        car = desk.ask(cars.car)
        self.name, self.source = QLineEdit(), QLineEdit()
        self.currency = QLineEdit(car.currency if car is not None else "EUR")
        self.currency.setMaxLength(3)
        self.values = QPlainTextEdit()
        self.values.setTabChangesFocus(True)
        self.values.setPlaceholderText("2015; 100\n2016; 100.2\n2017-03; 101.8\n2018-Q3; 103.9")
        self.file = button("From a &file\N{HORIZONTAL ELLIPSIS}", self._on_file, icon="file")
        self.add_row("&Name", self.name)
        self.add_row("&Where from", self.source, "Who publishes it, and which series.")
        self.add_row("&Currency", self.currency)
        self.add_row("&Values", self.values, "One period a row: a year, a month or a quarter.")
        self.form.addRow("", self.file)
        if index is not None:
            # Another name would be another index.
            self.name.setText(index.name)
            self.name.setReadOnly(True)
            self.source.setText(index.source)
            self.currency.setText(index.currency)
            self._show_values(index.values)

    def _on_file(self) -> None:
        path = self.choose()
        if path is None:
            return
        try:
            self._show_values(actions.read_index_file(path))
        except JournalError as error:
            self.show_problem(str(error))
            return
        self.show_problem("")
        if not self.name.text():
            self.name.setText(path.stem)
        self.accept_button.setFocus()

    def _ask_file(self) -> Path | None:
        name, _ = QFileDialog.getOpenFileName(
            self, "Which file?", "", "Tables as text (*.csv *.txt *.tsv);;All files (*)"
        )
        return Path(name) if name else None

    def _show_values(self, values: Mapping[str, Decimal]) -> None:
        rows = (f"{period}; {value}" for period, value in values.items())
        self.values.setPlainText("\n".join(rows))

    def submit(self) -> bool:
        """Record the index."""
        values = read_index(self.values.toPlainText())
        made = actions.record_index(
            self._desk.session,
            self.name.text(),
            self.currency.text().strip().upper(),
            self.source.text(),
            values,
        )
        self._desk.announce(made)
        return True
