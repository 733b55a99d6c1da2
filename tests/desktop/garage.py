"""Journals with photos in them for tests of the window, recorded without pictures."""

from datetime import datetime, timedelta
from pathlib import Path

from journal.actions.journals import new_journal
from journal.actions.session import Session
from journal.domain.arrivals import NewPhoto
from journal.domain.car import Car
from journal.domain.ids import PanelId, PhotoId, Sha256
from journal.domain.photos import Basis, Kind
from journal.domain.when import When
from tests.desktop.photo_fakes import jpeg

_START = datetime(2016, 3, 5, 9, 30)


def new_photo(number: int, when: When | None) -> NewPhoto:
    """A photo on its way in."""
    return NewPhoto(
        sha256=Sha256(f"{number:064x}"),
        suffix=".jpg",
        size=1,
        name=f"IMG_{number:04}.jpg",
        kind=Kind.PICTURE,
        mime="image/jpeg",
        when=when,
        basis=Basis.CAMERA if when else Basis.UNKNOWN,
        offset=None,
        candidates=(),
        make="Orbel",
        model="P2",
        serial="",
        width=4000,
        height=3000,
        orientation=1,
        sequence=number,
        latitude=None,
        longitude=None,
        damage="",
    )


def add_sittings(session: Session, *sizes: int, undated: int = 0) -> list[list[PhotoId]]:
    """Photos in sittings of these sizes, a week apart; undated ones as the last list."""
    number, made = 1, []
    for week, size in enumerate(sizes):
        start = _START + timedelta(days=7 * week)
        new = [
            new_photo(number + n, When.at(start + timedelta(minutes=2 * n))) for n in range(size)
        ]
        number += size
        made.append(_record(session, new))
    if undated:
        made.append(_record(session, [new_photo(number + n, None) for n in range(undated)]))
    return made


def _record(session: Session, new: list[NewPhoto]) -> list[PhotoId]:
    with session.journal.edit(f"Add {len(new)} photos"):
        ids = session.journal.photos.add(new)
    for photo in new:
        session.journal.previews.put(photo.sha256, jpeg(3), rough=False)
    return list(ids)


def garage(folder: Path, *sizes: int, undated: int = 0) -> Session:
    """A journal of the Halden Rook with photos in sittings of these sizes."""
    session = new_journal(folder / "Halden Rook", Car(title="Halden Rook"))
    add_sittings(session, *sizes, undated=undated)
    return session


def panel_id(session: Session, label: str) -> PanelId:
    """The number of a panel by its label."""
    from journal.actions.drawings import panels

    return next(panel.id for panel in panels(session) if panel.label == label)
