"""The open journal on screen: rail, pages, find field and inspector."""

from importlib import import_module
from typing import TYPE_CHECKING

from PySide6.QtCore import QSettings, Qt, QTimer, Signal, Slot
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QApplication,
    QSplitter,
    QStackedWidget,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from journal.desktop.desk import Desk, Nothing, Selection
from journal.desktop.inspector.stack import Inspector
from journal.desktop.pages import Page
from journal.desktop.pages.registry import PAGES, load_all
from journal.desktop.rail import Rail
from journal.desktop.widgets.clock import ClockButton
from journal.desktop.widgets.parts import button, label, row, tool
from journal.domain.changes import Changes

if TYPE_CHECKING:
    from journal.desktop.widgets.quick_line import QuickLine

_INSPECTOR_WIDTH = 340

#: When the pages nobody asked for yet are loaded, in milliseconds after the first has come up.
_LEISURE = 2000


class Workspace(QWidget):
    """Everything between the menus and the bottom strip while a journal is open."""

    #: A page came to the front: its title.
    page_shown = Signal(str)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._pages: dict[str, Page] = {}
        self._missed: dict[str, frozenset[str]] = {}
        self._stack = QStackedWidget()
        self._rail = Rail([(entry.title, entry.icon) for entry in PAGES])
        self.inspector = Inspector(desk)
        self.inspector.setProperty("role", "pane")
        self.find_box = self._make_find_box()
        self.clock = ClockButton(desk)
        self._rail.set_corner(self.clock)
        self._quick_line: QuickLine | None = None
        self._name = label("", "subheading", wrap=False)
        self._toggle = tool("inspector", "Show what is selected (F4)")
        self._was_used = False
        self._opening = QTimer(self)
        self._opening.setSingleShot(True)
        self._opening.setInterval(QApplication.doubleClickInterval())
        self._leisure = QTimer(self)
        self._leisure.setSingleShot(True)
        self._leisure.setInterval(_LEISURE)
        self._build()
        self._connect()

    def _make_find_box(self) -> QWidget:
        box: QWidget = import_module("journal.desktop.widgets.find_box").FindBox(self._desk, self)
        box.setMinimumWidth(220)
        box.setMaximumWidth(560)
        return box

    def _build(self) -> None:
        add = button(
            "Add photos",
            self._desk.add_wanted.emit,
            icon="add-photos",
            role="primary",
            hint="Add photos, or folders of them (Ctrl+I)",
        )
        add.setEnabled(not self._desk.read_only)
        self._toggle.setCheckable(True)
        self._toggle.setChecked(True)
        self._toggle.setProperty("role", "quiet")
        top = row(self._name, None, self.find_box, None, add, self._toggle, spacing=12)
        top.setContentsMargins(16, 8, 12, 8)
        top.setStretch(2, 4)
        self._splitter = QSplitter(Qt.Orientation.Horizontal)
        self._splitter.setChildrenCollapsible(False)
        self._splitter.setHandleWidth(3)
        self._splitter.addWidget(self._stack)
        self._splitter.addWidget(self.inspector)
        self._splitter.setStretchFactor(0, 1)
        self._splitter.setStretchFactor(1, 0)
        self._splitter.setSizes([1000, _INSPECTOR_WIDTH])
        right = QVBoxLayout()
        right.setContentsMargins(0, 0, 0, 0)
        right.setSpacing(0)
        right.addLayout(top)
        right.addWidget(self._splitter, 1)
        whole = row(self._rail, spacing=0)
        whole.addLayout(right, 1)
        self.setLayout(whole)

    def _connect(self) -> None:
        self._rail.chosen.connect(self.show_page)
        self._toggle.toggled.connect(self._place_inspector)
        self._opening.timeout.connect(self._place_inspector)
        self._leisure.timeout.connect(self._load_pages)
        self._desk.changed.connect(self._on_changed)
        self._desk.selected.connect(self._on_selected)
        self._desk.page_wanted.connect(self.show_page)

    def set_name(self, name: str) -> None:
        """Show the car's name at the top."""
        self._name.setText(name)

    def current_page(self) -> Page | None:
        """The page in front."""
        shown = self._stack.currentWidget()
        return shown if isinstance(shown, Page) else None

    @property
    def inspector_toggle(self) -> QToolButton:
        """The button that shows and hides the inspector."""
        return self._toggle

    @Slot(str)
    def show_page(self, title: str) -> None:
        """Bring a page to the front, made or brought up to date as needed."""
        page = self._pages.get(title)
        if page is None:
            entry = next(entry for entry in PAGES if entry.title == title)
            page = entry.make(self._desk, self)
            page.setAccessibleName(f"{title} page")
            page.inspects_changed.connect(self._place_inspector)
            self._pages[title] = page
            self._stack.addWidget(page)
            self._stack.setCurrentWidget(page)
            page.refresh(None)
            if len(self._pages) == 1:
                self._leisure.start()
        elif title in self._missed:
            page.refresh(Changes(label="", kinds=self._missed.pop(title)))
        self._stack.setCurrentWidget(page)
        self._rail.mark(title)
        self._was_used = False
        self._place_inspector()
        page.show_selection(self._desk.selection)
        if page.focusProxy() is not None:
            page.setFocus(Qt.FocusReason.OtherFocusReason)
        self.page_shown.emit(title)

    def _load_pages(self) -> None:
        self._desk.read(load_all, lambda _count: self._add_up(), self)

    def _add_up(self) -> None:
        """Have the sums at hand by the time the Ledger is opened: of years they take a second."""
        session = self._desk.session

        def job(_context: object) -> bool:
            from journal.actions.ledger_page import add_up_ahead

            return add_up_ahead(session)

        self._desk.read(job, lambda _done: None, self)

    def call_up_quick_line(self) -> None:
        """Show the line for hours below the page, and take the keyboard there."""
        if self._quick_line is None:
            from journal.desktop.widgets.quick_line import QuickLine

            self._quick_line = QuickLine(self._desk, self._rail, self)
        self._quick_line.call_up()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the line for hours along the bottom."""
        super().resizeEvent(event)
        if self._quick_line is not None:
            self._quick_line.place()

    def focus_next_part(self) -> None:
        """Take the keyboard to the next of rail, page and inspector that can have it."""
        parts = (self._rail, self._stack, self.inspector)
        held = QApplication.focusWidget()
        here = next((n for n, part in enumerate(parts) if held and part.isAncestorOf(held)), -1)
        for step in range(1, len(parts) + 1):
            first = _first_to_focus(parts[(here + step) % len(parts)])
            if first is not None:
                first.setFocus(Qt.FocusReason.ShortcutFocusReason)
                return

    def save_layout(self, settings: QSettings) -> None:
        """Remember how wide the inspector is and whether it shows."""
        settings.setValue("splitter", self._splitter.saveState())
        settings.setValue("inspector", self._toggle.isChecked())

    def restore_layout(self, settings: QSettings) -> None:
        """Be laid out as remembered."""
        state = settings.value("splitter")
        if state is not None:
            self._splitter.restoreState(state)
        self._toggle.setChecked(settings.value("inspector", True, type=bool) is not False)

    @Slot(object)
    def _on_changed(self, changes: Changes) -> None:
        front = self.current_page()
        for title, page in self._pages.items():
            if page is front:
                page.refresh(changes)
            else:
                self._missed[title] = self._missed.get(title, frozenset()) | changes.kinds

    @Slot()
    def _place_inspector(self) -> None:
        """Show the inspector where it is wanted and has something to show.

        Once it stands beside a page it stays, so that the page keeps its place when nothing is
        selected for a moment.
        """
        self._opening.stop()
        page, selection = self.current_page(), self._desk.selection
        kinds = None if page is None else page.inspects
        is_open = self._was_used and isinstance(selection, Nothing)
        has_use = is_open or not isinstance(selection, Nothing)
        has_use = has_use and (kinds is None or isinstance(selection, kinds))
        self._was_used = has_use
        self._toggle.setEnabled(has_use)
        self.inspector.setVisible(has_use and self._toggle.isChecked())

    @Slot(object)
    def _on_selected(self, selection: Selection) -> None:
        if self.inspector.isHidden():
            # Were the page narrowed at once, the second half of a double click would go astray.
            self._opening.start()
        else:
            self._place_inspector()
        if (page := self.current_page()) is not None:
            page.show_selection(selection)


def _first_to_focus(part: QWidget) -> QWidget | None:
    """What takes the keyboard in a part: the front page's own choice, else the first that can."""
    page = part.currentWidget() if isinstance(part, QStackedWidget) else None
    if page is not None and page.focusProxy() is not None:
        return page
    for child in part.findChildren(QWidget):
        can = child.isVisible() and child.isEnabled()
        if can and child.focusPolicy() & Qt.FocusPolicy.TabFocus:
            return child
    return None
