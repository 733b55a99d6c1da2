"""The one window: menus, banners, the open journal or the start page, and the bottom strip."""

from collections.abc import Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QSettings, QSize, Qt, QTimer, Slot
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QGuiApplication, QKeyEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QMainWindow,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from journal.desktop import icons
from journal.desktop.acts import Acts
from journal.desktop.desk import Desk
from journal.desktop.menus import Menus
from journal.desktop.message_bar import MessageBar
from journal.desktop.progress_strip import ProgressStrip
from journal.desktop.stylesheet import dress
from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets.drops import accept_copies, dropped_paths
from journal.domain.changes import Changes

if TYPE_CHECKING:
    from journal.actions.add_photos import AddReport
    from journal.actions.session import Session
    from journal.actions.settings import Settings
    from journal.desktop.add_summary import AddSummary
    from journal.desktop.start_page import StartPage
    from journal.desktop.workspace import Workspace

PROGRAM = "Restoration Journal"
_SHOW_ARRIVALS_MS = 3000
#: What a desktop commonly takes of the height for a window's title, in pixels.
_TITLE_BAR = 40


class Window(QMainWindow):
    """One journal at a time, or the start page.

    Attributes:
        desk: what the pages of the open journal work with; None while none is open.
        workspace: the open journal on screen; None while none is open.
    """

    def __init__(
        self, settings: "Settings", store: QSettings | None = None, *, opening: bool = False
    ) -> None:
        """Make the window; ``opening`` leaves out the start page: a journal is opened at once."""
        super().__init__()
        self._settings = settings
        self.tasks = TaskRunner(self)
        self.desk: Desk | None = None
        self.workspace: Workspace | None = None
        self._store = store
        self._messages = MessageBar()
        self._strip = ProgressStrip()
        self.acts = Acts(self)
        self.menus = Menus(self, self.acts)
        self._arrivals = QTimer(self)
        self._arrivals.setInterval(_SHOW_ARRIVALS_MS)
        self._build()
        self._connect()
        if not opening:
            self.show_start()
        self._restore_layout()

    @cached_property
    def _start(self) -> "StartPage":
        from journal.desktop.start_page import StartPage

        made = StartPage()
        made.new_wanted.connect(self.acts.new_journal)
        made.open_wanted.connect(self.acts.choose_and_open)
        made.demo_wanted.connect(self.acts.make_demo)
        made.recent_wanted.connect(self._on_recent_wanted)
        self._stack.addWidget(made)
        return made

    @cached_property
    def _summary(self) -> "AddSummary":
        from journal.desktop.add_summary import AddSummary

        made = AddSummary()
        made.look_wanted.connect(self._on_look_wanted)
        self._layout.insertWidget(self._layout.indexOf(self._strip), made)
        return made

    def _build(self) -> None:
        self.setMinimumSize(900, 600)
        self.setAcceptDrops(True)
        self._stack = QStackedWidget()
        whole = QWidget()
        self._layout = layout = QVBoxLayout(whole)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(self._messages)
        layout.addWidget(self._stack, 1)
        layout.addWidget(self._strip)
        self.setCentralWidget(whole)
        self.menus.mark_theme(self.settings.theme)

    def _connect(self) -> None:
        self._strip.undo_wanted.connect(self.acts.undo)
        self.tasks.progressed.connect(self._strip.show_progress)
        self._arrivals.timeout.connect(self._show_arrivals)
        hints = QGuiApplication.styleHints()
        hints.colorSchemeChanged.connect(self._on_scheme_changed)

    # --- the journal ---

    def adopt(self, session: "Session") -> None:
        """Show a journal that was just opened, in place of the one before."""
        from journal.desktop.workspace import Workspace

        if not self.close_journal():
            session.close()
            return
        desk = Desk(session, self.tasks, self.settings, self)
        desk.message.connect(self.show_message)
        desk.changed.connect(self._on_changed)
        desk.add_wanted.connect(self.acts.choose_and_add)
        self.desk = desk
        self.workspace = Workspace(desk)
        self.workspace.page_shown.connect(self.menus.mark_page)
        if self._store:
            self.workspace.restore_layout(self._store)
        self._stack.addWidget(self.workspace)
        self._stack.setCurrentWidget(self.workspace)
        self._messages.clear()
        notice = session.notice
        self._messages.state(f"{notice} It can be read here, but not changed." if notice else "")
        self.menus.show_state(is_open=True, is_writable=not session.read_only)
        self._show_car()
        self._show_undo()
        self._strip.set_idle(f"Kept in {session.folder}")
        self.workspace.show_page("Drawing")
        self.workspace.clock.remind()
        self._remember(session.folder)

    def close_journal(self) -> bool:
        """Close the journal that is open; whether none is open any more."""
        if self.desk is None or self.workspace is None:
            return True
        if not self.may_stop_jobs():
            return False
        self._arrivals.stop()
        self.tasks.stop_all()
        desk, workspace = self.desk, self.workspace
        self._settings = desk.settings
        if self._store:
            workspace.save_layout(self._store)
        self.desk = self.workspace = None
        self._stack.removeWidget(workspace)
        workspace.hide()
        workspace.deleteLater()
        desk.deleteLater()
        desk.session.close()
        self.show_start()
        return True

    def may_stop_jobs(self) -> bool:
        """Ask whether a long job may be stopped, where one is under way."""
        if not self.tasks.is_writing():
            return True
        from PySide6.QtWidgets import QMessageBox

        asked = QMessageBox(self)
        asked.setIcon(QMessageBox.Icon.Question)
        asked.setWindowTitle(PROGRAM)
        asked.setText("A job is still under way.")
        asked.setInformativeText("Stop it after its present item? What is in stays.")
        stop = asked.addButton("&Stop and close", QMessageBox.ButtonRole.AcceptRole)
        go_on = asked.addButton("&Go on", QMessageBox.ButtonRole.RejectRole)
        asked.setDefaultButton(go_on)
        asked.exec()
        return asked.clickedButton() is stop

    def add_paths(self, paths: Sequence[Path]) -> None:
        """Add photos and folders of them to the open journal."""
        desk = self.desk
        if desk is None:
            self.show_message("Open a journal first; photos are added to the one open.", "info")
            return
        if desk.read_only:
            self.show_message(desk.session.notice or "This journal is read-only.", "error")
            return
        from journal.actions.add_photos import add_photos

        self._arrivals.start()
        desk.run(
            "Adding photos",
            lambda context: add_photos(desk.session, paths, context),
            self._on_added,
        )

    # --- words ---

    @Slot(str, str)
    def show_message(self, text: str, level: str) -> None:
        """Show words where they fit: obstacles as a banner, the rest in the bottom strip."""
        if level in ("warning", "error"):
            self._messages.show_message(text, level)
        else:
            self._strip.say(text)

    @Slot(object)
    def _on_changed(self, changes: Changes) -> None:
        undo = self._show_undo()
        if changes.label:
            self._strip.say(changes.label, can_undo=changes.label == undo)
        if "car" in changes.kinds:
            self._show_car()

    @Slot()
    def _show_arrivals(self) -> None:
        """Show the photos that are in already while more are being added."""
        if not self.tasks.is_writing():
            self._arrivals.stop()
        elif self.desk is not None:
            self.desk.changed.emit(Changes(label="", kinds=frozenset({"photos"})))

    def _on_added(self, report: "AddReport") -> None:
        self._arrivals.stop()
        self._summary.show_report(report)

    @Slot()
    def _on_look_wanted(self) -> None:
        self._summary.hide()
        self.acts.show_page("Timeline")

    def _show_undo(self) -> str | None:
        if self.desk is None or self.desk.read_only:
            self.menus.show_undo(None, None)
            return None
        from journal.actions import history

        undo = self.desk.ask(history.undo_label)
        self.menus.show_undo(undo, self.desk.ask(history.redo_label))
        return undo

    def _show_car(self) -> None:
        from journal.actions import cars

        car = self.desk.ask(cars.car) if self.desk else None
        title = car.title if car else ""
        self.setWindowTitle(f"{title} \N{EN DASH} {PROGRAM}" if title else PROGRAM)
        if self.workspace:
            self.workspace.set_name(title)

    def show_start(self) -> None:
        """Show that no journal is open, and how to begin."""
        self._stack.setCurrentWidget(self._start)
        self._start.show_recent(self.settings.recent)
        self._messages.state("")
        self._messages.clear()
        if "_summary" in self.__dict__:
            self._summary.hide()
        self._strip.set_idle("")
        self.setWindowTitle(PROGRAM)
        self.menus.show_state(is_open=False, is_writable=False)
        self.menus.show_undo(None, None)
        self.menus.show_recent(self.settings.recent)

    # --- what is remembered ---

    @property
    def settings(self) -> "Settings":
        """What holds now: pages and dialogs change it at the desk."""
        return self.desk.settings if self.desk else self._settings

    def save_settings(self, settings: "Settings") -> None:
        """Use other settings from now on, and keep them."""
        from journal.actions.settings import save_settings

        self._settings = settings
        if self.desk:
            self.desk.settings = settings
        save_settings(settings)

    def _remember(self, folder: Path) -> None:
        from journal.actions.settings import with_recent

        self.save_settings(with_recent(self.settings, folder))
        self.menus.show_recent(self.settings.recent)

    def dress(self, choice: str) -> None:
        """Put on a theme: "system", "light" or "dark"."""
        app = QApplication.instance()
        if isinstance(app, QApplication):
            dress(app, choice)
            icons.retint(self)
            self._messages.tint()

    @Slot()
    def _on_scheme_changed(self) -> None:
        if self.settings.theme == "system":
            self.dress("system")

    @Slot(str)
    def _on_recent_wanted(self, folder: str) -> None:
        self.acts.open_folder(Path(folder))

    def _restore_layout(self) -> None:
        geometry = self._store.value("geometry") if self._store else None
        if geometry is None or not self.restoreGeometry(geometry):
            free = self.screen().availableGeometry().size() - QSize(0, _TITLE_BAR)
            self.resize(QSize(1280, 800).boundedTo(free))

    # --- Qt ---

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Enter press the button that holds the keyboard, as it does in a dialog."""
        held = self.focusWidget()
        is_enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if is_enter and isinstance(held, QAbstractButton):
            held.click()
        else:
            super().keyPressEvent(event)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take files and folders from outside, anywhere on the window."""
        if dropped_paths(event):
            accept_copies(event)

    def dropEvent(self, event: QDropEvent) -> None:
        """Add what was dropped."""
        accept_copies(event)
        if paths := dropped_paths(event):
            self.add_paths(paths)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Close the journal, end the jobs and remember the window's place."""
        if not self.close_journal() or not self.may_stop_jobs():
            event.ignore()
            return
        if self._store:
            self._store.setValue("geometry", self.saveGeometry())
        self.tasks.close()
        event.accept()
