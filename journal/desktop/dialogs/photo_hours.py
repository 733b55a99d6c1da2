"""The days with photos and no hours, each with what its photos show at least."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QTreeWidgetItem, QWidget

from journal.actions import areas as area_actions
from journal.actions import hours as hour_actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.parts import PlainTree, button, label, row
from journal.desktop.widgets.pick_edit import PickEdit
from journal.desktop.widgets.remembered import remember_person, who_works
from journal.domain.errors import JournalError
from journal.domain.hours import spoken_hours
from journal.domain.receipts import Share
from journal.domain.when import When, spoken

if TYPE_CHECKING:
    from journal.domain.photo_spans import PhotoDay

#: What a tick takes beside the words, in pixels.
_TICK = 28


class PhotoHoursDialog(FormDialog):
    """Tick the days to record; each is recorded as a lower bound, all as one edit."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__("Hours from photos", "&Record the ticked days", parent)
        self._desk = desk
        self._days: tuple[PhotoDay, ...] = ()
        self._items: list[QTreeWidgetItem] = []
        self._names = {area.id: area.name for area in desk.ask(area_actions.areas) or ()}
        self.resize(820, 560)
        self.person = CheckedField(edit=PickEdit(desk.ask(hour_actions.people) or ()))
        self.person.set_text(who_works(desk))
        headings = ["Day", "At least", "First to last shot", "Photos", "Repair area"]
        self.list = PlainTree("Days with photos and no hours", headings)
        self.share = QCheckBox("For the repair area that most of a day's photos were &chosen for")
        self.share.setChecked(True)
        self.total = label("Looking at the photos ...", "muted", wrap=False)
        every = button("&Tick all", lambda: self._tick(Qt.CheckState.Checked))
        none = button("Tick &none", lambda: self._tick(Qt.CheckState.Unchecked))
        for pressed in (every, none):
            pressed.setAutoDefault(False)
        self._build(every, none)
        self._look()

    def _build(self, every: QWidget, none: QWidget) -> None:
        words = label(
            "From the first to the last shot of a visit somebody was there, at least; long pauses "
            "are left out. Only photos count that a camera dated to the second.",
            "muted",
        )
        self.outer.insertWidget(0, words)
        self.add_row("&Person", self.person)
        bar = row(every, none, None, self.total)
        self.outer.insertLayout(2, bar)
        self.outer.insertWidget(3, self.list, 1)
        self.outer.insertWidget(4, self.share)
        self.outer.setStretch(5, 0)  # The room is the list's.
        self.list.itemChanged.connect(self._count)
        self.accept_button.setEnabled(False)
        self.cancel_button.setText("Close")

    def submit(self) -> bool:
        """Record the days that are ticked, and go on with the rest."""
        from journal.actions.photo_hours import PhotoHours, record_photo_hours

        person = self.person.text()
        if not person:
            error = JournalError("Whose hours are they?")
            self.person.refuse(error)
            raise error
        wanted = tuple(PhotoHours(day, person, "", self._shares(day)) for day in self._ticked())
        self._desk.announce(record_photo_hours(self._desk.session, wanted))
        remember_person(self._desk, person)
        if len(wanted) == len(self._days):
            return True
        self._look()
        return False

    def _shares(self, day: "PhotoDay") -> tuple[Share, ...]:
        if not (self.share.isChecked() and day.area_ids):
            return ()
        return (Share(day.area_ids[0], 1),)

    def _look(self) -> None:
        from journal.actions.photo_hours import days_without_hours

        session = self._desk.session
        self._desk.read(lambda _context: days_without_hours(session), self._show, self)

    def _show(self, days: "tuple[PhotoDay, ...]") -> None:
        self._days = tuple(reversed(days))
        self.list.blockSignals(True)
        self.list.clear()
        self._items = []
        for day in self._days:
            item = QTreeWidgetItem(self._cells(day))
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
            item.setCheckState(0, Qt.CheckState.Unchecked)
            item.setTextAlignment(1, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            self.list.addTopLevelItem(item)
            self._items.append(item)
        self.list.blockSignals(False)
        for number in range(4):
            self.list.resizeColumnToContents(number)
        # Under a style sheet Qt leaves the tick out of what a cell needs.
        self.list.setColumnWidth(0, self.list.columnWidth(0) + _TICK)
        if self._items:
            self.list.setCurrentItem(self._items[0])
        self._count()

    def _cells(self, day: "PhotoDay") -> list[str]:
        spans = ", ".join(
            f"{visit.first.taken:%H:%M} to {visit.last.taken:%H:%M}" for visit in day.visits
        )
        cameras = f" ({day.cameras} cameras)" if day.cameras > 1 else ""
        area = self._names.get(day.area_ids[0], "") if day.area_ids else ""
        when = spoken(When.on(day.day))
        return [when, spoken_hours(day.minutes), spans, f"{len(day.photo_ids)}{cameras}", area]

    def _ticked(self) -> "list[PhotoDay]":
        return [
            day
            for day, item in zip(self._days, self._items, strict=True)
            if item.checkState(0) is Qt.CheckState.Checked
        ]

    def _tick(self, state: Qt.CheckState) -> None:
        self.list.blockSignals(True)
        for item in self._items:
            item.setCheckState(0, state)
        self.list.blockSignals(False)
        self._count()

    def _count(self) -> None:
        if not self._days:
            self.total.setText("Every day with photos of a visit has its hours.")
            self.accept_button.setEnabled(False)
            return
        ticked = self._ticked()
        of_all = f"{len(ticked)} of {len(self._days)} days"
        minutes = sum(day.minutes for day in ticked)
        self.total.setText(f"{of_all}, at least {spoken_hours(minutes)}" if ticked else of_all)
        self.accept_button.setEnabled(bool(ticked) and not self._desk.read_only)
