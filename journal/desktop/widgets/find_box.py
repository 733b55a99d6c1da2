"""The find field: type words, walk through what holds them, Enter goes there."""

from functools import cached_property
from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from journal.desktop.desk import (
    AreaSelected,
    Desk,
    FindingSelected,
    PanelSelected,
    PhotosSelected,
    ReceiptSelected,
    Selection,
    WantedSelected,
)
from journal.domain.ids import AreaId, FindingId, PanelId, PhotoId, ReceiptId, WantedId

if TYPE_CHECKING:
    from PySide6.QtWidgets import QListWidgetItem

    from journal.desktop.widgets.find_list import FindList
    from journal.domain.found import Hit
    from journal.domain.progress import Context

_DELAY_MS = 90
_ROOM = 460
_MOST = 60
_PANELS = 4

#: The page on which each kind of find is at home.
_PAGES = {
    "photo": "Timeline",
    "area": "Areas",
    "panel": "Drawing",
    "entry": "Areas",
    "receipt": "Ledger",
    "work": "Ledger",
    "wanted": "Ledger",
    "finding": "Drawing",
}


class FindBox(QLineEdit):
    """Finds photos, repair areas, panels, entries, receipts, wanted parts and work."""

    #: A find was chosen: a Hit.
    chosen = Signal(object)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._asked = ""
        self._wait = QTimer(self, singleShot=True, interval=_DELAY_MS)
        self.setPlaceholderText("Find words anywhere (Ctrl+F)")
        self.setAccessibleName("Find")
        self.setAccessibleDescription("Type words; Down and Up walk through what was found.")
        self._wait.timeout.connect(self._search)
        self.textEdited.connect(self._on_typed)
        self.textChanged.connect(self._on_changed)

    @cached_property
    def found(self) -> "FindList":
        """The list below the field, made when something was first found."""
        from journal.desktop.widgets.find_list import FindList

        made = FindList(self.window())
        made.itemClicked.connect(self._on_clicked)
        return made

    def _hide(self) -> None:
        if "found" in self.__dict__:
            self.found.hide()

    def _on_typed(self) -> None:
        self._wait.start()

    def _on_changed(self, text: str) -> None:
        if not text.strip():
            self._wait.stop()
            self._hide()

    def _search(self) -> None:
        words, session = self.text().strip(), self._desk.session
        self._asked = words
        if not words:
            return

        def job(_context: "Context") -> "tuple[str, tuple[Hit, ...]]":
            from journal.actions.find import find

            return words, few_panels_first(find(session, words, _MOST))

        self._desk.read(job, self._show, self)

    def _show(self, answer: "tuple[str, tuple[Hit, ...]]") -> None:
        words, hits = answer
        if words != self._asked or not self.hasFocus() or not self.text().strip():
            return
        if self.found.parent() is not self.window():
            self.found.setParent(self.window())
        self.found.show_hits(hits)
        place = self.mapTo(self.window(), QPoint(0, self.height() + 2))
        room = min(_ROOM, self.window().height() - place.y() - 12)
        wide = max(self.width(), 420)
        left = max(4, min(place.x(), self.window().width() - wide - 8))
        self.found.setGeometry(left, place.y(), wide, self.found.height_for(room))
        self.found.show()
        self.found.raise_()
        self._tell_reader()

    def _tell_reader(self) -> None:
        hit = self.found.hit()
        count = self.found.count() if hit else 0
        title = f"{hit.title}; " if hit else ""
        self.setAccessibleDescription(f"{title}{count} found")

    def _on_clicked(self, item: "QListWidgetItem") -> None:
        self.found.setCurrentItem(item)
        self._choose()

    def _choose(self) -> None:
        hit = self.found.hit()
        self._hide()
        if hit is None:
            return
        self.clear()
        self._desk.show_page(_PAGES[hit.kind])
        selection = self._selection_for(hit)
        if selection is not None:
            self._desk.select(selection)
        self.chosen.emit(hit)

    def _selection_for(self, hit: "Hit") -> Selection | None:
        match hit.kind:
            case "photo":
                return PhotosSelected((PhotoId(hit.id),))
            case "area":
                return AreaSelected(AreaId(hit.id))
            case "panel":
                return PanelSelected(PanelId(hit.id))
            case "receipt":
                return ReceiptSelected(ReceiptId(hit.id))
            case "finding":
                return FindingSelected(FindingId(hit.id))
            case "wanted":
                return WantedSelected(WantedId(hit.id))
            case "entry":
                return self._place_of_entry(hit.id)
            case _:
                return None

    def _place_of_entry(self, number: int) -> Selection | None:
        """What an entry hangs on; its words as a message where it hangs on the whole car."""
        from journal.actions.areas import entries

        for entry in self._desk.ask(entries) or ():
            if entry.id == number:
                if entry.area_id is not None:
                    return AreaSelected(entry.area_id)
                if entry.panel_id is not None:
                    self._desk.show_page("Drawing")
                    return PanelSelected(entry.panel_id)
                self._desk.message.emit(entry.text, "info")
        return None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk through the list, choose with Enter, leave with Esc."""
        steps = {
            Qt.Key.Key_Down: 1,
            Qt.Key.Key_Up: -1,
            Qt.Key.Key_PageDown: 8,
            Qt.Key.Key_PageUp: -8,
        }
        key = event.key()
        if key == Qt.Key.Key_Escape:
            self._hide()
            self.clear()
        elif self.found.isVisible() and key in steps:
            self.found.step(steps[Qt.Key(key)])
            self._tell_reader()
        elif key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            if self.found.isVisible():
                self._choose()
            else:
                self._search()
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Take up the search where it was left."""
        super().focusInEvent(event)
        self.selectAll()
        if self.text().strip():
            self._wait.start()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Put the list away."""
        super().focusOutEvent(event)
        self._hide()


def few_panels_first(hits: "tuple[Hit, ...]") -> "tuple[Hit, ...]":
    """The finds with the first few panels in their places and the other panels at the end.

    A word like "sill" is in the name of a dozen panels, and what was done there should still show.
    """
    panels = [hit for hit in hits if hit.kind == "panel"]
    later = panels[_PANELS:]
    return (*(hit for hit in hits if hit not in later), *later)
