"""Receipts read from their paper, to be checked and recorded by the person."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import TYPE_CHECKING

from journal.actions import receipts as receipt_actions
from journal.actions.session import Session
from journal.domain.errors import JournalError
from journal.domain.ids import LineId, ReceiptId
from journal.domain.papers import DateOrder, ReadReceipt, nothing_read
from journal.domain.pictures import Picture
from journal.domain.progress import Context, Silent
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt, Share
from journal.domain.when import When
from journal.files.copying import hash_file

if TYPE_CHECKING:
    from journal.intake.reading.fields import Known


@dataclass(frozen=True, slots=True)
class ReadPaper:
    """A file and what was read from it.

    ``held_by`` is the receipt that has this very paper already; ``like`` are receipts of the same
    supplier, day and total.
    """

    path: Path
    read: ReadReceipt
    held_by: ReceiptId | None = None
    like: tuple[ReceiptId, ...] = ()


def can_read_pictures() -> bool:
    """Whether photos and scans can be read here; PDFs with text always can."""
    from journal.intake.reading import engine

    return engine.can_read_pictures()


def how_to_read_pictures() -> str:
    """What is missing for photos and scans to be read, and how to add it."""
    from journal.intake.reading.files import NO_ENGINE

    return NO_ENGINE


def read_papers(
    session: Session,
    files: Sequence[Path],
    context: Context | None = None,
    order: DateOrder = DateOrder.DAY_FIRST,
) -> tuple[ReadPaper, ...]:
    """Read every file as the paper of one receipt; what can't be read says why in its remarks.

    ``order`` settles dates of three numbers that can be read in two ways.

    Raises:
        Cancelled: between two files or pages, as the person asked.
    """
    from journal.intake.reading.fields import Known

    context = context or Silent()
    known = Known(session.journal.car.get().currency, receipt_actions.suppliers(session), order)
    holding = session.journal.receipts.holding
    seen: dict[str, str] = {}
    found = []
    for number, path in enumerate(files):
        context.checkpoint()
        context.report(number, len(files), f"Reading {path.name}")
        sha256 = _sha256(path)
        held_by = holding(sha256) if sha256 else None
        if held_by is not None:
            found.append(ReadPaper(path, nothing_read(), held_by))
        elif sha256 in seen:
            same = f"“{path.name}” is the very same file as “{seen[sha256]}”, read before it."
            found.append(ReadPaper(path, nothing_read(same)))
        else:
            found.append(_read(session, path, known, context))
            if sha256:
                seen[sha256] = path.name
    context.report(len(files), len(files), "")
    return tuple(found)


def _read(session: Session, path: Path, known: "Known", context: Context) -> ReadPaper:
    from journal.intake.reading.files import read_file

    if not path.is_file():
        return ReadPaper(path, nothing_read(f"“{path.name}” is no file that can be read."))
    read = read_file(path, known, date.today(), context)
    return ReadPaper(path, read, None, _like(session, read, known.currency))


def noticed_anew(session: Session, paper: ReadPaper) -> ReadPaper:
    """A paper read a while ago, with what has been recorded since then noticed."""
    sha256 = _sha256(paper.path)
    held = session.journal.receipts.holding(sha256) if sha256 else None
    currency = session.journal.car.get().currency
    return replace(paper, held_by=held, like=_like(session, paper.read, currency))


def _like(session: Session, read: ReadReceipt, currency: str) -> tuple[ReceiptId, ...]:
    if read.when is None:
        return ()
    return alike(
        session.journal.receipts.of_date(read.when.value),
        supplier=read.supplier.value if read.supplier else "",
        when=read.when.value,
        total=read.total.value if read.total else None,
        currency=read.currency.value if read.currency else currency,
    )


def alike(
    recorded: Iterable[Receipt],
    *,
    supplier: str,
    when: When | None,
    total: int | None,
    currency: str,
) -> tuple[ReceiptId, ...]:
    """The receipts of the same supplier, day and total: perhaps the same one entered twice."""
    if when is None or total is None or not supplier.strip():
        return ()
    name = " ".join(supplier.casefold().split())
    return tuple(
        one.id
        for one in recorded
        if " ".join(one.supplier.casefold().split()) == name
        and one.when.earliest.date() == when.earliest.date()
        and one.when.latest.date() == when.latest.date()
        and one.currency == currency
        and total == (one.lines_total if one.printed_total is None else one.printed_total)
    )


def receipt_from(read: ReadReceipt, currency: str, shares: tuple[Share, ...] = ()) -> Receipt:
    """A receipt to be recorded from what was read, each line in the category “other”.

    Where no line was read the total is one; ``currency`` holds where the paper names none.

    Raises:
        JournalError: supplier, date, or both total and lines couldn't be read.
    """
    missing = [
        name for name, field in (("supplier", read.supplier), ("date", read.when)) if field is None
    ]
    if read.total is None and not read.lines:
        missing.append("total")
    if missing or read.supplier is None or read.when is None:
        raise JournalError(f"No {' and no '.join(missing)} could be read; give what is missing.")
    total = read.total.value if read.total else None
    lines = lines_from(read, shares)
    return Receipt(
        id=ReceiptId(0),
        supplier=read.supplier.value,
        when=read.when.value,
        currency=read.currency.value if read.currency else currency,
        paper=Paper.HELD,
        printed_total=total,
        lines=lines,
        tax=read.tax.value if read.tax else None,
        read_text=read.text,
    )


def lines_from(read: ReadReceipt, shares: tuple[Share, ...] = ()) -> tuple[Line, ...]:
    """The lines as read; one over the total where there are none, none where there is neither."""
    kind = (Category.OTHER, Condition.NEW)
    lines = tuple(
        Line(
            LineId(0), line.value.text, line.value.quantity, line.value.amount, *kind, None, shares
        )
        for line in read.lines
    )
    if lines or read.total is None:
        return lines
    whole = Line(LineId(0), "Everything on it", Decimal(1), read.total.value, *kind, None, shares)
    return (whole,)


def paper_picture(path: Path, *, page: int = 0, turn: int = 0, longest: int = 1600) -> Picture:
    """A page of a paper as a picture, turned clockwise by ``turn`` degrees.

    Raises:
        JournalError: the file can't be read or shown, named with the reason.
    """
    from journal.intake.reading.files import page_picture

    try:
        return page_picture(path, page, turn, longest)
    except JournalError as error:
        raise JournalError(f"“{path.name}” can't be shown: {error}.") from error


def _sha256(path: Path) -> str | None:
    try:
        return hash_file(path) if path.is_file() else None
    except OSError:
        return None
