"""Asks for the name of a piece just drawn."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFormLayout, QLineEdit, QWidget

from journal.desktop.modes.choices import SideEdit, SystemEdit
from journal.desktop.tools.naming import Naming
from journal.desktop.widgets.parts import button, column, label, row
from journal.domain.drawing import Side, System
from journal.domain.shaping.making import LONGEST_NAME


class NameFields(QWidget):
    """Name, side and system; Enter takes them, Esc goes back to the drawing of it."""

    #: The person has given the name.
    named = Signal()
    #: The person goes back.
    given_up = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._title = label("", "subheading")
        self._name = QLineEdit()
        self._name.setMaxLength(LONGEST_NAME)
        self._name.setAccessibleName("Name")
        self._side = SideEdit()
        self._system = SystemEdit()
        self._form = QFormLayout()
        self._form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
        self._form.addRow("&Name", self._name)
        self._form.addRow("&Side", self._side)
        self._form.addRow("S&ystem", self._system)
        self.take = button("&Draw it", self.named.emit, role="primary")
        back = button("&Back", self.given_up.emit)
        layout = column(self._title, margin=8)
        layout.addLayout(self._form)
        layout.addLayout(row(self.take, back, None))
        layout.addStretch(1)
        self.setLayout(layout)
        self._name.returnPressed.connect(self.named)

    @property
    def name(self) -> str:
        """The name as typed."""
        return self._name.text()

    @property
    def side(self) -> Side:
        """The side chosen."""
        return self._side.side

    @property
    def system(self) -> System:
        """The system chosen."""
        return self._system.system

    def ask(self, naming: Naming | None) -> None:
        """Ask for a name, with the keyboard in its field; None: no more."""
        self.setVisible(naming is not None)
        if naming is None:
            return
        self._title.setText(naming.title)
        self._name.setText(naming.name)
        self._side.show_side(naming.side)
        self._system.show_system(naming.system)
        self._form.setRowVisible(self._side, naming.with_side)
        self._form.setRowVisible(self._system, naming.with_side)
        self.take.setText("&Draw it" if naming.with_side else "&Cut it")
        self._name.selectAll()
        self._name.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc goes back."""
        if event.key() == Qt.Key.Key_Escape:
            self.given_up.emit()
        else:
            super().keyPressEvent(event)
