"""What a bundle is made of, and what came of making one."""

from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import PurePath

from journal.domain.checks import Fault
from journal.domain.cuts import Choices, Cut, usual
from journal.domain.ids import PhotoId


class BundleForm(StrEnum):
    """How a bundle lies on the disk."""

    FOLDER = "folder"
    ZIP = "zip"
    TAR = "tar"

    @property
    def suffix(self) -> str:
        """What its name ends in."""
        return "" if self is BundleForm.FOLDER else f".{self.value}"


class OriginalsIn(StrEnum):
    """Which originals go into a bundle."""

    ALL = "all"
    USED = "used"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class BundleChoice:
    """What the owner wants in a bundle.

    ``dossier`` says what the dossier holds, and what all of the bundle withholds. ``only`` narrows
    the originals to those of some photos. Where anything is withheld there are no originals in it,
    which may show it, and no history of changes, which holds everything that was ever written.
    """

    dossier: Choices = field(default_factory=lambda: usual(Cut.OWN))
    form: BundleForm = BundleForm.FOLDER
    originals: OriginalsIn = OriginalsIn.ALL
    only: frozenset[PhotoId] | None = None
    history: bool = True
    sign: bool = False


@dataclass(frozen=True, slots=True)
class BundleReport:
    """What came of making a bundle.

    ``size`` is the bytes of all its data. ``missing`` names each original that is not in it though
    it should be, with the reason. ``notes`` are sentences the owner should read.
    """

    path: PurePath
    files: int
    size: int
    originals: int
    missing: tuple[Fault, ...]
    notes: tuple[str, ...]
    fingerprint: str = ""
