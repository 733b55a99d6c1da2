"""The tables a reader of one sort asks for: condition, what remains, people, values, estimate."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from journal.domain.areas import Area
from journal.domain.claims import AreaClaims
from journal.domain.cuts import Choices
from journal.domain.evidence import Grade
from journal.domain.ids import AreaId
from journal.domain.metal_words import metres
from journal.domain.money import format_money
from journal.domain.outcomes import AreaOutcome, Outcome
from journal.domain.people import PersonKind, same_name
from journal.domain.private_words import Private
from journal.domain.record import Record
from journal.domain.seam_sums import sums
from journal.domain.seams import SLACK_MM
from journal.domain.when import spoken
from journal.dossier.document import Grid, Labelled
from journal.dossier.words import hours, sentence

#: Grades that don't rest on what the owner says of the thing itself.
_SHOWN = (Grade.CAMERA, Grade.PAPER, Grade.INSTRUMENT, Grade.PHOTO)


def condition(
    record: Record, areas: Sequence[Area], claims: Mapping[AreaId, AreaClaims], choices: Choices
) -> Grid | None:
    """Each repair area: where it stands, since when, and how many of its claims something shows."""
    rows = []
    for number, area in enumerate(areas, 1):
        if choices.areas and area.id not in choices.areas:
            continue
        found = claims.get(area.id, AreaClaims(area.id, (), ())).claims
        shown = sum(any(p.grade in _SHOWN for p in claim.pieces) for claim in found)
        since = spoken(area.changes[-1].when) if area.changes else "–"
        stage = area.stage or "no stage recorded"
        rows.append((f"{number}  {area.name}", stage, since, f"{shown} of {len(found)}"))
    if not rows:
        return None
    finished = sum(bool(record.car.stages) and a.stage == record.car.stages[-1] for a in areas)
    return Grid(
        "Repair areas as they stand",
        ("Repair area", "Stage", "Since", "Claims shown"),
        tuple(rows),
        (f"{len(rows)} repair areas", f"{finished} finished", "", ""),
    )


def remaining(record: Record, areas: Sequence[Area]) -> tuple[Labelled, ...]:
    """What is still to be done, as far as the record knows: stages, seams, parts wanted."""
    return (*_unfinished(record, areas), *_parts(record))


def _unfinished(record: Record, areas: Sequence[Area]) -> Iterator[Labelled]:
    stages = record.car.stages
    for number, area in enumerate(areas, 1):
        name = f"{number}  {area.name}"
        seams = [seam for seam in record.seams if seam.area_id == area.id]
        drawn = sums(seams, record.seam_changes)
        left = drawn.planned - drawn.welded
        if stages and area.stage != stages[-1]:
            since = f", {spoken(area.changes[-1].when)}" if area.changes else ""
            said = f"Last stage recorded: {area.stage or 'none'}{since}."
            more = f" {metres(left)} of seam are not welded." if left > SLACK_MM else ""
            yield Labelled(name, said + more)
        elif left > SLACK_MM:
            yield Labelled(name, f"Finished, but {metres(left)} of its seams are not welded.")


def _parts(record: Record) -> Iterator[Labelled]:
    for part in record.wanted:
        if part.is_open:
            quantity = f"{part.quantity:f} × " if part.quantity != 1 else ""
            yield Labelled(f"{quantity}{part.text}", sentence(f"part {part.state.value}"))


def people(record: Record) -> Grid | None:
    """Who worked, on how many days and for how long; who was paid stands on receipts."""
    days: dict[str, set[str]] = defaultdict(set)
    minutes: dict[str, int] = defaultdict(int)
    for work in record.work:
        name = work.person.strip() or "somebody not named"
        days[name].add(work.when.edtf)
        minutes[name] += work.minutes
    if not minutes:
        return None
    kinds = {same_name(person.name): person.kind for person in record.people}
    rows = [
        (name, _kind(kinds.get(same_name(name))), f"{len(days[name]):,}", hours(minutes[name]))
        for name in sorted(minutes, key=lambda name: -minutes[name])
    ]
    total = ("Together", "", "", hours(sum(minutes.values())))
    return Grid("Who worked on it", ("Person", "Hours", "Days", "Worked"), tuple(rows), total)


def _kind(kind: PersonKind | None) -> str:
    return "paid" if kind is PersonKind.PAID else "own"


def values(record: Record) -> tuple[Grid, ...]:
    """Valuations and comparable cars that the owner entered; nothing where prices are withheld."""
    if Private.PRICES in record.withheld:
        return ()
    grids = []
    if record.valuations:
        rows = [
            (
                row.valuer,
                row.basis.value,
                spoken(row.when),
                format_money(row.amount, record.car.currency),
            )
            for row in record.valuations
        ]
        columns = ("Valued by", "Basis", "Date", "Value")
        grids.append(Grid("Valuations", columns, tuple(rows), ()))
    if record.comparables:
        rows = [
            (
                _comparable(row.text, row.source),
                row.kind.value,
                spoken(row.when),
                format_money(row.price, row.currency),
            )
            for row in record.comparables
        ]
        columns = ("Another car", "Price", "Date", "")
        grids.append(Grid("Comparable cars that the owner found", columns, tuple(rows), ()))
    return tuple(grids)


def _comparable(text: str, source: str) -> str:
    return f"{text.strip()} ({source.strip()})" if source.strip() else text.strip()


def foreseen(
    held: Outcome, survey: str, currency: str, order: Mapping[AreaId, int], *, has_money: bool
) -> Grid | None:
    """What a survey expected of each repair area, against what it came to; None without areas.

    ``order`` are the numbers of the areas in this document.
    """
    rows = sorted(
        (row for row in held.areas if row.area_id in order), key=lambda r: order[r.area_id]
    )
    if not rows:
        return None

    def cells(name: str, sums: tuple[float, float, float, float]) -> tuple[str, ...]:
        money = tuple(format_money(round(value), currency) if value else "–" for value in sums[:2])
        time = tuple(hours(round(value)) if value else "–" for value in sums[2:])
        return (name, *(money if has_money else ()), *time)

    def figures(row: AreaOutcome) -> tuple[float, float, float, float]:
        return row.expected, row.money, row.expected_minutes, row.minutes

    told = [
        cells(
            f"{order[row.area_id]}  {row.name}{'' if row.finished else ' (not finished)'}",
            figures(row),
        )
        for row in rows
    ]
    whole = [sum(column) for column in zip(*map(figures, rows), strict=True)]
    heads = ("Expected", "Came to") if has_money else ()
    return Grid(
        survey,
        ("Repair area", *heads, "Expected, hours", "Worked"),
        tuple(told),
        cells("Together", (whole[0], whole[1], whole[2], whole[3])),
    )
