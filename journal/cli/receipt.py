"""restoration-journal receipt: record a receipt, by hand or read from its paper."""

from decimal import Decimal
from pathlib import Path
from typing import Any

import click

from journal.actions.areas import find_area
from journal.actions.cars import car
from journal.actions.journals import open_journal
from journal.actions.receipts import receipt as find_receipt
from journal.actions.receipts import record_receipt
from journal.actions.session import Session
from journal.cli.options import journal_argument, json_option
from journal.cli.output import DONE, tell
from journal.cli.receipt_reading import Wanted, read_and_tell
from journal.domain.errors import JournalError
from journal.domain.ids import LineId, ReceiptId
from journal.domain.money import format_money, parse_money
from journal.domain.quantities import parse_quantity, parse_rate
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt, Share
from journal.domain.when import parse

_NEEDED = ("supplier", "date", "lines")
_BY_HAND_ALONE = ("currency", "total", "paper", "stands_in", "note", "refund_of")
_CATEGORIES = click.Choice([c.value for c in Category])


@click.command("receipt")
@journal_argument
@click.argument("files", type=click.Path(readable=False, path_type=Path), nargs=-1)
@click.option("--supplier", help="Who was paid; left out, the files are read instead.")
@click.option("--date", "date", help='EDTF, or words like "March 2016".')
@click.option(
    "--line",
    "lines",
    multiple=True,
    help='One thing bought: "text; price" or "text; quantity; price for all". Repeat for more.',
)
@click.option("--category", type=_CATEGORIES, default="other", show_default=True)
@click.option(
    "--condition", type=click.Choice([c.value for c in Condition]), default="new", show_default=True
)
@click.option("--area", "areas", multiple=True, help="Repair area that it was for. Repeatable.")
@click.option("--currency", help="ISO 4217 code; the journal's own where left out.")
@click.option("--rate", help="Units of the journal's currency for one of the receipt's.")
@click.option("--total", help="The total as printed, where it is to be kept apart.")
@click.option("--paper", type=click.Choice([p.value for p in Paper]), help="Where the paper is.")
@click.option("--stands-in", default="", help="What stands in for a paper that is lost.")
@click.option("--note", default="")
@click.option("--refund-of", type=int, help="The number of the receipt that this takes back.")
@click.option("--record", is_flag=True, help="Record what was read from the files.")
@json_option
def command(
    journal: Path,
    files: tuple[Path, ...],
    areas: tuple[str, ...],
    record: bool,
    as_json: bool,
    **given: Any,
) -> int:
    """Record a receipt in JOURNAL, with FILES (scans, photos or PDFs) of its paper.

    With --supplier, --date and --line what these say is recorded. With FILES alone each file is
    read as one receipt and what was read is shown with how sure it is; --record records it too.

    With --json: an object with papers, when reading, each with file, supplier, date, other_date,
    currency, total, tax, lines, remarks, held_by, like, receipt and not_recorded. A field has
    value, sure (0 to 1), page and box (left, top, right, bottom in parts of the page); sums are in
    minor units.
    """
    by_hand = any(given[name] for name in _NEEDED)
    if not by_hand and not files:
        raise JournalError("Give --supplier, --date and --line, or a file to be read.")
    with open_journal(journal) as session:
        shares = _shares(session, areas)
        if by_hand:
            return _record_by_hand(session, files, shares, given)
        _refuse_with_reading(given)
        kinds = Category(given["category"]), Condition(given["condition"])
        rate = None if given["rate"] is None else parse_rate(given["rate"])
        wanted = Wanted(record, shares, rate, *kinds, as_json)
        return read_and_tell(session, files, wanted)


def _refuse_with_reading(given: dict[str, Any]) -> None:
    for name in _BY_HAND_ALONE:
        if given[name]:
            option = name.replace("_", "-")
            raise JournalError(f"--{option} is for a receipt by hand; a file alone is read.")


def _record_by_hand(
    session: Session, files: tuple[Path, ...], shares: tuple[Share, ...], given: dict[str, Any]
) -> int:
    if not all(given[name] for name in _NEEDED):
        raise JournalError("A receipt by hand needs --supplier, --date and --line.")
    code = (given["currency"] or car(session).currency).upper()
    kinds = Category(given["category"]), Condition(given["condition"])
    total = given["total"]
    receipt = Receipt(
        id=ReceiptId(0),
        supplier=given["supplier"],
        when=parse(given["date"]),
        currency=code,
        paper=Paper(given["paper"]) if given["paper"] else Paper.HELD,
        printed_total=None if total is None else parse_money(total, code),
        lines=tuple(_line(text, code, kinds, shares) for text in given["lines"]),
        stands_in=given["stands_in"],
        note=given["note"],
        rate=parse_rate(given["rate"] or "1"),
        refund_of=_refunded(session, given["refund_of"]),
    )
    changes = record_receipt(session, receipt, files)
    tell(f"{changes.label}: {format_money(receipt.lines_total, code)}.")
    return DONE


def _refunded(session: Session, number: int | None) -> ReceiptId | None:
    """The receipt taken back, made sure to be there."""
    return None if number is None else find_receipt(session, ReceiptId(number)).id


def _shares(session: Session, areas: tuple[str, ...]) -> tuple[Share, ...]:
    return tuple(Share(i, 1) for i in dict.fromkeys(find_area(session, name).id for name in areas))


def _line(
    text: str, currency: str, kinds: tuple[Category, Condition], shares: tuple[Share, ...]
) -> Line:
    parts = [part.strip() for part in text.split(";")]
    if len(parts) not in (2, 3) or not parts[0]:
        raise JournalError(f"“{text}” is no line; write “text; price” or “text; quantity; price”.")
    quantity = parse_quantity(parts[1]) if len(parts) == 3 else Decimal(1)
    amount = parse_money(parts[-1], currency)
    category, condition = kinds
    return Line(LineId(0), parts[0], quantity, amount, category, condition, None, shares)
