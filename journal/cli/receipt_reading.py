"""Receipts read from their paper, shown with how sure and recorded where that is asked for."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from pathlib import Path
from typing import Any

from journal.actions.cars import car
from journal.actions.reading import ReadPaper, read_papers, receipt_from
from journal.actions.receipts import record_receipt
from journal.actions.session import Session
from journal.actions.settings import load_settings
from journal.cli.output import COULD_NOT, DONE, IN_PART, answer, progress, put, tell
from journal.domain.errors import JournalError
from journal.domain.money import format_money
from journal.domain.papers import DateOrder, Field, sure_word
from journal.domain.quantities import write_quantity
from journal.domain.receipts import Category, Condition, Share
from journal.domain.when import spoken


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is wanted of papers: to be recorded or only read, and what holds for every line.

    ``rate`` is how many units of the journal's currency one unit of another cost.
    """

    record: bool
    shares: tuple[Share, ...]
    rate: Decimal | None
    category: Category
    condition: Condition
    as_json: bool


def read_and_tell(session: Session, files: Sequence[Path], wanted: Wanted) -> int:
    """Read each file as one receipt and say what was read; the exit status of the command."""
    own = car(session).currency
    order = DateOrder(load_settings().date_order)
    answers, failed = [], 0
    for path in files:
        # One by one: a paper recorded just now must be noticed in the next.
        with progress() as bar:
            (paper,) = read_papers(session, [path], bar, order)
        made, reason = None, ""
        if wanted.record:
            made, reason = _record(session, paper, own, wanted)
        failed += _is_failure(paper, reason)
        if wanted.as_json:
            answers.append(_plain(paper, own) | {"receipt": made, "not_recorded": reason or None})
        else:
            _tell(paper, own)
            _tell_recorded(wanted.record, made, reason)
    if wanted.as_json:
        answer({"papers": answers})
    if not failed:
        return DONE
    return COULD_NOT if failed == len(files) else IN_PART


def _is_failure(paper: ReadPaper, reason: str) -> bool:
    return bool(reason) or (paper.read.is_empty and paper.held_by is None)


def _record(session: Session, paper: ReadPaper, own: str, wanted: Wanted) -> tuple[int | None, str]:
    """Record a paper; its receipt, or why it was not recorded."""
    if paper.held_by is not None:
        return None, f"this paper is already with receipt {paper.held_by}"
    if paper.like:
        return None, f"receipt {paper.like[0]} has the same supplier, day and total"
    currency = paper.read.currency.value if paper.read.currency else own
    if currency != own and wanted.rate is None:
        return None, f"it is in {currency}: give --rate, what one {currency} cost in {own}"
    try:
        receipt = receipt_from(paper.read, own, wanted.shares)
        lines = tuple(
            replace(line, category=wanted.category, condition=wanted.condition)
            for line in receipt.lines
        )
        rate = wanted.rate if wanted.rate is not None and currency != own else Decimal(1)
        receipt = replace(receipt, lines=lines, rate=rate)
        return record_receipt(session, receipt, [paper.path]).made, ""
    except JournalError as error:
        return None, str(error).rstrip(".")


def _tell_recorded(record: bool, made: int | None, reason: str) -> None:
    if made is not None:
        put(f"  recorded as receipt {made}")
    elif record:
        put(f"  not recorded: {reason}")
    else:
        tell("Nothing was recorded; --record does.")


def _tell(paper: ReadPaper, own: str) -> None:
    """One row for each field, with how sure."""
    read = paper.read
    currency = read.currency.value if read.currency else own
    put(paper.path.name)
    for remark in read.remarks:
        put(f"  {remark}")
    if paper.held_by is not None:
        put(f"  This very paper is already with receipt {paper.held_by}.")
    for like in paper.like:
        put(f"  Receipt {like} has the same supplier, day and total.")
    if read.is_empty:
        return
    _row("Supplier", read.supplier, lambda name: name)
    _row("Date", read.when, spoken)
    if read.other_date is not None:
        put(f"  {'':<10}or, month and day the other way round, {spoken(read.other_date)}")
    _row("Currency", read.currency, lambda code: code)
    for line in read.lines:
        words = f"{write_quantity(line.value.quantity)} x {line.value.text}"
        money = format_money(line.value.amount, currency)
        put(f"  {'Line':<10}{words}: {money} ({sure_word(line.sure)})")
    _row("Total", read.total, lambda minor: format_money(minor, currency))
    _row("Tax in it", read.tax, lambda minor: format_money(minor, currency))


def _row(name: str, field: Field[Any] | None, write: Any) -> None:
    said = f"{write(field.value)} ({sure_word(field.sure)})" if field else "not read"
    put(f"  {name:<10}{said}")


def _plain(paper: ReadPaper, own: str) -> dict[str, Any]:
    read = paper.read
    return {
        "file": str(paper.path),
        "supplier": _field(read.supplier),
        "date": _field(read.when, lambda when: when.edtf),
        "other_date": read.other_date.edtf if read.other_date else None,
        "currency": _field(read.currency) or {"value": own, "sure": 0.0, "page": None, "box": None},
        "total": _field(read.total),
        "tax": _field(read.tax),
        "lines": [_field(line, _line) for line in read.lines],
        "remarks": list(read.remarks),
        "held_by": paper.held_by,
        "like": list(paper.like),
    }


def _line(line: Any) -> dict[str, Any]:
    quantity = write_quantity(line.quantity)
    return {"text": line.text, "quantity": quantity, "amount": line.amount}


def _field(field: Field[Any] | None, write: Any = lambda value: value) -> dict[str, Any] | None:
    if field is None:
        return None
    box = field.box
    corners = [round(side, 4) for side in (box.left, box.top, box.right, box.bottom)]
    sure = round(field.sure, 2)
    return {"value": write(field.value), "sure": sure, "page": field.page, "box": corners}
