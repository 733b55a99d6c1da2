"""Where everything lies in a bundle."""

import re
import unicodedata

DOSSIER = "data/dossier.pdf"
RECORD = "data/record/record.json"
SCHEMA = "data/record/record.schema.json"
TABLES = "data/record/tables"
ROWS = "data/record/rows.json"
HISTORY = "data/record/history.txt"
ORIGINALS_LIST = "data/record/originals.csv"
MISSING = "data/missing.txt"
READ_ME = "READ ME.txt"

#: What is signed and stamped: the list of all lists, which the rest hangs on.
SEALED = "tagmanifest-sha256.txt"
SIGNATURE = "signature/tagmanifest-sha256.sig"
PUBLIC_KEY = "signature/public-key.pem"
STAMPS = "timestamp/"
SEALS = "seals-sha256.txt"

#: Labels of bag-info.txt that are our own.
AGENT = "Bag-Software-Agent"
EDITS, DIGEST, KEY = "Journal-Edits", "Journal-History-SHA-256", "Signing-Key"
PROGRAM = "Restoration Journal"

_FOLDERS = {
    "photo": "photos",
    "paper": "papers",
    "picture under a view": "pictures-under-views",
    "valuation": "valuations",
}
_LONGEST_NAME = 60


def original_path(use: str, number: int, sha256: str, name: str, suffix: str) -> str:
    """Where an original lies in a bundle, under plain letters that every system keeps.

    ``number`` is of what it belongs to, the photo or the receipt; ``name`` is what it came with, ""
    where that isn't known or isn't to be seen.
    """
    words = plain_name(name.rpartition(".")[0] or name) or sha256[:12]
    return f"data/originals/{_FOLDERS[use]}/{number:05d}-{words}{suffix}"


def plain_name(text: str) -> str:
    """A text in ASCII letters, digits, dots and dashes alone; "" where nothing is left of it."""
    letters = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode()
    return re.sub(r"[^A-Za-z0-9._]+", "-", letters).strip("-._")[:_LONGEST_NAME].strip("-._")


def stamp_path(number: int, suffix: str) -> str:
    """Where a time stamp's request (".tsq") or reply (".tsr") lies."""
    return f"{STAMPS}{number}{suffix}"
