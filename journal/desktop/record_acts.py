"""What the Record menu does: asking for something new, whatever page is in front."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

if TYPE_CHECKING:
    from PySide6.QtWidgets import QDialog

    from journal.desktop.window import Window


class RecordActs(QObject):
    """The acts of the Record menu."""

    def __init__(self, window: "Window") -> None:
        super().__init__(window)
        self._window = window

    def new_area(self) -> None:
        """Ask for a new repair area."""
        from journal.desktop.dialogs.area import AreaDialog

        if desk := self._window.desk:
            self._show(AreaDialog(desk, self._window))

    def new_receipt(self) -> None:
        """Ask for a receipt."""
        from journal.desktop.dialogs.receipt import ReceiptDialog

        if desk := self._window.desk:
            self._show(ReceiptDialog(desk, self._window))

    def new_hours(self) -> None:
        """Ask for hours."""
        from journal.desktop.dialogs.hours import HoursDialog

        if desk := self._window.desk:
            self._show(HoursDialog(desk, self._window))

    def quick_hours(self) -> None:
        """Ask for hours in one line below the page."""
        if workspace := self._window.workspace:
            workspace.call_up_quick_line()

    def press_clock(self) -> None:
        """Clock on or off."""
        if workspace := self._window.workspace:
            workspace.clock.press()

    def photo_hours(self) -> None:
        """List the days with photos and no hours."""
        from journal.desktop.dialogs.photo_hours import PhotoHoursDialog

        if desk := self._window.desk:
            self._show(PhotoHoursDialog(desk, self._window))

    def edit_people(self) -> None:
        """List who works on the car."""
        from journal.desktop.dialogs.people import PeopleDialog

        if desk := self._window.desk:
            self._show(PeopleDialog(desk, self._window))

    def find_pairs(self) -> None:
        """Look for photos of one view, before and after the work."""
        from journal.desktop.dialogs.pair_finder import PairFinderDialog

        if desk := self._window.desk:
            self._show(PairFinderDialog(desk, self._window))

    def new_wanted(self) -> None:
        """Ask for a part that is to be bought."""
        from journal.desktop.dialogs.wanted import WantedDialog

        if desk := self._window.desk:
            self._show(WantedDialog(desk, self._window))

    def new_entry(self) -> None:
        """Ask for an entry."""
        from journal.desktop.dialogs.entry import EntryDialog

        if desk := self._window.desk:
            self._show(EntryDialog(desk, self._window))

    def _show(self, dialog: "QDialog") -> None:
        dialog.exec()
        dialog.deleteLater()
