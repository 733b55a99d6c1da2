"""restoration-journal sheet: bring in a spreadsheet or a bank's export."""

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path
from typing import Any

import click

from journal.actions.bring_in import OpenSheet, Plan, ask_again, bring_in, open_sheet, plan
from journal.actions.journals import open_journal
from journal.cli.options import journal_argument, json_option
from journal.cli.output import DONE, IN_PART, answer, progress, table, tell
from journal.domain.errors import JournalError
from journal.domain.hours import spoken_hours
from journal.domain.money import format_money
from journal.domain.sheet_items import Fate, Item, folded
from journal.domain.sheet_rows import Choices, DayOrder, Decimals, Role, Told, letter
from journal.domain.when import spoken


@click.command("sheet")
@journal_argument
@click.argument("file", type=click.Path(readable=False, path_type=Path))
@click.option("--sheet", default="", help="Which sheet of the workbook.")
@click.option("--heading", type=click.IntRange(0), help="The row of the headings; 0 for none.")
@click.option(
    "--role",
    "roles",
    multiple=True,
    metavar="COLUMN=ROLE",
    help="What a column is, by its heading or letter. Repeatable.",
)
@click.option("--dates", type=click.Choice([o.value for o in DayOrder]), help="Their order.")
@click.option("--decimals", type=click.Choice([d.value for d in Decimals]), help="Their mark.")
@click.option("--kind", type=click.Choice(["own", "bank"]), help="Own list or a bank's lines.")
@click.option("--currency", help="ISO 4217 code of rows that name none.")
@click.option("--person", help="Who worked where no column says.")
@click.option("--fill-down", is_flag=True, help="Empty dates and suppliers are those above.")
@click.option("--take", multiple=True, type=int, metavar="ROW", help="Bring a row in after all.")
@click.option("--leave", multiple=True, type=int, metavar="ROW", help="Leave a row out after all.")
@click.option("--record", is_flag=True, help="Record it; without this it is only shown.")
@json_option
def command(journal: Path, file: Path, record: bool, as_json: bool, **given: Any) -> int:
    """Show what FILE (CSV, XLSX or ODS) would bring into JOURNAL; with --record bring it in.

    What each column is, is proposed by its heading and its values. Rows that can't be read are
    named by number and reason; the exit status is 1 then. What came in before, or is there, stays
    out. A bank's lines stand in for receipts without paper of the same sum and about the same day.

    Roles: date, supplier, receipt number, what was bought, quantity, amount, price each, money out,
    money in, printed total, currency, rate paid, price new, category, condition, repair area,
    paper, what stands in, hours, minutes, person, note, leave out.

    With --json: an object with sheet, heading, kind, columns (heading, role), dates, decimals,
    items (rows, date, who, what, amount in minor units, currency, minutes, fate, why, receipt),
    refused and left_out (row, reason, text), remarks and recorded.
    """
    with open_journal(journal, read_only=not record) as session:
        sheet = open_sheet(session, file, given["sheet"], given["heading"])
        choices = _choices(sheet, given)
        with progress() as bar:
            found = plan(session, sheet, choices, bar)
            fates = _fates(found, given["take"], given["leave"])
            coming = found.coming_in(fates)
            does = record and not coming.is_nothing
            changes = bring_in(session, found, fates, bar).changes if does else None
    if as_json:
        answer(_document(sheet, choices, found, fates) | {"recorded": changes is not None})
    else:
        _show(sheet, choices, found, fates)
        tell(f"{changes.label}." if changes else f"{coming.words()} would come in{_hint(record)}.")
    return IN_PART if found.refused else DONE


def _hint(record: bool) -> str:
    return "" if record else "; nothing was recorded, --record does"


def _choices(sheet: OpenSheet, given: dict[str, Any]) -> Choices:
    """How the sheet is to be read: as proposed, and as the person says."""
    choices = sheet.proposal.choices
    roles = list(choices.roles)
    for text in given["roles"]:
        name, _, said = text.rpartition("=")
        role = next((one for one in Role if one.value == said.strip().casefold()), None)
        if not name or role is None:
            known = ", ".join(one.value for one in Role)
            raise JournalError(f"“{text}” is no COLUMN=ROLE; the roles are: {known}.")
        roles[_place(sheet, name)] = role
    choices = replace(
        choices,
        roles=tuple(roles),
        is_bank=choices.is_bank if given["kind"] is None else given["kind"] == "bank",
        dates=DayOrder(given["dates"]) if given["dates"] else None,
        decimals=Decimals(given["decimals"]) if given["decimals"] else None,
        currency=(given["currency"] or choices.currency).upper(),
        person=given["person"] or choices.person,
        fill_down=given["fill_down"] or choices.fill_down,
    )
    asked = ask_again(sheet, choices)
    if asked.dates:
        seen = ", ".join(asked.dates.examples)
        raise JournalError(f"Day and month can't be told apart ({seen}): give --dates dmy or mdy.")
    if asked.decimals:
        seen = ", ".join(asked.decimals.examples)
        raise JournalError(
            f"Decimals can't be told ({seen}): give --decimals comma, point or both."
        )
    return asked.choices


