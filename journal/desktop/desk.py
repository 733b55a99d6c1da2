"""The desk: what every page and pane is given to work with, for one open journal."""

import logging
from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING, Any, Concatenate, ParamSpec, TypeVar

from PySide6.QtCore import QObject, Signal

from journal.desktop.tasks import Job, OnCancelled, OnDone, Task, TaskRunner
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, FindingId, PanelId, PhotoId, ReceiptId, WantedId

if TYPE_CHECKING:
    from journal.actions.session import Session
    from journal.actions.settings import Settings

_LOG = logging.getLogger(__name__)

P = ParamSpec("P")
T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Nothing:
    """Nothing is selected."""


@dataclass(frozen=True, slots=True)
class PhotosSelected:
    """One or more photos, in the order shown; the first is the one looked at."""

    ids: tuple[PhotoId, ...]


@dataclass(frozen=True, slots=True)
class PanelSelected:
    """A panel of the drawing."""

    id: PanelId


@dataclass(frozen=True, slots=True)
class AreaSelected:
    """A repair area."""

    id: AreaId


@dataclass(frozen=True, slots=True)
class ReceiptSelected:
    """A receipt."""

    id: ReceiptId


@dataclass(frozen=True, slots=True)
class WantedSelected:
    """A wanted part."""

    id: WantedId


@dataclass(frozen=True, slots=True)
class FindingSelected:
    """A finding of a survey."""

    id: FindingId


class MetalKind(StrEnum):
    """What of the metalwork is selected."""

    SEAM = "seam"
    PATCH = "patch"
    ANCHOR = "anchor point"
    MEASURE = "measure"


@dataclass(frozen=True, slots=True)
class MetalSelected:
    """A seam, patch, anchor point or measure: its kind, and its number among them."""

    kind: MetalKind
    id: int


Selection = (
    Nothing
    | PhotosSelected
    | PanelSelected
    | AreaSelected
    | ReceiptSelected
    | WantedSelected
    | FindingSelected
    | MetalSelected
)


class Desk(QObject):
    """The open journal, the jobs, and what is selected.

    Every action is called with the session as its first argument, which the desk adds.
    """

    #: Something in the journal changed (also by undo and redo): Changes.
    changed = Signal(object)
    #: Something else is selected: a Selection.
    selected = Signal(object)
    #: Words for the person: the text, and a level: "info", "done", "warning" or "error".
    message = Signal(str, str)
    #: A page is to come to the front: its title ("Drawing", "Timeline", ...).
    page_wanted = Signal(str)
    #: A mode of the drawing is to be entered: its title ("Survey", ...).
    mode_wanted = Signal(str)
    #: A tab of the Ledger is to come to the front: its title ("Estimate", ...).
    tab_wanted = Signal(str)
    #: Photos are to be added; the window asks which.
    add_wanted = Signal()

    def __init__(
        self,
        session: "Session",
        tasks: TaskRunner,
        settings: "Settings",
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self.session = session
        self.tasks = tasks
        self.settings = settings
        self.selection: Selection = Nothing()

    @property
    def read_only(self) -> bool:
        """Whether the journal is open for reading only."""
        return self.session.read_only

    def act(
        self,
        function: "Callable[Concatenate[Session, P], T]",
        *args: P.args,
        **kwargs: P.kwargs,
    ) -> T | None:
        """Do a short action now and tell everybody what changed.

        An obstacle (JournalError) becomes a message and None.
        """
        try:
            result = function(self.session, *args, **kwargs)
        except JournalError as error:
            self.message.emit(str(error), "error")
            return None
        self.announce(result)
        return result

    def ask(
        self,
        function: "Callable[Concatenate[Session, P], T]",
        *args: P.args,
        **kwargs: P.kwargs,
    ) -> T | None:
        """Read something short now; an obstacle becomes a message and None."""
        try:
            return function(self.session, *args, **kwargs)
        except JournalError as error:
            self.message.emit(str(error), "error")
            return None

    def run(
        self,
        label: str,
        job: Job,
        on_done: OnDone | None = None,
        on_cancelled: OnCancelled | None = None,
    ) -> Task:
        """Do a long job in the writer's thread: ``job(context)`` calls the action itself.

        What changed is told when it ends, then ``on_done(result)`` is called on the main thread.
        """

        def stopped() -> None:
            self.message.emit(f"{label}: stopped, as you asked.", "info")

        def done(result: Any) -> None:
            self.announce(result)
            if on_done:
                on_done(result)

        return self.tasks.write(
            label,
            job,
            owner=self,
            on_done=done,
            on_failed=self.tell_failure,
            on_cancelled=on_cancelled or stopped,
        )

    def read(self, job: Job, on_done: OnDone, owner: QObject) -> Task:
        """Do a reading job of some length (a picture, a sum) in a reader's thread.

        ``on_done(result)`` is called on the main thread unless ``owner`` is gone by then.
        """
        return self.tasks.read(job, owner=owner, on_done=on_done, on_failed=self.tell_failure)

    def select(self, selection: Selection) -> None:
        """Select something; the inspector and the pages show it."""
        if selection != self.selection:
            self.selection = selection
            self.selected.emit(selection)

    def show_page(self, title: str) -> None:
        """Bring a page to the front by its title."""
        self.page_wanted.emit(title)

    def show_mode(self, title: str) -> None:
        """Bring the drawing to the front in one of its modes."""
        self.page_wanted.emit("Drawing")
        self.mode_wanted.emit(title)

    def show_tab(self, title: str) -> None:
        """Bring the Ledger to the front with one of its tabs."""
        self.page_wanted.emit("Ledger")
        self.tab_wanted.emit(title)

    def announce(self, result: object) -> None:
        """Tell everybody what an action's result says has changed, if it says so."""
        changes = result if isinstance(result, Changes) else getattr(result, "changes", None)
        if isinstance(changes, Changes) and changes.edit_id is not None:
            self.changed.emit(changes)

    def tell_failure(self, error: Exception) -> None:
        """Turn a job's failure into a message."""
        if isinstance(error, JournalError):
            self.message.emit(str(error), "error")
            return
        _LOG.error("A job failed in a way nobody foresaw", exc_info=error)
        self.message.emit(
            f"The program itself went wrong and stopped this job ({type(error).__name__}).",
            "error",
        )
