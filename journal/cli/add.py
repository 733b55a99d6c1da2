"""restoration-journal add: add photos."""

from collections.abc import Iterable
from pathlib import Path

import click

from journal.actions.add_photos import Added, NotAdded, add_photos
from journal.actions.journals import open_journal
from journal.cli.options import journal_argument, json_option
from journal.cli.output import DONE, IN_PART, answer, progress, tell


@click.command("add")
@journal_argument
@click.argument("paths", type=click.Path(readable=False, path_type=Path), nargs=-1, required=True)
@json_option
def command(journal: Path, paths: tuple[Path, ...], as_json: bool) -> int:
    """Add photos, and folders of them, to JOURNAL.

    With --json: an object of four lists: added (path, sha256), already (path, sha256), skipped
    (path, reason) and refused (path, reason).
    """
    with open_journal(journal) as session, progress() as bar:
        report = add_photos(session, paths, bar)
    if as_json:
        answer(
            {
                "added": _known(report.added),
                "already": _known(report.already),
                "skipped": _reasons(report.skipped),
                "refused": _reasons(report.refused),
            }
        )
    for left_out in report.skipped:
        tell(f"Skipped {left_out.path}: {left_out.reason}")
    for refused in report.refused:
        tell(f"Could not add {refused.path}: {refused.reason}")
    tell(f"{len(report.added)} added, {len(report.already)} already there.")
    if report.cancelled:
        tell("Stopped; what was added stays.")
    return IN_PART if report.refused or report.cancelled else DONE


def _known(rows: Iterable[Added]) -> list[dict[str, str]]:
    return [{"path": str(row.path), "sha256": row.sha256} for row in rows]


def _reasons(rows: Iterable[NotAdded]) -> list[dict[str, str]]:
    return [{"path": str(row.path), "reason": row.reason} for row in rows]
