"""Three figures side by side: best, likely, worst; of money or of hours."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from journal.desktop.widgets.checked import mark_wrong
from journal.desktop.widgets.money_edit import MoneyEdit
from journal.desktop.widgets.parts import label
from journal.domain.errors import JournalError
from journal.domain.findings import Three, parse_time, written_time

_NAMES = ("Best", "Likely", "Worst")


class ThreeEdit(QWidget):
    """Best, likely, worst. Whoever knows one figure only fills in "likely"; all three are it."""

    #: What stands in one of them changed.
    changed = Signal()

    def __init__(self, what: str, currency: str = "", parent: QWidget | None = None) -> None:
        """``what`` is "Money" or "Hours"; with a currency the figures are sums of it."""
        super().__init__(parent)
        self._currency = currency
        self.edits: tuple[QLineEdit, ...] = tuple(
            MoneyEdit(currency, optional=True) if currency else QLineEdit() for _ in _NAMES
        )
        layout = QGridLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setHorizontalSpacing(8)
        layout.setVerticalSpacing(2)
        for place, (name, edit) in enumerate(zip(_NAMES, self.edits, strict=True)):
            edit.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            edit.setAccessibleName(f"{what}, {name.lower()}")
            edit.setPlaceholderText(name.lower())
            edit.textChanged.connect(self._on_text)
            layout.addWidget(label(name, "muted"), 0, place)
            layout.addWidget(edit, 1, place)
        self.setFocusProxy(self.edits[0])

    def set_three(self, three: Three) -> None:
        """Put figures in."""
        for edit, figure in zip(self.edits, (three.best, three.likely, three.worst), strict=True):
            if isinstance(edit, MoneyEdit):
                edit.set_amount(figure)
            else:
                edit.setText(written_time(figure))

    def three(self) -> Three:
        """The figures; what is empty is as likely, and nothing at all is none.

        Raises:
            JournalError: one can't be read; it is marked too.
        """
        best, likely, worst = (self._figure(edit) for edit in self.edits)
        middle = next((one for one in (likely, best, worst) if one is not None), 0)
        return Three(middle if best is None else best, middle, middle if worst is None else worst)

    def _figure(self, edit: QLineEdit) -> int | None:
        if isinstance(edit, MoneyEdit):
            return edit.amount()
        if not edit.text().strip():
            return None
        try:
            return parse_time(edit.text())
        except JournalError:
            mark_wrong(edit, wrong=True)
            edit.setFocus()
            raise

    def _on_text(self) -> None:
        for edit in self.edits:
            if not isinstance(edit, MoneyEdit):
                mark_wrong(edit, wrong=False)
        self.changed.emit()
