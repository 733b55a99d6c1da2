from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journal.domain.claim_words import ClaimWords
from journal.domain.claims import AreaClaims, Claim, all_claims, claims_of
from journal.domain.evidence import Grade, graded, is_word_alone
from journal.domain.ids import (
    AreaId,
    CameraId,
    MeasureId,
    PhotoId,
    ReadingId,
    ReceiptId,
    SeamChangeId,
    ViewId,
)
from journal.domain.photos import Basis, Camera, Role
from journal.domain.readings import Measure, MeasureKind, Moment, Reading
from journal.domain.receipts import Paper
from journal.domain.record import Record
from journal.domain.seams import SeamChange, SeamState
from journal.domain.shapes import Point
from journal.domain.when import parse
from tests.dossier.records import area, chosen, finished_record, photo, receipt, record, work
from tests.dossier.test_metal import welded_record


def claims(rec: Record) -> dict[str, Claim]:
    return {claim.key: claim for claim in claims_of(rec, AreaId(1)).claims}


def grades(claim: Claim) -> list[Grade]:
    return [piece.grade for piece in claim.pieces]


def test_a_finished_area_is_told_stage_by_stage_with_what_stands_behind_each() -> None:
    found = claims(finished_record())
    assert {key: claim.said for key, claim in found.items()} == {
        "found": "Trouble found, 10 January 2016: rusted through.",
        "welded": "Welded, 12 March 2016.",
        "finished": "Finished, May 2016.",
    }
    assert grades(found["found"]) == [Grade.CAMERA, Grade.WORD]
    assert grades(found["welded"]) == [Grade.CAMERA, Grade.HOURS, Grade.HOURS, Grade.WORD]
    # Its date is the owner's word, and yet it is a photo.
    assert grades(found["finished"]) == [Grade.PHOTO, Grade.WORD]


@pytest.mark.parametrize(
    ("basis", "grade"),
    [(basis, Grade.CAMERA if basis is Basis.CAMERA else Grade.PHOTO) for basis in Basis],
)
def test_only_a_camera_gives_a_photo_the_better_grade(basis: Basis, grade: Grade) -> None:
    rec = record(
        areas=(area(1, ("found", "2016-01")),),
        photos=(photo(1, basis=basis),),
        area_photos=(chosen(1, 1, Role.BEFORE),),
    )
    assert grades(claims(rec)["found"])[0] is grade


@pytest.mark.parametrize(
    ("paper", "grade"),
    [(Paper.HELD, Grade.PAPER), (Paper.LOST, Grade.LOST), (Paper.NEVER, Grade.WORD)],
)
def test_a_receipt_is_worth_what_its_paper_is(paper: Paper, grade: Grade) -> None:
    rec = record(
        areas=(area(1, ("found", "2016-01"), ("new metal in", "2016-02")),),
        receipts=(receipt(1, 100, 1, paper=paper),),
    )
    claim = claims(rec)["new metal in"]
    assert [p.grade for p in claim.pieces if p.kind == "receipt"] == [grade]
    assert claim.is_word_alone == (grade is Grade.WORD)


@pytest.mark.parametrize(("shift", "grade"), [(0, Grade.CAMERA), (306_787_320, Grade.PHOTO)])
def test_a_camera_whose_clock_was_put_right_no_longer_dates_by_itself(
    shift: int, grade: Grade
) -> None:
    rec = record(
        cameras=(Camera(CameraId(3), "Pellicon", "P4", "", shift),),
        areas=(area(1, ("found", "2016-01")),),
        photos=(photo(1, camera_id=CameraId(3)),),
        area_photos=(chosen(1, 1, Role.BEFORE),),
    )
    assert grades(claims(rec)["found"])[0] is grade


