"""File names that every system and every package accepts.

What Windows forbids is listed in RFC 8493, section 6.1.1 and 6.1.2; so is the trouble with names
that differ only by case or by Unicode normalisation.
"""

import re
import unicodedata
from pathlib import PurePath

_FORBIDDEN = re.compile(r'[<>:"/\\|?*\x00-\x1f\x7f]')
_DEVICES = re.compile(r"(con|prn|aux|nul|com[1-9]|lpt[1-9])(\..*)?$", re.IGNORECASE)
_UNREADABLE = re.compile("[\ud800-\udfff]")
_SUFFIX = re.compile(r"\.[a-z0-9]{1,8}$")

#: No common file system takes a longer name, in bytes of UTF-8.
LONGEST = 255


def shown_name(name: str) -> str:
    """A name as a screen and a database can hold it: undecodable bytes become a question mark."""
    return unicodedata.normalize("NFC", _UNREADABLE.sub("\ufffd", name))


def safe_name(name: str, *, longest: int = LONGEST) -> str:
    """The nearest name that is allowed everywhere, at most ``longest`` bytes of UTF-8.

    A suffix is kept when the rest has to be cut. Never empty, never a device of Windows, never
    "." or "..".
    """
    text = _FORBIDDEN.sub("_", shown_name(name)).replace("\ufffd", "_").rstrip(". ").lstrip(" ")
    if not text or not text.strip("."):
        text = "_"
    if _DEVICES.match(text):
        text = "_" + text
    return _cut(text, longest)


def safe_suffix(name: str) -> str:
    """The extension of a name, lower case with its dot, "" where it has none worth keeping."""
    found = _SUFFIX.search(PurePath(shown_name(name)).name.lower())
    return found.group() if found and found.start() > 0 else ""


def leads_out(name: str) -> str:
    """Why a path from elsewhere, with forward slashes, is no path inside a folder; "" if it is."""
    if "\\" in name:
        return "its name holds a backslash, which is a way into another folder on some systems"
    if name.startswith(("/", "~")) or re.match(r"[A-Za-z]:", name):
        return "its name leads out of the folder"
    if ".." in name.split("/"):
        return "its name leads out of the folder"
    return ""


def why_unsafe(name: str) -> str:
    """Why a path from elsewhere, with forward slashes, may not be trusted; "" where it may.

    A path is trusted when it stays in its folder and names one and the same file on every system.
    """
    if _UNREADABLE.search(name):
        return "its name can't be read"
    parts = name.split("/")
    if out := leads_out(name):
        return out
    for part in parts:
        if not part or part == ".":
            return "its name is no plain path"
        if _FORBIDDEN.search(part):
            return "its name holds a sign that not every system allows"
        if _DEVICES.match(part):
            return "its name is that of a device on some systems"
        if part != part.rstrip(". ") or len(part.encode()) > LONGEST:
            return "its name is not the same on every system"
    return ""


def one_on_any_disk(name: str) -> str:
    """A form that is equal for names which some file system takes for one and the same."""
    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", name).casefold())


def _cut(text: str, longest: int) -> str:
    if len(text.encode()) <= longest:
        return text
    suffix = safe_suffix(text)
    stem = text.removesuffix(text[len(text) - len(suffix) :]) if suffix else text
    room = longest - len(suffix)
    return stem.encode()[:room].decode("utf-8", "ignore").rstrip(". ") + suffix
