"""Receipts, their lines, shares and papers."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from datetime import UTC, datetime
from decimal import Decimal
from typing import Any

from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, LineId, ReceiptId, Sha256
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt, Share, Spread
from journal.domain.when import When
from journal.store.imported_rows import forget
from journal.store.opened import Subject
from journal.store.rows import dated, delete, insert, replace_children, update, when_columns

#: Of more receipts than these, all are read again: one statement can't name them.
_MOST_RENEWED = 500

#: The condition that every row meets.
_EVERY = "1"

_CATEGORIES = {category.value: category for category in Category}
_CONDITIONS = {condition.value: condition for condition in Condition}
_SPREADS = {spread.value: spread for spread in Spread}


class Receipts(Subject):
    """Every receipt of the journal."""

    def add(self, receipt: Receipt) -> ReceiptId:
        """Record a receipt with its lines, shares and papers."""
        receipt_id = ReceiptId(insert(self._db, "receipts", _values(receipt)))
        self._set_below(receipt_id, receipt)
        return receipt_id

    def change(self, receipt: Receipt) -> None:
        """Record a receipt anew; lines keep their number, those of number 0 are new."""
        update(self._db, "receipts", receipt.id, _values(receipt))
        self._set_below(receipt.id, receipt)

    def _set_below(self, receipt_id: ReceiptId, receipt: Receipt) -> None:
        papers = [{"sha256": sha, "rank": rank} for rank, sha in enumerate(receipt.papers)]
        replace_children(self._db, "receipt_papers", ("receipt_id", receipt_id), "sha256", papers)
        kept = {line.id for line in receipt.lines if line.id}
        for line_id in self.line_ids(receipt_id):
            if line_id not in kept:
                self._remove_line(line_id)
        for rank, line in enumerate(receipt.lines):
            self._set_line(receipt_id, rank, line)

    def line_ids(self, receipt_id: ReceiptId) -> tuple[LineId, ...]:
        """The numbers of a receipt's lines, in their order."""
        found = self._db.execute(
            "SELECT id FROM lines WHERE receipt_id = ? ORDER BY rank, id", (receipt_id,)
        )
        return tuple(LineId(i) for (i,) in found)

    def _set_line(self, receipt_id: ReceiptId, rank: int, line: Line) -> None:
        values = {
            "receipt_id": receipt_id,
            "rank": rank,
            "text": line.text,
            "quantity": str(line.quantity),
            "amount": line.amount,
            "category": line.category.value,
            "condition": line.condition.value,
            "new_price": line.new_price,
            "spread": line.spread.value,
        }
        if line.id:
            update(self._db, "lines", line.id, values)
            line_id = int(line.id)
        else:
            line_id = insert(self._db, "lines", values)
        rows = share_rows(line.shares)
        replace_children(self._db, "line_shares", ("line_id", line_id), "area_id", rows)

    def _remove_line(self, line_id: int) -> None:
        # A wanted part outlives the line it became: it has come all the same.
        for (part,) in self._db.execute(
            "SELECT id FROM wanted WHERE line_id = ?", (line_id,)
        ).fetchall():
            update(self._db, "wanted", part, {"line_id": None})
        replace_children(self._db, "line_shares", ("line_id", line_id), "area_id", [])
        delete(self._db, "lines", line_id)

    def remove(self, receipt_id: ReceiptId) -> None:
        """Take a receipt out; its papers stay as originals, refunds of it stand alone."""
        for (refund,) in self._db.execute(
            "SELECT id FROM receipts WHERE refund_of = ?", (receipt_id,)
        ).fetchall():
            update(self._db, "receipts", refund, {"refund_of": None})
        forget(self._db, "receipt_id", receipt_id)
        replace_children(self._db, "receipt_papers", ("receipt_id", receipt_id), "sha256", [])
        for line_id in self.line_ids(receipt_id):
            self._remove_line(line_id)
        delete(self._db, "receipts", receipt_id)

    def add_paper(self, sha256: Sha256, suffix: str, size: int, mime: str) -> None:
        """Record the original of a paper, where it isn't recorded already."""
        if self._db.execute("SELECT 1 FROM originals WHERE sha256 = ?", (sha256,)).fetchone():
            return
        now = datetime.now(UTC).isoformat(timespec="seconds")
        values = {"sha256": sha256, "suffix": suffix, "size": size, "mime": mime, "added": now}
        insert(self._db, "originals", values)

    def all(self) -> tuple[Receipt, ...]:
        """Every receipt, in order of date."""
        return self._where(_EVERY)

    def renewed(self, known: Sequence[Receipt], edit_id: int) -> tuple[Receipt, ...]:
        """Every receipt, in order of date, of those known when an edit was the latest.

        What wasn't touched since is not read again.
        """
        touched = self._touched_since(edit_id)
        if len(touched) > _MOST_RENEWED:
            return self.all()
        kept = [receipt for receipt in known if receipt.id not in touched]
        marks = ", ".join("?" * len(touched))
        read = self._where(f"id IN ({marks})", *touched)
        return tuple(sorted((*kept, *read), key=_in_order))

    def _touched_since(self, edit_id: int) -> set[int]:
        """The receipts that were changed after an edit in any part, whether there still or not."""
        found = self._db.execute(
            """WITH touched AS (
                 SELECT tbl, row, coalesce(after, before) AS now FROM changes WHERE edit_id > ?)
               SELECT row FROM touched WHERE tbl = 'receipts'
               UNION SELECT json_extract(now, '$.receipt_id') FROM touched
                 WHERE tbl IN ('lines', 'receipt_papers')
               UNION SELECT lines.receipt_id FROM touched
                 JOIN lines ON lines.id = json_extract(now, '$.line_id')
                 WHERE tbl = 'line_shares'""",
            (edit_id,),
        )
        return {receipt_id for (receipt_id,) in found}

    def get(self, receipt_id: ReceiptId) -> Receipt:
        """One receipt.

        Raises:
            JournalError: there is none of that number.
        """
        found = self._where("id = ?", receipt_id)
        if not found:
            raise JournalError(f"There is no receipt number {receipt_id}.")
        return found[0]

    def for_panel(self, panel_id: int) -> tuple[Receipt, ...]:
        """The receipts with a line shared to an area that touches a panel."""
        return self._where(
            """id IN (SELECT l.receipt_id FROM lines l JOIN line_shares s ON s.line_id = l.id
                 JOIN area_panels p ON p.area_id = s.area_id WHERE p.panel_id = ?)""",
            panel_id,
        )

    def for_area(self, area_id: AreaId) -> tuple[Receipt, ...]:
        """The receipts with a line shared to a repair area."""
        return self._where(
            """id IN (SELECT l.receipt_id FROM lines l JOIN line_shares s ON s.line_id = l.id
                 WHERE s.area_id = ?)""",
            area_id,
        )

    def suppliers(self) -> tuple[str, ...]:
        """Every supplier's name, the most used first."""
        found = self._db.execute(
            "SELECT supplier FROM receipts GROUP BY supplier ORDER BY count(*) DESC, supplier"
        )
        return tuple(name for (name,) in found)

    def currencies(self) -> tuple[str, ...]:
        """Every currency that something was paid in, the most used first."""
        found = self._db.execute(
            "SELECT currency FROM receipts GROUP BY currency ORDER BY count(*) DESC, currency"
        )
        return tuple(code for (code,) in found)

    def holding(self, sha256: str) -> ReceiptId | None:
        """The receipt that has a paper already, None where none has."""
        found = self._db.execute(
            "SELECT receipt_id FROM receipt_papers WHERE sha256 = ? ORDER BY receipt_id", (sha256,)
        ).fetchone()
        return None if found is None else ReceiptId(found[0])

    def refunds_of(self, receipt_id: ReceiptId) -> tuple[Receipt, ...]:
        """The receipts that take another back, in part or whole."""
        return self._where("refund_of = ?", receipt_id)

    def of_date(self, when: When) -> tuple[Receipt, ...]:
        """The receipts of the very same date."""
        columns = when_columns(when)
        return self._where("earliest = ? AND latest = ?", columns["earliest"], columns["latest"])

    def _where(self, condition: str, *values: int | str) -> tuple[Receipt, ...]:
        rows = self._db.execute(
            "SELECT id, supplier, edtf, earliest, latest, currency, paper, printed_total, rate, "
            "stands_in, note, tax, refund_of, read_text FROM receipts "
            f"WHERE {condition} ORDER BY earliest, latest, id",
            values,
        ).fetchall()
        # Asked for all, SQLite would still look up the receipt of every line.
        some = f"receipt_id IN (SELECT id FROM receipts WHERE {condition})"
        inside = _EVERY if condition == _EVERY else some
        lines = self._lines(inside, values)
        papers: dict[int, list[Sha256]] = defaultdict(list)
        for receipt, sha in self._db.execute(
            f"SELECT receipt_id, sha256 FROM receipt_papers WHERE {inside} ORDER BY rank, id",
            values,
        ):
            papers[receipt].append(Sha256(sha))
        return tuple(_receipt(row, lines[row[0]], papers[row[0]]) for row in rows)

    def _lines(self, inside: str, values: Sequence[int | str]) -> dict[int, list[Line]]:
        shares: dict[int, list[Share]] = defaultdict(list)
        alike: dict[tuple[int, int], Share] = {}
        of_lines = f"line_id IN (SELECT id FROM lines WHERE {inside})"
        for line, area, weight in self._db.execute(
            "SELECT line_id, area_id, weight FROM line_shares "
            f"WHERE {_EVERY if inside == _EVERY else of_lines} ORDER BY rank, id",
            values,
        ).fetchall():  # Row by row, a cursor that tells obstacles in words is three times slower.
            share = alike.get((area, weight))
            if share is None:
                share = alike[area, weight] = Share(AreaId(area), weight)
            shares[line].append(share)
        quantities: dict[str, Decimal] = {}
        found: dict[int, list[Line]] = defaultdict(list)
        for (
            i,
            receipt,
            text,
            quantity,
            amount,
            category,
            condition,
            new,
            spread,
        ) in self._db.execute(
            "SELECT id, receipt_id, text, quantity, amount, category, condition, new_price, spread "
            f"FROM lines WHERE {inside} ORDER BY rank, id",
            values,
        ).fetchall():
            many = quantities.get(quantity)
            if many is None:
                many = quantities[quantity] = Decimal(quantity)
            line = Line(
                LineId(i),
                text,
                many,
                amount,
                _CATEGORIES[category],
                _CONDITIONS[condition],
                new,
                tuple(shares[i]),
                _SPREADS[spread],
            )
            found[receipt].append(line)
        return found


