"""Thumbnails for a whole arrival, where no single bad file may stop the rest."""

from pathlib import Path

from journal.domain.errors import JournalError
from journal.intake.decode import UndecodableError, thumbnail


def made_thumbnail(source: Path | bytes) -> tuple[bytes | None, str]:
    """A thumbnail as JPEG, None where there can be none, and what decoding showed to be broken."""
    try:
        return thumbnail(source), ""
    except UndecodableError as error:
        return None, str(error)
    except JournalError:
        return None, ""
    except MemoryError:
        return None, ""
