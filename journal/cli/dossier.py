"""restoration-journal dossier: the dossier as a PDF, in three cuts."""

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

import click

from journal.actions.areas import find_area
from journal.actions.dossiers import choices_of, choose, make_dossier
from journal.actions.journals import open_journal
from journal.actions.session import Session
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, progress, tell
from journal.domain.cuts import PAPERS, PICTURE_SIZES, Choices, Cut, Part
from journal.domain.private_words import Private

_PARTS = click.Choice([part.value for part in Part])
_KINDS = click.Choice([kind.value for kind in Private])


@click.command("dossier")
@journal_argument
@click.option(
    "--for",
    "cut",
    type=click.Choice([cut.value for cut in Cut]),
    default=Cut.OWN.value,
    show_default=True,
    help="Who is to read it: each has parts of its own, chosen on the Dossier page or here.",
)
@click.option("--with", "with_parts", type=_PARTS, multiple=True, help="Put a part in.")
@click.option("--without", "without_parts", type=_PARTS, multiple=True, help="Leave a part out.")
@click.option("--withhold", type=_KINDS, multiple=True, help="Keep something out of it.")
@click.option("--tell", "told", type=_KINDS, multiple=True, help="Withhold it no longer.")
@click.option("--paper", type=click.Choice(list(PAPERS)), help="A4 or Letter.")
@click.option(
    "--pictures", type=click.Choice(list(PICTURE_SIZES)), help="As large as print or a screen asks."
)
@click.option("--photos", type=click.IntRange(0), help="So many of one repair area; 0 for all.")
@click.option(
    "--chapter", "areas", multiple=True, help="Only these repair areas, by number or name."
)
@click.option("--keep", is_flag=True, help="Keep these choices in the journal.")
@click.option(
    "--out",
    type=click.Path(readable=False, path_type=Path),
    required=True,
    help="The PDF to write.",
)
@json_option
def command(
    journal: Path,
    cut: str,
    with_parts: tuple[str, ...],
    without_parts: tuple[str, ...],
    withhold: tuple[str, ...],
    told: tuple[str, ...],
    paper: str | None,
    pictures: str | None,
    photos: int | None,
    areas: tuple[str, ...],
    keep: bool,
    out: Path,
    as_json: bool,
) -> None:
    """Make the dossier of JOURNAL for a buyer, a valuer or the own shelf.

    A buyer's has no private data unless it is told otherwise. Parts and what is withheld are those
    chosen on the Dossier page, changed by the options given.

    With --json: an object with path, for, pages, photos, notes (what could not be shown, and why)
    and withheld (what is not in it by choice, as the dossier says it).
    """
    with open_journal(journal, read_only=not keep) as session, progress() as bar:
        choices = choices_of(session, Cut(cut))
        parts = (choices.parts | _members(Part, with_parts)) - _members(Part, without_parts)
        kinds = (choices.withheld | _members(Private, withhold)) - _members(Private, told)
        choices = replace(choices, parts=parts, withheld=kinds)
        choices = _with_options(session, choices, paper, pictures, photos, areas)
        if keep:
            choose(session, choices)
        report = make_dossier(session, out, bar, choices)
    if as_json:
        answer(
            {
                "path": str(report.path),
                "for": cut,
                "pages": report.pages,
                "photos": report.photos,
                "notes": list(report.notes),
                "withheld": list(report.withheld),
            }
        )
    for note in (*report.notes, *report.withheld):
        tell(note)
    tell(f"{report.path}: {report.pages} pages, {report.photos} photos.")


def _members(kind: type, names: Iterable[str]) -> frozenset:  # type: ignore[type-arg]
    return frozenset(kind(name) for name in names)


def _with_options(
    session: Session,
    choices: Choices,
    paper: str | None,
    pictures: str | None,
    photos: int | None,
    areas: tuple[str, ...],
) -> Choices:
    if paper:
        choices = replace(choices, paper="letter" if paper == "letter" else "a4")
    if pictures:
        choices = replace(choices, pictures="screen" if pictures == "screen" else "print")
    if photos is not None:
        choices = replace(choices, photos=photos)
    if areas:
        found = frozenset(find_area(session, text).id for text in areas)
        choices = replace(choices, areas=found)
    return choices
