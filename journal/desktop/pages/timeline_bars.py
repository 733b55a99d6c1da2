"""The bars above the timeline: which photos and in what order, and what to do with some."""

from collections.abc import Mapping

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QButtonGroup, QFrame, QPushButton, QSizePolicy, QSlider, QWidget

from journal.desktop import icons
from journal.desktop.pages.timeline_acts import TimelineActs
from journal.desktop.pages.timeline_groups import Shown
from journal.desktop.widgets.fitting_label import FittingLabel
from journal.desktop.widgets.grid_base import EDGES
from journal.desktop.widgets.parts import button, label, row

_HINT = "Click a photo or a heading"


class TimelineBar(QWidget):
    """Chooses which photos are shown, in what order, and how large."""

    #: Another order or another filter was chosen.
    changed = Signal()
    #: Bursts are to be folded, or to lie open.
    folds_wanted = Signal(bool)
    #: Cells are to be so wide, in pixels.
    edge_wanted = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.newest_first = True
        self._choices: dict[Shown, QPushButton] = {}
        self._group = QButtonGroup(self)
        for shown in Shown:
            choice = QPushButton(shown.value)
            choice.setCheckable(True)
            choice.setAccessibleName(f"Show: {shown.value}")
            self._choices[shown] = choice
            self._group.addButton(choice)
        self._choices[Shown.ALL].setChecked(True)
        self._choices[Shown.REMOVED].setToolTip("Photos taken out of the journal; bring them back")
        self._choices[Shown.REMOVED].hide()
        self._order = button("Newest first", self._on_order, icon="order", role="quiet")
        self._order.setToolTip("Turn the order round")
        self._folds = button("Bursts", self._on_folds, role="quiet")
        self._folds.setCheckable(True)
        self._folds.hide()
        self._size = QSlider(Qt.Orientation.Horizontal)
        self._size.setRange(0, len(EDGES) - 1)
        self._size.setPageStep(1)
        self._size.setFixedWidth(120)
        self._size.setAccessibleName("Size of the photos")
        self._size.setToolTip("Size of the photos (Ctrl+wheel)")
        self.show_edge(160)
        self._here = FittingLabel("muted")
        self._here.setIndent(8)
        line = row(*self._choices.values(), self._here)
        for part in (self._folds, self._order, self._size):
            line.addWidget(part)
        line.setSpacing(6)
        line.setStretch(len(self._choices), 1)
        line.setContentsMargins(12, 6, 16, 6)
        self.setLayout(line)
        self._group.buttonClicked.connect(lambda _button: self.changed.emit())
        self._size.valueChanged.connect(lambda place: self.edge_wanted.emit(EDGES[place]))

    @property
    def shown(self) -> Shown:
        """Which photos are chosen to be shown."""
        return next(s for s, choice in self._choices.items() if choice.isChecked())

    def choice(self, shown: Shown) -> QPushButton:
        """The button of a filter."""
        return self._choices[shown]

    def show_only(self, shown: Shown) -> None:
        """Choose which photos are shown."""
        if not self._choices[shown].isChecked():
            self._choices[shown].setChecked(True)
            self.changed.emit()

    def show_counts(self, counts: Mapping[Shown, int]) -> None:
        """Say how many photos each filter would show; that of removed ones only where any are."""
        for shown, count in counts.items():
            self._choices[shown].setText(f"{shown.value} ({count:,})")
        self._choices[Shown.REMOVED].setVisible(counts[Shown.REMOVED] > 0)

    def show_bursts(self, count: int, *, folded: bool) -> None:
        """Offer to fold bursts where there are any."""
        self._folds.setVisible(count > 0)
        self._folds.setChecked(folded)
        noun = "burst" if count == 1 else "bursts"
        self._folds.setText(f"{count:,} {noun} {'folded' if folded else 'open'}")
        self._folds.setToolTip(
            "Photos taken within seconds and much alike show as one tile; F opens one of them"
        )

    def _on_folds(self) -> None:
        self.folds_wanted.emit(self._folds.isChecked())

    def show_here(self, heading: str) -> None:
        """Say which sitting is at the top of what shows."""
        # The day of the week goes first where the room is little.
        is_day = heading[-1:].isdigit()
        self._here.say(heading, heading.partition(" ")[2] if is_day else heading)

    def show_edge(self, edge: int) -> None:
        """Put the slider where the cells' width is."""
        self._size.blockSignals(True)
        self._size.setValue(EDGES.index(edge))
        self._size.blockSignals(False)

    def _on_order(self) -> None:
        self.newest_first = not self.newest_first
        self._order.setText("Newest first" if self.newest_first else "Oldest first")
        self.changed.emit()


class SelectionBar(QFrame):
    """What can be done with the selected photos; it stays, so that nothing jumps on a click."""

    def __init__(self, acts: TimelineActs, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._acts = acts
        self.setProperty("role", "strip")
        self._count = label("", "subheading", wrap=False)
        self._hint = label(_HINT, "muted", wrap=False)
        self._hint.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self._again = button("Pin a&gain", acts.pin_again, icon="pin")
        self._more = QPushButton("&More")
        icons.put(self._more, "more")
        self._more.setToolTip("Camera clock, turn, unpin, remove")
        self._more.clicked.connect(self._show_menu)
        self._buttons = (
            button("&Pin to a panel", acts.pin, icon="pin", role="primary", hint="Shift+P"),
            self._again,
            button("&Date", acts.date, hint="Say when they were taken (D)"),
            button("Ca&ption", acts.caption, icon="edit", hint="Say what they show (C)"),
            self._more,
        )
        self.bring_back = button(
            "Bring &back", acts.bring_back, icon="undo", role="primary", hint="Bring them back (B)"
        )
        self._is_removed = False
        line = row(self._count, self._hint, *self._buttons, self.bring_back)
        line.setStretch(1, 1)
        line.setContentsMargins(16, 6, 16, 6)
        self.setLayout(line)
        acts.last_changed.connect(self._show_last)
        self._show_last("")
        self.show_count(0, writable=False)

    def show_count(self, count: int, *, writable: bool, removed: bool = False) -> None:
        """Say how many are selected, and offer what can be done with them."""
        self._is_removed = removed
        for one in self._buttons:
            one.setVisible(not removed)
        self._again.setVisible(self._has_last and not removed)
        self.bring_back.setVisible(removed)
        self.bring_back.setEnabled(bool(count) and writable)
        self._count.setText(f"{count:,} selected" if count else "")
        self._count.setVisible(bool(count))
        self._hint.setText("" if count else _HINT)
        for one in self._buttons:
            one.setEnabled(bool(count) and writable)

    def _show_last(self, panel: str) -> None:
        self._again.setText(f"Pin a&gain: {panel}")
        self._again.setToolTip(f"Pin to {panel} as well (P)")
        self._has_last = bool(panel)
        self._again.setVisible(self._has_last and not self._is_removed)

    def _show_menu(self) -> None:
        self._acts.menu().popup(self._more.mapToGlobal(self._more.rect().bottomLeft()))
