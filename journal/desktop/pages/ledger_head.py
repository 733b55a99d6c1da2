"""The head of the Ledger: three figures clearly apart, the smaller ones under them, and remarks."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QVBoxLayout, QWidget

from journal.desktop.locales import money
from journal.desktop.pages import ledger_filters
from journal.desktop.pages.ledger_filters import LinesWanted, Only
from journal.desktop.widgets.figure import Figure
from journal.desktop.widgets.parts import button, clear_layout, column, label, row
from journal.domain.hours import spoken_hours
from journal.domain.made_of import FigureName
from journal.domain.price_index import InMoneyOf
from journal.domain.when import spoken

if TYPE_CHECKING:
    from journal.actions.ledger_page import LedgerRead

_LARGE = ("Money spent", "Own hours", "Valuation")
_SMALL = ("Restoration", "Upkeep", "Not proven", "Saved", "Not shared")
_AS_PAID = "as it was paid"
#: More periods than these that an index lacks are not named one by one.
_MOST_APART = 4


class LedgerHead(QWidget):
    """What it came to, and what each figure rests on.

    Attributes:
        figures: the cards by name.
        money_of: the year that all money is shown in.
    """

    #: What a figure is made of is to be shown: a LinesWanted.
    lines_wanted = Signal(object)
    #: Receipts are to be shown that stand in no figure: an Only.
    only_wanted = Signal(object)
    #: The valuations are to be shown.
    valuations_wanted = Signal()
    #: The price indices are to be shown.
    indices_wanted = Signal()
    #: Money is to be shown in that of another year: an InMoneyOf, None for as it was paid.
    wish_changed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._found: LedgerRead | None = None
        large = {name: Figure(name) for name in _LARGE}
        small = {name: Figure(name, compact=True) for name in _SMALL}
        self.figures = {**large, **small}
        self.money_of = QComboBox()
        self.money_of.setAccessibleName("In the money of")
        self.money_of.setToolTip("Show all money of this page in that of one year")
        self.remarks = QVBoxLayout()
        self.remarks.setSpacing(2)
        first, second = QHBoxLayout(), QHBoxLayout()
        for line, cards in ((first, large), (second, small)):
            line.setSpacing(8)
            for figure in cards.values():
                line.addWidget(figure, 1)
        first.addLayout(self._make_choice())
        layout = column(spacing=8)
        for part in (first, second, self.remarks):
            layout.addLayout(part)
        self.setLayout(layout)
        self._connect()

    def _make_choice(self) -> QVBoxLayout:
        said = label("In the mo&ney of", "muted", wrap=False)
        said.setBuddy(self.money_of)
        indices = button("Price &indices\N{HORIZONTAL ELLIPSIS}", self.indices_wanted.emit)
        indices.setProperty("role", "quiet")
        self.money_of.setMinimumWidth(150)
        return column(said, self.money_of, indices, None, spacing=2)

    def _connect(self) -> None:
        opens: dict[str, tuple[FigureName, str]] = {
            "Money spent": ("money", "all money spent"),
            "Restoration": ("restoration", "restoration"),
            "Upkeep": ("upkeep", "upkeep"),
            "Not proven": ("unproven", "paper lost or never existed"),
            "Saved": ("saved", "saved against buying new"),
            "Not shared": ("not shared", "not shared over repair areas"),
        }
        for name, (figure, words) in opens.items():
            self.figures[name].clicked.connect(partial(self._open, figure, words))
        self.figures["Own hours"].clicked.connect(self._open_hours)
        self.figures["Valuation"].clicked.connect(self.valuations_wanted.emit)
        self.money_of.activated.connect(self._on_money_of)

    def _open(self, figure: FigureName, words: str) -> None:
        found = self._found
        if found is None:
            return
        # What was saved is known as it was paid, since a price new has no date of its own.
        wish = None if figure == "saved" else found.wish
        currency = found.summary.currency
        self.lines_wanted.emit(ledger_filters.of_figure(figure, words, currency, wish))

    def _open_hours(self) -> None:
        if self._found is not None:
            currency = self._found.summary.currency
            self.lines_wanted.emit(ledger_filters.of_own_hours(currency))

    def _on_money_of(self) -> None:
        year = self.money_of.currentData()
        self.wish_changed.emit(None if year is None else InMoneyOf(year))

    # --- showing ---

    def show_found(self, found: "LedgerRead") -> None:
        """Show what was read."""
        self._found = found
        self._show_years(found)
        self._show_large(found)
        self._show_small(found)
        clear_layout(self.remarks)
        self._remark_on_receipts(found)
        self._remark_on_the_year(found)

    def _show_years(self, found: "LedgerRead") -> None:
        self.money_of.clear()
        self.money_of.addItem(_AS_PAID, None)
        for year in found.years:
            self.money_of.addItem(year, year)
        wished = None if found.wish is None else found.wish.period
        self.money_of.setCurrentIndex(max(0, self.money_of.findData(wished)))
        self.money_of.setEnabled(bool(found.years))

    def _show_large(self, found: "LedgerRead") -> None:
        currency, figures = found.summary.currency, found.figures
        spent = _AS_PAID if found.wish is None else f"in the money of {found.wish.period}"
        together = "restoration and upkeep together"
        self.figures["Money spent"].show_figure(
            money(found.summary.money, currency), f"{together}, {spent}"
        )
        self.figures["Own hours"].show_figure(
            spoken_hours(figures.own_minutes), _worth(found), can_open=bool(found.work)
        )
        latest = figures.valuation
        if latest is None:
            self.figures["Valuation"].show_figure("none entered", "press to enter what it is worth")
        else:
            words = f"{latest.basis.value}, {latest.valuer}, {spoken(latest.when)}"
            self.figures["Valuation"].show_figure(money(latest.amount, currency), words)

    def _show_small(self, found: "LedgerRead") -> None:
        one, show = found.summary, self.figures

        def sum_of(minor: int) -> str:
            return money(minor, one.currency)

        show["Restoration"].show_figure(sum_of(one.restoration), "until on the road")
        show["Upkeep"].show_figure(sum_of(one.upkeep), "since on the road")
        proven = one.money - one.unproven
        show["Not proven"].show_figure(sum_of(one.unproven), f"{sum_of(proven)} is proven")
        paid = found.paid
        saved = "no price new given"
        if paid.saved_lines:
            how = "bought for" if found.wish is None else "as paid, for"
            saved = f"{how} {sum_of(paid.saved_on)}"
        show["Saved"].show_figure(
            sum_of(paid.saved_against_new), saved, can_open=bool(paid.saved_lines)
        )
        unshared = "belongs to no area"
        if one.not_shared_minutes:
            unshared = f"and {_hours(one.not_shared_minutes)}, to no area"
        show["Not shared"].show_figure(sum_of(one.not_shared), unshared)

    # --- remarks ---

    def _remark_on_receipts(self, found: "LedgerRead") -> None:
        """Say what the sums leave out or keep as printed, with a way to the receipts."""
        one = found.summary
        if one.differing:
            words = (
                f"The lines of {_receipts(len(one.differing))} don't make the printed total: "
                f"{money(one.difference, one.currency)} in all, kept as printed."
            )
            about = "lines that don't make the total"
            wanted = ledger_filters.of_figure("difference", about, one.currency, found.wish)
            self._add_remark(words, wanted)
        for missing in one.missing_rates:
            words = (
                f"{money(missing.amount, missing.currency)} on "
                f"{_receipts(len(missing.receipt_ids))} stands in no sum: no rate to "
                f"{one.currency} is given."
            )
            about = f"{missing.currency} without a rate"
            self._add_remark(words, ledger_filters.these(about, missing.receipt_ids))

    def _remark_on_the_year(self, found: "LedgerRead") -> None:
        """Say by which index the money was revalued, and what of it could not be."""
        if found.problem:
            self._add_remark(f"{found.problem} All money is shown as it was paid.")
        if found.wish is None or found.index is None:
            return
        words = f"Every sum is in the money of {found.wish.period} by “{found.index.name}”"
        if not found.apart:
            self._add_remark(f"{words}.")
            return
        amount = money(sum(one.money for one in found.apart), found.summary.currency)
        periods = [one.period or "no date" for one in found.apart]
        more = f" and {len(periods) - _MOST_APART} more" if len(periods) > _MOST_APART else ""
        lacks = ", ".join(periods[:_MOST_APART]) + more
        words += f"; {amount} can't be revalued and stands in no sum: no index for {lacks}."
        ids = {number for one in found.apart for number in one.receipt_ids}
        self._add_remark(words, ledger_filters.these("not revalued", ids))

    def _add_remark(self, words: str, wanted: LinesWanted | Only | None = None) -> None:
        said = label(words, "muted")
        if wanted is None:
            self.remarks.addWidget(said)
            return
        told = self.lines_wanted if isinstance(wanted, LinesWanted) else self.only_wanted
        line = row(said, button("Show them", lambda: told.emit(wanted), role="quiet"))
        line.setStretch(0, 1)
        self.remarks.addLayout(line)


def _worth(found: "LedgerRead") -> str:
    """What own hours are worth at the owner's rates, said to be no money spent."""
    figures = found.figures
    besides = f"; besides, {_hours(figures.paid_minutes)} paid for" if figures.paid_minutes else ""
    if figures.own_value is None:
        return f"no rate is given; no money was spent on them{besides}"
    worth = f"worth {money(figures.own_value, figures.currency)} at your rates"
    if figures.valued_minutes < figures.own_minutes:
        worth = f"{_hours(figures.valued_minutes)} of them {worth}"
    return f"{worth}: no money spent{besides}"


def _hours(minutes: int) -> str:
    """Hours for a card: whole ones, where there are a hundred and more."""
    return spoken_hours(minutes) if minutes < 6000 else f"{minutes / 60:,.0f} h"


def _receipts(count: int) -> str:
    return "1 receipt" if count == 1 else f"{count:,} receipts"
