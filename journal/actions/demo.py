"""The demo journal: a made-up car, recorded by the very acts a person uses."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import datetime, time, timedelta
from pathlib import Path
from typing import TYPE_CHECKING

from journal.actions import (
    areas,
    cars,
    clockings,
    drawings,
    hours,
    metalwork,
    people,
    photo_hours,
    photos,
    pins,
    readings,
    receipts,
)
from journal.actions.add_photos import add_photos
from journal.actions.demo_pairs import record_pairs
from journal.actions.demo_readers import record_choices
from journal.actions.demo_survey import record_survey
from journal.actions.demo_worth import record_worth
from journal.actions.journals import new_journal
from journal.actions.session import Session
from journal.domain.drawing import Drawing, Panel
from journal.domain.errors import Cancelled, JournalError
from journal.domain.ids import (
    AreaId,
    LineId,
    MeasureId,
    PanelId,
    PersonId,
    PhotoId,
    ReadingId,
    ReceiptId,
    SeamId,
    SightingId,
    ViewId,
    WantedId,
    WorkId,
)
from journal.domain.people import Person
from journal.domain.photos import Role
from journal.domain.progress import Context, Silent
from journal.domain.readings import Reading
from journal.domain.receipts import Line, Receipt, Share
from journal.domain.seams import length
from journal.domain.shapes import Point, bounds
from journal.domain.wanted import Sighting, Wanted
from journal.domain.when import When, parse_edtf
from journal.domain.work import Work
from journal.files.scratch import scratch_folder

if TYPE_CHECKING:
    from journal.demo.scenario import Scenario
    from journal.demo.story import AreaStory, ReceiptStory, WorkStory
    from journal.demo.write import DemoPicture

#: Of the pictures that belong on a panel, every so-manieth was never pinned.
_LEFT_LOOSE = 23


def make_demo(folder: Path, context: Context | None = None, photos: int | None = None) -> None:
    """Make the journal of the Halden Rook in ``folder``, with ``photos`` drawn pictures or all.

    Raises:
        JournalError: the folder holds something already, or a file can't be written.
        Cancelled: the person asked to stop; what was recorded until then stays.
    """
    # NumPy and the drawing of pictures are needed here alone.
    from journal.demo.scenario import SCENARIO
    from journal.demo.write import chosen, write_papers, write_pictures

    told = context or Silent()
    with new_journal(folder, SCENARIO.car) as session, scratch_folder("demo") as scratch:
        try:
            papers = write_papers(scratch / "papers", SCENARIO.receipts, told)
            area_ids = _record_story(session, SCENARIO, papers, told)
            pictures = write_pictures(scratch / "photos", told, photos)
        except OSError as error:
            raise JournalError(f"The demo's pictures can't be drawn: {error}.") from error
        numbers = _add_pictures(session, pictures, area_ids, told)
        record_pairs(session, chosen(photos), [numbers[p.path] for p in pictures], area_ids)


# --- what is written


def _record_story(
    session: Session, story: Scenario, papers: Sequence[Path | None], context: Context
) -> dict[str, AreaId]:
    for stone in story.milestones:
        cars.add_milestone(session, stone.kind, parse_edtf(stone.when), stone.note)
    area_ids: dict[str, AreaId] = {}
    for done, area in enumerate(story.areas):
        _tell(context, done, len(story.areas), "Writing down the repair areas")
        area_ids[area.key] = _record_area(session, area)
    for done, (receipt, paper) in enumerate(zip(story.receipts, papers, strict=True)):
        _tell(context, done, len(story.receipts), "Recording the receipts")
        receipts.record_receipt(session, _receipt(receipt, area_ids), [paper] if paper else [])
    _record_people(session)
    for done, day in enumerate(story.work):
        _tell(context, done, len(story.work), "Recording the hours")
        _record_day(session, day, _shares(day.shares, area_ids))
    _record_metal(session, story, area_ids)
    record_survey(session, area_ids, _Spots(drawings.drawing(session)).of)
    _record_wanted(session, area_ids)
    record_worth(session)
    for entry in story.entries:
        panel = drawings.find_panel(session, entry.panel).id if entry.panel else None
        area_id = area_ids[entry.area] if entry.area else None
        areas.add_entry(session, parse_edtf(entry.when), entry.text, area_id, panel)
    return area_ids


def _record_metal(session: Session, story: Scenario, area_ids: dict[str, AreaId]) -> None:
    """The new metal with its seams, the anchor points, and what was measured."""
    from journal.demo import metalwork as told

    drawing = drawings.drawing(session)
    for anchor in told.anchors_of(drawing):
        metalwork.add_anchor(session, anchor)
    for area in story.areas:
        patch = told.patch_of(area, area_ids[area.key], drawing)
        if patch is None:
            continue
        metalwork.add_patch(session, patch)
        for row in told.seams_of(area, patch):
            made = metalwork.add_seam(session, row.seam).made
            whole = length(row.seam)
            for state, when, share in row.days:
                seam_id = SeamId(made or 0)
                metalwork.move_seam(session, seam_id, state, when, part=(0.0, whole * share))
    for measure, rounds in told.measures_of(drawing):
        made = readings.add_measure(session, measure).made
        for taken in rounds:
            numbers = [
                Reading(
                    ReadingId(0), MeasureId(made or 0), place, value, taken.when, taken.moment,
                    taken.instrument,
                )
                for place, value in enumerate(taken.values)
            ]  # fmt: skip
            readings.record_readings(session, numbers)


def _record_wanted(session: Session, area_ids: dict[str, AreaId]) -> None:
    """The parts wanted, with the lines of receipts that some of them became."""
    from journal.actions import wanted
    from journal.demo.wanted import WANTED

    lines = {
        (receipt.supplier, line.text): line.id
        for receipt in receipts.receipts(session)
        for line in receipt.lines
    }
    for story in WANTED:
        part = Wanted(
            id=WantedId(0),
            text=story.text,
            quantity=story.quantity,
            panel_id=drawings.find_panel(session, story.panel).id if story.panel else None,
            area_id=area_ids[story.area] if story.area else None,
            category=story.category,
            condition=story.condition,
            price_limit=story.limit,
            new_price=story.new_price,
            note=story.note,
        )
        made = WantedId(wanted.add_wanted(session, part).made or 0)
        for state, day in story.states:
            wanted.move_wanted(session, [made], state, parse_edtf(day))
        for seen in story.sightings:
            when = parse_edtf(seen.day)
            sighting = Sighting(
                SightingId(0), made, seen.place, seen.price, seen.currency, when, seen.note
            )
            wanted.add_sighting(session, sighting)
        if story.became is not None:
            wanted.tie_wanted(session, made, lines[story.became])


def _record_people(session: Session) -> None:
    from journal.demo.crew import CREW

    for one in CREW:
        people.save_person(session, Person(PersonId(0), one.name, one.kind, one.rate, one.note))


def _record_day(session: Session, day: WorkStory, shares: tuple[Share, ...]) -> None:
    """A day's hours as they were written down, or by the clock."""
    from journal.demo.crew import CLOCKED
    from journal.demo.life import OWNER

    begun = CLOCKED.get(day.day) if day.person == OWNER else None
    if begun is None:
        when = When.on(day.day)
        hours.record_work(session, Work(WorkId(0), when, day.minutes, day.person, day.note, shares))
        return
    start = clockings.local(datetime.combine(day.day, time.fromisoformat(begun)))
    clockings.clock_on(session, day.person, shares, day.note, start)
    ended = start + timedelta(minutes=day.minutes + 2)
    clockings.clock_off(session, clockings.running(session)[0], ended, day.minutes)


