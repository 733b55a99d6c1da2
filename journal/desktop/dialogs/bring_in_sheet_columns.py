"""The real rows of a sheet with what each column is over them, and how it is to be read."""

from dataclasses import replace

from PySide6.QtCore import (
    Qt,
    Signal,
    Slot,
)
from PySide6.QtWidgets import (
    QAbstractItemView,
    QCheckBox,
    QComboBox,
    QFrame,
    QGridLayout,
    QLabel,
    QLineEdit,
    QSizePolicy,
    QSpinBox,
    QTableView,
    QTableWidget,
    QWidget,
)

from journal.actions.bring_in import OpenSheet
from journal.desktop.dialogs.bring_in_sheet_rows import SHOWN_ROWS, SheetRowsModel
from journal.desktop.theme import TARGET
from journal.desktop.widgets.parts import column, label
from journal.domain.errors import JournalError
from journal.domain.sheet_rows import (
    REPEATABLE,
    Choices,
    DayOrder,
    Decimals,
    Proposal,
    Role,
)

_WIDEST = 260
#: How many rows are measured to find how wide a column is.
_MEASURED = 20
#: What a box takes beside its words: its frame, its arrow and the gaps between columns.
_ROUND_A_ROLE = 78

_KINDS = (("My own list: receipts, hours", False), ("A bank's list of lines", True))
_DATES = (
    ("Day first (31/12/2016)", DayOrder.DMY),
    ("Month first (12/31/2016)", DayOrder.MDY),
    ("Year first (16/12/31)", DayOrder.YMD),
)
_DECIMALS = (
    ("Decimal comma (1.234,56)", Decimals.COMMA),
    ("Decimal point (1,234.56)", Decimals.POINT),
    ("Both: refuse the doubtful", Decimals.BOTH),
)


