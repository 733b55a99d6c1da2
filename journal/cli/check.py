"""restoration-journal check: nothing lost, nothing altered."""

from pathlib import Path
from typing import Any

import click

from journal.actions.checking import check_path
from journal.cli.options import json_option
from journal.cli.output import COULD_NOT, DONE, IN_PART, answer, progress, tell
from journal.domain.checks import (
    BundleCheck,
    CheckReport,
    Fault,
    Likeness,
    PictureCheck,
    PictureFound,
    StampFound,
)


@click.command("check")
@click.argument("path", type=click.Path(readable=False, path_type=Path))
@click.option(
    "--journal",
    type=click.Path(readable=False, path_type=Path),
    help="The journal to look a photo, or the pictures of a PDF, up in.",
)
@click.option(
    "--authority",
    "authorities",
    type=click.Path(readable=False, path_type=Path),
    multiple=True,
    help="A certificate of a time stamp authority that you trust (PEM or DER).",
)
@json_option
def command(path: Path, journal: Path | None, authorities: tuple[Path, ...], as_json: bool) -> int:
    """Check a journal, a bundle (folder, .zip or .tar), or a photo or PDF of --journal.

    Of a journal: every original by its SHA-256, the database, the chain of changes. Of a bundle,
    or any BagIt bag: every file by all its lists, signature, time stamps, history; nothing is
    unpacked. Of a photo: whether it is an original of the journal, or a copy of one by its looks.

    With --json: of a journal, an object with faults (where, what), originals, edits, loose (files
    that the record does not mention), and good_until (the last edit before the chain of changes
    fails, null where it holds). Of a bundle, where, form, refused (the reason, or null), title,
    made, by, files, bytes, algorithms, faults, warnings, notes, chain (edits, first, last, digest,
    broken, good_until), signature (fingerprint, good, ours), stamps (name, made, authority, good,
    trusted, said). Of a photo, where, sha256, pictures (what, likeness, photo, name, taken,
    sha256, distance), faults, notes.

    Exit status 1 where there is a fault or a picture that is not the journal's, 2 where a bundle
    is refused.
    """
    with progress() as bar:
        report = check_path(path, bar, journal=journal, authorities=authorities)
    if isinstance(report, CheckReport):
        return _journal(report, as_json=as_json)
    if isinstance(report, BundleCheck):
        return _bundle(report, as_json=as_json)
    return _pictures(report, as_json=as_json)


def _tell_faults(faults: tuple[Fault, ...], kind: str = "") -> None:
    for fault in faults:
        tell(f"{kind}{fault.where}: {fault.what}")


def _listed(faults: tuple[Fault, ...]) -> list[dict[str, str]]:
    return [{"where": fault.where, "what": fault.what} for fault in faults]


def _journal(report: CheckReport, *, as_json: bool) -> int:
    if as_json:
        answer(
            {
                "faults": _listed(report.faults),
                "originals": report.originals,
                "edits": report.edits,
                "loose": report.loose,
                "good_until": report.good_until or None,
            }
        )
    _tell_faults(report.faults)
    if report.good_until:
        tell(f"The chain of changes holds up to {report.good_until}.")
    tell(
        f"{report.originals} originals and {report.edits} edits checked: {_verdict(report.faults)}."
    )
    return IN_PART if report.faults else DONE


def _verdict(faults: tuple[Fault, ...]) -> str:
    if not faults:
        return "all whole"
    return "1 fault" if len(faults) == 1 else f"{len(faults)} faults"


def _bundle(report: BundleCheck, *, as_json: bool) -> int:
    if as_json:
        answer(_bundle_json(report))
    if report.refused:
        tell(f"{report.where} is refused. {report.refused}")
        return COULD_NOT
    _tell_faults(report.faults)
    _tell_faults(report.warnings, "Note: ")
    for sentence in _told(report):
        tell(sentence)
    tell(
        f"{report.where}: {report.files} files by {' and '.join(report.algorithms)}: "
        f"{_verdict(report.faults)}."
    )
    return DONE if report.whole else IN_PART


def _told(report: BundleCheck) -> list[str]:
    said = list(report.notes)
    if report.chain and not report.chain.broken:
        chain = report.chain
        said.append(f"History: {chain.edits} edits, {chain.first[:10]} to {chain.last[:10]}.")
    if report.signature and report.signature.good:
        whose = "your own key" if report.signature.ours else "the key"
        said.append(f"Signed with {whose} {report.signature.fingerprint}.")
    return said + [
        f"Stamped {_moment(stamp)} by {stamp.authority}. {' '.join(stamp.said)}"
        for stamp in report.stamps
        if stamp.good
    ]


def _moment(stamp: StampFound) -> str:
    return stamp.made.isoformat(sep=" ", timespec="seconds") if stamp.made else "at no time"


def _bundle_json(report: BundleCheck) -> dict[str, Any]:
    chain, signature = report.chain, report.signature
    return {
        "where": report.where,
        "form": report.form,
        "refused": report.refused or None,
        "title": report.title or None,
        "made": report.made or None,
        "by": report.by or None,
        "files": report.files,
        "bytes": report.size,
        "algorithms": list(report.algorithms),
        "faults": _listed(report.faults),
        "warnings": _listed(report.warnings),
        "notes": list(report.notes),
        "chain": chain
        and {
            "edits": chain.edits,
            "first": chain.first,
            "last": chain.last,
            "digest": chain.digest,
            "broken": chain.broken or None,
            "good_until": chain.good_until or None,
        },
        "signature": signature
        and {
            "fingerprint": signature.fingerprint,
            "good": signature.good,
            "ours": signature.ours,
        },
        "stamps": [_stamp_json(stamp) for stamp in report.stamps],
    }


def _stamp_json(stamp: StampFound) -> dict[str, Any]:
    return {
        "name": stamp.name,
        "made": stamp.made.isoformat() if stamp.made else None,
        "authority": stamp.authority,
        "good": stamp.good,
        "trusted": stamp.trusted,
        "said": list(stamp.said),
    }


def _pictures(report: PictureCheck, *, as_json: bool) -> int:
    if as_json:
        answer(
            {
                "where": report.where,
                "sha256": report.sha256,
                "pictures": [_picture_json(one) for one in report.pictures],
                "faults": _listed(report.faults),
                "notes": list(report.notes),
            }
        )
    _tell_faults(report.faults)
    for one in report.pictures:
        whom = f" {one.name}, {one.taken or 'undated'}, SHA-256 {one.sha256}" if one.name else ""
        tell(f"{one.what}: {one.likeness.value}{whom}.")
    for note in report.notes:
        tell(note)
    unknown = any(one.likeness is Likeness.UNKNOWN for one in report.pictures)
    return IN_PART if unknown or report.faults else DONE


def _picture_json(one: PictureFound) -> dict[str, Any]:
    return {
        "what": one.what,
        "likeness": one.likeness.value,
        "photo": one.photo_id,
        "name": one.name or None,
        "taken": one.taken or None,
        "sha256": one.sha256 or None,
        "distance": one.distance,
    }
