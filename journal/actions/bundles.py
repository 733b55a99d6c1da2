"""The bundle: dossier, record, history and originals in one bag that a stranger can check."""

import csv
import io
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path

from journal import __version__
from journal.actions import privacy, signing
from journal.actions.dossiers import make_dossier, preview_dossier
from journal.actions.session import Session
from journal.domain.bags import declaration_text, info_text, manifest_text
from journal.domain.bundles import BundleChoice, BundleForm, BundleReport, OriginalsIn
from journal.domain.checks import Fault
from journal.domain.cuts import Choices, Part
from journal.domain.errors import JournalError
from journal.domain.privacy import gives_originals
from journal.domain.progress import Context, Silent
from journal.domain.record import Record
from journal.dossier.bundle import layout, signature
from journal.dossier.bundle.chain import walk
from journal.dossier.bundle.readme import BundleFacts, read_me
from journal.dossier.bundle.record_json import record_json, schema_json
from journal.dossier.bundle.seals import seals_text
from journal.files.bags import BagWriter, Wanted, new_bag
from journal.files.names import safe_name
from journal.files.scratch import scratch_folder
from journal.store import taking_out
from journal.store.folder import refuse_inside
from journal.store.originals import path_of
from journal.store.record import record
from journal.store.taking_out import Kept

#: What a spreadsheet would take for a formula; such a name gets an apostrophe before it.
_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


@dataclass(slots=True)
class _Contents:
    """What goes into a bundle, besides the dossier's file."""

    record: Record
    originals: tuple[Kept, ...]
    wanted: dict[str, str]
    texts: dict[str, bytes]
    edits: int
    digest: str
    notes: list[str]


def make_bundle(
    session: Session,
    out: Path,
    choice: BundleChoice | None = None,
    context: Context | None = None,
) -> BundleReport:
    """Make a bundle at ``out``, which appears whole or not at all.

    An original that is missing or was altered is left out and named; the rest goes on.

    Raises:
        JournalError: ``out`` exists, lies inside the journal, or can't be written.
        Cancelled: the person asked to stop; nothing is left.
    """
    choice, context = choice or BundleChoice(), context or Silent()
    _refuse_place(session, out)
    key = signing.private_key() if choice.sign else None
    now = datetime.now().astimezone()
    with scratch_folder("bundle") as scratch:
        dossier = scratch / "dossier.pdf"
        before = taking_out.last_edit(session.journal)
        told = make_dossier(session, dossier, context, _signed(choice, key))
        contents = _contents(session, choice, now)
        contents.notes += told.notes
        if before != (contents.edits, contents.digest):
            contents.notes.append(
                "The record was changed while the bundle was made: the dossier is of just before."
            )
        base = safe_name(out.stem if choice.form is not BundleForm.FOLDER else out.name)
        try:
            with new_bag(out, choice.form.value, base) as bag:
                missing = _fill(session, bag, contents, dossier, context)
                facts = _facts(contents, now, missing, key)
                _close(bag, facts, contents, key)
        except FileExistsError as error:
            raise JournalError(f"“{out}” exists already; choose another name.") from error
        except OSError as error:
            said = error.strerror or str(error)
            raise JournalError(f"The bundle was not made at “{out}”: {said}.") from error
    data = [found for path, found in bag.digests.items() if path.startswith("data/")]
    return BundleReport(
        path=out,
        files=len(data),
        size=sum(found.size for found in data),
        originals=facts.originals,
        missing=missing,
        notes=tuple(contents.notes),
        fingerprint=facts.fingerprint,
    )


def _signed(choice: BundleChoice, key: bytes | None) -> Choices:
    """What the dossier holds, with the fingerprint of the key that the bundle is signed with."""
    line = signing.key_line() if key is not None else ""
    return replace(choice.dossier, signed_by=line) if line else choice.dossier


def _refuse_place(session: Session, out: Path) -> None:
    try:
        if out.exists() or out.is_symlink():
            raise JournalError(f"“{out}” exists already; choose another name.")
    except (OSError, ValueError) as error:
        raise JournalError(f"“{out}” can't be used: {error}.") from error
    refuse_inside(session.folder, out)


# What goes in


