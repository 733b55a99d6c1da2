"""Sending files to the system's trash, from where a person can take them back."""

from pathlib import Path


def to_trash(path: Path) -> None:
    """Move a file to the system's trash.

    Raises:
        OSError: the system has no trash for it, or refuses.
    """
    from send2trash import send2trash

    path.chmod(0o644)
    send2trash(str(path))
