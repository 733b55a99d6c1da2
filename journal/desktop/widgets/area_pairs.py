"""The pairs of a repair area: the one looked at, laid over each other, and the others to choose."""

from functools import partial

from PySide6.QtGui import QImage, QPixmap, QShowEvent
from PySide6.QtWidgets import QButtonGroup, QPushButton, QWidget

from journal.actions import pairs as actions
from journal.actions.pair_pictures import pair_pictures
from journal.actions.photos import photos as photos_of
from journal.actions.session import Session
from journal.desktop.desk import Desk
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.pair import PairDialog
from journal.desktop.dialogs.pair_looks import PairLooks
from journal.desktop.dialogs.pair_reading import as_image
from journal.desktop.tasks import Task
from journal.desktop.widgets.flow import FlowLayout
from journal.desktop.widgets.overlay_view import OverlayView
from journal.desktop.widgets.parts import button, column, label, row, tool
from journal.domain.areas import Area
from journal.domain.errors import JournalError
from journal.domain.ids import PairId
from journal.domain.pairs import How, Pair
from journal.domain.photos import Photo
from journal.domain.when import spoken

_HEIGHT = 360
_LONGEST = 1200
_WORDS = 48
_NONE = "None kept yet. The program finds how the photo from after lies on the one from before."


class AreaPairs(QWidget):
    """Shows the kept pairs of an area; reads pictures only while it can be seen."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._area: Area | None = None
        self._pairs: tuple[Pair, ...] = ()
        self._at: PairId | None = None
        self._shown: Pair | None = None
        self._task: Task | None = None
        self.lay = button(
            "&Lay after over before", self._on_lay, icon="before-after",
            hint="Choose two photos, and see one lie over the other",
        )  # fmt: skip
        self.none = label(_NONE, "muted")
        self.view = OverlayView()
        self.view.setFixedHeight(_HEIGHT)
        self.looks = PairLooks(self.view)
        self.words = label("", "muted")
        self.open = button("&Open", self._on_open, icon="zoom-in", role="quiet")
        self.up = tool("move-up", "Move this pair up", partial(self._on_move, -1))
        self.down = tool("move-down", "Move this pair down", partial(self._on_move, 1))
        self.apart = tool("remove", "Take this pair apart", self._on_apart)
        self._group = QButtonGroup(self)
        self._choices = QWidget()
        self._flow = FlowLayout(self._choices, spacing=4)
        self._below = QWidget()
        below = row(self.words, self.open, self.up, self.down, self.apart)
        below.setStretch(0, 1)
        self._below.setLayout(below)
        layout = column(spacing=6)
        layout.addLayout(row(label("Before and after", "subheading", wrap=False), None, self.lay))
        for part in (self.none, self._choices, self.looks, self.view, self._below):
            layout.addWidget(part)
        self.setLayout(layout)

    def show_area(self, area: Area) -> None:
        """Show the pairs kept of an area."""
        if self._area is None or self._area.id != area.id:
            self._at = None
        self._area = area
        self._pairs = self._desk.ask(actions.area_pairs, area.id) or ()
        if self._at not in [pair.id for pair in self._pairs]:
            self._at = self._pairs[0].id if self._pairs else None
        self.none.setVisible(not self._pairs)
        for part in (self.looks, self.view, self._below):
            part.setVisible(bool(self._pairs))
        self._show_choices()
        self._show_pair()

    def pair(self) -> Pair | None:
        """The pair looked at."""
        return next((pair for pair in self._pairs if pair.id == self._at), None)

    def _show_choices(self) -> None:
        self._flow.clear()
        several = len(self._pairs) > 1
        for number, pair in enumerate(self._pairs if several else (), 1):
            words = pair.caption if len(pair.caption) <= _WORDS else pair.caption[:_WORDS] + "…"
            choice = QPushButton(f"{number}  {words}".strip().replace("&", "&&"))
            choice.setCheckable(True)
            choice.setChecked(pair.id == self._at)
            choice.clicked.connect(partial(self._on_choice, pair.id))
            self._group.addButton(choice)
            self._flow.addWidget(choice)
        self._choices.setVisible(several)
        self._choices.updateGeometry()
        place = [pair.id for pair in self._pairs].index(self._at) if self._at else 0
        can = not self._desk.read_only
        self.up.setVisible(several)
        self.down.setVisible(several)
        self.up.setEnabled(can and place > 0)
        self.down.setEnabled(can and place < len(self._pairs) - 1)
        self.apart.setEnabled(can)

    def _show_pair(self) -> None:
        pair = self.pair()
        if pair is None:
            self._shown = None
            return
        photos = self._desk.ask(photos_of, [pair.before_id, pair.after_id])
        if photos is not None:
            self.words.setText(_words(pair, photos))
        if not self.isVisible() or pair == self._shown:
            return
        self._shown = pair
        if self._task is not None:
            self._task.cancel()
        session = self._desk.session
        self.view.say("\N{HORIZONTAL ELLIPSIS}")
        self._task = self._desk.read(
            lambda _context: _read(session, pair), partial(self._on_read, pair), self
        )

    def _on_read(self, pair: Pair, found: tuple[QImage, QImage] | str) -> None:
        if pair != self.pair():
            return
        if isinstance(found, str):
            self.view.say(found)
            return
        self.view.show_pair(*(QPixmap.fromImage(image) for image in found))
        self.looks.set_laid(is_laid=pair.fit.is_laid)

    def showEvent(self, event: QShowEvent) -> None:
        """Read the pictures now that they can be seen."""
        super().showEvent(event)
        self._show_pair()

    # --- acts

    def _on_choice(self, pair_id: PairId) -> None:
        self._at = pair_id
        self._show_choices()
        self._show_pair()

    def _on_lay(self) -> None:
        if self._area is not None:
            open_dialog(PairDialog(self._desk, self._area, self.window()))

    def _on_open(self) -> None:
        pair = self.pair()
        if self._area is not None and pair is not None:
            open_dialog(
                PairDialog(
                    self._desk,
                    self._area,
                    self.window(),
                    before=pair.before_id,
                    after=pair.after_id,
                )
            )

    def _on_move(self, step: int) -> None:
        if self._area is None or self._at is None:
            return
        order = [pair.id for pair in self._pairs]
        place = order.index(self._at)
        order.insert(place + step, order.pop(place))
        self._desk.act(actions.order_pairs, self._area.id, order)

    def _on_apart(self) -> None:
        if self._at is not None:
            self._desk.act(actions.remove_pair, self._at)


def _read(session: Session, pair: Pair) -> tuple[QImage, QImage] | str:
    try:
        before, after = pair_pictures(session, pair, _LONGEST)
    except JournalError as error:
        return str(error)
    return as_image(before), as_image(after)


def _words(pair: Pair, photos: tuple[Photo, ...]) -> str:
    dates = " and ".join(spoken(p.when) if p.when else "no date" for p in photos)
    how = {
        How.FOUND: "laid by what both show",
        How.BY_HAND: f"laid by {len(pair.fit.points)} spots shown by hand",
        How.SIDE_BY_SIDE: "side by side",
    }[pair.fit.how]
    words = f"{dates} \N{MIDDLE DOT} {how}"
    return f"{pair.caption}\n{words}" if pair.caption else words
