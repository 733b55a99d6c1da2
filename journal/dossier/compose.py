"""From the whole record to the document: what is said, in which order, under which number."""

from collections.abc import Mapping, Sequence
from datetime import date

from journal.domain.areas import Area
from journal.domain.car import Car, MilestoneKind
from journal.domain.costs import CostSummary, CostTable
from journal.domain.gaps import Gap, GapKind
from journal.domain.record import Record
from journal.domain.when import spoken
from journal.dossier import cover, sums
from journal.dossier.cautions import gathered
from journal.dossier.document import (
    AreaStory,
    Dossier,
    Labelled,
    Lack,
    Moment,
    PanelMark,
    Shown,
)
from journal.dossier.method import method
from journal.dossier.story import in_order_of_time, receipt_numbers, shown_photo, stories
from journal.dossier.words import sentence


def compose(
    record: Record,
    summary: CostSummary,
    tables: Sequence[CostTable],
    gaps: Sequence[Gap],
    made_on: date,
    program_version: str,
) -> Dossier:
    """The dossier of ``record``.

    ``summary`` and ``tables`` are the ledger's: a table by area gives each repair area its
    figures, and every table given is printed. ``gaps`` are printed in the order given. The same
    arguments always give the same dossier.
    """
    best = cover.cover_photo(record)
    title = record.car.title.strip() or "the car"
    front = shown_photo(best, 1, None, title) if best else None
    areas = in_order_of_time(record)
    told = stories(record, sums.table_by(tables, "area"), best.id if best else None)
    shown = _once(front, told)
    return Dossier(
        car=record.car,
        made_on=made_on,
        program_version=program_version,
        subtitle=cover.subtitle(record.car),
        period=cover.period(record),
        cover=front,
        figures=cover.figures(record, summary, len(shown)),
        identity=_identity(record.car),
        milestones=_milestones(record),
        drawing=record.drawing,
        marks=_marks(record, areas),
        areas=told,
        notes=_notes(record),
        costs=sums.costs(record, summary, tables, areas),
        lacks=_lacks(gaps, receipt_numbers(record)),
        cautions=gathered((area.number, area.cautions) for area in told),
        method=method(record, shown, program_version),
    )


def _once(front: Shown | None, told: Sequence[AreaStory]) -> tuple[Shown, ...]:
    rows = [front] if front else []
    rows += [shown for story in told for shown in story.shown]
    return tuple({row.photo.id: row for row in rows}.values())


def _identity(car: Car) -> tuple[Labelled, ...]:
    lengths = ((car.wheelbase_mm, "Wheelbase"), (car.length_mm, "Length"))
    rows = (
        ("Maker", car.maker),
        ("Model", car.model),
        ("Year", car.year),
        ("Body", "" if car.body == "blank" else car.body),
        ("Chassis number", car.chassis_number),
        ("Engine number", car.engine_number),
        ("Registration", car.registration),
        ("Colour", car.colour),
        *((label, f"{value:,} mm") for value, label in lengths if value),
        ("Owner", car.owner),
    )
    return tuple(Labelled(label, value.strip()) for label, value in rows if value.strip())


def _milestones(record: Record) -> tuple[Moment, ...]:
    """Turning points in order of date; one of no kind of its own is called by its note."""
    rows = []
    for milestone in sorted(record.milestones, key=lambda m: m.when):
        title, note = milestone.kind.value.capitalize(), sentence(milestone.note)
        if milestone.kind is MilestoneKind.OTHER and note:
            title, note = note.rstrip("."), ""
        rows.append(Moment(spoken(milestone.when), title, note))
    return tuple(rows)


def _notes(record: Record) -> tuple[Moment, ...]:
    """The owner's notes that belong to no repair area, in order of date."""
    areas = {area.id for area in record.areas}
    labels = {panel.id: panel.label for panel in record.drawing.panels}
    loose = sorted((e for e in record.entries if e.area_id not in areas), key=lambda e: e.when)
    return tuple(
        Moment(spoken(e.when), labels.get(e.panel_id, "") if e.panel_id else "", e.text.strip())
        for e in loose
    )


def _marks(record: Record, areas: Sequence[Area]) -> tuple[PanelMark, ...]:
    """Every panel with a repair area, by the least advanced of its areas."""
    stages = record.car.stages
    rank = {stage: place for place, stage in enumerate(stages)}
    marks = []
    for panel in record.drawing.panels:
        on_panel = [(n, a) for n, a in enumerate(areas, 1) if panel.id in a.panel_ids]
        if on_panel:
            least = min((a for _, a in on_panel), key=lambda a: rank.get(a.stage, -1))
            marks.append(PanelMark(panel.id, least.stage, tuple(n for n, _ in on_panel)))
    return tuple(marks)


def _lacks(gaps: Sequence[Gap], receipts: Mapping[int, int]) -> tuple[Lack, ...]:
    """Gaps by kind in the order given; a receipt's has its number in the document before it."""
    kinds: dict[GapKind, list[Labelled]] = {}
    for gap in gaps:
        number = receipts.get(gap.target_id or 0) if gap.target_kind == "receipt" else None
        title = f"R{number}, {gap.title}" if number else gap.title
        kinds.setdefault(gap.kind, []).append(Labelled(title, gap.detail))
    return tuple(
        Lack(f"{kind.value[0].upper()}{kind.value[1:]}", tuple(items))
        for kind, items in kinds.items()
    )
