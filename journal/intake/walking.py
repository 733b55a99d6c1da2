"""From what a person drops, files and folders, to the files to look at and those to leave."""

import os
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

#: Files that belong to a photo or to the system; none is a picture.
_COMPANIONS = {
    ".aae": "it holds edits of the photo beside it, not a picture",
    ".xmp": "it holds notes on the photo beside it, not a picture",
    ".thm": "it is the small preview of a film beside it",
    ".lrv": "it is the small preview of a film beside it",
}
_SYSTEM = {"thumbs.db", "ehthumbs.db", "desktop.ini", "icon\r"}
_FILMS = {".mov", ".mp4"}
_PHOTOS = {".heic", ".heif", ".jpg", ".jpeg"}

#: What people expect to be a photo by its name; anything else in a folder is passed over.
PHOTO_SUFFIXES = _PHOTOS | _FILMS | {
    ".jpe", ".jfif", ".hif", ".avif", ".png", ".gif", ".bmp", ".webp", ".tif", ".tiff", ".jp2",
    ".mpo", ".dng", ".cr2", ".cr3", ".crw", ".nef", ".arw", ".orf", ".rw2", ".raf", ".pef", ".srw",
    ".x3f", ".mrw", ".raw", ".erf", ".3fr", ".avi", ".mkv", ".m4v", ".3gp",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Left:
    """A file that was left, and why, in half a sentence."""

    path: Path
    reason: str


@dataclass(slots=True)
class Walk:
    """What was found: files to look at in order, files passed over, and what can't be read.

    ``named`` are those files that the person named one by one.
    """

    files: list[Path] = field(default_factory=list)
    skipped: list[Left] = field(default_factory=list)
    refused: list[Left] = field(default_factory=list)
    named: set[Path] = field(default_factory=set)


def walk(paths: Iterable[Path]) -> Walk:
    """Look through files and folders, each folder in order of names, subfolders after its files.

    Inside a folder no link is followed: it may lead out of it, or round in a circle. Each file
    comes once, however often it was named.
    """
    found = Walk()
    for path in paths:
        try:
            if path.is_dir():
                _walk_folder(path, found)
            elif path.exists():
                found.named.add(path)
                _take([path], found)
            else:
                found.refused.append(Left(path, "there is no such file"))
        except (OSError, ValueError) as error:
            found.refused.append(Left(path, _reason(error)))
    found.files = list(dict.fromkeys(found.files))
    return found


def _walk_folder(top: Path, found: Walk) -> None:
    waiting = [top]
    while waiting:
        folder = waiting.pop()
        try:
            if _is_journal(folder):
                found.skipped.append(Left(folder, "it is the folder of a journal"))
                continue
            with os.scandir(folder) as entries:
                listed = sorted(entries, key=lambda entry: entry.name)
        except OSError as error:
            found.refused.append(Left(folder, _reason(error)))
            continue
        files = list(_files(folder, listed, found))
        _take(files, found)
        inner = (e for e in listed if e.is_dir(follow_symlinks=False))
        waiting += reversed([folder / entry.name for entry in inner if entry.name[:1] != "."])


def _files(folder: Path, listed: Iterable[os.DirEntry[str]], found: Walk) -> Iterator[Path]:
    for entry in listed:
        if entry.is_symlink():
            found.skipped.append(Left(folder / entry.name, "it is a link"))
        elif not entry.is_dir(follow_symlinks=False):
            yield folder / entry.name


def _take(files: list[Path], found: Walk) -> None:
    photos = {_stem(path) for path in files if path.suffix.lower() in _PHOTOS}
    for path in files:
        reason = _why_left(path, photos)
        if reason:
            found.skipped.append(Left(path, reason))
        else:
            found.files.append(path)


def _why_left(path: Path, photos: set[str]) -> str:
    suffix, name = path.suffix.lower(), path.name.lower()
    if name in _SYSTEM or name.startswith("."):
        return "it is a file of the system"
    if suffix in _FILMS and _stem(path) in photos:
        return "it is the short film that belongs to the photo beside it"
    return _COMPANIONS.get(suffix, "")


def _stem(path: Path) -> str:
    return path.stem.lower()


def _is_journal(folder: Path) -> bool:
    return (folder / "journal.db").is_file() and (folder / "originals").is_dir()


def _reason(error: OSError | ValueError) -> str:
    text = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
    return "it can't be read: " + text[:1].lower() + text[1:]