class ColumnsPane(QWidget):
    """How a sheet is to be read: proposed, shown on its rows, and the person's to correct.

    Attributes:
        roles: the boxes over the columns, from the left.
    """

    #: Another sheet is wanted: its name.
    sheet_wanted = Signal(str)
    #: The headings are in another row: its number, 0 for none.
    heading_wanted = Signal(int)
    #: Columns are called something else: the choices, with what the sheet must settle left open.
    columns_changed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sheet: OpenSheet | None = None
        self._answered: set[QComboBox] = set()
        self._examples: dict[QComboBox, tuple[str, ...]] = {}
        self.sheet, self.kind = QComboBox(), QComboBox()
        self.dates, self.decimals = QComboBox(), QComboBox()
        self.heading, self.currency, self.person = QSpinBox(), QLineEdit(), QLineEdit()
        self.fill_down = QCheckBox("An &empty date or supplier is that of the row above")
        self.question = label("", "subheading")
        self.roles: list[QComboBox] = []
        self.rows_model = SheetRowsModel(self)
        self._role_row = QTableWidget(1, 0)
        self._table = QTableView()
        self._build()
        self._connect()

    def _build(self) -> None:
        for box, choices in ((self.kind, _KINDS), (self.dates, _DATES), (self.decimals, _DECIMALS)):
            for words, value in choices:
                box.addItem(words, value)
            box.setPlaceholderText("Please choose")
        self.heading.setSpecialValueText("none")
        self.currency.setMaximumWidth(90)
        fields = QGridLayout()
        fields.setHorizontalSpacing(10)
        fields.setVerticalSpacing(8)
        places: tuple[tuple[str, QWidget], ...] = (
            ("&Sheet", self.sheet), ("It &is", self.kind), ("&Headings in row", self.heading),
            ("&Dates", self.dates), ("De&cimals", self.decimals), ("C&urrency", self.currency),
        )  # fmt: skip
        for number, (text, field) in enumerate(places):
            name = QLabel(text)
            name.setBuddy(field)
            field.setAccessibleName(text.replace("&", ""))
            line, place = divmod(number, 3)
            fields.addWidget(name, line, 2 * place, Qt.AlignmentFlag.AlignRight)
            fields.addWidget(field, line, 2 * place + 1)
        for place in (1, 3):
            fields.setColumnStretch(place, 1)
        self._person_name = QLabel("&Worked by")
        self._person_name.setBuddy(self.person)
        self.person.setAccessibleName("Worked by")
        self.person.setPlaceholderText("if not said")
        fields.addWidget(self.fill_down, 2, 1, 1, 3)
        fields.addWidget(self._person_name, 2, 4, Qt.AlignmentFlag.AlignRight)
        fields.addWidget(self.person, 2, 5)
        self._build_tables()
        self.shown = label("", "muted")
        top = QWidget()
        top.setLayout(fields)
        tables = QWidget()
        tables.setLayout(column(self._role_row, self._table, spacing=0))
        said = label("What is in each column? Choose over it; what is left out stays out.", "muted")
        whole = column(top, self.question, said, tables, self.shown)
        whole.setStretch(3, 1)
        self.setLayout(whole)

    def _build_tables(self) -> None:
        for table in (self._role_row, self._table):
            table.setFrameShape(QFrame.Shape.NoFrame)
            table.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
            table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
            table.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
            table.setTabKeyNavigation(False)
            table.verticalHeader().setFixedWidth(64)
            table.verticalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignCenter)
            table.setWordWrap(False)
        self._table.setModel(self.rows_model)
        self._table.setAccessibleName("Rows of the sheet")
        self._table.horizontalHeader().setResizeContentsPrecision(_MEASURED)
        self._table.verticalHeader().setDefaultSectionSize(28)
        self._table.setShowGrid(False)
        self._table.setAlternatingRowColors(True)
        policy = Qt.ScrollBarPolicy.ScrollBarAlwaysOff
        self._role_row.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._role_row.setAccessibleName("What each column is")
        self._role_row.setHorizontalScrollBarPolicy(policy)
        self._role_row.setVerticalScrollBarPolicy(policy)
        self._role_row.horizontalHeader().hide()
        self._role_row.setVerticalHeaderLabels(["is"])
        self._role_row.verticalHeader().setDefaultSectionSize(TARGET + 4)
        self._role_row.setFixedHeight(TARGET + 6)
        self._role_row.setShowGrid(False)
        self._role_row.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def _connect(self) -> None:
        across, above = self._table.horizontalScrollBar(), self._role_row.horizontalScrollBar()
        across.valueChanged.connect(above.setValue)
        above.valueChanged.connect(across.setValue)
        self._table.horizontalHeader().sectionResized.connect(self._on_resized)
        self.sheet.activated.connect(lambda _i: self.sheet_wanted.emit(self.sheet.currentText()))
        self.heading.valueChanged.connect(self.heading_wanted)
        self.kind.activated.connect(self._on_changed)
        for box in (self.dates, self.decimals):
            box.activated.connect(self._on_answered)

    # --- showing ---

    def show_sheet(self, sheet: OpenSheet) -> None:
        """Show a sheet with how it is probably to be read."""
        self._sheet = sheet
        self._answered.clear()
        choices = sheet.proposal.choices
        self.sheet.clear()
        self.sheet.addItems(list(sheet.names))
        self.sheet.setCurrentText(sheet.grid.name)
        self.sheet.setEnabled(len(sheet.names) > 1)
        self.heading.blockSignals(True)
        self.heading.setRange(0, min(len(sheet.grid.rows), 999))
        self.heading.setValue(choices.heading)
        self.heading.blockSignals(False)
        self.kind.setCurrentIndex(self.kind.findData(choices.is_bank))
        self.currency.setText(choices.currency)
        self.person.setText(choices.person)
        self.fill_down.setChecked(choices.fill_down)
        self.rows_model.show_rows(sheet.grid, sheet.proposal)
        self._show_roles(choices.roles)
        self.show_answers(sheet.proposal)
        more = len(sheet.grid.rows) - choices.heading - SHOWN_ROWS
        self.shown.setText(f"{more:,} more rows are not shown here; all are read.")
        self.shown.setVisible(more > 0)

    def _show_roles(self, roles: tuple[Role, ...]) -> None:
        self._role_row.setColumnCount(0)
        self._role_row.setColumnCount(len(roles))
        self.roles = []
        names = self.rows_model
        for place, role in enumerate(roles):
            box = QComboBox()
            for one in Role:
                box.addItem(one.value, one)
            box.setCurrentIndex(box.findData(role))
            heading = names.headerData(place, Qt.Orientation.Horizontal)
            box.setAccessibleName(f"What “{heading}” is")
            box.setMaxVisibleItems(len(Role))
            box.activated.connect(self._on_changed)
            self._role_row.setCellWidget(0, place, box)
            self.roles.append(box)
        self._table.resizeColumnsToContents()
        for place, box in enumerate(self.roles):
            needed = max(self._table.columnWidth(place) + 12, self._width_of(box))
            self._table.setColumnWidth(place, min(needed, _WIDEST))
            self._role_row.setColumnWidth(place, min(needed, _WIDEST))

    def _width_of(self, box: QComboBox) -> int:
        """How wide a column must be for the whole role over it to be read."""
        return box.fontMetrics().horizontalAdvance(box.currentText()) + _ROUND_A_ROLE

    def _on_resized(self, place: int, _old: int, width: int) -> None:
        self._role_row.setColumnWidth(place, width)

    def show_answers(self, proposal: Proposal) -> None:
        """Show what is settled; what is open waits for the person to choose."""
        choices = proposal.choices
        self.dates.setCurrentIndex(self.dates.findData(choices.dates))
        self.decimals.setCurrentIndex(self.decimals.findData(choices.decimals))
        self._examples = {
            self.dates: proposal.dates.examples if proposal.dates else (),
            self.decimals: proposal.decimals.examples if proposal.decimals else (),
        }
        self._say_question()
        roles = self._chosen_roles()
        works = bool({Role.HOURS, Role.MINUTES} & set(roles))
        for widget in (self._person_name, self.person):
            widget.setVisible(works)

    @Slot()
    def _on_answered(self) -> None:
        """Keep what the person said, whatever the columns are called after it."""
        sender = self.sender()
        if isinstance(sender, QComboBox):
            self._answered.add(sender)
        self._say_question()

    def _say_question(self) -> None:
        said = []
        for box, words in (
            (self.dates, "Dates: which comes first in {}?"),
            (self.decimals, "Decimals: how are {} to be read?"),
        ):
            if box.currentIndex() < 0:
                said.append(words.format(", ".join(f"“{e}”" for e in self._examples[box])))
        self.question.setText("  ".join(said))
        self.question.setVisible(bool(said))

    # --- what is chosen ---

    @Slot()
    def _on_changed(self) -> None:
        """Have the sheet settle what the new choice of columns leaves open; answers are kept."""
        if self._sheet is None:
            return
        sender = self.sender()
        role = sender.currentData() if isinstance(sender, QComboBox) else None
        if sender in self.roles and role not in REPEATABLE:
            for box in self.roles:
                if box is not sender and box.currentData() == role:
                    box.setCurrentIndex(box.findData(Role.LEAVE_OUT))
        for place, box in enumerate(self.roles):
            if self._table.columnWidth(place) < self._width_of(box):
                self._table.setColumnWidth(place, self._width_of(box))
        self.rows_model.mark_roles(self._chosen_roles())
        choices = self.choices()
        if self.dates not in self._answered:
            choices = replace(choices, dates=None)
        if self.decimals not in self._answered:
            choices = replace(choices, decimals=None)
        self.columns_changed.emit(choices)

    def _chosen_roles(self) -> tuple[Role, ...]:
        return tuple(Role(box.currentData()) for box in self.roles)

    def choices(self) -> Choices:
        """How the sheet is to be read, as it is chosen now."""
        if self._sheet is None:
            raise JournalError("There is no sheet yet.")
        dates, decimals = self.dates.currentData(), self.decimals.currentData()
        return replace(
            self._sheet.proposal.choices,
            roles=self._chosen_roles(),
            is_bank=bool(self.kind.currentData()),
            dates=None if dates is None else DayOrder(dates),
            decimals=None if decimals is None else Decimals(decimals),
            currency=self.currency.text().strip().upper(),
            person=self.person.text().strip(),
            fill_down=self.fill_down.isChecked(),
        )

    def settled(self) -> Choices:
        """The same once nothing is open.

        Raises:
            JournalError: a question is not answered yet; its box has the keyboard then.
        """
        box = self.open_question()
        if box is not None:
            box.setFocus()
            words = "dates" if box is self.dates else "decimals"
            raise JournalError(f"Choose first how the {words} are written.")
        return self.choices()

    def open_question(self) -> QComboBox | None:
        """The box of the first question that is not answered yet."""
        boxes = (self.dates, self.decimals)
        return next((box for box in boxes if box.currentIndex() < 0), None)
