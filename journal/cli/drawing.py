"""restoration-journal drawing: the drawing out and in."""

from dataclasses import asdict
from pathlib import Path

import click

from journal.actions.drawings import find_view
from journal.actions.journals import open_journal
from journal.actions.session import Session
from journal.cli.options import journal_argument, json_option
from journal.cli.output import DONE, IN_PART, answer, progress, tell
from journal.domain.errors import JournalError
from journal.domain.ids import ViewId
from journal.domain.tints import TintBy
from journal.domain.when import parse

_FILE = click.Path(path_type=Path)

#: Tint as typed -> what it is.
_TINTS = {
    "hours": TintBy.HOURS,
    "money": TintBy.MONEY,
    "photos": TintBy.PHOTOS,
    "untouched": TintBy.UNTOUCHED,
    "missing": TintBy.MISSING,
}


@click.command("drawing")
@journal_argument
@click.option("--out", type=_FILE, help="Write it: .svg, .png or .pdf; with --years also .gif.")
@click.option("--in", "source", type=_FILE, help="Bring the panels of this SVG file in.")
@click.option("--view", default="", help="One view by its name; else the sheet of all.")
@click.option("--on", "day", default="", help="As it stood on a date, for instance 2016-03.")
@click.option("--plain", is_flag=True, help="Outlines alone, without stages and legend.")
@click.option("--tint", type=click.Choice(list(_TINTS)), help="By this, in place of stages.")
@click.option("--years", is_flag=True, help="How it changed: .gif or .webp moves, else year-ends.")
@click.option("--mm-per-unit", type=float, help="How long a unit of the SVG file is.")
@json_option
def command(
    journal: Path,
    out: Path | None,
    source: Path | None,
    view: str,
    day: str,
    plain: bool,
    tint: str | None,
    years: bool,
    mm_per_unit: float | None,
    as_json: bool,
) -> int:
    """Take the drawing of JOURNAL out to a file, or bring an SVG file into it.

    Exit status 1 says that something in the SVG file could not be used; each such thing is named.

    With --json: for --out an object with path, and with --years pictures; for --in an object with
    panels (how many), views, scaled (whether the length of a unit was known) and not_used (objects
    with what and reason).
    """
    if (out is None) == (source is None):
        raise JournalError("Say either --out FILE or --in FILE.svg.")
    if source is not None:
        _refuse_needless(day=day, plain=plain, tint=tint, years=years)
        return _bring_in(journal, source, view, mm_per_unit, as_json)
    assert out is not None
    if mm_per_unit is not None:
        raise JournalError("--mm-per-unit goes with --in.")
    if years:
        _refuse_needless(day=day, plain=plain, tint=tint)
        return _years(journal, out, view, as_json)
    if plain and (day or tint):
        raise JournalError("A plain drawing shows no date and no tint: leave out --plain.")
    return _take_out(journal, out, view, day, plain, tint, as_json)


def _take_out(
    journal: Path, out: Path, view: str, day: str, plain: bool, tint: str | None, as_json: bool
) -> int:
    from journal.actions.export_drawing import export_drawing

    on = parse(day) if day else None
    by = _TINTS[tint] if tint else None
    with open_journal(journal, read_only=True) as session, progress() as bar:
        number = _view(session, view)
        made = export_drawing(session, out, number, on=on, plain=plain, by=by, context=bar)
    if as_json:
        answer({"path": str(made)})
    tell(f"The drawing is {made}.")
    return DONE


def _years(journal: Path, out: Path, view: str, as_json: bool) -> int:
    from journal.actions.export_years import export_years

    with open_journal(journal, read_only=True) as session, progress() as bar:
        report = export_years(session, out, _view(session, view), context=bar)
    if as_json:
        answer({"path": str(report.path), "pictures": report.pictures})
    tell(f"The years are {report.path}, {report.pictures} pictures.")
    return DONE


def _bring_in(
    journal: Path, source: Path, view: str, mm_per_unit: float | None, as_json: bool
) -> int:
    from journal.actions.svg import bring_in_svg

    with open_journal(journal) as session:
        report = bring_in_svg(session, source, _view(session, view), mm_per_unit)
    if as_json:
        answer(
            {
                "panels": report.panels,
                "views": list(report.views),
                "scaled": report.scaled,
                "not_used": [asdict(one) for one in report.not_used],
            }
        )
    for one in report.not_used:
        tell(f"Not used: {one.what}: {one.reason.rstrip('.')}.")
    if not report.scaled:
        tell("The file doesn't say how long its units are: each was taken for a millimetre.")
    count = "1 panel is" if report.panels == 1 else f"{report.panels} panels are"
    tell(f"{count} on {', '.join(report.views)}.")
    return IN_PART if report.not_used else DONE


def _view(session: Session, name: str) -> ViewId | None:
    return find_view(session, name).id if name else None


def _refuse_needless(
    *, day: str = "", plain: bool = False, tint: str | None = None, years: bool = False
) -> None:
    for given, option in ((day, "--on"), (plain, "--plain"), (tint, "--tint"), (years, "--years")):
        if given:
            raise JournalError(f"{option} doesn't go with this; leave it out.")
