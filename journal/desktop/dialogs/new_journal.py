"""Begin a journal: name the car, pick its body, see its drawing."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer, Slot
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QFileDialog,
    QLineEdit,
    QSizePolicy,
    QSpinBox,
    QWidget,
)

from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.drawing_preview import DrawingPreview
from journal.desktop.widgets.parts import button, label, let_type, number_box, row
from journal.domain.car import Car
from journal.domain.errors import JournalError

if TYPE_CHECKING:
    from journal.actions.session import Session

_CURRENCIES = ("EUR", "GBP", "USD", "CHF", "SEK", "NOK", "DKK", "PLN", "CZK", "AUD", "CAD", "NZD",
               "JPY", "ZAR")  # fmt: skip
_NOT_IN_A_NAME = '<>:"/\\|?*'
_MOST_MM = 9000


class NewJournalDialog(FormDialog):
    """Asks for the car and the folder; ``session`` holds the journal once it is made."""

    def __init__(self, documents: Path, parent: QWidget | None = None) -> None:
        super().__init__("New journal", "&Begin the journal", parent)
        self.session: Session | None = None
        self._documents = documents
        self._name = QLineEdit()
        self._body = QComboBox()
        self._sizes_known = QCheckBox("I know the &measurements")
        self._wheelbase = _millimetres("Wheelbase in millimetres")
        self._length = _millimetres("Overall length in millimetres")
        self._currency = QComboBox()
        self._folder = QLineEdit()
        self._folder_typed = False
        self._preview = DrawingPreview()
        self._redraw = QTimer(self)
        self._redraw.setSingleShot(True)
        self._redraw.setInterval(120)
        self._build()
        self._connect()
        self._on_name()
        self._draw()

    def _build(self) -> None:
        from journal.domain.starters.bodies import BODIES

        self._name.setPlaceholderText("What you call it, for instance the Halden Rook")
        for key, title in BODIES.items():
            self._body.addItem(title, key)
        let_type(self._currency)
        self._currency.addItems(_CURRENCIES)
        choose = button("C&hoose\N{HORIZONTAL ELLIPSIS}", self._choose_folder, icon="folder")
        folder = QWidget()
        folder.setLayout(row(self._folder, choose))
        folder.setFocusProxy(self._folder)
        self._folder.setAccessibleName("Folder")
        sizes = QWidget()
        sizes.setLayout(
            row(label("Wheelbase", wrap=False), self._wheelbase,
                label("Length", wrap=False), self._length, None)
        )  # fmt: skip
        self.add_row("&Name of the car", self._name)
        self.add_row("Body &style", self._body)
        self.form.addRow("", self._sizes_known)
        self.form.addRow("", sizes)
        self._sizes = sizes
        self.add_row("C&urrency", self._currency)
        self.add_row(
            "&Folder",
            folder,
            "Everything is kept in this folder: copy it, and you have a copy of it all.",
        )
        self._preview.setMinimumHeight(190)
        self._preview.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.outer.insertWidget(1, self._preview, 1)
        self.setMinimumWidth(680)
        self._on_sizes_known(False)

    def _connect(self) -> None:
        self._name.textChanged.connect(self._on_name)
        self._folder.textEdited.connect(self._on_folder_typed)
        self._sizes_known.toggled.connect(self._on_sizes_known)
        self._redraw.timeout.connect(self._draw)
        for changed in (
            self._body.currentIndexChanged,
            self._wheelbase.valueChanged,
            self._length.valueChanged,
            self._sizes_known.toggled,
        ):
            changed.connect(lambda _value: self._redraw.start())

    def car(self) -> Car:
        """The car as typed so far."""
        known = self._sizes_known.isChecked()
        return Car(
            title=self._name.text().strip(),
            body=self._body.currentData(),
            wheelbase_mm=self._wheelbase.value() if known else 0,
            length_mm=self._length.value() if known else 0,
            currency=self._currency.currentText().strip().upper(),
        )

    def folder(self) -> Path:
        """The folder as typed, a leading ~ standing for the home folder."""
        return Path(self._folder.text().strip()).expanduser()

    def submit(self) -> bool:
        """Make the journal."""
        from journal.actions.journals import new_journal

        car = self.car()
        if not car.title:
            self._name.setFocus()
            raise JournalError("Give the car a name; anything you call it will do.")
        if not self._folder.text().strip():
            self._folder.setFocus()
            raise JournalError("Say in which folder the journal is to be kept.")
        if not self.folder().is_absolute():
            self._folder.setFocus()
            raise JournalError("The folder needs its full path, from the top of the disk.")
        self.session = new_journal(self.folder(), car)
        return True

    @Slot()
    def _on_name(self) -> None:
        if self._folder_typed:
            return
        name = "".join(c for c in self._name.text() if c.isprintable() and c not in _NOT_IN_A_NAME)
        name = name.strip(" .")
        self._folder.setText(str(self._documents / (name or "My car")))

    @Slot()
    def _on_folder_typed(self) -> None:
        self._folder_typed = True

    @Slot(bool)
    def _on_sizes_known(self, known: bool) -> None:
        self._sizes.setVisible(known)

    def _choose_folder(self) -> None:
        found = QFileDialog.getExistingDirectory(
            self, "In which folder shall the journal's own folder be made?", str(self._documents)
        )
        if found:
            self._documents = Path(found)
            self._folder_typed = False
            self._on_name()

    @Slot()
    def _draw(self) -> None:
        from journal.domain.starters import starter

        car = self.car()
        try:
            drawing = starter(car.body, car.wheelbase_mm, car.length_mm)
        except JournalError as error:
            self.show_problem(str(error))
            return
        self.show_problem("")
        self._preview.set_drawing(drawing)


def _millimetres(name: str) -> QSpinBox:
    made = number_box(name, _MOST_MM, "mm", "not known")
    made.setSingleStep(10)
    made.setMinimumWidth(150)
    return made
