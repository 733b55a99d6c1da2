"""restoration-journal claims: what the record supports, and how well."""

from pathlib import Path

import click

from journal.actions.areas import areas, find_area
from journal.actions.claims import claims, leave_out_claim, set_claim_words
from journal.actions.journals import open_journal
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, put, tell
from journal.domain.claims import Claim
from journal.domain.evidence import graded


@click.command("claims")
@journal_argument
@click.argument("area", required=False)
@click.option("--claim", help="The claim to change, by its key: found, welded, measured ...")
@click.option("--say", help='Say the claim in these words; "" gives it the program\'s again.')
@click.option("--leave-out/--take-in", "left_out", default=None, help="Whether it is printed.")
@json_option
def command(
    journal: Path,
    area: str | None,
    claim: str | None,
    say: str | None,
    left_out: bool | None,
    as_json: bool,
) -> None:
    """Read what the record of JOURNAL supports of each repair area, or of AREA, with the evidence.

    Words can be changed, grades never: they follow from what stands behind a claim.

    With --json: a list of objects with area, claim (its key), words, own (whether the words are
    the owner's), left_out, when, alone (whether only the owner's word stands behind it) and
    evidence: a list of objects with grade, kind, id and when.
    """
    changing = say is not None or left_out is not None
    if changing and not (area and claim):
        raise click.UsageError("To change a claim, name its AREA and give its key with --claim.")
    with open_journal(journal, read_only=not changing) as session:
        chosen = [find_area(session, area)] if area else list(areas(session))
        if claim and say is not None:
            set_claim_words(session, chosen[0].id, claim, say)
        if claim and left_out is not None:
            leave_out_claim(session, chosen[0].id, claim, left_out=left_out)
        found = claims(session)
    rows = [(one, c) for one in chosen for c in found[one.id].claims if claim in (None, c.key)]
    if as_json:
        answer([_object(one.name, c) for one, c in rows])
        return
    if not rows:
        tell("The record makes no claim yet: no repair area says what was found or done.")
    heading = ""
    for one, c in rows:
        if one.name != heading:
            heading = one.name
            put(f"{heading}:")
        put(f"  {c.said}{' (left out)' if c.left_out else ''}")
        put(f"    {_evidence(c)}")


def _evidence(claim: Claim) -> str:
    return ", ".join(f"{count} × {grade.value}" for grade, count in graded(claim.pieces))


def _object(area: str, claim: Claim) -> dict[str, object]:
    return {
        "area": area,
        "claim": claim.key,
        "words": claim.said,
        "own": bool(claim.own),
        "left_out": claim.left_out,
        "when": claim.when.edtf if claim.when else None,
        "alone": claim.is_word_alone,
        "evidence": [
            {
                "grade": piece.grade.value,
                "kind": piece.kind,
                "id": piece.id,
                "when": piece.when.edtf if piece.when else None,
            }
            for piece in claim.pieces
        ],
    }
