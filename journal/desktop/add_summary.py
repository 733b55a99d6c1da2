"""What came of adding photos: how many, and each file that wasn't added with its reason."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QTreeWidgetItem, QVBoxLayout, QWidget

from journal.desktop import icons
from journal.desktop.widgets.announce import announce
from journal.desktop.widgets.parts import PlainTree, button, label, row, tool

if TYPE_CHECKING:
    from journal.actions.add_photos import AddReport, NotAdded


def count_of(number: int, one: str, many: str) -> str:
    """The number with its noun: "1 photo", "1,204 photos"."""
    return f"{number:,} {one if number == 1 else many}"


def summary_words(report: "AddReport") -> str:
    """One sentence of what was added and what wasn't."""
    parts = [f"{count_of(len(report.added), 'photo', 'photos')} added"]
    if report.already:
        parts.append(f"{len(report.already):,} already there")
    if report.skipped:
        parts.append(f"{len(report.skipped):,} skipped")
    if report.refused:
        parts.append(f"{len(report.refused):,} couldn't be read")
    words = ", ".join(parts) + "."
    return f"Stopped as you asked. {words}" if report.cancelled else words


class AddSummary(QFrame):
    """The outcome of the last adding, with the files left out in a list that unfolds."""

    #: The photos are to be looked at.
    look_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", "strip")
        self._look = button("Look at &them", self.look_wanted.emit, icon="timeline", role="quiet")
        self._words = label("")
        self._toggle = button("&Which ones?", self._on_toggle, icon="expand", role="quiet")
        self._toggle.setCheckable(True)
        icons.put(self._toggle, "expand")
        self._close = tool("close", "Put the summary away", self.hide)
        self._close.setProperty("role", "quiet")
        name = "Files that were not added, with the reason"
        self._list = PlainTree(name, ["File", "Why"])
        self._list.setRootIsDecorated(True)
        self._list.setMaximumHeight(220)
        self._list.setTextElideMode(Qt.TextElideMode.ElideMiddle)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(12, 4, 8, 4)
        head = row(self._words, self._look, self._toggle, self._close)
        head.setStretch(0, 1)
        layout.addLayout(head)
        layout.addWidget(self._list)
        self.hide()

    def show_report(self, report: "AddReport") -> None:
        """Show what came of an adding."""
        words = summary_words(report)
        self._words.setText(words)
        self._look.setVisible(bool(report.added))
        announce(self, words)
        self._list.clear()
        self._group("Couldn't be read", report.refused)
        self._group("Skipped", report.skipped)
        already = len(report.already)
        if already:
            top = QTreeWidgetItem([f"Already there ({already:,})", ""])
            top.addChildren([QTreeWidgetItem([str(a.path), ""]) for a in report.already[:2000]])
            self._list.addTopLevelItem(top)
        self._list.setColumnWidth(0, 520)
        self._toggle.setVisible(self._list.topLevelItemCount() > 0)
        self._toggle.setChecked(bool(report.refused))
        self._on_toggle()
        self.show()

    def _group(self, title: str, left_out: "Sequence[NotAdded]") -> None:
        if not left_out:
            return
        top = QTreeWidgetItem([f"{title} ({len(left_out):,})", ""])
        for one in left_out:
            item = QTreeWidgetItem([str(one.path), one.reason])
            item.setToolTip(1, one.reason)
            top.addChild(item)
        self._list.addTopLevelItem(top)
        top.setExpanded(True)

    def _on_toggle(self) -> None:
        self._list.setVisible(self._toggle.isChecked())