def _record_photo_days(session: Session) -> None:
    """Hours that only photos tell of, on the days that nobody wrote any down."""
    from journal.demo.crew import FROM_PHOTOS
    from journal.demo.life import OWNER

    found = tuple(
        photo_hours.PhotoHours(day, OWNER)
        for day in photo_hours.days_without_hours(session)
        if day.day in FROM_PHOTOS
    )
    if found:
        photo_hours.record_photo_hours(session, found)


def _record_area(session: Session, story: AreaStory) -> AreaId:
    panels = [drawings.find_panel(session, label).id for label in story.panels]
    made = areas.add_area(session, story.name, panels, story.found).made
    if made is None:
        raise JournalError(f"The repair area “{story.name}” was not recorded.")
    area_id = AreaId(made)
    area = areas.area(session, area_id)
    areas.change_area(session, replace(area, done=story.done, cautions=story.cautions))
    for stage in story.stages:
        areas.move_to_stage(session, area_id, stage.stage, parse_edtf(stage.when), stage.note)
    return area_id


def _shares(shares: Iterable[tuple[str, int]], area_ids: dict[str, AreaId]) -> tuple[Share, ...]:
    return tuple(Share(area_ids[key], weight) for key, weight in shares)


def _receipt(story: ReceiptStory, area_ids: dict[str, AreaId]) -> Receipt:
    lines = tuple(
        Line(
            id=LineId(0),
            text=line.text,
            quantity=line.quantity,
            amount=line.amount,
            category=line.category,
            condition=line.condition,
            new_price=line.new_price,
            shares=_shares(line.shares, area_ids),
        )
        for line in story.lines
    )
    total = sum(line.amount for line in lines)
    return Receipt(
        id=ReceiptId(0),
        supplier=story.supplier,
        when=When.on(story.day),
        currency=story.currency,
        paper=story.paper,
        printed_total=total if story.form else None,
        lines=lines,
        stands_in=story.stands_in,
        note=story.note,
        rate=story.rate,
    )


