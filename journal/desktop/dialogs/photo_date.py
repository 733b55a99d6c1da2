"""Say when photos were taken, or go back to what their files say."""

from collections.abc import Sequence

from PySide6.QtWidgets import QWidget

from journal.actions import photos as photo_actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.parts import button, label
from journal.desktop.widgets.photo_words import BASIS_WORDS
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.ids import PhotoId
from journal.domain.photos import Basis, Photo
from journal.domain.when import spoken

#: More photos than these are not looked at one by one to say how they are dated now.
_LOOKED_AT = 200


class PhotoDateDialog(FormDialog):
    """Asks for one date for all the photos given; the owner's word wins over every other."""

    def __init__(
        self, desk: Desk, photo_ids: Sequence[PhotoId], parent: QWidget | None = None
    ) -> None:
        count = len(photo_ids)
        title = "Date this photo" if count == 1 else f"Date {count:,} photos"
        super().__init__(title, "&Set the date", parent)
        self._desk = desk
        self._ids = tuple(photo_ids)
        known = desk.ask(photo_actions.photos, self._ids[:_LOOKED_AT]) or ()
        self._when = WhenEdit()
        if len(known) == 1 and known[0].when is not None:
            self._when.set_when(known[0].when)
            self._when.edit.selectAll()
        self._now = label(_now_words(known, count), "muted")
        self.outer.insertWidget(0, self._now)
        self.add_row("&Taken", self._when, "A year or a season is enough; your word always counts.")
        self._forget = button("&Go back to what the file says", self._on_forget)
        self._forget.setVisible(any(photo.basis is Basis.OWNER for photo in known))
        self._forget.setAutoDefault(False)
        self.outer.insertWidget(2, self._forget)
        self._when.setFocus()

    def submit(self) -> bool:
        """Record the date on the owner's word."""
        when = self._when.required()
        text = when.edtf
        self._desk.announce(photo_actions.set_date(self._desk.session, self._ids, text))
        return True

    def _on_forget(self) -> None:
        if self._desk.act(photo_actions.forget_owner_date, self._ids) is not None:
            self.accept()


def _now_words(photos: Sequence[Photo], count: int) -> str:
    """What is known now, in a sentence."""
    if len(photos) == 1:
        photo = photos[0]
        date = spoken(photo.when) if photo.when else "no date"
        return f"{photo.name}: {date} ({BASIS_WORDS[photo.basis]})."
    dated = [photo.when for photo in photos if photo.when is not None]
    undated = len(photos) - len(dated)
    words = []
    if dated:
        first, last = min(dated), max(dated)
        words.append(f"dated from {spoken(first)} to {spoken(last)}")
    if undated:
        words.append(f"{undated:,} without a date")
    if count > len(photos):
        words.append(f"and {count - len(photos):,} more")
    return f"{count:,} photos, {', '.join(words)}. All get the same date."