def _contents(session: Session, choice: BundleChoice, now: datetime) -> _Contents:
    # Sheets bring a workbook library along, wanted for this act alone.
    from journal.ledger.sheets import as_csv, sheets

    journal, withheld = session.journal, choice.dossier.withheld
    with_history = choice.history and not withheld
    with taking_out.at_one_moment(journal):
        given = privacy.redacted(session, withheld, record(journal)).record
        originals = taking_out.kept_originals(journal)
        edits, digest = taking_out.last_edit(journal)
        history = "".join(taking_out.chain(journal)) if with_history else ""
        rows = _rows_text(taking_out.rows(journal)) if with_history else ""
    wanted = _paths(given, _chosen(session, originals, choice))
    texts = {
        layout.RECORD: record_json(given, now.isoformat(timespec="seconds"), _program()),
        layout.SCHEMA: schema_json(),
        layout.ORIGINALS_LIST: _originals_list(given, originals, wanted),
    }
    for sheet in sheets(given):
        texts[f"{layout.TABLES}/{layout.plain_name(sheet.name)}.csv"] = as_csv(sheet)
    notes = []
    if history:
        texts |= {layout.HISTORY: history.encode(), layout.ROWS: rows.encode()}
        chain, _ = walk(io.StringIO(history, newline="\n"))
        if chain.broken:
            notes.append(f"The history does not hold from {chain.broken} on; check the journal.")
    if wanted:
        notes.append(
            "The originals are byte for byte: they hold whatever the camera wrote in them, places "
            "and serial numbers too."
        )
    return _Contents(given, originals, wanted, texts, edits, digest, notes)


def _program() -> str:
    return f"{layout.PROGRAM} {__version__}"


def _chosen(session: Session, originals: Sequence[Kept], choice: BundleChoice) -> Iterator[Kept]:
    if choice.originals is OriginalsIn.NONE or not gives_originals(choice.dossier.withheld):
        return
    shown = _shown(session, choice) if choice.originals is OriginalsIn.USED else None
    for kept in originals:
        if choice.only is not None and (kept.use != "photo" or kept.number not in choice.only):
            continue
        if shown is None or kept.sha256 in shown:
            yield kept


def _shown(session: Session, choice: BundleChoice) -> frozenset[str]:
    """The photos that the dossier shows, and the papers if it lists receipts."""
    shown = {str(row.photo.sha256) for row in preview_dossier(session, choice.dossier).shown}
    if choice.dossier.has(Part.RECEIPTS) or choice.dossier.has(Part.MONEY):
        for receipt in session.journal.receipts.all():
            shown.update(receipt.papers)
    return frozenset(shown)


def _paths(given: Record, chosen: Iterable[Kept]) -> dict[str, str]:
    """Where each chosen original comes to lie, by SHA-256."""
    names = {str(photo.sha256): photo.name for photo in given.photos}
    return {
        kept.sha256: layout.original_path(
            kept.use, kept.number, kept.sha256, names.get(kept.sha256, ""), kept.suffix
        )
        for kept in chosen
    }


def _originals_list(given: Record, originals: Sequence[Kept], wanted: dict[str, str]) -> bytes:
    photos = {str(photo.sha256): photo for photo in given.photos}
    room = io.StringIO(newline="")
    rows = csv.writer(room)
    rows.writerow(
        ("path", "sha256", "bytes", "what", "number", "name", "taken", "known by", "came in")
    )
    for kept in originals:
        photo = photos.get(kept.sha256)
        name = photo.name if photo else ""
        taken = photo.when.edtf if photo and photo.when else ""
        rows.writerow(
            (
                wanted.get(kept.sha256, ""),
                kept.sha256,
                kept.size,
                kept.use,
                kept.number,
                "'" + name if name.startswith(_FORMULA_STARTS) else name,
                taken,
                photo.basis.value if photo else "",
                kept.added[:10],
            )
        )
    return room.getvalue().encode("utf-8-sig")


def _rows_text(tables: Iterable[tuple[str, Iterator[str]]]) -> str:
    parts = []
    for table, rows in tables:
        listed = ",\n".join(rows)
        parts.append(f'"{table}": [\n{listed}\n]' if listed else f'"{table}": []')
    return "{\n" + ",\n".join(parts) + "\n}\n"


# Writing it


