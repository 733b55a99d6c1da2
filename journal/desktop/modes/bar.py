"""The bar above the canvas: which mode is on, its tools, and what to do next."""

from functools import partial

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QButtonGroup, QFrame, QToolButton, QVBoxLayout, QWidget

from journal.desktop import icons
from journal.desktop.desk import Desk, Selection
from journal.desktop.modes import Mode
from journal.desktop.modes.registry import MODES, ModeEntry
from journal.desktop.tools.tool import Tool
from journal.desktop.widgets.announce import announce
from journal.desktop.widgets.flow import FlowLayout
from journal.desktop.widgets.parts import column, label, row
from journal.desktop.widgets.tool_canvas import ToolCanvas
from journal.domain.changes import Changes

_LOOK = ModeEntry("Look", "look", "Look, click and place photos (Esc)", "", "", writes=False)


class ModeBar(QWidget):
    """Chooses the mode and the tool, and shows the hint of the tool in hand.

    Esc drops what the tool has half done, then goes back to the mode's first tool, then to looking.
    """

    #: Another mode is on: its title.
    entered = Signal(str)

    def __init__(
        self,
        desk: Desk,
        canvas: ToolCanvas,
        left: QVBoxLayout,
        parent: QWidget | None = None,
    ) -> None:
        """``left`` is where a mode's pane stands, in place of what is there when looking."""
        super().__init__(parent)
        self.setAccessibleName("Modes and tools of the drawing")
        self._desk = desk
        self._canvas = canvas
        self._left = left
        self._below: QWidget | None = None
        self._made: dict[str, Mode] = {}
        self._title = _LOOK.title
        self._modes = QButtonGroup(self)
        self._tools = QButtonGroup(self)
        self._tool_row = FlowLayout(spacing=4)
        self._hint = label("", "muted")
        self._hint.setMinimumHeight(24)
        self._hint.setAccessibleName("What to do next")
        self._build()
        canvas.left.connect(self._on_left)
        canvas.tool_changed.connect(self._on_tool_changed)
        canvas.digit_pressed.connect(self._on_digit)

    def _build(self) -> None:
        entries = (_LOOK, *MODES)
        buttons: list[QWidget | None] = []
        for number, entry in enumerate(entries, start=1):
            made = _button(entry.title, entry.icon, f"{entry.what} (Alt+{number})")
            made.setEnabled(not (entry.writes and self._desk.read_only))
            made.clicked.connect(partial(self.enter, entry.title))
            self._modes.addButton(made, number)
            buttons.append(made)
            keys = QShortcut(QKeySequence(f"Alt+{number}"), self, partial(self.enter, entry.title))
            keys.setContext(Qt.ShortcutContext.WindowShortcut)
        self._modes.button(1).setChecked(True)
        self._more = QFrame()
        tools = QWidget()
        tools.setLayout(self._tool_row)
        self._more.setLayout(column(tools, self._hint, spacing=4))
        self._more.hide()
        self.setLayout(column(spacing=6))
        layout = self.layout()
        assert layout is not None
        head = QWidget()
        head.setLayout(row(*buttons, None, spacing=4))
        layout.addWidget(head)
        layout.addWidget(self._more)

    def take_room_of(self, below: QWidget) -> None:
        """Have something out of the way while a mode is on that knows no dates."""
        self._below = below

    # What is on

    @property
    def title(self) -> str:
        """The title of the mode that is on: "Look" for none."""
        return self._title

    @property
    def mode(self) -> Mode | None:
        """The mode that is on; None for looking."""
        return self._made.get(self._title)

    def enter(self, title: str) -> None:
        """Turn a mode on, and the one before off."""
        entry = next((e for e in MODES if e.title == title), _LOOK)
        if entry.writes and self._desk.read_only:
            entry = _LOOK
        if entry.title != self._title:
            if self.mode is not None:
                self._canvas.set_tool(None)
                self.mode.leave()
            self._title = entry.title
            self._begin(entry)
        self._mark()
        self._canvas.setFocus()

    def _begin(self, entry: ModeEntry) -> None:
        mode = None if entry is _LOOK else self._mode_of(entry)
        self._show_tools(mode.tools if mode else ())
        self._more.setVisible(mode is not None)
        if self._below is not None:
            self._below.setVisible(mode is None or mode.is_dated)
        self._show_pane(mode.pane() if mode else None)
        if mode is not None:
            mode.enter()
            mode.refresh(None)
            mode.show_selection(self._desk.selection)
            self._canvas.set_tool(mode.tools[0] if mode.tools else None)
        self.entered.emit(entry.title)

    def _mode_of(self, entry: ModeEntry) -> Mode:
        if entry.title not in self._made:
            made = entry.make(self._desk, self._canvas, self)
            made.tool_wanted.connect(self._canvas.set_tool)
            for tool in made.tools:
                tool.hint_changed.connect(self._hint.setText)
            self._made[entry.title] = made
        return self._made[entry.title]

    def refresh(self, changes: Changes | None) -> None:
        """Tell the mode that is on what changed."""
        if self.mode is not None:
            self.mode.refresh(changes)

    def show_selection(self, selection: Selection) -> None:
        """Tell the mode that is on what is selected."""
        if self.mode is not None:
            self.mode.show_selection(selection)

    # Showing

    def _show_tools(self, tools: tuple[Tool, ...]) -> None:
        for old in self._tools.buttons():
            self._tools.removeButton(old)
        self._tool_row.clear()
        for number, tool in enumerate(tools, start=1):
            made = _button(tool.name, tool.icon, f"{tool.what} ({number})")
            made.clicked.connect(partial(self._take_up, tool))
            self._tools.addButton(made, number)
            self._tool_row.addWidget(made)

    def _show_pane(self, pane: QWidget | None) -> None:
        """Show the mode's pane, or else what stands on the left when looking."""
        if pane is not None and self._left.indexOf(pane) < 0:
            self._left.addWidget(pane)
        panes = {made.pane() for made in self._made.values()}
        for place in range(self._left.count()):
            item = self._left.itemAt(place)
            if item is not None and (widget := item.widget()) is not None:
                widget.setVisible(widget is pane if pane else widget not in panes)

    def _mark(self) -> None:
        titles = [_LOOK.title, *(entry.title for entry in MODES)]
        self._modes.button(titles.index(self._title) + 1).setChecked(True)

    def _take_up(self, tool: Tool) -> None:
        self._canvas.set_tool(tool)
        self._canvas.setFocus()

    @Slot(object)
    def _on_tool_changed(self, tool: Tool | None) -> None:
        mode = self.mode
        if mode is not None and tool in mode.tools:
            self._tools.button(mode.tools.index(tool) + 1).setChecked(True)
        self._hint.setText(tool.hint if tool is not None else "")
        if tool is not None:
            announce(self._canvas, f"{tool.name}. {tool.hint}")

    @Slot(int)
    def _on_digit(self, digit: int) -> None:
        found = self._tools.button(digit)
        if found is not None:
            found.click()

    @Slot()
    def _on_left(self) -> None:
        mode = self.mode
        if mode is not None and mode.tools and self._canvas.tool is not mode.tools[0]:
            self._canvas.set_tool(mode.tools[0])
        else:
            self.enter(_LOOK.title)


def _button(title: str, icon: str, what: str) -> QToolButton:
    made = QToolButton()
    made.setText(title)
    made.setCheckable(True)
    icons.put(made, icon)
    made.setToolTip(what)
    made.setAccessibleName(title)
    made.setAccessibleDescription(what)
    made.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
    made.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    return made
