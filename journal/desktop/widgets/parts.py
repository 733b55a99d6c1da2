"""Small pieces every page is made of, so that they look and speak alike."""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QShowEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QToolButton,
    QTreeWidget,
    QVBoxLayout,
    QWidget,
)

from journal.desktop import icons

if TYPE_CHECKING:
    from PySide6.QtWidgets import QComboBox, QSpinBox


def label(text: str, role: str = "", *, wrap: bool = True) -> QLabel:
    """Words in a role of the style sheet: "heading", "subheading", "muted", "error" or plain.

    The text is shown as it is, never read as markup.
    """
    made = QLabel(text)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setWordWrap(wrap)
    if role:
        made.setProperty("role", role)
    return made


def button(
    text: str, on_click: Callable[[], object], *, icon: str = "", role: str = "", hint: str = ""
) -> QPushButton:
    """A button with words (and a mnemonic: "&Pin here"); role "primary", "quiet" or plain."""
    made = QPushButton(text)
    if role:
        made.setProperty("role", role)
    if icon:
        icons.put(made, icon)
    if hint:
        made.setToolTip(hint)
    made.clicked.connect(lambda: on_click())
    return made


def tool(icon: str, name: str, on_click: Callable[[], object] | None = None) -> QToolButton:
    """A button with an icon alone; ``name`` is its tool tip and what a screen reader says."""
    made = QToolButton()
    icons.put(made, icon)
    made.setToolTip(name)
    made.setAccessibleName(name)
    made.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    if on_click:
        made.clicked.connect(lambda: on_click())
    return made


def number_box(name: str, most: int, unit: str, unset: str) -> "QSpinBox":
    """A box for a whole number from 0, which reads ``unset``, to ``most``, with its unit."""
    from PySide6.QtWidgets import QSpinBox

    made = QSpinBox()
    made.setRange(0, most)
    made.setSuffix(f" {unit}")
    made.setSpecialValueText(unset)
    made.setAccessibleName(name)
    made.lineEdit().setTextMargins(8, 0, 0, 0)
    return made


def let_type(choice: "QComboBox") -> None:
    """Let people type what is not on a list; Enter then accepts the form."""
    from PySide6.QtWidgets import QCompleter

    choice.setEditable(True)
    # Else Enter, with the words still selected, would accept them as a completion and no more.
    if (completer := choice.completer()) is not None:
        completer.setCompletionMode(QCompleter.CompletionMode.PopupCompletion)


def row(*widgets: QWidget | None, spacing: int = 8) -> QHBoxLayout:
    """Widgets side by side; None stands for a stretch."""
    made = QHBoxLayout()
    made.setContentsMargins(0, 0, 0, 0)
    made.setSpacing(spacing)
    for widget in widgets:
        if widget is None:
            made.addStretch(1)
        else:
            made.addWidget(widget)
    return made


def column(*widgets: QWidget | None, spacing: int = 8, margin: int = 0) -> QVBoxLayout:
    """Widgets below each other; None stands for a stretch."""
    made = QVBoxLayout()
    made.setContentsMargins(margin, margin, margin, margin)
    made.setSpacing(spacing)
    for widget in widgets:
        if widget is None:
            made.addStretch(1)
        else:
            made.addWidget(widget)
    return made


def card(*widgets: QWidget | None) -> QFrame:
    """A framed group of widgets below each other."""
    made = QFrame()
    made.setProperty("role", "card")
    made.setLayout(column(*widgets, margin=12))
    return made


def scrolled(content: QWidget, *, is_form: bool = False) -> QScrollArea:
    """The widget in an area that scrolls up and down only.

    Tab passes a form by, which scrolls along with the field that has the keyboard; else the area
    is a stop of its own, so that arrow keys scroll it.
    """
    area = QScrollArea()
    if is_form:
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setWidgetResizable(True)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    content.setObjectName("scrolled")
    area.setWidget(content)
    return area


class PlainList(QListWidget):
    """A list whose rows wrap and are measured when it shows, with the style sheet on by then."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setWordWrap(True)
        self.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    def showEvent(self, event: QShowEvent) -> None:
        """Measure the rows anew."""
        super().showEvent(event)
        self.scheduleDelayedItemsLayout()


class PlainTree(QTreeWidget):
    """Rows in columns, measured when they show, with the style sheet on by then."""

    def __init__(self, name: str, headings: Sequence[str], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setHeaderLabels(list(headings))
        self.setRootIsDecorated(False)
        self.setUniformRowHeights(True)

    def showEvent(self, event: QShowEvent) -> None:
        """Measure the rows anew."""
        super().showEvent(event)
        self.scheduleDelayedItemsLayout()


class EmptyState(QWidget):
    """What an empty page says: what belongs there, and the acts that fill it."""

    def __init__(
        self, icon: str, title: str, text: str, *acts: QPushButton, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        picture = QToolButton()
        icons.put(picture, icon)
        picture.setProperty("role", "quiet")
        picture.setIconSize(picture.iconSize() * 3)
        picture.setEnabled(False)
        picture.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        picture.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        heading = label(title, "heading")
        words = label(text, "muted")
        layout = column(None, picture, spacing=12, margin=24)
        for piece in (heading, words):
            piece.setAlignment(Qt.AlignmentFlag.AlignHCenter)
            piece.setMaximumWidth(560)
            centred = row(None, piece, None)
            centred.setStretchFactor(piece, 100)
            layout.addLayout(centred)
        layout.addLayout(row(None, *acts, None))
        layout.addStretch(2)
        self.setLayout(layout)


def clear_layout(layout: QVBoxLayout | QHBoxLayout) -> None:
    """Take every widget and layout out of a layout and let them go."""
    while (item := layout.takeAt(0)) is not None:
        if (widget := item.widget()) is not None:
            widget.hide()
            widget.deleteLater()
        elif isinstance(inner := item.layout(), QVBoxLayout | QHBoxLayout):
            clear_layout(inner)


def bold(font: QFont) -> QFont:
    """The same font, bolder."""
    made = QFont(font)
    made.setWeight(QFont.Weight.DemiBold)
    return made
