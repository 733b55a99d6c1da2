"""restoration-journal stamp: a time stamp on a bundle, asked for and brought back."""

from pathlib import Path

import click

from journal.actions.journals import open_journal
from journal.actions.stamping import ask_for_stamp, bring_stamp
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, tell


@click.command("stamp")
@journal_argument
@click.argument("bundle", type=click.Path(readable=False, path_type=Path))
@click.option(
    "--out",
    type=click.Path(readable=False, path_type=Path),
    help="Write a request (.tsq) to this file; beside the bundle unless said.",
)
@click.option(
    "--reply",
    type=click.Path(readable=False, path_type=Path),
    help="Bring the authority's reply (.tsr) back, verify it and keep it.",
)
@click.option(
    "--authority",
    "authorities",
    type=click.Path(readable=False, path_type=Path),
    multiple=True,
    help="A certificate of the authority's, to verify the reply by (PEM or DER).",
)
@json_option
def command(
    journal: Path,
    bundle: Path,
    out: Path | None,
    reply: Path | None,
    authorities: tuple[Path, ...],
    as_json: bool,
) -> None:
    """Have a time stamp authority vouch for when BUNDLE, made from JOURNAL, was there (RFC 3161).

    First without --reply: a request is written, which holds a number worked out from the bundle and
    nothing of it. Take it to an authority by any way you like; this program goes to no network.
    Then with --reply: the answer is verified and kept in the bundle, or beside it where it is
    packed.

    With --json: an object with path and sha256 (of a request), or path, made, authority, trusted
    and said (of a reply).
    """
    with open_journal(journal) as session:
        if reply is None:
            place = out or bundle.with_name(bundle.name + ".tsq")
            asked = ask_for_stamp(session, bundle, place)
            if as_json:
                answer({"path": str(asked.path), "sha256": asked.sha256})
            tell(f"{asked.path}: take it to a time stamp authority, and bring the reply back.")
            return
        kept = bring_stamp(session, bundle, reply, authorities)
    found = kept.found
    if as_json:
        answer(
            {
                "path": str(kept.path),
                "made": found.made.isoformat() if found.made else None,
                "authority": found.authority,
                "trusted": found.trusted,
                "said": list(found.said),
            }
        )
    for sentence in found.said:
        tell(sentence)
    tell(f"{kept.path}: stamped {found.made} by {found.authority}.")
