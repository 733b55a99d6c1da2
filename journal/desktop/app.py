"""The program with its window: start, first paint, then the journal."""

import logging
import sys
import traceback
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QSettings, QTimer
from PySide6.QtWidgets import QApplication

from journal.desktop import icons
from journal.desktop.garbage import Garbage
from journal.desktop.stylesheet import dress
from journal.desktop.window import PROGRAM, Window

_LOG = logging.getLogger(__name__)


def main(folder: Path | None = None) -> int:
    """Open the window, and in it the journal in ``folder``; return when the window is closed.

    The result is the exit status.
    """
    app = make_app(sys.argv)
    window = make_window(app, opening=folder is not None)
    sys.excepthook = _Excepthook(window)
    window.show()
    if folder is not None:
        QTimer.singleShot(0, window, lambda: _open(window, folder))
    garbage = Garbage(app)
    status = app.exec()
    garbage.stop()
    return status


def _open(window: Window, folder: Path) -> None:
    if not window.acts.open_folder(folder):
        window.show_start()


def make_app(arguments: list[str]) -> QApplication:
    """The Qt application under the program's name, or the one there is."""
    found = QApplication.instance()
    app = found if isinstance(found, QApplication) else QApplication(arguments[:1])
    app.setApplicationName("restoration-journal")
    app.setApplicationDisplayName(PROGRAM)
    app.setDesktopFileName("org.restoration_journal.RestorationJournal")
    app.setWindowIcon(icons.program_icon())
    return app


def make_window(app: QApplication, *, opening: bool = False) -> Window:
    """The window, dressed and laid out as last time; ``opening`` a journal at once."""
    from journal.actions.settings import load_settings

    settings = load_settings()
    dress(app, settings.theme)
    store = QSettings("restoration-journal", "window")
    return Window(settings, store, opening=opening)


class _Excepthook:
    """Shows a failure of the program itself once, in words, and goes on."""

    def __init__(self, window: Window) -> None:
        self._window = window
        self._showing = False

    def __call__(
        self,
        kind: type[BaseException],
        error: BaseException,
        trace: TracebackType | None,
    ) -> None:
        if issubclass(kind, KeyboardInterrupt):
            self._window.close()
            return
        _LOG.error("Something went wrong in the program", exc_info=(kind, error, trace))
        if self._showing:
            return
        self._showing = True
        from PySide6.QtWidgets import QMessageBox

        box = QMessageBox(self._window)
        box.setIcon(QMessageBox.Icon.Critical)
        box.setWindowTitle(PROGRAM)
        box.setText("The program itself went wrong.")
        box.setInformativeText(
            "Nothing recorded so far is lost: each edit is kept whole or not at all. "
            "If it happens again, the details help whoever mends the program."
        )
        box.setDetailedText("".join(traceback.format_exception(kind, error, trace)))
        box.exec()
        self._showing = False
