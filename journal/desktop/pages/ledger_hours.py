"""The list of hours, with what is done to them."""

from collections.abc import Sequence

from journal.actions import hours as hour_actions
from journal.actions.ledger_page import LedgerRead
from journal.desktop.desk import Desk
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.pages.ledger_lists import NOT_SHARED, LedgerList
from journal.desktop.widgets.parts import EmptyState, button
from journal.desktop.widgets.rows import Column, RowsTable
from journal.desktop.widgets.share_edit import shares_in_words
from journal.domain.areas import Area
from journal.domain.hours import spoken_hours
from journal.domain.ids import AreaId
from journal.domain.when import spoken
from journal.domain.work import BASIS_WORDS, Work

_FROM_PHOTOS = "Days with photos and no hours, with the time from first to last shot"


class WorkList(LedgerList):
    """All hours, the latest first."""

    nouns = ("day", "days")

    def __init__(self, desk: Desk) -> None:
        self._names: dict[AreaId, str] = {}
        table = RowsTable(
            "Hours",
            (
                Column("Date", lambda w: spoken(w.when), lambda w: w.when),
                Column("Person", lambda w: w.person or "nobody named"),
                Column(
                    "Hours", lambda w: spoken_hours(w.minutes), lambda w: w.minutes, number=True
                ),
                self.part_column(),
                Column("Known by", _known_by),
                Column("For", self._shared_to, wide=True),
                Column("Note", lambda w: w.note, wide=True),
            ),
        )
        acts = (
            button("New h&ours", self.new, icon="hours", role="primary"),
            button("From &photos", self.from_photos, icon="sitting", hint=_FROM_PHOTOS),
            button("Peop&le", self.people, hint="Who is own, who is paid, and their rates"),
            button("E&dit", self.edit, icon="edit"),
            button("Re&move", self.remove, icon="remove"),
        )
        first = button("New h&ours", self.new, icon="hours", role="primary")
        first.setEnabled(not desk.read_only)
        empty = EmptyState(
            "hours",
            "No hours yet",
            "Hours are worked by one person on one day, and shared over the repair areas they "
            "went into. They are never added to the money.",
            first,
        )
        super().__init__(desk, table, acts, empty)
        self._show_parts(shown=False)
        table.on_opened(lambda _work: self.edit())
        self._on_delete(self.remove)

    def show_found(self, found: LedgerRead) -> None:
        """Show the hours that the page has read."""
        self.show_work(found.work, found.areas)

    def show_work(self, work: Sequence[Work], areas: Sequence[Area]) -> None:
        """Show hours given in order of date."""
        self._names = {area.id: area.name for area in areas}
        self.set_rows(tuple(reversed(work)))

    def words(self, shown: Work) -> str:
        """Person, date, note, areas and how they are known."""
        parts = (shown.person, spoken(shown.when), shown.note, self._shared_to(shown))
        return " ".join((*parts, _known_by(shown)))

    def new(self) -> None:
        """Ask for new hours."""
        from journal.desktop.dialogs.hours import HoursDialog

        open_dialog(HoursDialog(self.desk, self.window()))

    def from_photos(self) -> None:
        """List the days with photos and no hours."""
        from journal.desktop.dialogs.photo_hours import PhotoHoursDialog

        open_dialog(PhotoHoursDialog(self.desk, self.window()))

    def people(self) -> None:
        """List who works on the car."""
        from journal.desktop.dialogs.people import PeopleDialog

        open_dialog(PeopleDialog(self.desk, self.window()))

    def edit(self) -> None:
        """Ask for the picked hours anew."""
        from journal.desktop.dialogs.hours import HoursDialog

        picked = self.table.picked()
        if picked is not None and not self.desk.read_only:
            open_dialog(HoursDialog(self.desk, self.window(), work=picked))

    def remove(self) -> None:
        """Take the picked hours out; undo brings them back."""
        picked = self.table.picked()
        if picked is not None and not self.desk.read_only:
            self.desk.act(hour_actions.remove_work, picked.id)

    def _shared_to(self, work: Work) -> str:
        return shares_in_words(work.shares, self._names) or NOT_SHARED


def _known_by(work: Work) -> str:
    return BASIS_WORDS[work.basis]
