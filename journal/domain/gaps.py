"""Gaps: what a record still lacks, each with the thing it is about."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from journal.domain.ids import PhotoId

#: What kind of thing a gap is about, and so where it is filled.
GapTarget = Literal["photo", "photos", "area", "receipt", "milestone", "panel", "car", "wanted"]


class Reader(StrEnum):
    """Whose questions gaps are sorted by."""

    BUYER = "buyer"
    VALUER = "valuer"


class GapKind(StrEnum):
    """What is lacking; the value is how a heading over several such gaps reads."""

    PHOTO_DAMAGED = "originals that can't be read whole"
    AREA_UNDATED = "repair areas with no dated stage"
    AREA_NO_BEFORE = "repair areas with no photo from before"
    AREA_NO_DURING = "repair areas with no photo of the work"
    AREA_NO_AFTER = "repair areas with no photo from after"
    AREA_NOT_FINISHED = "repair areas not finished"
    AREA_NOTHING_SAID = "repair areas that don't say what was found or done"
    AREA_NO_PANEL = "repair areas on no panel"
    AREA_NOT_WELDED = "repair areas finished with seams not welded"
    AREA_NOT_READ_AFTER = "repair areas measured before and never after"
    AREA_NO_HOURS = "repair areas with no hours"
    WELD_UNSEEN = "hidden welds in no photo"
    METAL_NO_PAPER = "new metal with no paper"
    CLAIM_WORD_ALONE = "statements on the owner’s word alone"
    AREA_NO_READING = "welded load-bearing metal with no reading"
    STAGE_VAGUE = "stages dated to a year or worse"
    RECEIPT_LOST = "receipts whose paper is lost"
    RECEIPT_NEVER = "payments that never had a receipt"
    RECEIPT_NO_SCAN = "receipts held on paper, with no scan here"
    RECEIPT_TOTAL = "receipts whose lines don't make the printed total"
    RECEIPT_UNSHARED = "receipts shared to no repair area"
    NO_ACQUIRED = "no date when the car was acquired"
    NO_ON_THE_ROAD = "no date when the car went on the road"
    CAR_IDENTITY = "identity of the car not filled in"
    PHOTOS_UNDATED = "photos without a date"
    PHOTOS_VAGUE = "photos dated to a year or worse"
    PHOTOS_UNPLACED = "photos without a place on the car"
    PHOTOS_NO_HOURS = "days with photos and no hours"
    PANELS_NO_PHOTO = "panels in no photo"
    NO_STANDARD_VIEWS = "standard views with no photo"
    WANTED_NOT_ARRIVED = "parts ordered long ago and not arrived"


@dataclass(frozen=True, slots=True)
class Gap:
    """One thing the record lacks.

    ``title`` names the thing and what is missing in a few words ("Sill, left: no photo from
    after"), ``detail`` says in a sentence why it matters or how it is filled. ``weight`` is what
    matters to a reader of the dossier: 100 is the most, 0 the least; gaps are sorted by it.
    ``target_kind`` and ``target_id`` say where it is filled: the number of a photo, area, receipt,
    milestone, panel or wanted part; None for the car itself, for a milestone still to be made and
    for "photos", where ``photo_ids`` names them all. ``claim`` is the sentence that it would make
    stronger, "" for none in particular, and ``claim_key`` its key in the repair area ``target_id``.
    """

    kind: GapKind
    title: str
    detail: str
    weight: int
    target_kind: GapTarget
    target_id: int | None = None
    photo_ids: tuple[PhotoId, ...] = ()
    claim: str = ""
    claim_key: str = ""
