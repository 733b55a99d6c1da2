"""A pair laid over each other comes out framed alike, by a fit whose truth is known."""

from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image

from journal.domain.cuts import Cut, usual
from journal.domain.homographies import Matrix
from journal.domain.ids import AreaId, PairId, PhotoId
from journal.domain.pairs import Fit, How, Pair, in_shares
from journal.domain.photos import Role
from journal.dossier.document import PairShown
from journal.dossier.framing import framings
from journal.dossier.openings import opening
from journal.dossier.printing import Print, Unprinted
from journal.dossier.story import shown_photo
from tests.dossier.records import finished_record, photo
from tests.intake.made import scene

#: A moderate change of viewpoint, in pixels of 400 by 300.
_WARP: Matrix = (0.95, 0.06, 12.0, -0.04, 0.98, 9.0, 0.00006, -0.00004, 1.0)


def pair(matrix: Matrix | None) -> PairShown:
    shown = [shown_photo(photo(n), n, role, "x") for n, role in ((1, Role.BEFORE), (2, Role.AFTER))]
    return PairShown(1, "Sill", shown[0], shown[1], "", matrix)


def test_the_after_photo_lands_where_the_before_is(tmp_path: Path) -> None:
    before = scene(400, 300)
    after = before.transform(
        (400, 300), Image.Transform.PERSPECTIVE, _WARP[:8], Image.Resampling.BICUBIC
    )
    before.save(tmp_path / "photo-1.jpg", quality=95)
    after.save(tmp_path / "photo-2.jpg", quality=95)
    prints = {1: Print("photo-1.jpg", 400, 300), 2: Print("photo-2.jpg", 400, 300)}
    matrix = in_shares(_WARP, (400, 300), (400, 300))
    made = framings([pair(matrix)], prints, tmp_path)
    first, second = (Image.open(tmp_path / p.name).convert("L") for p in made[0])
    assert first.size == second.size
    assert first.size < (400, 300)
    wide, high = first.size
    spots = [(x, y) for x in range(8, wide - 8, 7) for y in range(8, high - 8, 7)]
    apart = [abs(int(first.getpixel(s)) - int(second.getpixel(s))) for s in spots]  # type: ignore[arg-type]
    assert sum(apart) / len(apart) < 6


@pytest.mark.parametrize(
    ("matrix", "prints"),
    [
        (None, {1: Print("photo-1.jpg", 4, 3), 2: Print("photo-2.jpg", 4, 3)}),
        ((1.0, 0, 9.0, 0, 1.0, 9.0, 0, 0, 1.0), {1: Print("a", 4, 3), 2: Print("b", 4, 3)}),
        ((1.0, 0, 0, 0, 1.0, 0, 0, 0, 1.0), {1: Print("a", 4, 3), 2: Unprinted("gone")}),
    ],
)
def test_a_pair_that_cannot_be_laid_stands_side_by_side(
    matrix: Matrix | None, prints: dict[int, Print | Unprinted], tmp_path: Path
) -> None:
    assert framings([pair(matrix)], prints, tmp_path) == {}


def test_the_pairs_the_owner_kept_come_before_those_that_were_found() -> None:
    full = finished_record()
    found = opening(full, usual(Cut.OWN)).pairs
    assert [(p.before.photo.id, p.after.photo.id) for p in found] == [(1, 3)]
    fit = Fit(How.BY_HAND, (1.0, 0, 0, 0, 1.0, 0, 0, 0, 1.0), (), 1.25, None)
    kept = Pair(PairId(1), AreaId(1), PhotoId(1), PhotoId(2), fit, "The seam")
    (shown,) = opening(replace(full, pairs=(kept,)), usual(Cut.OWN)).pairs
    assert (shown.before.photo.id, shown.after.photo.id, shown.caption) == (1, 2, "The seam")
    assert "1.2 pixels off" in shown.how
