"""The story of each repair area, told from the record alone: the same record, the same words."""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import datetime

from journal.domain.areas import Area, Entry
from journal.domain.claims import AreaClaims
from journal.domain.costs import CostRow, CostTable
from journal.domain.cuts import Choices, Part
from journal.domain.evidence import put_right
from journal.domain.ids import AreaId, CameraId, PanelId, PhotoId
from journal.domain.money import format_money
from journal.domain.photos import AreaPhoto, Photo, Role
from journal.domain.private_words import Private
from journal.domain.receipts import Receipt
from journal.domain.record import Record
from journal.domain.when import spoken
from journal.dossier.cautions import warned
from journal.dossier.choosing import few
from journal.dossier.claims import left_out, stated
from journal.dossier.document import AreaStory, Bought, Labelled, Moment, Shown, Step
from journal.dossier.evidence import (
    behind,
    lacking_sentences,
    photo_sentences,
    receipt_sentence,
)
from journal.dossier.metal import metalwork
from journal.dossier.words import excerpt, hours, known_by, listed, sentence, shortened


def in_order_of_time(record: Record) -> tuple[Area, ...]:
    """Repair areas by their first stage, then by their earliest photo; those with neither last."""
    first_photo = {
        area_id: min(photo.when.earliest for photo in photos if photo.when)
        for area_id, photos in _photos_by_area(record).items()
        if any(photo.when for photo in photos)
    }

    def start(area: Area) -> datetime:
        if area.changes:
            return area.changes[0].when.earliest
        return first_photo.get(area.id, datetime.max)

    return tuple(sorted(record.areas, key=start))


def stories(
    record: Record,
    by_area: CostTable | None,
    numbers: dict[PhotoId, int],
    choices: Choices,
    claims: Mapping[AreaId, AreaClaims],
) -> tuple[AreaStory, ...]:
    """The story of every repair area that is told, in order of time.

    ``numbers`` are those of the photos shown before them, and have their own afterwards.
    """
    areas = in_order_of_time(record)
    told = [area for area in areas if not choices.areas or area.id in choices.areas]
    shown = _shown_by_area(record, told, numbers, choices, claims)
    rows = {row.key: row for row in by_area.rows} if by_area else {}
    currency = by_area.currency if by_area else record.car.currency
    made = []
    for number, area in enumerate(areas, 1):
        if area in told:
            figures = _figures(rows.get(str(area.id)), currency, record, choices)
            story = _story(record, area, number, shown[area.id], figures)
            found = claims.get(area.id, AreaClaims(area.id, (), ()))
            made.append(_cut(story, found, numbers, record, choices))
    return tuple(made)


def _cut(
    story: AreaStory,
    found: AreaClaims,
    numbers: Mapping[PhotoId, int],
    record: Record,
    choices: Choices,
) -> AreaStory:
    """A story with its claims, and without the parts that the choices leave out."""
    has_claims = choices.has(Part.CLAIMS)
    has_readings = choices.has(Part.READINGS)
    metal = story.metal
    return replace(
        story,
        claims=stated(story.number, found, numbers, receipt_numbers(record), choices)
        if has_claims
        else (),
        left_out=left_out(found) if has_claims else 0,
        steps=() if has_claims else story.steps,
        entries=story.entries if choices.has(Part.NOTES) else (),
        bought=story.bought if choices.has(Part.RECEIPTS) else (),
        metal=metal if has_readings else replace(metal, measured=(), diagonals=()),
    )


def receipt_numbers(record: Record) -> dict[int, int]:
    """The number each receipt has in the document: 1 for the earliest."""
    ordered = sorted(record.receipts, key=lambda receipt: receipt.when)
    return {receipt.id: number for number, receipt in enumerate(ordered, 1)}


def shown_photo(
    photo: Photo, number: int, role: Role | None, place: str, corrected: Collection[CameraId] = ()
) -> Shown:
    """A photo as the pages show it, with its date, how that is known, and words in its place.

    ``corrected`` are the cameras whose clock was put right.
    """
    date = spoken(photo.when) if photo.when else "no date"
    said = sentence(excerpt(photo.caption, 300)) or f"Photo of {place}."
    head = f"{role.value.capitalize()}: " if role else ""
    known = known_by(photo, corrected)
    return Shown(number, photo, role, date, known, f"{head}{said} {date}.")


def _story(
    record: Record, area: Area, number: int, shown: tuple[Shown, ...], figures: tuple[Labelled, ...]
) -> AreaStory:
    receipts = [receipt for receipt in record.receipts if _shared_to(receipt, area.id)]
    minutes = sum(
        work.minutes for work in record.work if any(s.area_id == area.id for s in work.shares)
    )
    evidence = (*photo_sentences(shown), receipt_sentence(receipts), _worked(record, area.id))
    metal = metalwork(record, area)
    return AreaStory(
        number=number,
        area_id=area.id,
        name=area.name.strip() or "Unnamed repair area",
        panels=_panels(record, area.panel_ids),
        standing=_standing(area, record.car.stages),
        found=sentence(area.found),
        done=sentence(area.done),
        steps=_steps(area, shown, put_right(record.cameras)),
        entries=_entries(record.entries, area.id),
        shown=shown,
        bought=_bought(record, receipts, area.id),
        figures=figures,
        evidence=tuple(text for text in evidence if text),
        lacking=lacking_sentences(shown, len(receipts), minutes),
        cautions=warned(dict.fromkeys((*area.cautions, *metal.cautions))),
        metal=metal,
    )


