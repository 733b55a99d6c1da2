"""Gaps in what stands behind claims, and which claim each gap would make stronger."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from journal.domain.areas import Area
from journal.domain.claims import FOUND, LET_IN, MEASURED, WELDED, AreaClaims, Claim
from journal.domain.drawing import System
from journal.domain.evidence import Grade
from journal.domain.gaps import Gap, GapKind, Reader
from journal.domain.ids import AreaId
from journal.domain.record import Record
from journal.domain.standard_views import STANDARD_VIEWS
from journal.domain.when import spoken
from journal.dossier.gap_weights import WEIGHTS
from journal.dossier.words import listed

#: A stage whose date spans this or more is dated to a year at best.
_A_YEAR = timedelta(days=360)


def of_area(area: Area, kind: GapKind, lack: str, detail: str) -> Gap:
    """A gap of one repair area."""
    return Gap(kind, f"{area.name}: {lack}", detail, WEIGHTS[kind], "area", area.id)


def finished(area: Area, stages: Sequence[str]) -> bool:
    """Whether an area came to the last stage."""
    return bool(stages) and area.stage == stages[-1]


def past_first(area: Area, stages: Sequence[str]) -> bool:
    """Whether an area came beyond the first stage."""
    return any(change.stage != stages[0] for change in area.changes) if stages else False


# --- what claims lack ---


def claim_gaps(record: Record, claims: Mapping[AreaId, AreaClaims]) -> Iterator[Gap]:
    """What the claims on each repair area lack."""
    bearing = {p.id for p in record.drawing.panels if p.system is System.STRUCTURE}
    measured = {measure.area_id for measure in record.measures}
    welded = {seam.area_id for seam in record.seams}
    for area in record.areas:
        found = {claim.key: claim for claim in claims[area.id].claims}
        during = _has_photo_of_work(found, record)
        yield from _weld_gaps(area, found, record, during=during)
        if LET_IN in found and area.id in welded and not _paper(found[LET_IN]):
            yield of_area(
                area,
                GapKind.METAL_NO_PAPER,
                "no paper for the new metal",
                "Nothing but the record says what was let in.",
            )
        yield from _word_alone(area, found, record.car.stages, during=during)
        if area.id in welded and area.id not in measured and bearing & set(area.panel_ids):
            yield of_area(
                area,
                GapKind.AREA_NO_READING,
                "no reading",
                "Load-bearing metal was welded, and no number says that the shell kept its shape.",
            )
        yield from _vague(area)


def _has_photo_of_work(found: Mapping[str, Claim], record: Record) -> bool:
    """Whether any claim between the first stage and the last has a photo behind it."""
    stages = record.car.stages or (FOUND,)
    return any(
        claim.photo_ids for key, claim in found.items() if key not in (stages[0], stages[-1])
    )


def _weld_gaps(
    area: Area, found: Mapping[str, Claim], record: Record, *, during: bool
) -> Iterator[Gap]:
    """A weld that no photo shows, where others of the same area's work do."""
    weld = found.get(WELDED)
    if weld is not None and during and not weld.photo_ids and finished(area, record.car.stages):
        yield of_area(
            area,
            GapKind.WELD_UNSEEN,
            "no photo of the weld",
            "It is under paint now, and nothing shows how it was made.",
        )


def _word_alone(
    area: Area, found: Mapping[str, Claim], stages: Sequence[str], *, during: bool
) -> Iterator[Gap]:
    """Statements between first stage and last on the owner's word alone, in one gap.

    Those at the ends lack a photo from before or after, and an area whose work no photo shows at
    all lacks that: each has a gap of its own.
    """
    ends = (stages[0], stages[-1]) if stages else ()
    alone = [
        key
        for key, claim in found.items()
        if claim.is_word_alone and not claim.left_out and key not in ends
    ]
    if alone and during:
        keys = listed([f"“{key}”" for key in alone])
        gap = of_area(
            area,
            GapKind.CLAIM_WORD_ALONE,
            f"{keys} on the owner’s word alone",
            "A photo of that time, a paper or a reading would stand behind it.",
        )
        yield replace(gap, claim=found[alone[0]].said, claim_key=alone[0])


def _vague(area: Area) -> Iterator[Gap]:
    vague = [
        change
        for change in area.changes
        if change.when.earliest == datetime.min
        or change.when.latest == datetime.max
        or change.when.latest - change.when.earliest >= _A_YEAR
    ]
    if vague:
        said = listed([f"“{change.stage}”, {spoken(change.when)}" for change in vague[:3]])
        gap = of_area(
            area,
            GapKind.STAGE_VAGUE,
            "a date known to the year only",
            f"{said}: a month would let photos and papers of that time stand behind it.",
        )
        yield replace(gap, claim_key=vague[0].stage)


def _paper(claim: Claim) -> bool:
    return any(piece.grade is Grade.PAPER for piece in claim.pieces)


def view_gaps(record: Record, reader: Reader | None) -> Iterator[Gap]:
    """Standard views without a photo, once one was chosen or a valuer asks."""
    chosen = {view.name for view in record.standard_views}
    lacking = [name for name in STANDARD_VIEWS if name not in chosen]
    if lacking and record.photos and (chosen or reader is Reader.VALUER):
        yield Gap(
            GapKind.NO_STANDARD_VIEWS,
            f"No photo chosen of the {listed(lacking)}",
            "A valuer looks at the whole car first, from the same sides each time.",
            WEIGHTS[GapKind.NO_STANDARD_VIEWS],
            "car",
        )


# --- which claim a gap is about ---

_KEYS = {
    GapKind.AREA_NO_DURING: (WELDED, LET_IN),
    GapKind.WELD_UNSEEN: (WELDED,),
    GapKind.AREA_NOT_WELDED: (WELDED,),
    GapKind.METAL_NO_PAPER: (LET_IN,),
    GapKind.AREA_NOT_READ_AFTER: (MEASURED,),
    GapKind.AREA_NO_READING: (WELDED,),
    GapKind.AREA_NO_HOURS: (WELDED, LET_IN),
}

_FIRST = (GapKind.AREA_NO_BEFORE, GapKind.AREA_UNDATED)


def strengthening(gap: Gap, claims: Mapping[AreaId, AreaClaims]) -> Gap:
    """A gap with the claim that filling it would make stronger, where there is one."""
    if gap.claim:
        return gap
    if gap.target_kind == "receipt":
        return _of_receipt(gap, claims)
    if gap.target_kind != "area" or gap.target_id is None:
        return gap
    found = claims[AreaId(gap.target_id)].claims
    claim = _claim_of(gap, found)
    return replace(gap, claim=claim.said, claim_key=claim.key) if claim else gap


def _claim_of(gap: Gap, found: Sequence[Claim]) -> Claim | None:
    by_key = {claim.key: claim for claim in found}
    if gap.claim_key:
        return by_key.get(gap.claim_key)
    if gap.kind in _FIRST:
        return found[0] if found else None
    if gap.kind is GapKind.AREA_NO_AFTER:
        return found[-1] if len(found) > 1 else None
    keys = _KEYS.get(gap.kind, ())
    middle = [by_key[key] for key in keys if key in by_key]
    if middle or not keys:
        return middle[0] if middle else None
    return found[len(found) // 2] if len(found) > 2 else None


def _of_receipt(gap: Gap, claims: Mapping[AreaId, AreaClaims]) -> Gap:
    for found in claims.values():
        for claim in found.claims:
            if any(p.kind == "receipt" and p.id == gap.target_id for p in claim.pieces):
                return replace(gap, claim=claim.said, claim_key=claim.key)
    return gap
