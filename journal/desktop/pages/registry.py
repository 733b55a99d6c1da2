"""Which pages there are and where each comes from; a page is imported when first shown."""

from dataclasses import dataclass
from importlib import import_module
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

if TYPE_CHECKING:
    from journal.desktop.desk import Desk
    from journal.desktop.pages import Page
    from journal.domain.progress import Context


@dataclass(frozen=True, slots=True)
class PageEntry:
    """A page that can be made: its title and icon, the module it is in and its class."""

    title: str
    icon: str
    module: str
    name: str

    def make(self, desk: "Desk", parent: QWidget) -> "Page":
        """Import and make the page."""
        made: Page = getattr(import_module(self.module), self.name)(desk, parent)
        return made


PAGES = (
    PageEntry("Drawing", "drawing", "journal.desktop.pages.drawing", "DrawingPage"),
    PageEntry("Timeline", "timeline", "journal.desktop.pages.timeline", "TimelinePage"),
    PageEntry("Areas", "areas", "journal.desktop.pages.areas", "AreasPage"),
    PageEntry("Ledger", "ledger", "journal.desktop.pages.ledger", "LedgerPage"),
    PageEntry("Gaps", "gaps", "journal.desktop.pages.gaps", "GapsPage"),
    PageEntry("Dossier", "dossier", "journal.desktop.pages.dossier", "DossierPage"),
)


def load_all(context: "Context") -> int:
    """Import every page's module ahead, so that its first showing need not; how many there are."""
    for entry in PAGES:
        context.checkpoint()
        import_module(entry.module)
    return len(PAGES)