@pytest.mark.parametrize(("quantity", "counts"), [("1", False), ("0.5", True)])
def test_metal_that_went_back_is_no_evidence_of_metal_let_in(quantity: str, counts: bool) -> None:
    bought = receipt(1, 100, 1)
    line = replace(bought.lines[0], amount=-100, quantity=Decimal(quantity))
    refund = replace(receipt(2, -100, 1, refund_of=ReceiptId(1)), lines=(line,))
    rec = record(areas=(area(1, ("new metal in", "2016-02")),), receipts=(bought, refund))
    claim = claims(rec)["new metal in"]
    assert [p.id for p in claim.pieces if p.kind == "receipt"] == ([1] if counts else [])
    loose = {p.id for p in claims_of(rec, AreaId(1)).loose}
    assert loose == ({2} if counts else {1, 2})


def test_a_photo_of_a_year_in_which_many_stages_fall_shows_none_of_them() -> None:
    rec = record(
        areas=(area(1, ("cut back", "2016"), ("welded", "2016"), ("dressed", "2016-05-02")),),
        photos=(photo(1, "2016-01-03T10:00:00"), photo(2, "2016-05-02T10:00:00")),
        area_photos=tuple(chosen(1, n, Role.DURING) for n in (1, 2)),
    )
    shown = {key: claim.photo_ids for key, claim in claims(rec).items() if claim.photo_ids}
    assert shown == {"dressed": (2,)}


def test_a_photo_from_after_taken_before_the_last_stage_does_not_show_it() -> None:
    rec = record(
        areas=(area(1, ("welded", "2016-03-01"), ("finished", "2017")),),
        photos=(photo(1, "2016-05-02T10:00:00"), photo(2, "2017-05-02T10:00:00"), photo(3, None)),
        area_photos=tuple(chosen(1, n, Role.AFTER) for n in (1, 2, 3)),
    )
    found = claims(rec)
    assert found["finished"].photo_ids == (2, 3)
    assert found["welded"].photo_ids == (1,)


def test_what_is_only_drawn_or_tacked_is_not_said_to_be_in_or_welded() -> None:
    rec = welded_record()
    drawn = replace(
        rec,
        areas=(area(1, ("found", "2016-01")),),
        patches=tuple(replace(patch, when=None) for patch in rec.patches),
        seam_changes=tuple(replace(change, state=SeamState.TACKED) for change in rec.seam_changes),
    )
    assert not {"new metal in", "welded"} & set(claims(drawn))
    said = replace(drawn, areas=(area(1, ("new metal in", "2016-02"), ("welded", "2016-03")),))
    assert claims(said)["new metal in"].said.startswith(
        "New metal let in, February 2016: drawn with no day of its own, 1 patch, "
    )
    assert claims(said)["welded"].said == (
        "Welded, March 2016: of 1.60 m of seam drawn, none is recorded as welded."
    )


def test_what_nothing_shows_is_the_owners_word_alone() -> None:
    rec = record(areas=(area(1, ("found", "2016"), ("welded", "2016-03")),))
    assert all(claim.is_word_alone for claim in claims(rec).values())
    assert [c.said for c in claims(rec).values()] == [
        "Trouble found, 2016: rusted through.",
        "Welded, March 2016.",
    ]


def test_something_between_two_stages_shows_the_one_reached() -> None:
    rec = record(
        areas=(area(1, ("cut back", "2016-03-01"), ("welded", "2016-04-01")),),
        photos=(photo(1, "2016-03-20T10:00:00"), photo(2, "2016-04-01T10:00:00"), photo(3, None)),
        area_photos=tuple(chosen(1, n, Role.DURING) for n in (1, 2, 3)),
    )
    found = claims(rec)
    assert found["cut back"].photo_ids == (1,)
    assert found["welded"].photo_ids == (2,)
    assert [p.id for p in claims_of(rec, AreaId(1)).loose] == [3]


def test_a_photo_less_sure_than_the_stages_shows_none_of_them() -> None:
    rec = record(
        areas=(area(1, ("cut back", "2016-03-01"), ("welded", "2016-04-01")),),
        photos=(photo(1, "2016", basis=Basis.OWNER),),
        area_photos=(chosen(1, 1, Role.DURING),),
    )
    assert not any(claim.photo_ids for claim in claims(rec).values())


