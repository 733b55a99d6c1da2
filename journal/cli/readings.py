"""restoration-journal readings: what was measured."""

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

import click

from journal.actions import readings as actions
from journal.actions.journals import open_journal
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, table, tell
from journal.domain.diagonals import compare_diagonals, pair_diagonals
from journal.domain.metal_words import number, signed
from journal.domain.readings import Compared, Measure, Reading, compare, remark, series


@click.command("readings")
@journal_argument
@json_option
def command(journal: Path, as_json: bool) -> None:
    """Read what was measured, before against after.

    With --json: a list of objects, one a number read, with measure, kind, unit, place (from 1),
    value, date (EDTF), moment ("before", "during" or "after"), instrument, note, target, tolerance
    and outside (whether it is outside what the owner set). Numbers are text, as they were written.
    """
    with open_journal(journal, read_only=True) as session:
        measures, taken = actions.measures(session), actions.readings(session)
    if as_json:
        answer([_row(m, r) for m in measures for r in series(m, taken)])
        return
    rows = [_cells(m, found) for m in measures for found in compare(m, taken)]
    table(("measure", "before", "after", "difference", ""), rows, right=frozenset({1, 2, 3}))
    _tell_pairs(measures, taken)


def _row(measure: Measure, reading: Reading) -> dict[str, Any]:
    return {
        "measure": measure.name,
        "kind": measure.kind.value,
        "unit": measure.unit,
        "place": reading.point + 1,
        "value": str(reading.value),
        "date": reading.when.edtf,
        "moment": reading.moment.value,
        "instrument": reading.instrument or None,
        "note": reading.note or None,
        "target": None if measure.target is None else str(measure.target),
        "tolerance": None if measure.tolerance is None else str(measure.tolerance),
        "outside": bool(remark(measure, reading.value)),
    }


def _cells(measure: Measure, found: Compared) -> tuple[str, ...]:
    place = "" if measure.places == 1 else f", place {found.point + 1}"
    last = found.after or found.before
    difference = found.difference
    return (
        f"{measure.name}{place}",
        number(found.before.value) if found.before else "",
        number(found.after.value) if found.after else "",
        "" if difference is None else f"{signed(difference)} {measure.unit}",
        remark(measure, last.value) if last else "not read yet",
    )


def _tell_pairs(measures: Sequence[Measure], taken: Iterable[Reading]) -> None:
    known = tuple(taken)
    for one, other in pair_diagonals(measures):
        pair = compare_diagonals(one, other, known)
        if pair.change is not None:
            tell(
                f"{one.name} against {other.name}: the difference between them changed by"
                f" {signed(pair.change)} {one.unit}."
            )
