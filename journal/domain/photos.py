"""A photo: an original that is a picture, and what is known of it."""

from dataclasses import dataclass
from enum import StrEnum

from journal.domain.ids import AreaId, CameraId, PanelId, PhotoId, PinId, Sha256, ViewId
from journal.domain.when import When


class Basis(StrEnum):
    """How a photo's date is known, the most trusted first."""

    OWNER = "owner's word"
    CAMERA = "camera"
    FILE_NAME = "file name"
    NEIGHBOURS = "neighbours"
    DIGITISED = "scan or edit"
    FILE_TIME = "file time"
    UNKNOWN = "unknown"

    @property
    def trust(self) -> int:
        """Rank among the bases: 0 is the most trusted."""
        return list(Basis).index(self)


class Kind(StrEnum):
    """What sort of original stands behind a photo."""

    PICTURE = "picture"
    RAW = "camera raw"
    VIDEO = "video"


class Role(StrEnum):
    """What a photo shows of a repair area."""

    BEFORE = "before"
    DURING = "during"
    AFTER = "after"


@dataclass(frozen=True, slots=True)
class DateCandidate:
    """One date that something said of a photo, and why it did not count if it didn't.

    ``source`` is where it stood ("DateTimeOriginal", "file name", ...), ``doubt`` is empty for a
    plausible date and a short reason otherwise.
    """

    basis: Basis
    source: str
    text: str
    when: When | None
    offset: str | None = None
    doubt: str = ""


@dataclass(frozen=True, slots=True)
class Camera:
    """One camera or phone, with the shift that puts its clock right, in seconds."""

    id: CameraId
    make: str
    model: str
    serial: str
    shift_seconds: int

    @property
    def label(self) -> str:
        """Maker and model as a person would say them, without the maker twice."""
        if self.model.lower().startswith(self.make.lower()):
            return self.model
        return f"{self.make} {self.model}".strip()


@dataclass(frozen=True, slots=True)
class Photo:
    """A photo as the timeline, the drawing and the dossier need it.

    ``width`` and ``height`` are pixels as shown, upright (0 where unknown). ``turn`` is what the
    owner added by hand, in degrees clockwise. ``offset`` is the camera's offset from UTC
    ("+01:00") where it gave one. ``damage`` says what of the file can't be read, "" if whole.
    ``when`` already holds the camera's clock correction. ``placed`` tells whether it has a pin.
    """

    id: PhotoId
    sha256: Sha256
    suffix: str
    name: str
    kind: Kind
    when: When | None
    basis: Basis
    offset: str | None
    camera_id: CameraId | None
    camera: str
    width: int
    height: int
    orientation: int | None
    turn: int
    caption: str
    damage: str
    placed: bool = False


@dataclass(frozen=True, slots=True)
class Pin:
    """A photo's place: a panel, and where known the spot on a view in millimetres.

    ``facing`` is the way the camera looked on that view, degrees clockwise from up.
    """

    id: PinId
    photo_id: PhotoId
    panel_id: PanelId
    view_id: ViewId | None
    x: float | None
    y: float | None
    facing: float | None = None


@dataclass(frozen=True, slots=True)
class AreaPhoto:
    """A photo chosen for a repair area, in a role, in the owner's order."""

    area_id: AreaId
    photo_id: PhotoId
    role: Role
    rank: int
