"""How much of drawn receipts is read right: python -m tests.benchmarks.receipt_reading [how many]

The same hand drew the receipts and wrote the rules, so the shares are better than in life. The
reference for time is the engine alone on the same pictures. Goals: dates 95, totals 95, suppliers
85, lines 80 per cent, and no total invented where it was torn off.
"""

import resource
import sys
import tempfile
import time
from collections import Counter
from datetime import date
from pathlib import Path

from journal.domain.papers import ReadReceipt
from journal.domain.progress import Silent
from journal.intake import decode
from journal.intake.reading.engine import reader
from journal.intake.reading.fields import Known
from journal.intake.reading.files import read_file
from journal.intake.reading.pictures import READ_AT
from tests.intake.reading import drawn
from tests.intake.reading.judged import judge

_TODAY = date(2026, 1, 1)
_GOALS = {"dates": 95, "totals": 95, "suppliers": 85, "lines": 80}


def read(of: drawn.Drawn, path: Path) -> ReadReceipt:
    """A file read as by somebody whose journal knows no supplier yet."""
    known = Known(of.truth.currency, (), of.truth.order)
    return read_file(path, known, _TODAY, Silent())


def tell(kind: str, right: Counter[str], asked: Counter[str], seconds: list[float]) -> None:
    """Print the shares of one kind of file."""
    print(f"{kind}: {len(seconds)} receipts")  # noqa: T201
    for name, goal in _GOALS.items():
        share = 100 * right[name] / max(asked[name], 1)
        print(f"  {name:<10}{share:6.1f} % of {asked[name]:3}  (goal {goal})")  # noqa: T201
    print(f"  invented totals {right['invented']}")  # noqa: T201
    ordered = sorted(seconds)
    middle, late = ordered[len(ordered) // 2], ordered[int(len(ordered) * 0.9)]
    print(f"  {middle:.3f} s a receipt (p90 {late:.3f})")  # noqa: T201


def measure(kind: str, count: int, folder: Path, *, verbose: bool) -> None:
    """Read so many receipts of one kind and print what was right."""
    right: Counter[str] = Counter()
    asked: Counter[str] = Counter()
    seconds: list[float] = []
    for number in range(count):
        of = drawn.drawn(number)
        path = folder / f"{number}.{'pdf' if kind == 'PDF' else 'jpg'}"
        path.write_bytes(drawn.pdf(of) if kind == "PDF" else drawn.photographed(of, number))
        began = time.perf_counter()
        found = read(of, path)
        seconds.append(time.perf_counter() - began)
        faults = judge(of.truth, found, right, asked)
        if verbose and faults:
            print(f"  {number} (layout {of.truth.layout}): {'; '.join(faults)}")  # noqa: T201
    tell(kind, right, asked, seconds)


def main() -> None:
    """Print the shares for PDFs and for photographed paper, time and memory."""
    verbose = "-v" in sys.argv
    counts = [int(word) for word in sys.argv[1:] if word.isdigit()]
    count = counts[0] if counts else 60
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch)
        measure("PDF", count, folder, verbose=verbose)
        engine = reader()
        if engine is None:
            print("Pictures: the extra “reading” isn't installed.")  # noqa: T201
            return
        measure("Photographed", count, folder, verbose=verbose)
        shown = decode.picture(folder / "0.jpg", READ_AT)
        began = time.perf_counter()
        for _ in range(3):
            engine.words(shown)
        print(f"  bare engine {(time.perf_counter() - began) / 3:.3f} s")  # noqa: T201
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        print(f"  peak memory {peak:.0f} MB")  # noqa: T201


if __name__ == "__main__":
    main()
