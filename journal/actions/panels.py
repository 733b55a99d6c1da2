"""Everything ever done to a panel."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from journal.actions.panel_metal import metal_done
from journal.actions.session import Session
from journal.domain.areas import Area, Entry
from journal.domain.drawing import Panel
from journal.domain.errors import JournalError
from journal.domain.hours import spoken_hours
from journal.domain.ids import AreaId, PanelId
from journal.domain.photos import Photo
from journal.domain.receipts import Line, Receipt
from journal.domain.wanted import Wanted, WantedState
from journal.domain.when import When
from journal.domain.work import Work, WorkBasis


@dataclass(frozen=True, slots=True)
class Event:
    """One thing that happened to a panel.

    ``kind`` is photos, stage, receipt, work, entry, wanted, seam, patch or reading; ``id`` is the
    number of the photo, area, receipt, work, entry, wanted part, seam, patch or measure.
    """

    when: When | None
    kind: str
    title: str
    detail: str
    id: int


@dataclass(frozen=True, slots=True)
class PanelHistory:
    """A panel's whole story. Receipts come with the lines that were for this panel."""

    panel: Panel
    photos: tuple[Photo, ...]
    areas: tuple[Area, ...]
    receipts: tuple[tuple[Receipt, tuple[Line, ...]], ...]
    work: tuple[Work, ...]
    entries: tuple[Entry, ...]
    events: tuple[Event, ...]


def history(session: Session, panel_id: PanelId) -> PanelHistory:
    """Everything ever done to a panel, in order of date.

    Raises:
        JournalError: there is no such panel.
    """
    journal = session.journal
    panel = next((p for p in journal.drawing.panels() if p.id == panel_id), None)
    if panel is None:
        raise JournalError(f"There is no panel number {panel_id}.")
    photos = journal.photos.on_panel(panel_id)
    areas = journal.areas.on_panel(panel_id)
    ids = frozenset(area.id for area in areas)
    receipts = tuple((r, _lines_for(r, ids)) for r in journal.receipts.for_panel(panel_id))
    work = journal.work.for_panel(panel_id)
    entries = journal.areas.entries_on_panel(panel_id)
    events = [
        *_photo_days(photos),
        *_stages(areas),
        *_bought(receipts),
        *_worked(work),
        *_found(session, panel_id),
        *(Event(e.when, "entry", "Entry", e.text, e.id) for e in entries),
        *_wanted(journal.wanted.for_panel(panel_id)),
        *(
            Event(done.when, done.kind, done.title, done.detail, done.id)
            for done in metal_done(session, panel_id, ids)
        ),
    ]
    events.sort(key=lambda e: e.when.earliest if e.when else datetime.max)
    return PanelHistory(panel, photos, areas, receipts, work, entries, tuple(events))


def _found(session: Session, panel_id: PanelId) -> Iterator[Event]:
    days = {survey.id: survey.when for survey in session.journal.surveys.all()}
    for found in session.journal.surveys.on_panel(panel_id):
        title = f"Surveyed: {found.severity}"
        yield Event(days[found.survey_id], "finding", title, found.text, found.id)


def _lines_for(receipt: Receipt, areas: frozenset[AreaId]) -> tuple[Line, ...]:
    return tuple(line for line in receipt.lines if any(s.area_id in areas for s in line.shares))


def _photo_days(photos: tuple[Photo, ...]) -> Iterator[Event]:
    days: dict[str, list[Photo]] = {}
    for photo in photos:
        days.setdefault(photo.when.edtf[:10] if photo.when else "", []).append(photo)
    for day in days.values():
        title = "1 photo" if len(day) == 1 else f"{len(day)} photos"
        captions = "; ".join(dict.fromkeys(p.caption for p in day if p.caption))
        yield Event(day[0].when, "photos", title, captions, day[0].id)


def _stages(areas: tuple[Area, ...]) -> Iterator[Event]:
    for area in areas:
        for change in area.changes:
            words = {"found": area.found, area.changes[-1].stage: area.done}
            detail = change.note or words.get(change.stage, "")
            yield Event(change.when, "stage", f"{area.name}: {change.stage}", detail, area.id)


def _bought(receipts: tuple[tuple[Receipt, tuple[Line, ...]], ...]) -> Iterator[Event]:
    for receipt, lines in receipts:
        text = "; ".join(line.text for line in lines)
        yield Event(receipt.when, "receipt", f"Bought from {receipt.supplier}", text, receipt.id)


def _wanted(parts: tuple[Wanted, ...]) -> Iterator[Event]:
    """What was fitted, and what is still to be bought, to come or to be fitted."""
    for part in parts:
        title = f"Wanted: {part.text}" if part.is_open else f"Fitted: {part.text}"
        state = part.state.value if part.is_open and part.state is not WantedState.WANTED else ""
        detail = "; ".join(words for words in (state, part.note) if words)
        yield Event(part.since, "wanted", title, detail, part.id)


def _worked(work: tuple[Work, ...]) -> Iterator[Event]:
    for day in work:
        lowest = "At least " if day.basis is WorkBasis.PHOTOS else ""
        title = f"{lowest}{spoken_hours(day.minutes)} by {day.person}"
        yield Event(day.when, "work", title, day.note, day.id)
