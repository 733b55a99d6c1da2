"""Photos that never were in a journal: records and thumbnails for the widgets that show them."""

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta
from functools import cache
from io import BytesIO

from PIL import Image, ImageDraw

from journal.desktop.widgets.grid_layout import Group
from journal.domain.ids import PhotoId, Sha256
from journal.domain.photos import Basis, Kind, Photo
from journal.domain.when import When

_START = datetime(2014, 3, 1, 9, 30)
_COLOURS = ("#8a4b32", "#7c868b", "#a8553a", "#4e5a50", "#b7b1a4", "#2f4a63")
_BASES = (*[Basis.CAMERA] * 6, *Basis)


def fake_photo(number: int, **changes: object) -> Photo:
    """A plausible photo; every eighth is placed, some are damaged, raw or moving."""
    kinds = {13: Kind.RAW, 29: Kind.VIDEO}
    values: dict[str, object] = {
        "id": PhotoId(number),
        "sha256": Sha256(f"{number:064x}"),
        "suffix": ".jpg",
        "name": f"IMG_{number:04}.jpg",
        "kind": kinds.get(number % 40, Kind.PICTURE),
        "when": When.at(_START + timedelta(minutes=7 * number)),
        "basis": _BASES[number % len(_BASES)],
        "offset": None,
        "camera_id": None,
        "camera": "Orbel P2",
        "width": 4000,
        "height": 3000,
        "orientation": 1,
        "turn": 0,
        "caption": "Sill cut back to the inner skin" if number % 11 == 3 else "",
        "damage": "the last rows are missing" if number % 37 == 5 else "",
        "placed": number % 8 < 3,
    }
    return Photo(**{**values, **changes})  # type: ignore[arg-type]


@cache
def jpeg(kind: int) -> bytes:
    """A small drawn picture; every fifth stands upright."""
    size = (192, 256) if kind % 5 == 4 else (256, 192)
    picture = Image.new("RGB", size, _COLOURS[kind % len(_COLOURS)])
    pen = ImageDraw.Draw(picture)
    for line in range(6):
        y = 20 + line * 30 + kind % 7
        pen.line((0, y, size[0], y + 25), fill=_COLOURS[(kind + line + 1) % 6], width=7)
    pen.ellipse((60, 60, 140, 140), fill=_COLOURS[(kind + 3) % 6])
    out = BytesIO()
    picture.save(out, "JPEG", quality=80)
    return out.getvalue()


def fake_load(ids: Sequence[PhotoId]) -> Iterable[tuple[Photo, bytes | None]]:
    """Records and thumbnails, as the journal would give them."""
    for number in ids:
        photo = fake_photo(number)
        yield photo, None if photo.kind is Kind.VIDEO else jpeg(number % 30)


def fake_groups(count: int, per_sitting: int = 23) -> list[Group]:
    """So many photos in sittings."""
    groups = []
    for first in range(1, count + 1, per_sitting):
        ids = tuple(PhotoId(n) for n in range(first, min(count + 1, first + per_sitting)))
        day = _START + timedelta(days=first // 9)
        placed = sum(fake_photo(n).placed for n in ids)
        detail = f"{len(ids)} photos, {placed} placed"
        groups.append(Group(f"{day:%A %d %B %Y}", detail, ids, placed))
    return groups