def test_seams_and_patches_are_told_in_figures_and_a_photo_of_a_weld_stands_behind_it() -> None:
    rec = welded_record()
    shown = SeamChange(
        SeamChangeId(99), rec.seams[0].id, SeamState.WELDED, 0, 100, parse("2016-03-12"), "",
        (PhotoId(3),),
    )  # fmt: skip
    found = claims(replace(rec, seam_changes=(*rec.seam_changes, shown)))
    assert "of seam" in found["welded"].said
    assert "cm²" in found["new metal in"].said
    assert PhotoId(3) in found["welded"].photo_ids
    assert found["measured"].said.startswith("Measured before and after: ")


def test_a_reading_without_its_instrument_is_the_owners_word() -> None:
    measure = Measure(
        MeasureId(1), "Gap", MeasureKind.GAP, ViewId(1), (Point(0, 0),), "mm", area_id=AreaId(1)
    )
    rows = tuple(
        Reading(ReadingId(n), MeasureId(1), 0, Decimal(n), parse("2016-01"), Moment.BEFORE, tool)
        for n, tool in ((1, ""), (2, "feeler gauge"))
    )
    found = claims(record(areas=(area(1),), measures=(measure,), readings=rows))["measured"]
    assert grades(found) == [Grade.INSTRUMENT, Grade.WORD]


def test_stages_of_the_owners_own_are_claims_too() -> None:
    car = replace(finished_record().car, stages=("seen", "primed", "done"))
    rec = record(
        car=car, areas=(area(1, ("seen", "2015"), ("primed", "2016-05"), ("done", "2017")),)
    )
    assert list(claims(rec)) == ["seen", "primed", "done"]
    assert claims(rec)["seen"].said == "Trouble found, 2015: rusted through."
    assert claims(rec)["primed"].said == "Brought to “primed”, May 2016."


def test_the_owners_words_change_the_sentence_and_nothing_else() -> None:
    words = (ClaimWords(AreaId(1), "welded", " In one evening. ", left_out=True),)
    plain, own = claims(finished_record()), claims(replace(finished_record(), claim_words=words))
    assert own["welded"].said == "In one evening."
    assert replace(own["welded"], own="", left_out=False) == plain["welded"]


_PHOTOS = st.lists(
    st.tuples(
        st.sampled_from(list(Role)),
        st.sampled_from([None, "2016", "2016-02", "2016-03-01", "2016-03-20", "2019"]),
        st.sampled_from([Basis.CAMERA, Basis.OWNER, Basis.FILE_NAME]),
    ),
    max_size=8,
)


@settings(max_examples=40)
@given(_PHOTOS, st.lists(st.sampled_from(["2016-03-01", "2016-03", "2018"]), max_size=4))
def test_every_piece_of_evidence_of_an_area_is_somewhere_and_none_is_made_up(
    shots: list[tuple[Role, str | None, Basis]], days: list[str]
) -> None:
    photos = tuple(photo(n, when, basis=basis) for n, (_, when, basis) in enumerate(shots, 1))
    rec = record(
        areas=(area(1, ("found", "2016-02-01"), ("welded", "2016-03-01"), ("finished", "2017")),),
        photos=photos,
        area_photos=tuple(chosen(1, n, role) for n, (role, _, _) in enumerate(shots, 1)),
        work=tuple(replace(work(n, 60, 1), when=parse(day)) for n, day in enumerate(days, 1)),
    )
    found: AreaClaims = all_claims(rec)[AreaId(1)]
    pieces = {p for claim in found.claims for p in claim.pieces} | set(found.loose)
    assert {p.id for p in pieces if p.kind == "photo"} == {p.id for p in photos}
    assert {p.id for p in pieces if p.kind == "work"} == {row.id for row in rec.work}
    for claim in found.claims:
        assert sum(count for _, count in graded(claim.pieces)) == len(claim.pieces)
        assert claim.is_word_alone == is_word_alone(claim.pieces)
        assert list(claim.pieces) == sorted(claim.pieces, key=lambda p: p.grade.rank)
