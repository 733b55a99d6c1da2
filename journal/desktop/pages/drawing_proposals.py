"""What the Drawing page proposes for the photos in hand: read in a reader's thread, then shown."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal, Slot
from PySide6.QtGui import QImage

from journal.actions.session import Session
from journal.desktop.desk import Desk
from journal.desktop.tasks import Task
from journal.desktop.widgets.proposal_list import ProposalList
from journal.desktop.widgets.proposal_rings import ProposalRings
from journal.desktop.widgets.proposal_row import THUMB
from journal.desktop.widgets.thumbs import decode
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, PhotoId
from journal.domain.progress import Context
from journal.domain.proposals import Proposal, together

if TYPE_CHECKING:
    from journal.desktop.widgets.tool_canvas import ToolCanvas

#: Of a large sitting so many photos are looked at, evenly spread.
_ASKED_MOST = 48
#: What is in hand has to rest that long before places are looked for, in milliseconds.
_REST_MS = 60


@dataclass(frozen=True, slots=True)
class Read:
    """Proposals for the photos in hand, and the pinned photos that speak for them.

    ``asked`` is how many photos without a place were looked at.
    """

    proposals: tuple[Proposal, ...]
    images: Mapping[PhotoId, QImage]
    asked: int


def read_proposals(
    session: Session, ids: tuple[PhotoId, ...], ratio: float, context: Context
) -> Read:
    """Look for the places of those among the photos that have none."""
    try:
        return _read(session, ids, ratio, context)
    except JournalError:
        # A photo went away meanwhile, or the journal was closed; what is in hand changes too then.
        return Read((), {}, 0)


def _read(session: Session, ids: tuple[PhotoId, ...], ratio: float, context: Context) -> Read:
    from journal.actions.photos import photos
    from journal.actions.pictures import thumbnail
    from journal.actions.proposals import proposals

    step = max(1, -(-len(ids) // _ASKED_MOST))
    asked = [photo.id for photo in photos(session, ids[::step]) if not photo.placed]
    found = together(proposals(session, asked, context)) if asked else ()
    images = {}
    for photo in photos(session, [proposal.shown for proposal in found]):
        context.checkpoint()
        image = decode(thumbnail(session, photo), round(THUMB.width() * ratio))
        if image is not None:
            image.setDevicePixelRatio(ratio)
            images[photo.id] = image
    return Read(found, images, len(asked))


class Proposing(QObject):
    """Keeps the list and the rings in step with what is in hand."""

    #: Proposals for what is in hand are shown, or that there are none.
    shown = Signal()

    def __init__(
        self,
        desk: Desk,
        canvas: "ToolCanvas",
        listing: ProposalList,
        labels: Callable[[], Mapping[PanelId, str]],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._desk = desk
        self._canvas = canvas
        self._labels = labels
        self._ids: tuple[PhotoId, ...] = ()
        self._task: Task | None = None
        self.list = listing
        self.rings = ProposalRings(canvas)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST_MS)
        self._rest.timeout.connect(self._read)

    @property
    def is_read(self) -> bool:
        """Whether what is shown fits what is in hand."""
        return self._task is None and not self._rest.isActive()

    def panel(self, number: int) -> PanelId | None:
        """The panel proposed under a number, from 1; None where there is none."""
        found = self.list.proposals
        return found[number - 1].panel_id if 0 < number <= len(found) else None

    def look(self, ids: tuple[PhotoId, ...], *, again: bool = False) -> None:
        """Propose for these photos soon; ``again`` even if they are the ones looked at."""
        if ids == self._ids and not again:
            return
        if ids != self._ids:
            # A key pressed now must not pin these photos to what was proposed for others.
            self.list.wait()
            self.rings.show_panels(())
        self._ids = ids
        if self._task is not None:
            self._task.cancel()
            self._task = None
        if ids:
            self._rest.start()
        else:
            self._rest.stop()
            self._show_none()

    @Slot()
    def _read(self) -> None:
        session, ids, ratio = self._desk.session, self._ids, self._canvas.devicePixelRatioF()
        self._task = self._desk.read(
            lambda context: read_proposals(session, ids, ratio, context), self._on_read, self
        )

    def _on_read(self, found: Read) -> None:
        self._task = None
        if not found.asked:
            self._show_none()
            self.shown.emit()
            return
        writable = not self._desk.read_only
        self.list.show_proposals(
            found.proposals, self._labels(), found.images, asked=found.asked, writable=writable
        )
        self.rings.show_panels(tuple(proposal.panel_id for proposal in found.proposals))
        self.shown.emit()

    def _show_none(self) -> None:
        self.list.show_none()
        self.rings.show_panels(())
