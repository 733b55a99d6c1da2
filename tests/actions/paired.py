"""A journal with a repair area and two photos of one view, drawn for tests."""

from pathlib import Path

import cv2
import numpy as np
from PIL import Image

from journal.actions import areas, drawings
from journal.actions.add_photos import add_photos
from journal.actions.session import Session
from journal.domain.ids import AreaId, PhotoId
from journal.domain.photos import Role

SIZE = (480, 360)
#: What the camera did between the two: from pixels of the before photo to those of the after.
MOVED = np.array([[0.95, 0.06, 12.0], [-0.05, 0.97, 20.0], [1e-4, 5e-5, 1.0]])


def blots(seed: int) -> np.ndarray:
    """A picture with much to be known by."""
    chance = np.random.default_rng(seed)
    picture = np.full((SIZE[1], SIZE[0], 3), 90, np.uint8)
    for _ in range(420):
        x, y = chance.integers(0, SIZE[0]), chance.integers(0, SIZE[1])
        wide, high = chance.integers(4, 28, 2)
        colour = tuple(int(part) for part in chance.integers(0, 256, 3))
        cv2.rectangle(picture, (int(x), int(y)), (int(x + wide), int(y + high)), colour, -1)
    return picture


def write(path: Path, pixels: np.ndarray, taken: str) -> Path:
    """A JPEG as a camera writes it."""
    exif = Image.Exif()
    exif.get_ifd(0x8769)[0x9003] = taken
    exif[0x010F], exif[0x0110] = "Halden", "Corvid Phone 3"
    Image.fromarray(pixels).save(path, quality=92, exif=exif)
    return path


def paired(session: Session, folder: Path) -> tuple[AreaId, PhotoId, PhotoId, PhotoId]:
    """An area with a before photo, the after photo of the same view, and one of something else."""
    folder.mkdir()
    before = blots(1)
    after = cv2.warpPerspective(before, MOVED, SIZE, borderValue=(60, 60, 60))
    after[120:200, 180:300] = (30, 60, 120)
    paths = [
        write(folder / "before.jpg", before, "2018:04:14 10:00:00"),
        write(folder / "after.jpg", after, "2021:07:24 11:00:00"),
        write(folder / "other.jpg", blots(2), "2021:07:24 12:00:00"),
    ]
    report = add_photos(session, paths)
    ids = {added.path: added.photo_id for added in report.added}
    first, last, other = (ids[path] for path in paths)
    panel = drawings.panels(session)[0].id
    area = AreaId(areas.add_area(session, "Sill, left", [panel]).made or 0)
    areas.choose_photos(session, area, [first], Role.BEFORE)
    areas.choose_photos(session, area, [last, other], Role.AFTER)
    return area, first, last, other
