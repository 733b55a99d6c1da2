"""What a record lacks: pure rules over the whole record, what matters most to a reader first."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from datetime import date, timedelta

from journal.domain.areas import Area
from journal.domain.car import Car, MilestoneKind
from journal.domain.claims import all_claims
from journal.domain.gaps import Gap, GapKind, Reader
from journal.domain.hours import spoken_hours
from journal.domain.ids import PhotoId
from journal.domain.metal_words import metres
from journal.domain.milestones import is_upkeep
from journal.domain.money import format_money
from journal.domain.photo_spans import photo_days, shots, without_hours
from journal.domain.photos import Photo, Role
from journal.domain.readings import Measure, Reading, compare
from journal.domain.receipts import Category, Paper, Receipt
from journal.domain.record import Record
from journal.domain.seam_sums import sums
from journal.domain.seams import SLACK_MM
from journal.domain.sittings import default_pause
from journal.domain.wanted import WantedState
from journal.domain.when import When, spoken
from journal.dossier.gap_claims import (
    claim_gaps,
    finished,
    of_area,
    past_first,
    strengthening,
    view_gaps,
)
from journal.dossier.gap_weights import WEIGHTS, WEIGHTS_FOR
from journal.dossier.words import count, listed, shortened

#: Categories whose lines belong to the car as a whole, not to a repair area.
_WHOLE_CAR = frozenset({Category.CAR, Category.TOOLS, Category.FEES})

#: A part on order for so long is asked after; common practice, no source.
_LONG_ORDERED = timedelta(days=90)

#: A photo whose date spans this or more is dated to a year at best.
_A_YEAR = timedelta(days=360)


def gaps(
    record: Record, reader: Reader | None = None, today: date | None = None
) -> tuple[Gap, ...]:
    """All that ``record`` lacks, the weightiest first; equal weights keep the record's order.

    For a ``reader`` what that one asks for first weighs more. What only the owner can still do
    something about, since it has been waiting until ``today``, is told where a day is given.
    """
    claims = all_claims(record)
    found = [
        *_car_gaps(record),
        *_area_gaps(record),
        *claim_gaps(record, claims),
        *_receipt_gaps(record),
        *_photo_gaps(record.photos),
        *_place_gaps(record),
        *view_gaps(record, reader),
        *_hour_gaps(record),
        *(_wanted_gaps(record, today) if today is not None else ()),
    ]
    told = (_for_reader(strengthening(gap, claims), reader) for gap in found)
    return tuple(sorted(told, key=lambda gap: -gap.weight))


def _for_reader(gap: Gap, reader: Reader | None) -> Gap:
    if reader is None:
        return gap
    return replace(gap, weight=WEIGHTS_FOR[reader].get(gap.kind, gap.weight))


def _car_gaps(record: Record) -> Iterator[Gap]:
    kinds = {milestone.kind for milestone in record.milestones}
    if MilestoneKind.ACQUIRED not in kinds:
        yield Gap(
            GapKind.NO_ACQUIRED,
            "No date when the car was acquired",
            "Without it a reader can't tell which state was bought and which was made.",
            WEIGHTS[GapKind.NO_ACQUIRED],
            "milestone",
        )
    if MilestoneKind.ON_THE_ROAD not in kinds:
        yield Gap(
            GapKind.NO_ON_THE_ROAD,
            "No date when the car went on the road",
            "Until it is set, all money and hours count as restoration and none as upkeep.",
            WEIGHTS[GapKind.NO_ON_THE_ROAD],
            "milestone",
        )
    lacking = _identity_lacking(record.car)
    if lacking:
        yield Gap(
            GapKind.CAR_IDENTITY,
            f"Not filled in: the car’s {listed(lacking)}",
            "They tie this record to one car and no other.",
            WEIGHTS[GapKind.CAR_IDENTITY],
            "car",
        )


def _identity_lacking(car: Car) -> list[str]:
    fields = (
        (car.maker, "maker"),
        (car.model, "model"),
        (car.year, "year"),
        (car.chassis_number, "chassis number"),
    )
    return [name for value, name in fields if not value.strip()]


def _area_gaps(record: Record) -> Iterator[Gap]:
    roles: dict[int, set[Role]] = defaultdict(set)
    for chosen in record.area_photos:
        roles[chosen.area_id].add(chosen.role)
    worked = {share.area_id for work in record.work for share in work.shares}
    for area in record.areas:
        yield from _area_photo_gaps(area, roles[area.id], record.car.stages)
        yield from _area_word_gaps(area, record.car.stages)
        if finished(area, record.car.stages):
            yield from _metal_gaps(record, area)
        if area.id not in worked and past_first(area, record.car.stages):
            yield of_area(
                area,
                GapKind.AREA_NO_HOURS,
                "no hours",
                "Nobody's time is recorded for this repair area.",
            )


def _metal_gaps(record: Record, area: Area) -> Iterator[Gap]:
    """What a finished repair area still lacks of its welding and its readings."""
    seams = [seam for seam in record.seams if seam.area_id == area.id]
    drawn = sums(seams, record.seam_changes)
    if drawn.planned - drawn.welded > SLACK_MM:
        yield of_area(
            area,
            GapKind.AREA_NOT_WELDED,
            f"{metres(drawn.planned - drawn.welded)} of seam not welded",
            "The repair area counts as finished, but not all of its seams do.",
        )
    behind = [
        measure.name
        for measure in record.measures
        if measure.area_id == area.id and _read_before_only(measure, record.readings)
    ]
    if behind:
        yield of_area(
            area,
            GapKind.AREA_NOT_READ_AFTER,
            f"not measured after: {shortened(behind, 3)}",
            "Only a reading after the work shows whether the shell kept its shape.",
        )


def _read_before_only(measure: Measure, readings: Sequence[Reading]) -> bool:
    return any(c.before is not None and c.after is None for c in compare(measure, readings))


def _area_photo_gaps(area: Area, roles: set[Role], stages: Sequence[str]) -> Iterator[Gap]:
    if Role.BEFORE not in roles:
        yield of_area(
            area,
            GapKind.AREA_NO_BEFORE,
            "no photo from before",
            "Nothing shows what was there before the work.",
        )
    if Role.DURING not in roles and past_first(area, stages):
        yield of_area(
            area,
            GapKind.AREA_NO_DURING,
            "no photo of the work",
            "Nothing shows what lies under the surface now.",
        )
    if Role.AFTER not in roles and finished(area, stages):
        yield of_area(
            area,
            GapKind.AREA_NO_AFTER,
            "no photo from after",
            "It is said to be finished, and nothing shows it.",
        )


def _area_word_gaps(area: Area, stages: Sequence[str]) -> Iterator[Gap]:
    if not area.changes:
        yield of_area(
            area, GapKind.AREA_UNDATED, "no dated stage", "Nothing says when any of it was done."
        )
    elif not finished(area, stages):
        yield of_area(
            area,
            GapKind.AREA_NOT_FINISHED,
            "not finished",
            f"The last stage recorded is “{area.stage}”, {spoken(area.changes[-1].when)}.",
        )
    unsaid = _unsaid(area, stages)
    if unsaid:
        gap = of_area(
            area,
            GapKind.AREA_NOTHING_SAID,
            f"{unsaid} not said",
            "The owner's own words are lacking.",
        )
        # Words on what was found are part of the first claim; those on what was done, of none.
        first = stages[0] if stages and not area.found.strip() else ""
        yield replace(gap, claim_key=first)
    if not area.panel_ids:
        yield of_area(
            area, GapKind.AREA_NO_PANEL, "on no panel", "The drawing can't show where it is."
        )


def _unsaid(area: Area, stages: Sequence[str]) -> str:
    found, done = area.found.strip(), area.done.strip()
    if not found:
        return (
            "what was found" if done or not past_first(area, stages) else "what was found and done"
        )
    return "" if done or not past_first(area, stages) else "what was done"


def _receipt_gaps(record: Record) -> Iterator[Gap]:
    for receipt in record.receipts:
        yield from _paper_gaps(receipt)
        if receipt.printed_total is not None and receipt.printed_total != receipt.lines_total:
            yield _of_receipt(receipt, GapKind.RECEIPT_TOTAL, "lines differ", _difference(receipt))
        if _should_be_shared(receipt) and not is_upkeep(receipt.when, record.milestones):
            yield _of_receipt(
                receipt,
                GapKind.RECEIPT_UNSHARED,
                "shared to no repair area",
                "What it paid for stands in no repair area's costs.",
            )


def _paper_gaps(receipt: Receipt) -> Iterator[Gap]:
    instead = f" In its place: {receipt.stands_in.strip()}" if receipt.stands_in.strip() else ""
    if receipt.paper is Paper.LOST:
        yield _of_receipt(
            receipt, GapKind.RECEIPT_LOST, "paper lost", f"The sum rests on no paper.{instead}"
        )
    elif receipt.paper is Paper.NEVER:
        yield _of_receipt(
            receipt, GapKind.RECEIPT_NEVER, "no paper ever", f"The sum rests on no paper.{instead}"
        )
    elif not receipt.papers:
        yield _of_receipt(
            receipt,
            GapKind.RECEIPT_NO_SCAN,
            "no scan of the paper",
            "The paper is held, but only who holds it can look at it.",
        )


def _difference(receipt: Receipt) -> str:
    printed = format_money(receipt.printed_total or 0, receipt.currency)
    lines = format_money(receipt.lines_total, receipt.currency)
    return f"The paper says {printed}, its lines here make {lines}."


def _should_be_shared(receipt: Receipt) -> bool:
    ours = [line for line in receipt.lines if line.category not in _WHOLE_CAR]
    return bool(ours) and not any(line.shares for line in receipt.lines)


def _of_receipt(receipt: Receipt, kind: GapKind, lack: str, detail: str) -> Gap:
    supplier = receipt.supplier.strip() or "Receipt without a supplier"
    title = f"{supplier}, {spoken(receipt.when)}: {lack}"
    return Gap(kind, title, detail, WEIGHTS[kind], "receipt", receipt.id)


def _photo_gaps(photos: Iterable[Photo]) -> Iterator[Gap]:
    rows = tuple(photos)
    yield from _of_photos(
        GapKind.PHOTO_DAMAGED,
        [photo.id for photo in rows if photo.damage],
        ("original can't", "originals can't"),
        "be read whole",
        "The file is kept as it came; what can be read of it is shown.",
    )
    yield from _of_photos(
        GapKind.PHOTOS_UNDATED,
        [photo.id for photo in rows if photo.when is None],
        ("photo has", "photos have"),
        "no date",
        "They stand in no order with the rest; even “summer 2009” would put them in it.",
    )
    yield from _of_photos(
        GapKind.PHOTOS_VAGUE,
        [photo.id for photo in rows if photo.when is not None and _vague(photo.when)],
        ("photo is", "photos are"),
        "dated to a year or worse",
        "A month, or the season, would tell before from after.",
    )


def _vague(when: When) -> bool:
    return when.latest - when.earliest >= _A_YEAR


def _hour_gaps(record: Record) -> Iterator[Gap]:
    """One gap for all the days that photos show a visit on and nobody's hours are recorded for."""
    taken = shots(record.photos)
    pause = record.car.pause_minutes or default_pause(shot.taken for shot in taken)
    days = without_hours(photo_days(taken, pause), record.work)
    if not days:
        return
    lowest = spoken_hours(sum(day.minutes for day in days))
    yield Gap(
        GapKind.PHOTOS_NO_HOURS,
        f"{count(len(days), 'day')} with photos {'has' if len(days) == 1 else 'have'} no hours",
        f"From first to last shot it makes {lowest} at least.",
        WEIGHTS[GapKind.PHOTOS_NO_HOURS],
        "photos",
        None,
        tuple(photo for day in days for photo in day.photo_ids),
    )


