"""restoration-journal bundle: dossier, record and originals in one package to be checked."""

from pathlib import Path

import click

from journal.actions.bundles import make_bundle
from journal.actions.dossier_cuts import choices_of
from journal.actions.journals import open_journal
from journal.cli.options import journal_argument, json_option
from journal.cli.output import DONE, IN_PART, answer, progress, tell
from journal.domain.bundles import BundleChoice, BundleForm, BundleReport, OriginalsIn
from journal.domain.cuts import Cut
from journal.domain.ids import PhotoId

_FORMS = {form.suffix: form for form in BundleForm}


@click.command("bundle")
@journal_argument
@click.option(
    "--out",
    type=click.Path(readable=False, path_type=Path),
    required=True,
    help="The folder, .zip or .tar to make; it must not be there yet.",
)
@click.option(
    "--for",
    "cut",
    type=click.Choice([cut.value for cut in Cut]),
    default=Cut.OWN.value,
    show_default=True,
    help="For whom, which says what is in the dossier and what is withheld.",
)
@click.option(
    "--form",
    type=click.Choice([form.value for form in BundleForm]),
    help="A folder, a ZIP file or a tar file; as the name of --out ends, unless said.",
)
@click.option(
    "--originals",
    type=click.Choice([which.value for which in OriginalsIn]),
    default=OriginalsIn.ALL.value,
    show_default=True,
    help="All originals, those the dossier uses, or none.",
)
@click.option(
    "--photo",
    "photos",
    type=int,
    multiple=True,
    help="Of the originals this photo's alone, by its number; may be given more than once.",
)
@click.option("--no-history", is_flag=True, help="Leave the history of every change out.")
@click.option("--sign", is_flag=True, help="Sign it with your key, which is made the first time.")
@json_option
def command(
    journal: Path,
    out: Path,
    cut: str,
    form: str | None,
    originals: str,
    photos: tuple[int, ...],
    no_history: bool,
    sign: bool,
    as_json: bool,
) -> int:
    """Make a bundle of JOURNAL: a BagIt bag (RFC 8493) that a stranger can check.

    Where the dossier withholds anything, originals and history are left out, since they would
    show it. An original that is missing or altered is named, and the rest goes on.

    With --json: an object with path, files, bytes, originals, missing (where, what), notes and
    fingerprint (of the signing key, null without --sign). Exit status 1 where an original is
    missing.
    """
    with open_journal(journal, read_only=True) as session, progress() as bar:
        choice = BundleChoice(
            dossier=choices_of(session, Cut(cut)),
            form=BundleForm(form) if form else _FORMS.get(out.suffix.lower(), BundleForm.FOLDER),
            originals=OriginalsIn(originals),
            only=frozenset(map(PhotoId, photos)) if photos else None,
            history=not no_history,
            sign=sign,
        )
        report = make_bundle(session, out, choice, bar)
    _say(report, as_json=as_json)
    return IN_PART if report.missing else DONE


def _say(report: BundleReport, *, as_json: bool) -> None:
    if as_json:
        answer(
            {
                "path": str(report.path),
                "files": report.files,
                "bytes": report.size,
                "originals": report.originals,
                "missing": [{"where": f.where, "what": f.what} for f in report.missing],
                "notes": list(report.notes),
                "fingerprint": report.fingerprint or None,
            }
        )
    for fault in report.missing:
        tell(f"{fault.where}: {fault.what}")
    for note in report.notes:
        tell(note)
    if report.fingerprint:
        tell(f"Signed with the key {report.fingerprint}.")
    tell(f"{report.path}: {report.files} files of data, {report.originals} originals among them.")