def _in_order(receipt: Receipt) -> tuple[datetime, datetime, int]:
    return receipt.when.earliest, receipt.when.latest, receipt.id


def share_rows(shares: Iterable[Share]) -> list[dict[str, Any]]:
    """Shares as rows below a line or a day's work."""
    return [
        {"area_id": share.area_id, "weight": share.weight, "rank": rank}
        for rank, share in enumerate(shares)
    ]


def _values(receipt: Receipt) -> dict[str, Any]:
    return {
        "supplier": receipt.supplier,
        **when_columns(receipt.when),
        "currency": receipt.currency,
        "paper": receipt.paper.value,
        "printed_total": receipt.printed_total,
        "rate": str(receipt.rate),
        "stands_in": receipt.stands_in,
        "note": receipt.note,
        "tax": receipt.tax,
        "refund_of": receipt.refund_of,
        "read_text": receipt.read_text,
    }


def _receipt(row: Sequence[Any], lines: list[Line], papers: list[Sha256]) -> Receipt:
    return Receipt(
        id=ReceiptId(row[0]),
        supplier=row[1],
        when=dated(*row[2:5]),
        currency=row[5],
        paper=Paper(row[6]),
        printed_total=row[7],
        lines=tuple(lines),
        papers=tuple(papers),
        stands_in=row[9],
        note=row[10],
        rate=Decimal(row[8]),
        tax=row[11],
        refund_of=None if row[12] is None else ReceiptId(row[12]),
        read_text=row[13],
    )
