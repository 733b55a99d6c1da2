"""A field for places on a view by number: one "x, y" in millimetres on each line."""

import math
import re
from collections.abc import Sequence
from itertools import pairwise

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from journal.desktop.widgets.parts import label
from journal.desktop.widgets.words_edit import WordsEdit
from journal.domain.errors import JournalError
from journal.domain.shapes import Point

_NUMBER = re.compile(r"-?\d+(?:[.,]\d+)?")


class PointsEdit(QWidget):
    """Places to type, one on a line, from the top left corner of the view in millimetres."""

    #: What stands in the field changed.
    changed = Signal()

    def __init__(
        self, least: int, most: int | None = None, parent: QWidget | None = None, *, lines: int = 4
    ) -> None:
        super().__init__(parent)
        self._least, self._most = least, most
        self.edit = WordsEdit("820, 410" if most == 1 else "820, 410\n960, 412", lines=lines)
        self.note = label("", "muted", wrap=False)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(2)
        layout.addWidget(self.edit)
        layout.addWidget(self.note)
        self.setFocusProxy(self.edit)
        self.edit.textChanged.connect(self._on_text)
        self._on_text()

    def setAccessibleName(self, name: str) -> None:
        """Name what has the keyboard."""
        super().setAccessibleName(name)
        self.edit.setAccessibleName(name)

    def set_points(self, points: Sequence[Point]) -> None:
        """Put places into the field."""
        self.edit.setPlainText("\n".join(f"{_short(x)}, {_short(y)}" for x, y in points))

    def points(self) -> tuple[Point, ...]:
        """The places in the field.

        Raises:
            JournalError: a line is no place, or they are too few or too many.
        """
        found = self._read()
        if len(found) < self._least:
            word = "place" if self._least == 1 else "places"
            raise JournalError(f"Write {self._least} {word} or more, each as “x, y” on a line.")
        if self._most is not None and len(found) > self._most:
            raise JournalError(f"There can be {self._most} at the most, not {len(found)}.")
        return found

    def _read(self) -> tuple[Point, ...]:
        lines = (line.strip() for line in self.edit.toPlainText().splitlines())
        return tuple(_point(line) for line in lines if line)

    def _on_text(self) -> None:
        try:
            found = self._read()
        except JournalError as error:
            self.note.setText(str(error))
        else:
            long = sum(math.dist(a, b) for a, b in pairwise(found))
            count = "1 place" if len(found) == 1 else f"{len(found)} places"
            self.note.setText(f"{count}, {long:,.0f} mm along" if long else f"{count}, in mm")
        self.changed.emit()


def _point(line: str) -> Point:
    parts = re.split(r"[;\s]+", line) if ";" in line or "," not in line else _at_comma(line)
    parts = [part.strip() for part in parts if part.strip()]
    if len(parts) != 2 or not all(_NUMBER.fullmatch(part) for part in parts):
        raise JournalError(f"“{line}” is no place; write it as “820, 410”.")
    x, y = (float(part.replace(",", ".")) for part in parts)
    return Point(x, y)


def _at_comma(line: str) -> list[str]:
    """The two numbers of "820, 410", "820,410" and of "820,5 410,2"."""
    if re.search(r",\s", line) or line.count(",") == 1:
        return re.split(r",\s*", line, maxsplit=1) if line.count(",") == 1 else line.split(", ")
    return line.split()


def _short(number: float) -> str:
    return f"{number:.2f}".rstrip("0").rstrip(".")
