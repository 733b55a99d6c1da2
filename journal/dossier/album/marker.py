"""By what an album is known again: a list of all that the program wrote in it."""

import json
from pathlib import Path

from journal.domain.albums import MARKER
from journal.domain.errors import JournalError
from journal.files.copying import hash_file
from journal.files.names import leads_out

_MADE_BY = "Restoration Journal"


def text(folder: Path, version: str) -> str:
    """The list of every file in a finished album's folder with its SHA-256."""
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    listed = {path.relative_to(folder).as_posix(): hash_file(path) for path in files}
    return json.dumps({"album": 1, "made_by": f"{_MADE_BY} {version}", "files": listed}, indent=1)


def own_files(out: Path) -> frozenset[str]:
    """The files at ``out`` that the program wrote and nobody changed since; none for a new place.

    Raises:
        JournalError: ``out`` is no folder, or holds something and is no album of ours.
    """
    try:
        if out.is_symlink() or (out.exists() and not out.is_dir()):
            raise JournalError(f"“{out}” is no folder; choose another name.")
        if not out.exists() or not any(out.iterdir()):
            return frozenset()
        return _unchanged(out, _listed(out))
    except (OSError, ValueError) as error:
        said = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
        raise JournalError(f"The album can't be made at “{out}”: {said}.") from error


def _listed(out: Path) -> dict[str, str]:
    path = out / MARKER
    if path.is_symlink() or not path.is_file():
        raise JournalError(f"“{out}” holds something already; choose an empty folder.")
    try:
        found = json.loads(path.read_bytes())
        files = found["files"]
        if not str(found["made_by"]).startswith(_MADE_BY) or not isinstance(files, dict):
            raise ValueError
    except (ValueError, KeyError, TypeError, RecursionError) as error:
        raise JournalError(
            f"“{out}” holds something already: its {MARKER} can't be read; choose another folder."
        ) from error
    return {str(name): str(digest) for name, digest in files.items() if not leads_out(str(name))}


def _unchanged(out: Path, listed: dict[str, str]) -> frozenset[str]:
    own = {MARKER}
    for name, digest in listed.items():
        path = out / name
        if path.is_file() and not path.is_symlink() and hash_file(path) == digest:
            own.add(name)
    return frozenset(own)