def _place_gaps(record: Record) -> Iterator[Gap]:
    pinned = {pin.photo_id for pin in record.pins}
    yield from _of_photos(
        GapKind.PHOTOS_UNPLACED,
        [photo.id for photo in record.photos if photo.id not in pinned],
        ("photo has", "photos have"),
        "no place on the car",
        "The drawing can’t show what part of the car they are of.",
    )
    seen = {pin.panel_id for pin in record.pins}
    unseen = [panel for panel in record.drawing.panels if panel.id not in seen]
    if record.photos and unseen:
        yield Gap(
            GapKind.PANELS_NO_PHOTO,
            f"{count(len(unseen), 'panel')} in no photo",
            f"{shortened([panel.label for panel in unseen], 8)}.",
            WEIGHTS[GapKind.PANELS_NO_PHOTO],
            "panel",
            unseen[0].id,
        )


def _wanted_gaps(record: Record, today: date) -> Iterator[Gap]:
    for part in record.wanted:
        since = part.since
        if part.state is not WantedState.ORDERED or since is None:
            continue
        if since.latest.date() + _LONG_ORDERED < today:
            yield Gap(
                GapKind.WANTED_NOT_ARRIVED,
                f"{part.text}: ordered {spoken(since)}, not arrived",
                "Ask the supplier, or say that it came.",
                WEIGHTS[GapKind.WANTED_NOT_ARRIVED],
                "wanted",
                part.id,
            )


def _of_photos(
    kind: GapKind, ids: list[PhotoId], nouns: tuple[str, str], lack: str, detail: str
) -> Iterator[Gap]:
    """One gap for all photos that lack the same, none where there is no such photo."""
    if not ids:
        return
    only = ids[0] if len(ids) == 1 else None
    yield Gap(
        kind,
        f"{count(len(ids), *nouns)} {lack}",
        detail,
        WEIGHTS[kind],
        "photos" if only is None else "photo",
        only,
        tuple(ids),
    )