# --- what is shown


def _add_pictures(
    session: Session,
    pictures: Sequence[DemoPicture],
    area_ids: dict[str, AreaId],
    context: Context,
) -> dict[Path, PhotoId]:
    report = add_photos(session, [picture.path for picture in pictures], context)
    if report.cancelled:
        raise Cancelled
    if report.refused:
        first = report.refused[0]
        raise JournalError(f"The drawn picture “{first.path.name}” was refused: {first.reason}.")
    numbers = {added.path: added.photo_id for added in (*report.added, *report.already)}
    _put_dates_right(session, pictures, numbers)
    _caption(session, pictures, numbers)
    _pin(session, pictures, numbers, context)
    _choose(session, pictures, numbers, area_ids)
    _record_photo_days(session)
    record_choices(session, area_ids)
    return numbers


def _put_dates_right(
    session: Session, pictures: Sequence[DemoPicture], numbers: dict[Path, PhotoId]
) -> None:
    """The owner's word for the prints, and the true time for the camera whose clock was wrong."""
    for picture in pictures:
        if picture.said:
            photos.set_date(session, [numbers[picture.path]], picture.said)
    for picture in pictures:
        true, shown = picture.true_time, picture.shown_time
        if true is not None and shown is not None and true != shown:
            photos.correct_clock(session, numbers[picture.path], true)
            return


def _caption(
    session: Session, pictures: Sequence[DemoPicture], numbers: dict[Path, PhotoId]
) -> None:
    by_words: dict[str, list[PhotoId]] = defaultdict(list)
    for picture in pictures:
        if picture.caption:
            by_words[picture.caption].append(numbers[picture.path])
    for words, ids in by_words.items():
        photos.set_caption(session, ids, words)


def _pin(
    session: Session,
    pictures: Sequence[DemoPicture],
    numbers: dict[Path, PhotoId],
    context: Context,
) -> None:
    """Pin each day's pictures of a panel at once, as a person pins a sitting; leave a few loose."""
    sittings: dict[tuple[str, str], list[PhotoId]] = defaultdict(list)
    belonging = [picture for picture in pictures if picture.panel]
    for number, picture in enumerate(belonging):
        loose = number % _LEFT_LOOSE == _LEFT_LOOSE // 2 and picture.role is not Role.AFTER
        if not loose:
            day = picture.true_time.date().isoformat() if picture.true_time else ""
            sittings[picture.panel, day].append(numbers[picture.path])
    spots = _Spots(drawings.drawing(session))
    for done, ((label, _), ids) in enumerate(sittings.items()):
        _tell(context, done, len(sittings), "Pinning the pictures")
        panel = drawings.find_panel(session, label)
        view_id, spot = spots.of(panel)
        pins.pin(session, ids, panel.id, view_id=view_id, x=spot.x, y=spot.y)


def _choose(
    session: Session,
    pictures: Sequence[DemoPicture],
    numbers: dict[Path, PhotoId],
    area_ids: dict[str, AreaId],
) -> None:
    chosen: dict[tuple[str, Role], list[PhotoId]] = defaultdict(list)
    for picture in pictures:
        if picture.area and picture.role:
            chosen[picture.area, picture.role].append(numbers[picture.path])
    for (key, role), ids in chosen.items():
        areas.choose_photos(session, area_ids[key], ids, role)


class _Spots:
    """Where on the drawing a pin lands: the roomiest spot of the view that shows a panel best."""

    def __init__(self, drawing: Drawing) -> None:
        from journal.domain.hits import PanelMap

        self._map = PanelMap(drawing)
        self._best: dict[PanelId, tuple[float, ViewId]] = {}
        for shape in drawing.shapes:
            left, top, right, bottom = bounds(shape.shape)
            candidate = ((right - left) * (bottom - top), shape.view_id)
            known = self._best.get(shape.panel_id)
            if known is None or candidate[0] > known[0]:
                self._best[shape.panel_id] = candidate

    def of(self, panel: Panel) -> tuple[ViewId, Point]:
        """The view and the spot on it for a pin on the panel."""
        view_id = self._best[panel.id][1]
        return view_id, self._map.centre(view_id, panel.id)


def _tell(context: Context, done: int, total: int, label: str) -> None:
    context.checkpoint()
    context.report(done, total, label)
