"""Sharing a line or a day over repair areas, with what each gets to the last cent or minute."""

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QIntValidator, QKeyEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QLineEdit, QToolButton, QWidget

from journal.desktop.widgets.parts import column, label, row, tool
from journal.desktop.widgets.pick_edit import PickEdit
from journal.domain.areas import Area
from journal.domain.ids import AreaId
from journal.domain.receipts import Share
from journal.domain.sharing import share

_MOST = 9999

#: Writes an amount for people: money or hours.
Write = Callable[[int], str]


class WeightEdit(QLineEdit):
    """A whole-number weight; Up and Down change it by one."""

    #: Another weight was set.
    weighed = Signal(int)

    def __init__(self, weight: int, parent: QWidget | None = None) -> None:
        super().__init__(str(weight), parent)
        self.setValidator(QIntValidator(0, _MOST, self))
        self.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        self.setToolTip("Weight: 2 gets twice what 1 gets")
        self.setFixedWidth(56)
        self.textChanged.connect(self._on_text)

    def weight(self) -> int:
        """The weight; an empty line weighs nothing."""
        return int(self.text() or 0)

    def step(self, by: int) -> None:
        """Make it so much more (or less, if negative)."""
        self.setText(str(min(_MOST, max(0, self.weight() + by))))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Step with Up and Down."""
        by = {Qt.Key.Key_Up.value: 1, Qt.Key.Key_Down.value: -1}.get(event.key())
        if by is None:
            super().keyPressEvent(event)
        else:
            self.step(by)

    def _on_text(self) -> None:
        self.weighed.emit(self.weight())


class ShareEdit(QWidget):
    """Repair areas with a whole-number weight each, and the amount that comes to each of them.

    With nothing added, what is shared belongs to no repair area.

    Attributes:
        pick: the line in which a repair area is added.
        weights: the field of each share, in the order shown.
    """

    #: The shares changed by hand.
    changed = Signal()

    def __init__(self, areas: Sequence[Area] = (), parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._names: dict[AreaId, str] = {}
        self._shares: list[Share] = []
        self._totals: tuple[int, ...] = ()
        self._write: Write = str
        self.weights: list[WeightEdit] = []
        self._amounts: list[QLabel] = []
        self.pick = PickEdit()
        self.pick.setPlaceholderText("Add a repair area: type a part of its name")
        self.pick.setAccessibleName("Add a repair area to share with")
        self.pick.on_picked(self._on_picked)
        self._open = tool("expand", "Show all repair areas", self.pick.show_all)
        self.nobody = label("Shared to no repair area: it counts for the car as a whole.", "muted")
        self._rows = QFrame()
        self._grid = QGridLayout(self._rows)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(8)
        self._grid.setVerticalSpacing(4)
        self._grid.setColumnStretch(0, 1)
        layout = column(self._rows, self.nobody, spacing=6)
        layout.addLayout(row(self.pick, self._open, spacing=4))
        self.setLayout(layout)
        self.setFocusProxy(self.pick)
        self.set_areas(areas)

    def set_areas(self, areas: Sequence[Area]) -> None:
        """Offer these repair areas; two of one name are told apart by their number."""
        names = [area.name for area in areas]
        self._names = {
            area.id: area.name if names.count(area.name) == 1 else f"{area.name} (no. {area.id})"
            for area in areas
        }
        self._rebuild()

    def set_total(self, totals: int | Sequence[int], write: Write) -> None:
        """Say what is shared: one amount, or several that are each shared by the same weights."""
        self._totals = (totals,) if isinstance(totals, int) else tuple(totals)
        self._write = write
        self._show_amounts()

    def shares(self) -> tuple[Share, ...]:
        """The shares as they stand."""
        return tuple(self._shares)

    def set_shares(self, shares: Sequence[Share]) -> None:
        """Show these shares; nothing is told."""
        self._shares = list(shares)
        self._rebuild()

    def amounts(self) -> tuple[int, ...]:
        """What comes to each repair area, in the order shown."""
        weights = [part.weight for part in self._shares]
        if not weights:
            return ()
        parts = [share(total, weights) for total in self._totals]
        return tuple(sum(of_one) for of_one in zip(*parts, strict=True)) or (0,) * len(weights)

    def words(self) -> str:
        """The shares in a few words: "Sill, left; Floor, left 2 of 3"."""
        return shares_in_words(self._shares, self._names)

    def add(self, area_id: AreaId) -> None:
        """Share with one more repair area, with the weight 1."""
        if area_id in self._names and all(part.area_id != area_id for part in self._shares):
            self._shares.append(Share(area_id, 1))
            self._rebuild()
            self.changed.emit()

    def _on_picked(self, name: str) -> None:
        found = [area for area, known in self._names.items() if known == name]
        if found:
            self.add(found[0])
        self.pick.clear()
        self.pick.setFocus()

    def _remove(self, place: int) -> None:
        del self._shares[place]
        self._rebuild()
        self.pick.setFocus()
        self.changed.emit()

    def _on_weight(self, place: int, weight: int) -> None:
        self._shares[place] = Share(self._shares[place].area_id, weight)
        self._show_amounts()
        self.changed.emit()

    def _rebuild(self) -> None:
        while (item := self._grid.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.weights, self._amounts = [], []
        for place, part in enumerate(self._shares):
            self._add_row(place, part)
        taken = {part.area_id for part in self._shares}
        self.pick.set_choices([name for area, name in self._names.items() if area not in taken])
        self.nobody.setVisible(not self._shares)
        self._rows.setVisible(bool(self._shares))
        self._show_amounts()

    def _add_row(self, place: int, part: Share) -> None:
        name = self._names.get(part.area_id, f"Repair area no. {part.area_id}")
        weight = WeightEdit(part.weight)
        weight.setAccessibleName(f"Weight of {name}")
        weight.weighed.connect(partial(self._on_weight, place))
        amount = label("", wrap=False)
        amount.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        amount.setMinimumWidth(88)
        away = tool("remove", f"Don't share with {name}", partial(self._remove, place))
        away.setProperty("role", "quiet")
        steps = row(
            _step("\N{MINUS SIGN}", f"Less for {name}", weight, -1),
            weight,
            _step("+", f"More for {name}", weight, 1),
            spacing=2,
        )
        self._grid.addWidget(label(name), place, 0)
        holder = QWidget()
        holder.setLayout(steps)
        self._grid.addWidget(holder, place, 1)
        self._grid.addWidget(amount, place, 2)
        self._grid.addWidget(away, place, 3)
        self.weights.append(weight)
        self._amounts.append(amount)

    def _show_amounts(self) -> None:
        for shown, amount in zip(self._amounts, self.amounts(), strict=True):
            shown.setText(self._write(amount) if self._totals else "")


def _step(sign: str, name: str, weight: WeightEdit, by: int) -> QToolButton:
    made = QToolButton()
    made.setText(sign)
    made.setAccessibleName(name)
    made.setToolTip(name)
    made.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
    made.setAutoRepeat(True)
    made.clicked.connect(lambda: weight.step(by))
    return made


def shares_in_words(shares: Sequence[Share], names: dict[AreaId, str]) -> str:
    """Shares in a few words: "Sill, left", "Sill, left 2 of 3; Floor 1 of 3", "" for none."""
    said = [names.get(part.area_id, f"no. {part.area_id}") for part in shares]
    if len(shares) < 2:
        return "".join(said)
    whole = sum(part.weight for part in shares)
    if len({part.weight for part in shares}) == 1:
        return "; ".join(said)
    return "; ".join(
        f"{name} {part.weight} of {whole}" for name, part in zip(said, shares, strict=True)
    )
