"""Sending files to the system's trash, from where a person can take them back."""

import stat
from pathlib import Path


def to_trash(path: Path) -> None:
    """Move a file to the system's trash.

    Raises:
        OSError: the system has no trash for it, or refuses.
    """
    from send2trash import send2trash

    before = stat.S_IMODE(path.stat().st_mode)
    path.chmod(0o644)
    try:
        send2trash(str(path))
    except OSError:
        path.chmod(before)
        raise
