"""What lies near mountings, and metalwork in words: exact figures, and never a verdict."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journal.domain.anchors import AnchorKind, AnchorPoint
from journal.domain.bearings import bearings
from journal.domain.ids import (
    AnchorId,
    AreaId,
    MeasureId,
    PanelId,
    PatchId,
    PhotoId,
    PinId,
    ReadingId,
    SeamChangeId,
    SeamId,
    ViewId,
)
from journal.domain.metal_words import (
    compared_in_words,
    patch_in_words,
    seam_in_words,
    signed,
    states_in_words,
    sums_in_words,
)
from journal.domain.patches import Patch
from journal.domain.photos import Pin
from journal.domain.readings import Measure, MeasureKind, Moment, Reading, compare
from journal.domain.seam_sums import SeamSums
from journal.domain.seams import Joint, Seam, SeamChange, SeamState, length, redrawn
from journal.domain.shapes import Line, Point, Stroke, rectangle
from journal.domain.weld_work import welded
from journal.domain.when import parse

VIEW, AREA = ViewId(1), AreaId(1)
BELT = AnchorPoint(AnchorId(1), VIEW, 0, 0, AnchorKind.SEAT_BELT, "Belt, left")


def seam(y: float, long: float = 400, joint: Joint = Joint.BUTT, number: int = 1) -> Seam:
    spacing = 40 if joint.is_row else None
    stroke = Stroke(Point(-long / 2, y), (Line(Point(long / 2, y)),))
    return Seam(SeamId(number), AREA, VIEW, stroke, joint, spacing)


def change(state: SeamState, end: float, number: int = 1) -> SeamChange:
    return SeamChange(SeamChangeId(state.rank), SeamId(number), state, 0, end, parse("2016"))


@settings(deadline=None)  # The first call imports shapely.
@given(y=st.floats(-1000, 1000))
def test_a_seam_is_near_within_the_radius_and_no_further(y: float) -> None:
    found = bearings([BELT], seams=[seam(y)])
    assert bool(found) is (abs(y) <= 300)
    if found:
        assert found[0].mark.distance_mm == pytest.approx(abs(y), abs=1e-6)


def test_the_nearest_of_seam_patch_and_photo_is_told_for_each_mounting() -> None:
    far = AnchorPoint(AnchorId(2), VIEW, 0, 500, AnchorKind.SUSPENSION, "Spring hanger")
    patch = Patch(PatchId(1), AREA, VIEW, rectangle(-50, 100, 100, 50), 1.2)
    pin = Pin(PinId(1), PhotoId(1), PanelId(1), VIEW, 10, 0, None)
    found = bearings([BELT, far], seams=[seam(200)], patches=[patch], pins=[pin])
    told = [(one.what, one.mark.anchor.name, one.mark.distance_mm) for one in found]
    assert told == [
        ("what a photo shows", "Belt, left", 10),
        ("a seam", "Spring hanger", 300),
    ]
    assert found[0].text.startswith("What a photo shows lies 10 mm from the seat belt anchor")
    assert "inspected by a person competent" in found[0].text
    words = " ".join(one.text for one in found).casefold()
    assert not any(verdict in words for verdict in ("passes", "fails", "is safe"))


def test_what_lies_on_another_view_is_near_nothing() -> None:
    elsewhere = AnchorPoint(AnchorId(1), ViewId(2), 0, 0, AnchorKind.SEAT_BELT, "Belt")
    assert bearings([elsewhere], seams=[seam(0)]) == ()


def test_a_seam_drawn_anew_keeps_its_parts_in_proportion() -> None:
    before, now = seam(0, 400), seam(0, 200)
    half = redrawn(change(SeamState.WELDED, 200), before, now)
    assert (half.start_mm, half.end_mm) == (0, 100)
    whole = redrawn(change(SeamState.WELDED, 400), before, now)
    assert whole.end_mm == length(now)


def test_seams_and_patches_in_words() -> None:
    assert seam_in_words(seam(0)) == "Butt seam, 400 mm"
    assert seam_in_words(seam(0, joint=Joint.PLUGS)) == "Plug row, 11 welds 40 mm apart, 400 mm"
    states = [change(SeamState.TACKED, 400), change(SeamState.WELDED, 150)]
    assert states_in_words(seam(0), states) == "welded 0 to 150 mm; tacked 150 to 400 mm"
    patch = Patch(PatchId(1), AREA, VIEW, rectangle(0, 0, 100, 100), 1.0, "bare sheet")
    assert patch_in_words(patch) == "Patch, 100 cm², 78 g of 1 mm bare sheet"
    assert sums_in_words(SeamSums(1200, 800, 0, 0)) == (
        "1.20 m planned, 0.80 m tacked, none welded, none dressed"
    )


def test_before_against_after_in_words() -> None:
    points = (Point(0, 0), Point(1, 1))
    measure = Measure(
        MeasureId(1), "A to B", MeasureKind.DIAGONAL, VIEW, points, "mm", Decimal(100), Decimal(1)
    )
    numbers = ((Moment.BEFORE, "100.0"), (Moment.AFTER, "98.5"))
    taken = [
        Reading(ReadingId(n), measure.id, 0, Decimal(value), parse("2016"), moment)
        for n, (moment, value) in enumerate(numbers)
    ]
    (both,) = compare(measure, taken)
    words = "100 before, 98.5 after: \N{MINUS SIGN}1.5 mm, outside what you set"
    assert compared_in_words(measure, both) == words
    (neither,) = compare(measure, [])
    assert compared_in_words(measure, neither) == "not read yet"
    assert (signed(Decimal("2.50")), signed(Decimal(0))) == ("+2.5", "0")


def test_what_is_welded_and_what_is_still_to_weld_make_the_whole() -> None:
    row = seam(0, joint=Joint.PLUGS, number=2)
    changes = [change(SeamState.WELDED, 150), change(SeamState.WELDED, 80, number=2)]
    patch = Patch(PatchId(1), AREA, VIEW, rectangle(0, 0, 100, 100), 1.5)
    done = welded([seam(0), row], changes, [patch])
    ahead = welded([seam(0), row], changes, [patch], still_to_do=True)
    assert [one.length_mm for one in done] == [150, 80]
    assert [one.length_mm for one in ahead] == [250, 320]
    assert [one.welds for one in done] == [0, 3]
    assert [one.welds for one in ahead] == [0, 8]
    assert {one.thickness_mm for one in (*done, *ahead)} == {1.5}
