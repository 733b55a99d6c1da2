"""Receipts and their papers."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.ids import LineId, ReceiptId, Sha256, WantedId
from journal.domain.receipts import Paper, Receipt, refuse_unreasonable
from journal.domain.wanted import WantedState
from journal.domain.when import When, spoken
from journal.store.originals import recorded_path
from journal.store.papers import ArrivedPapers, arriving


def receipts(session: Session) -> tuple[Receipt, ...]:
    """Every receipt, in order of date."""
    return session.journal.receipts.all()


def receipt(session: Session, receipt_id: ReceiptId) -> Receipt:
    """One receipt.

    Raises:
        JournalError: there is none of that number.
    """
    return session.journal.receipts.get(receipt_id)


def record_receipt(
    session: Session,
    receipt: Receipt,
    files: Sequence[Path] = (),
    came: Sequence[WantedId | None] = (),
) -> Changes:
    """Record a receipt, with scans or PDFs of its paper kept as originals.

    ``came`` names for each line the wanted part that it is, None where it is none: the part is
    tied to its line and has arrived today.

    Raises:
        JournalError: it has no supplier or no line, its paper is called lost though files of it
            are given, a file can't be read, or the currency is unknown.
    """
    _refuse_incomplete(receipt, files)
    journal = session.journal
    with arriving(journal, files) as papers, journal.edit(_label("Record", receipt)) as edit:
        made = journal.receipts.add(_with(receipt, papers))
        _tie(session, journal.receipts.line_ids(made), came)
    return edit.changes(made)


def change_receipt(session: Session, receipt: Receipt, files: Sequence[Path] = ()) -> Changes:
    """Record a receipt anew; ``files`` are papers that come to it.

    Raises:
        JournalError: as for ``record_receipt``, or there is none of its number.
    """
    _refuse_incomplete(receipt, files)
    journal = session.journal
    with arriving(journal, files) as papers, journal.edit(_label("Change", receipt)) as edit:
        journal.receipts.change(_with(receipt, papers))
    return edit.changes(receipt.id)


def remove_receipt(session: Session, receipt_id: ReceiptId) -> Changes:
    """Take a receipt out; its papers stay among the originals."""
    found = session.journal.receipts.get(receipt_id)
    with session.journal.edit(_label("Remove", found)) as edit:
        session.journal.receipts.remove(receipt_id)
    return edit.changes()


def refund_for(session: Session, receipt_id: ReceiptId, today: date) -> Receipt:
    """A receipt to be checked and recorded that takes all of another one back.

    Its lines are those of the other with less than nothing paid; lines that stay are left out by
    the person. A price new goes back too, so that nothing seems saved on what was returned.

    Raises:
        JournalError: there is none of that number, or it takes another back itself.
    """
    bought = session.journal.receipts.get(receipt_id)
    if bought.refund_of is not None:
        raise JournalError("This receipt takes another one back already.")
    lines = tuple(
        replace(
            line,
            id=LineId(0),
            amount=-line.amount,
            new_price=None if line.new_price is None else -line.new_price,
        )
        for line in bought.lines
    )
    return replace(
        bought,
        id=ReceiptId(0),
        when=When.on(today),
        paper=Paper.HELD,
        printed_total=None,
        lines=lines,
        papers=(),
        stands_in="",
        note="",
        tax=None,
        refund_of=receipt_id,
        read_text="",
    )


def refunds_of(session: Session, receipt_id: ReceiptId) -> tuple[Receipt, ...]:
    """The receipts that take another back, in part or whole."""
    return session.journal.receipts.refunds_of(receipt_id)


def paper_path(session: Session, sha256: Sha256) -> Path:
    """Where the original of a paper lies.

    Raises:
        JournalError: the journal has no such original.
    """
    return recorded_path(session.journal, sha256)


def suppliers(session: Session) -> tuple[str, ...]:
    """Every supplier's name, the most used first."""
    return session.journal.receipts.suppliers()


def completions(session: Session) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What a receipt's form proposes: suppliers and currencies, the most used first."""
    return suppliers(session), currencies(session)


def currencies(session: Session) -> tuple[str, ...]:
    """Every currency that something was paid in, the most used first."""
    return session.journal.receipts.currencies()


def _tie(session: Session, line_ids: Sequence[LineId], came: Sequence[WantedId | None]) -> None:
    for line_id, wanted_id in zip(line_ids, came, strict=False):
        if wanted_id is None:
            continue
        part = session.journal.wanted.get(wanted_id)
        session.journal.wanted.tie(part.id, line_id)
        if part.state.rank < WantedState.ARRIVED.rank:
            session.journal.wanted.set_state(
                part.id, WantedState.ARRIVED, When.on(date.today()), ""
            )


def _label(verb: str, receipt: Receipt) -> str:
    return f"{verb} receipt from {receipt.supplier}, {spoken(receipt.when)}"


def _refuse_incomplete(receipt: Receipt, files: Sequence[Path]) -> None:
    from journal.domain.money import minor_units

    if not receipt.supplier.strip():
        raise JournalError("A receipt needs a supplier; write “unknown” where it is forgotten.")
    if not receipt.lines:
        raise JournalError(
            "A receipt needs a line; write one for the whole where no more is known."
        )
    if files and receipt.paper is not Paper.HELD:
        raise JournalError(
            f"The paper is called “{receipt.paper.value}”, but files of it are attached; "
            "call it held, or leave them out."
        )
    refuse_unreasonable(receipt)
    minor_units(receipt.currency)


def _with(receipt: Receipt, papers: ArrivedPapers) -> Receipt:
    return replace(receipt, papers=tuple(dict.fromkeys([*receipt.papers, *papers.record()])))
