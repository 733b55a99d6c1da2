"""What the dossier tells of a repair area's metalwork, and what it finds lacking."""

from dataclasses import replace
from decimal import Decimal

from journal.domain.anchors import AnchorKind, AnchorPoint
from journal.domain.gaps import GapKind
from journal.domain.ids import (
    AnchorId,
    AreaId,
    MeasureId,
    PatchId,
    ReadingId,
    SeamChangeId,
    SeamId,
    ViewId,
)
from journal.domain.patches import Patch
from journal.domain.readings import Measure, MeasureKind, Moment, Reading
from journal.domain.record import Record
from journal.domain.seams import Joint, Seam, SeamChange, SeamState
from journal.domain.shapes import Line, Point, Stroke, rectangle
from journal.domain.when import parse
from journal.dossier.document import Metalwork
from journal.dossier.gaps import gaps
from journal.dossier.method import method
from tests.dossier.records import finished_record, told

VIEW, AREA = ViewId(1), AreaId(1)


def seam(
    number: int, length: float, joint: Joint = Joint.BUTT, spacing: float | None = None
) -> Seam:
    stroke = Stroke(Point(0, 100), (Line(Point(length, 100)),))
    return Seam(SeamId(number), AREA, VIEW, stroke, joint, spacing)


def change(number: int, state: SeamState, end: float, when: str = "2016-03-12") -> SeamChange:
    return SeamChange(
        SeamChangeId(number * 10 + state.rank), SeamId(number), state, 0, end, parse(when)
    )


def diagonal(number: int, *points: tuple[float, float]) -> Measure:
    return Measure(
        MeasureId(number),
        f"Diagonal {number}",
        MeasureKind.DIAGONAL,
        VIEW,
        tuple(Point(*point) for point in points),
        "mm",
        Decimal(1284),
        Decimal(2),
        AREA,
    )


def reading(measure: int, value: str, moment: Moment, when: str) -> Reading:
    number = ReadingId(measure * 10 + len(moment.value))
    return Reading(number, MeasureId(measure), 0, Decimal(value), parse(when), moment)


def welded_record(**parts: object) -> Record:
    whole = {
        "seams": (seam(1, 1200), seam(2, 400, Joint.PLUGS, 40)),
        "seam_changes": (
            change(1, SeamState.WELDED, 1200),
            change(1, SeamState.DRESSED, 600),
            change(2, SeamState.WELDED, 200),
        ),
        "patches": (
            Patch(PatchId(1), AREA, VIEW, rectangle(0, 0, 200, 100), 1.2, "zinc-coated sheet",
                  when=parse("2016-03-12")),
        ),
        "anchors": (
            AnchorPoint(AnchorId(1), VIEW, 1300, 100, AnchorKind.SEAT_BELT, "Belt, left, lower"),
        ),
        "measures": (diagonal(1, (0, 0), (900, 900)), diagonal(2, (0, 900), (900, 0))),
        "readings": (
            reading(1, "1284", Moment.BEFORE, "2016-01-10"),
            reading(1, "1286.5", Moment.AFTER, "2016-04-01"),
            reading(2, "1283.5", Moment.BEFORE, "2016-01-10"),
            reading(2, "1283", Moment.AFTER, "2016-04-01"),
        ),
    }  # fmt: skip
    return replace(finished_record(), **(whole | parts))  # type: ignore[arg-type]


def metal_of(record: Record) -> Metalwork:
    (story,) = told(record)
    return story.metal


def test_seams_are_told_by_joint_with_their_states() -> None:
    assert metal_of(welded_record()).seams == (
        "Butt seam: 1.20 m drawn; 1.20 m tacked, 1.20 m welded, 0.60 m dressed.",
        "Plug row: 0.40 m drawn; 0.20 m tacked, 0.20 m welded; 6 of 11 welds made.",
    )


def test_new_metal_is_told_with_its_area_mass_steel_and_thickness() -> None:
    (words,) = metal_of(welded_record()).patches
    # 200 x 100 x 1.2 mm of steel at 7,850 kg/m3 is 188.4 g.
    assert words == "Patch, 200 cm², 188 g of 1.2 mm zinc-coated sheet, in since 12 March 2016."


def test_readings_stand_before_against_after_and_are_never_judged() -> None:
    metal = metal_of(welded_record())
    first, second = metal.measured
    assert (first.before, first.after, first.difference) == ("1284", "1286.5", "+2.5")
    assert first.remark == "outside what you set"
    assert second.remark == ""
    assert metal.diagonals == (
        (
            "Diagonal 1 and Diagonal 2 were 0.5 mm apart before and are 3.5 mm apart after:"
            " a change of +3 mm."
        ),
    )


def test_what_lies_near_a_mounting_is_told_with_its_distance() -> None:
    (words,) = metal_of(welded_record()).bearings
    assert words.startswith(
        "Load-bearing: have it inspected. A seam lies 100 mm from the seat belt anchor point"
    )
    far = AnchorPoint(AnchorId(1), VIEW, 1501, 100, AnchorKind.SEAT_BELT, "Belt", 300)
    assert metal_of(welded_record(anchors=(far,))).bearings == ()


def test_an_area_without_metalwork_tells_none() -> None:
    assert metal_of(finished_record()) == Metalwork()
    headings = [part.heading for part in method(finished_record(), (), "1")]
    assert "How metalwork is measured" not in headings
    headings = [part.heading for part in method(welded_record(), (), "1")]
    assert "How metalwork is measured" in headings


def test_a_finished_area_lacks_what_is_not_welded_or_not_read_after() -> None:
    kinds = {gap.kind: gap for gap in gaps(welded_record())}
    assert kinds[GapKind.AREA_NOT_WELDED].title == "Area 1: 0.20 m of seam not welded"
    assert GapKind.AREA_NOT_READ_AFTER not in kinds
    before = tuple(r for r in welded_record().readings if r.moment is Moment.BEFORE)
    done = tuple(change(n, SeamState.WELDED, mm) for n, mm in ((1, 1200), (2, 400)))
    kinds = {gap.kind: gap for gap in gaps(welded_record(readings=before, seam_changes=done))}
    assert GapKind.AREA_NOT_WELDED not in kinds
    assert "Diagonal 1" in kinds[GapKind.AREA_NOT_READ_AFTER].title


def test_what_lies_near_a_mounting_brings_its_caution_once() -> None:
    (story,) = told(welded_record())
    assert [caution.title for caution in story.cautions] == ["Seat-belt anchorages"]
    kept = replace(welded_record().areas[0], cautions=("belt anchorages",))
    (story,) = told(welded_record(areas=(kept,)))
    assert [caution.title for caution in story.cautions] == ["Seat-belt anchorages"]
