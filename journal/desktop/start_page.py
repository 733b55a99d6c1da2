"""What the window shows while no journal is open: begin one, open one, or look at the demo."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QLabel, QListWidgetItem, QVBoxLayout, QWidget

from journal.desktop import icons
from journal.desktop.widgets.parts import PlainList, button, column, label, row


class StartPage(QWidget):
    """Three acts and the journals opened last."""

    #: A journal is to be begun.
    new_wanted = Signal()
    #: A folder is to be chosen and opened.
    open_wanted = Signal()
    #: The demo journal is to be made and opened.
    demo_wanted = Signal()
    #: One of the journals opened last is to be opened: its folder as text.
    recent_wanted = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sign = QLabel()
        self._sign.setPixmap(icons.program_icon().pixmap(QSize(72, 72)))
        self._recent_title = label("Opened last", "subheading")
        self._recent = PlainList("Journals opened last")
        self._recent.itemActivated.connect(self._on_recent)
        self._recent.itemClicked.connect(self._on_recent)
        self._build()

    def _build(self) -> None:
        begin = button("&New journal", self.new_wanted.emit, icon="new", role="primary")
        begin.setToolTip("Begin the record of a car")
        open_one = button("&Open a journal", self.open_wanted.emit, icon="open")
        demo = button("Make the &demo journal", self.demo_wanted.emit, icon="demo")
        demo.setToolTip("A made-up car, with years of pictures that the program draws")
        for act in (begin, open_one, demo):
            act.setMinimumSize(190, 48)
        words = QVBoxLayout()
        words.addWidget(label("Restoration Journal", "heading"))
        words.addWidget(
            label(
                "One car, its whole restoration: photos, repair areas, receipts and hours, each "
                "in its place on a drawing of the car.",
                "muted",
            )
        )
        head = row(self._sign, spacing=20)
        head.addLayout(words, 1)
        body = QWidget()
        body.setMaximumWidth(720)
        inner = column(spacing=24)
        inner.addLayout(head)
        inner.addLayout(row(begin, open_one, demo, None))
        last = column(self._recent_title, self._recent)
        inner.addLayout(last)
        body.setLayout(inner)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(24, 24, 24, 24)
        whole.addStretch(1)
        middle = row(None, body, None)
        middle.setStretch(1, 4)
        whole.addLayout(middle)
        whole.addStretch(2)

    def show_recent(self, folders: Sequence[str]) -> None:
        """List the journals opened last, the latest first."""
        self._recent.clear()
        for folder in folders:
            item = QListWidgetItem(f"{Path(folder).name}\n{folder}")
            item.setData(Qt.ItemDataRole.UserRole, folder)
            item.setSizeHint(QSize(0, 52))
            self._recent.addItem(item)
        self._recent.setFixedHeight(min(4, max(1, len(folders))) * 54 + 4)
        self._recent.setVisible(bool(folders))
        self._recent_title.setVisible(bool(folders))
        if folders:
            self._recent.setCurrentRow(0)
            self._recent.setFocus()

    def _on_recent(self, item: QListWidgetItem) -> None:
        self.recent_wanted.emit(item.data(Qt.ItemDataRole.UserRole))
