"""The rail of pages down the left: big targets with a drawn icon and a word."""

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt, QTimer, Signal
from PySide6.QtGui import QDragEnterEvent, QDragLeaveEvent, QDragMoveEvent, QDropEvent
from PySide6.QtWidgets import QButtonGroup, QFrame, QToolButton, QVBoxLayout, QWidget

from journal.desktop import icons
from journal.desktop.widgets.photo_drag import photos_from_mime

#: So long photos are held over a page's button before the page comes, in milliseconds.
_LINGER_MS = 400


class Rail(QFrame):
    """One button for each page, in order; Ctrl+1 to Ctrl+6 press them."""

    #: A page was chosen: its title.
    chosen = Signal(str)

    def __init__(self, pages: Sequence[tuple[str, str]], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", "rail")
        self.setAccessibleName("Pages")
        self._group = QButtonGroup(self)
        self._group.setExclusive(True)
        self._buttons: dict[str, QToolButton] = {}
        self._layout = layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 8, 0, 8)
        layout.setSpacing(2)
        for number, (title, icon) in enumerate(pages, start=1):
            made = self._make_button(title, icon, number)
            layout.addWidget(made)
        layout.addStretch(1)
        self._group.buttonClicked.connect(self._on_clicked)
        self._under_drag: QToolButton | None = None
        self._linger = QTimer(self, singleShot=True, interval=_LINGER_MS)
        self._linger.timeout.connect(self._on_lingered)
        self.setAcceptDrops(True)

    def set_corner(self, widget: QWidget) -> None:
        """Put something in the corner of the window, below the pages."""
        self._layout.addWidget(widget)

    def mark(self, title: str) -> None:
        """Show which page is in front."""
        self._buttons[title].setChecked(True)

    def _make_button(self, title: str, icon: str, number: int) -> QToolButton:
        made = QToolButton()
        made.setProperty("role", "rail")
        made.setText(title)
        made.setAccessibleName(f"{title} page")
        made.setToolTip(f"{title} (Ctrl+{number})")
        made.setCheckable(True)
        made.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
        made.setIconSize(QSize(28, 28))
        made.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        icons.put(made, icon)
        self._group.addButton(made)
        self._buttons[title] = made
        return made

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Let photos come along, to be carried to another page."""
        event.setAccepted(bool(photos_from_mime(event.mimeData())))

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Photos held over a page's button for a moment bring the page to the front."""
        child = self.childAt(event.position().toPoint())
        under = child if isinstance(child, QToolButton) else None
        if under is not self._under_drag:
            self._under_drag = under
            self._linger.start()
        event.accept()

    def dragLeaveEvent(self, _event: QDragLeaveEvent) -> None:
        """Bring nothing to the front."""
        self._under_drag = None
        self._linger.stop()

    def dropEvent(self, event: QDropEvent) -> None:
        """Nothing is dropped on the rail itself."""
        self.dragLeaveEvent(QDragLeaveEvent())
        event.ignore()

    def _on_lingered(self) -> None:
        if self._under_drag is not None:
            self.chosen.emit(self._under_drag.text())

    def _on_clicked(self, pressed: QToolButton) -> None:
        self.chosen.emit(pressed.text())
