"""The program: the window where no command is given, otherwise the command.

A journal's folder alone opens it in the window.
"""

import gc
import os
import sys
from pathlib import Path


def main(arguments: list[str] | None = None) -> None:
    """Open the window or run a command, and exit with its status."""
    words = sys.argv[1:] if arguments is None else arguments
    if not asks_for_window(words):
        from journal.cli import main as run_command

        run_command(words)
        return
    if not has_display():
        sys.exit("There is no display to open a window on; see “restoration-journal --help”.")
    folder = Path(words[0]) if words else None
    # Looking for garbage among what is being loaded takes a twentieth of the time and finds none;
    # the window sees to it once it is there.
    gc.disable()
    if folder is not None:
        # PySide reads through the source of each module that is imported after it.
        import journal.actions.journals  # noqa: F401
    from journal.desktop.app import main as open_window

    sys.exit(open_window(folder))


def asks_for_window(words: list[str]) -> bool:
    """Tell whether there is nothing but, at most, the folder of a journal."""
    if len(words) != 1:
        return not words
    try:
        return (Path(words[0]) / "journal.db").is_file()
    except OSError:
        # Too long a name, or a folder that is closed to us.
        return False


def has_display() -> bool:
    """Tell whether there is a screen, or Qt was told to do without one."""
    if sys.platform in {"win32", "darwin"}:
        return True
    return any(os.environ.get(k) for k in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"))


if __name__ == "__main__":
    main()
