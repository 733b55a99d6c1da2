"""From the whole record to the document: what is said, in which order, under which number."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from journal.domain.car import Car, MilestoneKind
from journal.domain.claims import AreaClaims, all_claims
from journal.domain.costs import CostSummary, CostTable
from journal.domain.cuts import Choices, Cut, Part, usual
from journal.domain.evidence import put_right
from journal.domain.gaps import Gap, GapKind
from journal.domain.ids import AreaId, PhotoId
from journal.domain.record import Record
from journal.domain.vin import hint
from journal.domain.when import spoken
from journal.dossier import cover, openings, sums
from journal.dossier.cautions import gathered
from journal.dossier.document import (
    AreaStory,
    ChartShown,
    Dossier,
    Grid,
    Labelled,
    Lack,
    Listed,
    Moment,
    Shown,
)
from journal.dossier.gap_weights import ONLY_UNTIDY
from journal.dossier.metal_map import metal_map
from journal.dossier.method import method
from journal.dossier.standing import marks, was
from journal.dossier.story import in_order_of_time, receipt_numbers, stories
from journal.dossier.tables import condition, people, remaining, values
from journal.dossier.words import known_by, sentence


@dataclass(frozen=True, slots=True)
class Beside:
    """What a dossier holds beside the record: each made by who knows how, empty for none.

    ``withheld`` are sentences on what was taken out of the record, ``estimate`` what was foreseen
    against what came. ``lost`` are photos whose original isn't there, so that they show nothing.
    """

    withheld: tuple[str, ...] = ()
    charts: tuple[ChartShown, ...] = ()
    estimate: Grid | None = None
    lost: frozenset[PhotoId] = frozenset()


def compose(
    record: Record,
    summary: CostSummary,
    tables: Sequence[CostTable],
    gaps: Sequence[Gap],
    made_on: date,
    program_version: str,
    choices: Choices | None = None,
    beside: Beside | None = None,
) -> Dossier:
    """The dossier of ``record``, which is redacted already where anything is withheld.

    ``summary`` and ``tables`` are the ledger's: a table by area gives each repair area its
    figures, and every table given is printed. ``gaps`` are printed in the order given. Without
    ``choices`` it holds everything. The same arguments always give the same dossier.
    """
    choices = choices or usual(Cut.OWN)
    has = choices.has
    beside = beside or Beside()
    claims = all_claims(record, beside.lost)
    areas = in_order_of_time(record)
    opening = openings.opening(record, choices)
    told = stories(record, sums.table_by(tables, "area"), opening.numbers, choices, claims)
    shown = _once(opening, told)
    made = Dossier(
        car=record.car,
        made_on=made_on,
        program_version=program_version,
        choices=choices,
        subtitle=cover.subtitle(record.car),
        period=cover.period(record),
        cover=opening.cover,
        figures=cover.figures(record, summary, len(shown), choices),
        identity=_identity(record.car) if has(Part.IDENTITY) else (),
        milestones=_milestones(record) if has(Part.MILESTONES) else (),
        drawing=record.drawing,
        marks=marks(record, areas) if has(Part.DRAWING) else (),
        areas=told if has(Part.AREAS) else (),
        notes=_notes(record) if has(Part.NOTES) else (),
        costs=sums.costs(record, summary, tables, areas, choices),
        lacks=_lacks(gaps, _linked(record, choices), choices.cut) if has(Part.GAPS) else (),
        cautions=gathered((area.number, area.cautions) for area in told) if has(Part.AREAS) else (),
        method=method(record, shown, program_version, told, choices),
        views=opening.views,
        pairs=opening.pairs,
        others=_others(record, shown) if choices.cut is Cut.OWN else (),
    )
    return _with_the_rest(made, record, claims, beside)


def _with_the_rest(
    made: Dossier, record: Record, claims: Mapping[AreaId, AreaClaims], beside: Beside
) -> Dossier:
    """It with the tables and drawings that only some readers get."""
    choices, has = made.choices, made.choices.has
    areas = in_order_of_time(record)
    told = [area.id for area in areas if not choices.areas or area.id in choices.areas]
    return replace(
        made,
        was=was(record, areas) if has(Part.DRAWING) else None,
        condition=condition(record, areas, claims, choices) if has(Part.CONDITION) else None,
        metal_map=metal_map(record, areas, told) if has(Part.METAL) else None,
        remaining=remaining(record, areas) if has(Part.REMAINING) else (),
        people=people(record) if has(Part.PEOPLE) else None,
        estimate=beside.estimate if has(Part.ESTIMATE) else None,
        values=values(record) if has(Part.VALUES) else (),
        charts=beside.charts,
        withheld=beside.withheld,
    )


def _once(opening: openings.Opening, told: Sequence[AreaStory]) -> tuple[Shown, ...]:
    rows = [*opening.shown, *(shown for story in told for shown in story.shown)]
    return tuple({row.photo.id: row for row in rows}.values())


def _linked(record: Record, choices: Choices) -> Mapping[int, int]:
    """The numbers of receipts where they are listed, none where they aren't."""
    return receipt_numbers(record) if choices.has(Part.RECEIPTS) else {}


