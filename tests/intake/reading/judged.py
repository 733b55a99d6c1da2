"""What was read against what stands there."""

from collections import Counter

from journal.domain.papers import ReadReceipt
from journal.intake.reading.keywords import plain
from tests.intake.reading.drawn import Truth


def judge(truth: Truth, read: ReadReceipt, right: Counter[str], asked: Counter[str]) -> list[str]:
    """Count what is right; a word for each fault."""
    faults: list[str] = []

    def count(name: str, good: bool, fault: str) -> None:
        asked[name] += 1
        right[name] += good
        if not good:
            faults.append(fault)

    day = read.when.value.earliest.date() if read.when else None
    count("dates", day == truth.day, f"date {day}, not {truth.day}")
    total = read.total.value if read.total else None
    if truth.total is None:
        right["invented"] += total is not None
        if total is not None:
            faults.append(f"total {total} invented")
    else:
        count("totals", total == truth.total, f"total {total}, not {truth.total}")
        tax = read.tax.value if read.tax else None
        count("taxes", tax == truth.tax, f"tax {tax}, not {truth.tax}")
    supplier = read.supplier.value if read.supplier else ""
    same = _same(supplier, truth.supplier)
    count("suppliers", same, f"supplier {supplier!r}, not {truth.supplier!r}")
    found = [(line.value.quantity, line.value.amount) for line in read.lines]
    texts = [line.value.text for line in read.lines]
    for text, quantity, amount in truth.lines:
        place = found.index((quantity, amount)) if (quantity, amount) in found else -1
        good = place >= 0 and _same(texts[place], text)
        count("lines", good, f"line {text!r} {quantity} {amount}")
    extra = len(read.lines) - len(truth.lines)
    if extra > 0:
        asked["lines"] += extra
        faults.append(f"{extra} lines too many: {texts}")
    return faults


def _same(one: str, other: str) -> bool:
    """The same words but for spaces, capitals and accents."""
    return plain(one).replace(" ", "") == plain(other).replace(" ", "")
