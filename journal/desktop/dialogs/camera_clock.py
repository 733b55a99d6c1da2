"""Put a camera's clock right: say the true time of one photo, and all its photos move."""

from datetime import datetime, timedelta

from PySide6.QtCore import Qt
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QLabel, QWidget

from journal.actions import photos as photo_actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.parts import label, row
from journal.desktop.widgets.photo_words import to_the_minute
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.errors import JournalError
from journal.domain.ids import PhotoId
from journal.domain.photos import Photo
from journal.domain.progress import Context
from journal.domain.when import parse, spoken

_PICTURE = 128


class CameraClockDialog(FormDialog):
    """Asks for the true time of one photo and says how far, and how many photos, will move."""

    def __init__(
        self,
        desk: Desk,
        photo_id: PhotoId,
        parent: QWidget | None = None,
        *,
        picture: QPixmap | None = None,
    ) -> None:
        super().__init__("Put the camera's clock right", "&Move the photos", parent)
        self._desk = desk
        self._photo: Photo | None = desk.ask(photo_actions.photo, photo_id)
        self._count: int | None = None
        self._true = WhenEdit()
        self._true.edit.setPlaceholderText("5 March 2016, 14:22")
        self._effect = label("", "subheading")
        self._build(picture)
        self._true.changed.connect(self._show_effect)
        self._true.setFocus()
        if self._photo is not None and self._photo.camera_id is not None:
            session, camera_id = desk.session, self._photo.camera_id

            def job(_context: Context) -> int:
                return photo_actions.count_by_clock(session, camera_id)

            desk.read(job, self._on_counted, self)

    def _build(self, picture: QPixmap | None) -> None:
        photo = self._photo
        shown = QLabel()
        if picture is not None:
            mode = Qt.AspectRatioMode.KeepAspectRatio
            smooth = Qt.TransformationMode.SmoothTransformation
            shown.setPixmap(picture.scaled(_PICTURE, _PICTURE, mode, smooth))
        says = "This photo has no date from a camera's clock."
        if photo is not None and photo.when is not None:
            says = f"By its clock, {photo.camera} took this photo on {spoken(photo.when)}."
            self._true.set_text(spoken(photo.when))
            self._true.edit.selectAll()
        head = row(shown, label(says), spacing=16)
        head.setStretch(1, 1)
        self.outer.insertLayout(0, head)
        self.add_row(
            "&True time",
            self._true,
            "Photos of a wall clock or of a dated receipt are good for this.",
        )
        self.outer.insertWidget(2, self._effect)
        self._show_effect()

    def submit(self) -> bool:
        """Shift every photo of the camera."""
        true = self._true_time()
        if self._photo is None:
            raise JournalError("The photo is no longer in the journal.")
        if self._photo.when is not None and true == self._photo.when.earliest:
            return True
        changes = photo_actions.correct_clock(self._desk.session, self._photo.id, true)
        self._desk.announce(changes)
        return True

    def _true_time(self) -> datetime:
        when = self._true.required()
        if not to_the_minute(when):
            raise JournalError("Give the time of day as well, for instance 5 March 2016, 14:22.")
        return self._with_seconds(when.earliest)

    def _with_seconds(self, true: datetime) -> datetime:
        """A time that was given to the minute only, with the seconds of the camera's clock."""
        taken = self._photo.when if self._photo is not None else None
        fine = self._true.text().count(":") > 1
        if taken is None:
            return true
        if fine:
            return true.replace(microsecond=taken.earliest.microsecond)
        return true.replace(second=taken.earliest.second, microsecond=taken.earliest.microsecond)

    def _on_counted(self, count: int) -> None:
        self._count = count
        self._show_effect()

    def _show_effect(self) -> None:
        self._effect.setText(self.effect_words())

    def effect_words(self) -> str:
        """What moving would do, in a sentence; "" while no time can be read."""
        photo = self._photo
        if photo is None or photo.when is None:
            return ""
        try:
            true = parse(self._true.text())
        except JournalError:
            return ""
        if not to_the_minute(true):
            return ""
        shift = self._with_seconds(true.earliest) - photo.when.earliest
        whose = f"All photos by {photo.camera}" if self._count is None else _photos(self._count)
        verb = "move" if self._count != 1 else "moves"
        if not shift:
            return "The clock is right already; nothing moves."
        ahead = "later" if shift > timedelta() else "earlier"
        return f"{whose} {verb} {shift_words(abs(shift))} {ahead}."


def shift_words(shift: timedelta) -> str:
    """A span of time in words, its two largest parts: "3 days 2 hours"."""
    minutes, seconds = divmod(round(shift.total_seconds()), 60)
    hours, minutes = divmod(minutes, 60)
    days, hours = divmod(hours, 24)
    years, days = divmod(days, 365)
    parts = [
        (years, "year"),
        (days, "day"),
        (hours, "hour"),
        (minutes, "minute"),
        (seconds, "second"),
    ]
    said = [f"{number:,} {noun}{'' if number == 1 else 's'}" for number, noun in parts if number]
    return " ".join(said[:2]) or "0 seconds"


def _photos(count: int) -> str:
    return "1 photo" if count == 1 else f"{count:,} photos"