def _place(sheet: OpenSheet, name: str) -> int:
    headings = sheet.proposal.headings
    for place, heading in enumerate(headings):
        if folded(heading) == folded(name):
            return place
    for place in range(len(headings)):
        if letter(place) == name.strip().upper():
            return place
    raise JournalError(f"There is no column “{name}”; there are {', '.join(headings)}.")


def _fates(found: Plan, take: Iterable[int], leave: Iterable[int]) -> dict[int, Fate]:
    """By an item's place, what the person wants to become of it."""
    wanted = dict.fromkeys(take, Fate.NEW) | dict.fromkeys(leave, Fate.LEAVE)
    fates = {}
    # A row of money and of hours is two items.
    for place, item in enumerate(found.items):
        for row in item.rows:
            if row in wanted:
                fates[place] = wanted[row]
    if strange := set(wanted).difference(*(item.rows for item in found.items)):
        rows = ", ".join(map(str, sorted(strange)))
        raise JournalError(f"There is nothing to take or leave in row {rows}.")
    return fates


def _show(sheet: OpenSheet, choices: Choices, found: Plan, fates: dict[int, Fate]) -> None:
    named = [
        f"{heading} = {role.value}"
        for heading, role in zip(sheet.proposal.headings, choices.roles, strict=True)
    ]
    tell(f"Sheet “{sheet.grid.name}”, headings in row {choices.heading}: {'; '.join(named)}.")
    for remark in found.remarks:
        tell(remark)
    rows = [_row(item, fates.get(place, item.fate)) for place, item in enumerate(found.items)]
    if rows:
        headings = ("row", "date", "who", "what", "amount", "what becomes of it")
        table(headings, rows, right=frozenset({0, 4}))
    _tell_rows("can't be read", found.refused)
    _tell_rows("left out", found.left_out)


def _tell_rows(what: str, rows: Iterable[Told]) -> None:
    for told in rows:
        tell(f"Row {told.row} {what}: {told.reason}.")


def _row(item: Item, fate: Fate) -> tuple[str, ...]:
    plain = _plain(item, fate)
    much = spoken_hours(plain["minutes"]) if item.work else ""
    if item.receipt:
        much = format_money(item.receipt.lines_total, item.receipt.currency)
    dated = item.receipt or item.work
    becomes = fate.value
    if fate is Fate.STANDS_IN:
        becomes = f"stands in for receipt {item.match}"
    elif item.why and fate is item.fate:
        becomes += f": {item.why}" + (f" (receipt {item.match})" if item.match else "")
    when = spoken(dated.when) if dated else ""
    return "+".join(map(str, item.rows)), when, plain["who"], plain["what"], much, becomes


def _plain(item: Item, fate: Fate) -> dict[str, Any]:
    receipt, work = item.receipt, item.work
    dated = receipt or work
    what = work.note if work else ""
    if receipt:
        what = "; ".join(line.text for line in receipt.lines)
    return {
        "rows": list(item.rows),
        "date": dated.when.edtf if dated else None,
        "who": receipt.supplier if receipt else work.person if work else "",
        "what": what,
        "amount": receipt.lines_total if receipt else None,
        "currency": receipt.currency if receipt else None,
        "minutes": work.minutes if work else 0,
        "fate": fate.value,
        "why": item.why if fate is item.fate else "",
        "receipt": item.match,
    }


def _document(
    sheet: OpenSheet, choices: Choices, found: Plan, fates: dict[int, Fate]
) -> dict[str, Any]:
    return {
        "sheet": sheet.grid.name,
        "heading": choices.heading,
        "kind": "bank" if choices.is_bank else "own",
        "columns": [
            {"heading": heading, "role": role.value}
            for heading, role in zip(sheet.proposal.headings, choices.roles, strict=True)
        ],
        "dates": choices.dates,
        "decimals": choices.decimals,
        "items": [
            _plain(item, fates.get(place, item.fate)) for place, item in enumerate(found.items)
        ],
        "refused": [_told(told) for told in found.refused],
        "left_out": [_told(told) for told in found.left_out],
        "remarks": list(found.remarks),
    }


def _told(told: Told) -> dict[str, Any]:
    return {"row": told.row, "reason": told.reason, "text": told.text}