def _panels(record: Record, ids: Sequence[PanelId]) -> str:
    labels = {panel.id: panel.label for panel in record.drawing.panels}
    known = [labels[panel_id] for panel_id in ids if panel_id in labels]
    return "; ".join(known) or "on no panel of the drawing"


def _standing(area: Area, stages: Sequence[str]) -> str:
    if not area.changes:
        return "No stage is recorded"
    last = area.changes[-1]
    date = spoken(last.when)
    if stages and last.stage == stages[-1]:
        return f"{last.stage.capitalize()}, {date}"
    return f"Not finished: {last.stage}, {date}"


def _steps(area: Area, shown: Sequence[Shown], corrected: Collection[CameraId]) -> tuple[Step, ...]:
    return tuple(
        Step(
            spoken(change.when),
            change.stage.capitalize(),
            sentence(change.note),
            behind(change.when, shown, corrected),
        )
        for change in area.changes
    )


def _entries(entries: Iterable[Entry], area_id: AreaId) -> tuple[Moment, ...]:
    ours = sorted((e for e in entries if e.area_id == area_id), key=lambda entry: entry.when)
    return tuple(Moment(spoken(entry.when), "", entry.text.strip()) for entry in ours)


def _shared_to(receipt: Receipt, area_id: AreaId) -> bool:
    return any(share.area_id == area_id for line in receipt.lines for share in line.shares)


def _bought(record: Record, receipts: Sequence[Receipt], area_id: AreaId) -> tuple[Bought, ...]:
    numbers = receipt_numbers(record)
    rows = [
        Bought(
            numbers[receipt.id],
            receipt.supplier.strip() or "no supplier",
            spoken(receipt.when),
            shortened(
                [
                    line.text.strip() or line.category.value
                    for line in receipt.lines
                    if any(share.area_id == area_id for share in line.shares)
                ],
                4,
            ),
            f"paper {receipt.paper.value}",
        )
        for receipt in receipts
    ]
    return tuple(sorted(rows, key=lambda row: row.number))


def _worked(record: Record, area_id: AreaId) -> str:
    """Who worked on an area; time shared with other areas is said to be so."""
    alone: dict[str, int] = defaultdict(int)
    together = 0
    for work in record.work:
        if any(share.area_id == area_id for share in work.shares):
            alone[work.person.strip() or "somebody not named"] += 1
            together += len({share.area_id for share in work.shares}) > 1
    if not alone:
        return ""
    days = sum(alone.values())
    shared = f", {together:,} of them shared with other repair areas" if together else ""
    return f"Work by {listed(sorted(alone))} on {days:,} {'day' if days == 1 else 'days'}{shared}."


def _figures(
    row: CostRow | None, currency: str, record: Record, choices: Choices
) -> tuple[Labelled, ...]:
    if row is None:
        return ()
    figures = []
    has_money = choices.has(Part.MONEY) and Private.PRICES not in record.withheld
    if row.money and has_money:
        figures.append(Labelled("spent", format_money(row.money, currency)))
    if row.minutes and choices.has(Part.HOURS):
        figures.append(Labelled("worked", hours(row.minutes)))
    if row.unproven and has_money:
        figures.append(Labelled("of it without paper", format_money(row.unproven, currency)))
    return tuple(figures)


def _photos_by_area(record: Record) -> Mapping[AreaId, list[Photo]]:
    by_id = {photo.id: photo for photo in record.photos}
    grouped: dict[AreaId, list[Photo]] = defaultdict(list)
    for chosen in record.area_photos:
        if chosen.photo_id in by_id:
            grouped[chosen.area_id].append(by_id[chosen.photo_id])
    return grouped


def _shown_by_area(
    record: Record,
    areas: Sequence[Area],
    numbers: dict[PhotoId, int],
    choices: Choices,
    claims: Mapping[AreaId, AreaClaims],
) -> dict[AreaId, tuple[Shown, ...]]:
    by_id = {photo.id: photo for photo in record.photos}
    chosen: dict[AreaId, list[AreaPhoto]] = defaultdict(list)
    for row in record.area_photos:
        if row.photo_id in by_id:
            chosen[row.area_id].append(row)
    shown: dict[AreaId, tuple[Shown, ...]] = {}
    corrected = put_right(record.cameras)
    for area in areas:
        found = claims.get(area.id, AreaClaims(area.id, (), ()))
        place = area.name.strip() or "the car"
        shown[area.id] = tuple(
            shown_photo(
                by_id[row.photo_id],
                numbers.setdefault(row.photo_id, len(numbers) + 1),
                row.role,
                place,
                corrected,
            )
            for row in few(chosen[area.id], found, choices.photos)
        )
    return shown