def _others(record: Record, shown: Sequence[Shown]) -> tuple[Listed, ...]:
    """The journal's photos that are on no page, in order of time."""
    ids = {row.photo.id for row in shown}
    corrected = put_right(record.cameras)
    return tuple(
        Listed(
            spoken(photo.when) if photo.when else "no date",
            known_by(photo, corrected),
            photo.name,
            photo.sha256,
        )
        for photo in record.photos
        if photo.id not in ids
    )


def _identity(car: Car) -> tuple[Labelled, ...]:
    lengths = ((car.wheelbase_mm, "Wheelbase"), (car.length_mm, "Length"))
    rows = (
        ("Maker", car.maker),
        ("Model", car.model),
        ("Year", car.year),
        ("Body", "" if car.body == "blank" else car.body),
        ("Chassis number", _chassis(car.chassis_number)),
        ("Engine number", car.engine_number),
        ("Registration", car.registration),
        ("Colour", car.colour),
        *((label, f"{value:,} mm") for value, label in lengths if value),
        ("Owner", car.owner),
    )
    return tuple(Labelled(label, value.strip()) for label, value in rows if value.strip())


def _chassis(number: str) -> str:
    """A chassis number, with what its form says of it where it says anything."""
    found = hint(number)
    return f"{number.strip()}\n{found.words}" if found else number


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


def _lacks(gaps: Sequence[Gap], receipts: Mapping[int, int], cut: Cut) -> tuple[Lack, ...]:
    """Gaps by kind in the order given; a receipt's has its number in the document before it.

    For a reader who isn't the owner, those that are only untidy are told in one.
    """
    small = [] if cut is Cut.OWN else [gap for gap in gaps if gap.weight <= ONLY_UNTIDY]
    kinds: dict[GapKind, list[Labelled]] = {}
    for gap in gaps:
        if gap not in small:
            number = receipts.get(gap.target_id or 0) if gap.target_kind == "receipt" else None
            title = f"R{number}, {gap.title}" if number else gap.title
            kinds.setdefault(gap.kind, []).append(Labelled(title, gap.detail))
    told = [
        Lack(f"{kind.value[0].upper()}{kind.value[1:]}", tuple(items))
        for kind, items in kinds.items()
    ]
    if small:
        detail = "They matter to the owner’s own order, and to no statement made here."
        told.append(Lack("Smaller things", (Labelled(_counted(small), detail),)))
    return tuple(told)


def _counted(gaps: Sequence[Gap]) -> str:
    """Gaps by kind in a few words: one by its title, more by their number."""
    kinds: dict[GapKind, list[Gap]] = {}
    for gap in gaps:
        kinds.setdefault(gap.kind, []).append(gap)
    return "; ".join(
        own[0].title if len(own) == 1 else f"{len(own):,} {kind.value}"
        for kind, own in kinds.items()
    )
