"""Which two photos make a pair: chosen from lists, or the likeliest found by the program."""

from PySide6.QtCore import QSize, QTimer, Signal
from PySide6.QtGui import QIcon, QImage, QPixmap
from PySide6.QtWidgets import QComboBox, QSizePolicy, QWidget

from journal.actions.photos import photos as photos_of
from journal.desktop.desk import Desk
from journal.desktop.dialogs import pair_reading as reading
from journal.desktop.tasks import Task
from journal.desktop.widgets.parts import button, column, label, row
from journal.domain.areas import Area
from journal.domain.ids import PhotoId
from journal.domain.pairs import PairProposal
from journal.domain.photos import Photo, Role
from journal.domain.when import spoken

_THUMB = QSize(60, 44)
_POLL_MS = 200

_Found = list[tuple[PairProposal, tuple[Photo, Photo]]]


class PairChoice(QWidget):
    """Two lists of photos, and a button that looks for the likeliest pairs."""

    #: Two photos were chosen; with them the fit that is known of them, or None.
    chosen = Signal(object)
    #: How far the looking for likely pairs is, or how it ended, in words.
    told = Signal(str)

    def __init__(self, desk: Desk, area: Area, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._area = area
        self._photos: dict[PhotoId, Photo] = {}
        self._roles: dict[PhotoId, Role | None] = {}
        self._task: Task | None = None
        self._proposals: _Found = []
        self.before, self.after, self.likely = QComboBox(), QComboBox(), QComboBox()
        for box, name in (
            (self.before, "Before photo"),
            (self.after, "After photo"),
            (self.likely, "Likely pairs"),
        ):  # fmt: skip
            box.setIconSize(_THUMB)
            box.setAccessibleName(name)
            box.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
            box.setMinimumContentsLength(12)
            box.setSizeAdjustPolicy(
                QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
            )
        self.look = button(
            "Find &likely ones", self._on_find, icon="find",
            hint="Look for photos of one view, the earliest before against the latest after",
        )  # fmt: skip
        self.look.setAutoDefault(False)
        top = row(label("Before", wrap=False), self.before, label("After", wrap=False), self.after)
        top.addWidget(self.look)
        top.setStretch(1, 1)
        top.setStretch(3, 1)
        layout = column(spacing=6)
        layout.addLayout(top)
        layout.addWidget(self.likely)
        self.setLayout(layout)
        self.likely.hide()
        self._poll = QTimer(self, interval=_POLL_MS)
        self._poll.timeout.connect(self._on_poll)
        self.before.activated.connect(lambda _index: self._on_chosen())
        self.after.activated.connect(lambda _index: self._on_chosen())
        self.likely.activated.connect(self._on_likely)

    def fill(self, before: PhotoId | None, after: PhotoId | None) -> None:
        """Offer the area's photos; without a choice the first before and the last after."""
        for role, photo in self._desk.ask(reading.offered, self._area) or ():
            self._offer(role, photo)
        missing = [number for number in (before, after) if number and number not in self._photos]
        for photo in self._desk.ask(photos_of, missing) or ():
            self._offer(None, photo)
        ids = list(self._photos)
        first = [n for n in ids if self._roles[n] is Role.BEFORE] or ids[:1]
        last = [n for n in ids if self._roles[n] is Role.AFTER] or ids[-1:]
        self._choose(self.before, before or next(iter(first), None))
        self._choose(self.after, after or next(reversed(last), None))
        session, photos = self._desk.session, list(self._photos.values())
        self._desk.read(lambda _context: reading.thumbs(session, photos), self._on_thumbs, self)

    def both(self) -> tuple[Photo, Photo] | None:
        """The two photos chosen; None where there are no two."""
        ids = [box.currentData() for box in (self.before, self.after)]
        if None in ids or ids[0] == ids[1]:
            return None
        return self._photos[ids[0]], self._photos[ids[1]]

    def stop(self) -> None:
        """Look for likely pairs no longer."""
        if self._task is not None:
            self._task.cancel()
            self._task = None
        self._poll.stop()
        self.look.setText("Find &likely ones")

    def _on_chosen(self) -> None:
        self.stop()
        self.chosen.emit(None)

    def _offer(self, role: Role | None, photo: Photo) -> None:
        if photo.id in self._photos:
            return
        self._photos[photo.id] = photo
        self._roles[photo.id] = role
        date = spoken(photo.when) if photo.when else "No date"
        words = f"{date}, {role.value}" if role else date
        for box in (self.before, self.after):
            box.addItem(f"{words} \N{MIDDLE DOT} {photo.caption or photo.name}", photo.id)

    def _on_thumbs(self, found: dict[PhotoId, QImage]) -> None:
        for box in (self.before, self.after):
            for index in range(box.count()):
                if image := found.get(PhotoId(box.itemData(index))):
                    box.setItemIcon(index, QIcon(QPixmap.fromImage(image)))

    def _choose(self, box: QComboBox, photo_id: PhotoId | None) -> None:
        if photo_id is not None:
            box.setCurrentIndex(box.findData(photo_id))

    # --- likely ones

    def _on_find(self) -> None:
        if self._poll.isActive():
            self.stop()
            self.told.emit("Stopped, as you asked.")
            return
        session, area_id = self._desk.session, self._area.id
        self.look.setText("&Stop looking")
        self.told.emit("Looking for likely pairs \N{HORIZONTAL ELLIPSIS}")
        self._poll.start()
        self._task = self._desk.read(
            lambda context: reading.proposed(session, area_id, context), self._on_found, self
        )

    def _on_poll(self) -> None:
        if self._task is not None and (now := self._task.context.progress).label:
            self.told.emit(f"{now.label}: {now.done + 1} of {now.total}")

    def _on_found(self, found: _Found) -> None:
        self.stop()
        self._proposals = found
        self.likely.clear()
        for proposal, photos in found:
            for photo in photos:
                self._offer(None, photo)
            dates = " and ".join(spoken(p.when) if p.when else "no date" for p in photos)
            self.likely.addItem(f"{dates}: {promise_words(proposal)}")
        self.likely.setVisible(len(found) > 1)
        if found:
            self._on_likely(0)
        else:
            self.told.emit("No other pair: it takes photos from before and from after the work.")

    def _on_likely(self, index: int) -> None:
        proposal, photos = self._proposals[index]
        self._choose(self.before, photos[0].id)
        self._choose(self.after, photos[1].id)
        self.chosen.emit(proposal.fit)


def promise_words(proposal: PairProposal) -> str:
    """How much two photos promise, in words."""
    if proposal.fit is None:
        return "look alike, could not be laid"
    return f"{proposal.fit.inliers:,} spots agree"
