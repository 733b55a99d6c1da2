"""What every dialog that asks for something has in common."""

from PySide6.QtCore import Qt, QTimer, Slot
from PySide6.QtGui import QKeyEvent, QShowEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLabel,
    QPushButton,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from journal.desktop.theme import TARGET
from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.parts import label
from journal.domain.errors import JournalError


class FormDialog(QDialog):
    """Labelled fields, a place for one sentence when something is wrong, and two buttons.

    A dialog says in ``submit`` what pressing the accepting button does: it raises JournalError
    with the sentence to show, or returns whether the dialog is done.
    """

    def __init__(self, title: str, accept_text: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setMinimumWidth(520)
        self._in_order = False
        self.outer = QVBoxLayout(self)
        self.outer.setContentsMargins(20, 16, 20, 16)
        self.outer.setSpacing(12)
        #: Where the buttons stand, at the end.
        self.foot: QBoxLayout = self.outer
        self.form = QFormLayout()
        self.form.setHorizontalSpacing(16)
        self.form.setVerticalSpacing(10)
        self.form.setLabelAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop)
        self.form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        self.problem = label("", "error")
        self.problem.hide()
        self.buttons = QDialogButtonBox()
        self.accept_button = self.buttons.addButton(
            accept_text, QDialogButtonBox.ButtonRole.AcceptRole
        )
        self.accept_button.setProperty("role", "primary")
        self.accept_button.setDefault(True)
        self.cancel_button = self.buttons.addButton(
            "Cancel", QDialogButtonBox.ButtonRole.RejectRole
        )
        self.buttons.accepted.connect(self._on_accepted)
        self.buttons.rejected.connect(self.reject)
        self.outer.addLayout(self.form)
        self.outer.addStretch(1)
        self.outer.addWidget(self.problem)
        self.outer.addWidget(self.buttons)

    def add_row(self, text: str, field: QWidget, hint: str = "") -> QLabel:
        """Add a field with its label ("&Name"); ``hint`` is said below it in fewer words."""
        name = QLabel(text)
        name.setBuddy(field)
        name.setFixedHeight(TARGET)
        name.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        if not field.accessibleName():
            field.setAccessibleName(text.replace("&", ""))
        self.form.addRow(name, field)
        if hint:
            field.setAccessibleDescription(hint)
            self.form.addRow("", label(hint, "muted"))
        return name

    def submit(self) -> bool:
        """Do what the dialog is for; whether it is done."""
        raise NotImplementedError

    def showEvent(self, event: QShowEvent) -> None:
        """Begin in the first field, and let Tab come to the buttons last."""
        if not self._in_order:
            self._in_order = True
            self._put_buttons_last()
        super().showEvent(event)
        QTimer.singleShot(0, self, self._grow)

    @Slot()
    def _grow(self) -> None:
        """Be as high as wrapped sentences need, which they know once they have their width."""
        needed = self.outer.totalHeightForWidth(self.width())
        if needed > self.height():
            self.resize(self.width(), needed)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter presses the button it stands on; in a field it is the accepting button."""
        if event.key() not in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            super().keyPressEvent(event)
            return
        on = self.focusWidget()
        if isinstance(on, QPushButton | QToolButton):
            on.click()
        else:
            self.enter_in_field()

    def enter_in_field(self) -> None:
        """What Enter does in a field that has no use for it: be the accepting button."""
        self.accept_button.click()

    def _put_buttons_last(self) -> None:
        """Tab follows the order of making, and the two buttons were made before the fields."""
        chosen = self.focusWidget()
        self.foot.removeWidget(self.buttons)
        self.buttons.setParent(None)
        self.foot.addWidget(self.buttons)
        if chosen in (None, self.accept_button, self.cancel_button):
            self._first_field().setFocus(Qt.FocusReason.TabFocusReason)

    def _first_field(self) -> QWidget:
        at = self.nextInFocusChain()
        while at and at is not self.accept_button:
            if at.focusPolicy() & Qt.FocusPolicy.TabFocus and at.isVisibleTo(self):
                return at
            at = at.nextInFocusChain()
        return self.accept_button

    def show_problem(self, sentence: str) -> None:
        """Say what is wrong, unless a field says so itself; "" takes it back."""
        said = any(field.note.text() == sentence for field in self.findChildren(CheckedField))
        self.problem.setText(sentence)
        self.problem.setVisible(bool(sentence) and not said)
        self.problem.setAccessibleName(sentence)

    def _on_accepted(self) -> None:
        self.show_problem("")
        try:
            done = self.submit()
        except JournalError as error:
            self.show_problem(str(error))
            return
        if done:
            self.accept()
