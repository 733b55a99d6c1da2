"""Fields that the dialogs of the metalwork share: which repair area, which view, how many mm."""

from collections.abc import Iterable
from decimal import Decimal, InvalidOperation
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QComboBox, QDoubleSpinBox, QLineEdit

from journal.actions import areas as area_actions
from journal.actions import drawings
from journal.desktop.desk import AreaSelected, Desk, PanelSelected
from journal.desktop.widgets.checked import CheckedField
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PanelId, ViewId

if TYPE_CHECKING:
    from journal.domain.areas import Area


class AreaBox(QComboBox):
    """Picks the repair area that something belongs to."""

    def __init__(self, desk: Desk, chosen: AreaId | None = None, *, optional: bool = False) -> None:
        super().__init__()
        known = desk.ask(area_actions.areas) or ()
        if optional:
            self.addItem("No repair area", None)
        for area in known:
            self.addItem(area.name, area.id)
        wanted = chosen or _likely(desk, known, None)
        if wanted is not None:
            self.setCurrentIndex(self.findData(wanted))
        self._optional = optional

    def area_id(self) -> AreaId | None:
        """The area picked; None for none.

        Raises:
            JournalError: there is none to pick, and one is needed.
        """
        chosen = self.currentData()
        if chosen is None and not self._optional:
            raise JournalError("Mark a repair area first; what is welded belongs to one.")
        return None if chosen is None else AreaId(chosen)


def likely_area(desk: Desk, panel_id: PanelId | None) -> AreaId | None:
    """The area most likely meant: the one selected, else the first unfinished one of a panel."""
    return _likely(desk, desk.ask(area_actions.areas) or (), panel_id)


def _likely(desk: Desk, known: "Iterable[Area]", panel_id: PanelId | None) -> AreaId | None:
    if isinstance(desk.selection, AreaSelected):
        return desk.selection.id
    if panel_id is None and isinstance(desk.selection, PanelSelected):
        panel_id = desk.selection.id
    return next((area.id for area in known if panel_id in area.panel_ids), None)


class ViewBox(QComboBox):
    """Picks the view that something is drawn on."""

    def __init__(self, desk: Desk, chosen: ViewId | None = None) -> None:
        super().__init__()
        for view in desk.ask(drawings.views) or ():
            self.addItem(view.name, view.id)
        if chosen is not None:
            self.setCurrentIndex(self.findData(chosen))

    def view_id(self) -> ViewId:
        """The view picked."""
        return ViewId(self.currentData())


def mm_box(value: float, least: float, most: float, *, decimals: int = 1) -> QDoubleSpinBox:
    """A box for millimetres."""
    made = QDoubleSpinBox()
    made.setDecimals(decimals)
    made.setRange(least, most)
    made.setValue(value)
    made.setSuffix(" mm")
    made.lineEdit().setTextMargins(8, 0, 0, 0)
    return made


class NumberField(CheckedField):
    """A line for a decimal number, with comma or point."""

    def __init__(self, hint: str = "", *, optional: bool = True) -> None:
        super().__init__(edit=QLineEdit())
        self._optional = optional
        self.edit.setPlaceholderText(hint)

    def set_number(self, number: Decimal | None) -> None:
        """Put a number into the field."""
        self.set_text("" if number is None else f"{number.normalize():f}")

    def number(self) -> Decimal | None:
        """The number in the field; None where it may be empty and is.

        Raises:
            JournalError: it is no number; the field says so too.
        """
        text = self.text().replace(",", ".")
        if not text and self._optional:
            return None
        try:
            number = Decimal(text)
        except InvalidOperation:
            number = Decimal("NaN")
        if not number.is_finite():
            error = JournalError(
                f"“{self.text()}” is no number." if text else "A number is needed here."
            )
            self.refuse(error)
            raise error
        return number
