"""The words that are withheld wherever they stand: those known already, and the owner's own."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QLabel,
    QTreeWidgetItem,
    QWidget,
)

from journal.actions import privacy
from journal.desktop.desk import Desk
from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.parts import PlainTree, button, column, label, row
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.ids import PrivateWordId
from journal.domain.private_words import LISTED, Private

_WORDS = (
    "They are found however they are written: AB 12-CD is ab12cd. In the texts of a dossier that "
    "withholds their sort, [withheld] stands in their place. On photos, cover them."
)
_KNOWN, _OWN = "known from the record", "listed by you"


class PrivateWordsDialog(QDialog):
    """Lists words by sort; the owner's can be added and taken off.

    Attributes:
        list: all of them.
        words: what is to be listed, and ``kind`` its sort.
    """

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setWindowTitle("Private words")
        self.resize(760, 560)
        self.words = CheckedField()
        self.words.setAccessibleName("Words to withhold")
        self.words.edit.setPlaceholderText("A name, a line of an address, a number")
        self.kind = QComboBox()
        self.kind.setAccessibleName("What they are")
        for kind in LISTED:
            self.kind.addItem(kind.value.capitalize(), kind)
        self.kind.setCurrentIndex(self.kind.findData(Private.ADDRESSES))
        self.add = button("&Add", self._on_add, icon="plus", role="primary")
        self.add.setDefault(True)
        self.remove = button("&Take off the list", self._on_remove, icon="remove")
        self.list = PlainTree("Private words", ["Words", "What they are", "How they are known"])
        self._build()
        self.words.edit.textChanged.connect(lambda _text: self._show_what_can_be_done())
        self.list.itemSelectionChanged.connect(self._show_what_can_be_done)
        desk.changed.connect(self._on_record)
        self._show()
        self.words.setFocus()

    def _build(self) -> None:
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.reject)
        name = QLabel("&Words")
        name.setBuddy(self.words)
        line = row(name, self.words, self.kind, self.add)
        line.setStretch(1, 1)
        for place in range(line.count()):
            if (item := line.itemAt(place)) is not None:
                item.setAlignment(Qt.AlignmentFlag.AlignTop)
        name.setFixedHeight(36)
        layout = column(label(_WORDS, "muted"), spacing=10, margin=16)
        layout.addLayout(line)
        layout.addWidget(self.list, 1)
        layout.addLayout(row(self.remove, None, close))
        self.setLayout(layout)

    def _show(self) -> None:
        self.list.clear()
        known = self._desk.ask(privacy.known_private_words) or {}
        listed = self._desk.ask(privacy.private_words) or ()
        for own in listed:
            self._add_row(own.words, own.kind, _OWN, own.id)
        for kind in LISTED:
            for word in known.get(kind, ()):
                self._add_row(word, kind, _KNOWN, None)
        self.list.resizeColumnToContents(1)
        self.list.resizeColumnToContents(2)
        self.list.setColumnWidth(0, 300)
        self._show_what_can_be_done()

    def _add_row(self, words: str, kind: Private, how: str, number: PrivateWordId | None) -> None:
        item = QTreeWidgetItem([words, kind.value, how])
        item.setToolTip(0, words)
        item.setData(0, Qt.ItemDataRole.UserRole, number)
        self.list.addTopLevelItem(item)

    def _show_what_can_be_done(self) -> None:
        writable = not self._desk.read_only
        self.add.setEnabled(writable and bool(self.words.text()))
        self.remove.setEnabled(writable and self._chosen() is not None)

    def _chosen(self) -> PrivateWordId | None:
        items = self.list.selectedItems()
        number = items[0].data(0, Qt.ItemDataRole.UserRole) if items else None
        return None if number is None else PrivateWordId(number)

    def _on_record(self, changes: Changes) -> None:
        if changes.kinds & {"dossier", "car"}:
            self._show()

    def _on_add(self) -> None:
        kind = Private(self.kind.currentData())
        try:
            changes = privacy.add_private_word(self._desk.session, self.words.text(), kind)
        except JournalError as error:
            self.words.complain(str(error))
            return
        self.words.set_text("")
        self.words.say("")
        self._desk.announce(changes)
        self.words.setFocus()

    def _on_remove(self) -> None:
        if (chosen := self._chosen()) is not None:
            self._desk.act(privacy.remove_private_word, chosen)
