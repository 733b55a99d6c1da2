"""The list of edits: everything that was ever changed in this journal."""

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QTreeWidgetItem, QWidget

from journal.actions import history
from journal.desktop.desk import Desk
from journal.desktop.widgets.parts import PlainTree, button, column, label, row

_MOST = 1000
_KINDS = {"do": "", "undo": "taken back", "redo": "done again"}


class HistoryDialog(QDialog):
    """Lists the edits, the newest first; the latest can be taken back from here."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setWindowTitle("History")
        self.resize(760, 540)
        headings = ["When", "What", "", "Rows", "Mark in the chain"]
        self._list = PlainTree("Edits, the newest first", headings)
        self._undo = button("&Undo the latest", self._on_undo, icon="undo")
        self._redo = button("&Redo", self._on_redo, icon="redo")
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.reject)
        words = label(
            "Every change is kept here for good, also those taken back. Each carries a mark made "
            "from all before it, so that an altered record shows when the journal is checked.",
            "muted",
        )
        layout = column(words, self._list, margin=16)
        layout.addLayout(row(self._undo, self._redo, None, close))
        self.setLayout(layout)
        desk.changed.connect(self._refresh)
        self._refresh()

    def _refresh(self) -> None:
        self._list.clear()
        items = [
            QTreeWidgetItem(
                [
                    f"{row.made.astimezone():%Y-%m-%d %H:%M}",
                    row.label,
                    _KINDS.get(row.kind, row.kind),
                    f"{row.rows:,}",
                    row.digest[:12],
                ]
            )
            for row in self._desk.ask(history.edits, _MOST) or ()
        ]
        self._list.addTopLevelItems(items)
        for number in (0, 2, 3):
            self._list.resizeColumnToContents(number)
        self._list.setColumnWidth(1, 340)
        writable = not self._desk.read_only
        undo = self._desk.ask(history.undo_label) if writable else None
        redo = self._desk.ask(history.redo_label) if writable else None
        self._undo.setEnabled(undo is not None)
        self._undo.setToolTip(undo or "")
        self._redo.setEnabled(redo is not None)
        self._redo.setToolTip(redo or "")

    def _on_undo(self) -> None:
        self._desk.act(history.undo)

    def _on_redo(self) -> None:
        self._desk.act(history.redo)
