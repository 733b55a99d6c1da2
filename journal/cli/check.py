"""restoration-journal check: nothing lost, nothing altered."""

from pathlib import Path

import click

from journal.actions.checking import check
from journal.cli.options import journal_argument, json_option
from journal.cli.output import DONE, IN_PART, answer, progress, tell


@click.command("check")
@journal_argument
@json_option
def command(journal: Path, as_json: bool) -> int:
    """Check every original of JOURNAL by its SHA-256, its database, and its chain of changes.

    With --json: an object with faults (where, what), originals, edits and loose (files that the
    record does not mention). Exit status 1 where there is a fault.
    """
    with progress() as bar:
        report = check(journal, bar)
    if as_json:
        answer(
            {
                "faults": [{"where": f.where, "what": f.what} for f in report.faults],
                "originals": report.originals,
                "edits": report.edits,
                "loose": report.loose,
            }
        )
    for fault in report.faults:
        tell(f"{fault.where}: {fault.what}")
    verdict = f"{len(report.faults)} faults" if report.faults else "all whole"
    tell(f"{report.originals} originals and {report.edits} edits checked: {verdict}.")
    return IN_PART if report.faults else DONE