def _fill(
    session: Session, bag: BagWriter, contents: _Contents, dossier: Path, context: Context
) -> tuple[Fault, ...]:
    """Put everything into data; the originals that could not be."""
    context.report(0, 0, "Packing")
    bag.copy([Wanted(layout.DOSSIER, dossier)], lambda _done: context.checkpoint())
    for path, data in sorted(contents.texts.items()):
        bag.put(path, data)
    suffixes = {kept.sha256: kept.suffix for kept in contents.originals}
    files = [
        Wanted(path, path_of(session.folder, sha256, suffixes[sha256]), sha256)
        for sha256, path in contents.wanted.items()
    ]

    def step(done: int) -> None:
        context.checkpoint()
        context.report(done, len(files), "Packing originals")

    left_out = bag.copy(files, step)
    missing = tuple(
        Fault(wanted.path, f"{_why_left_out(wanted.source, reason)} (SHA-256 {wanted.sha256}).")
        for wanted, reason in left_out
    )
    if missing:
        lines = "".join(f"{fault.where}: {fault.what}\n" for fault in missing)
        bag.put(layout.MISSING, lines.encode())
    return missing


def _why_left_out(source: Path, reason: str) -> str:
    if not source.exists():
        return "The original is missing"
    return reason[:1].upper() + reason[1:].rstrip(".")


def _facts(
    contents: _Contents, now: datetime, missing: tuple[Fault, ...], key: bytes | None
) -> BundleFacts:
    return BundleFacts(
        title=contents.record.car.title,
        made=now.isoformat(timespec="seconds"),
        program=_program(),
        withheld=tuple(sorted(kind.value for kind in contents.record.withheld)),
        originals=len(contents.wanted) - len(missing),
        edits=contents.edits if layout.HISTORY in contents.texts else 0,
        fingerprint=signature.fingerprint(signature.public_of(key)) if key else "",
        missing=missing,
    )


def _close(bag: BagWriter, facts: BundleFacts, contents: _Contents, key: bytes | None) -> None:
    """Write the lists over everything, and what seals them."""
    data = {path: found for path, found in bag.digests.items() if path.startswith("data/")}
    tags = {
        "bagit.txt": declaration_text(),
        "bag-info.txt": info_text(
            _info(facts, contents, sum(f.size for f in data.values()), len(data))
        ),
        layout.READ_ME: read_me(facts),
        "manifest-sha256.txt": manifest_text({path: f.sha256 for path, f in data.items()}),
        "manifest-sha512.txt": manifest_text({path: f.sha512 for path, f in data.items()}),
    }
    for path, text in tags.items():
        bag.put(path, text.encode())
    listed = {path: bag.digests[path] for path in tags}
    sealed = {
        layout.SEALED: manifest_text({path: f.sha256 for path, f in listed.items()}).encode(),
        "tagmanifest-sha512.txt": manifest_text(
            {path: f.sha512 for path, f in listed.items()}
        ).encode(),
    }
    if key is not None:
        sealed[layout.SIGNATURE] = signature.sign(key, sealed[layout.SEALED])
        sealed[layout.PUBLIC_KEY] = signature.public_of(key)
    for path, content in sealed.items():
        bag.put(path, content)
    bag.put(layout.SEALS, seals_text(sealed).encode())


def _info(
    facts: BundleFacts, contents: _Contents, size: int, files: int
) -> Iterator[tuple[str, str]]:
    yield "External-Description", f"The restoration of {facts.title}: dossier, record, originals"
    yield "Bagging-Date", facts.made[:10]
    yield "Bag-Size", _size_words(size)
    yield "Payload-Oxum", f"{size}.{files}"
    yield layout.AGENT, facts.program
    yield "Car", facts.title
    yield layout.EDITS, str(contents.edits)
    yield layout.DIGEST, contents.digest
    if facts.fingerprint:
        yield layout.KEY, f"Ed25519 {facts.fingerprint}"
    if facts.withheld:
        yield "Kept-Back", ", ".join(facts.withheld)


def _size_words(size: int) -> str:
    for unit, power in (("GB", 9), ("MB", 6), ("kB", 3)):
        if size >= 10**power:
            return f"{size / 10**power:.1f} {unit}"
    return f"{size} B"


def free_place(folder: Path, title: str, form: BundleForm) -> Path:
    """A place in ``folder`` for a bundle of a car made today, that isn't taken."""
    name = f"{layout.plain_name(title) or 'Car'} {datetime.now():%Y-%m-%d}"
    place, number = folder / f"{name}{form.suffix}", 2
    while place.exists():
        place, number = folder / f"{name} ({number}){form.suffix}", number + 1
    return place
