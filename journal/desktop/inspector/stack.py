"""The inspector: the right-hand side, showing the pane that fits what is selected."""

from importlib import import_module

from PySide6.QtCore import Qt, Slot
from PySide6.QtGui import QKeySequence, QShowEvent
from PySide6.QtWidgets import QFrame, QStackedWidget, QVBoxLayout, QWidget

from journal.desktop.desk import (
    AreaSelected,
    Desk,
    FindingSelected,
    MetalSelected,
    Nothing,
    PanelSelected,
    PhotosSelected,
    ReceiptSelected,
    Selection,
    WantedSelected,
)
from journal.desktop.inspector import Pane
from journal.desktop.widgets.parts import button, column, label, row
from journal.domain.changes import Changes

_BACK_MOST = 20
_PANES = {
    PhotosSelected: ("journal.desktop.inspector.photo", "PhotoPane"),
    PanelSelected: ("journal.desktop.inspector.panel", "PanelPane"),
    AreaSelected: ("journal.desktop.inspector.area", "AreaPane"),
    ReceiptSelected: ("journal.desktop.inspector.receipt", "ReceiptPane"),
    WantedSelected: ("journal.desktop.inspector.wanted", "WantedPane"),
    FindingSelected: ("journal.desktop.inspector.finding", "FindingPane"),
    MetalSelected: ("journal.desktop.inspector.metal", "MetalPane"),
}


class Inspector(QFrame):
    """Holds one pane for each kind of selection, made when first needed."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setAccessibleName("What is selected")
        self.setMinimumWidth(280)
        self._panes: dict[type, Pane] = {}
        self._shown: Selection = Nothing()
        self._is_behind = False
        self._before: list[Selection] = []
        self._back = button("Back", self.go_back, icon="previous", role="quiet")
        self._back.setToolTip("What was selected before (Alt+Left)")
        self._back.setShortcut(QKeySequence("Alt+Left"))
        self._stack = QStackedWidget()
        self._nothing = self._make_nothing()
        self._stack.addWidget(self._nothing)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        head = row(self._back, None)
        head.setContentsMargins(4, 4, 4, 0)
        layout.addLayout(head)
        layout.addWidget(self._stack, 1)
        self._back.setVisible(False)
        desk.selected.connect(self.show_selection)
        desk.changed.connect(self.refresh)

    def current_pane(self) -> Pane | None:
        """The pane in front, None where nothing is selected."""
        shown = self._stack.currentWidget()
        return shown if isinstance(shown, Pane) else None

    @Slot(object)
    def show_selection(self, selection: Selection) -> None:
        """Bring the pane for the selection to the front."""
        self._remember(selection)
        self._is_behind = self._is_put_away()
        if not self._is_behind:
            self._show(selection)

    def _is_put_away(self) -> bool:
        """Whether it was hidden, so that nothing needs to be read for it."""
        told = Qt.WidgetAttribute.WA_WState_ExplicitShowHide
        return self.isHidden() and self.testAttribute(told)

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what was selected and changed while out of sight."""
        super().showEvent(event)
        if self._is_behind:
            self._is_behind = False
            self._show(self._shown)

    def _show(self, selection: Selection) -> None:
        if isinstance(selection, Nothing):
            self._stack.setCurrentWidget(self._nothing)
            return
        pane = self._pane_for(type(selection))
        pane.show_selection(selection)
        self._stack.setCurrentWidget(pane)

    @Slot(object)
    def refresh(self, changes: Changes) -> None:
        """Let the pane in front read again what changed."""
        if self._is_put_away():
            self._is_behind = True
        elif (pane := self.current_pane()) is not None:
            pane.refresh(changes)

    @Slot()
    def go_back(self) -> None:
        """Select what was selected before."""
        if self._before:
            selection = self._before.pop()
            self._shown = Nothing()
            self._desk.select(selection)
            self._back.setVisible(bool(self._before))

    def _remember(self, selection: Selection) -> None:
        """Keep what is left behind, one of each run of the same kind."""
        kept = self._shown
        if not isinstance(kept, Nothing) and type(kept) is not type(selection):
            self._before = [*self._before[-_BACK_MOST:], kept]
        self._shown = selection
        self._back.setVisible(bool(self._before))

    def _pane_for(self, kind: type) -> Pane:
        if kind not in self._panes:
            module, name = _PANES[kind]
            pane: Pane = getattr(import_module(module), name)(self._desk, self)
            self._panes[kind] = pane
            self._stack.addWidget(pane)
        return self._panes[kind]

    def _make_nothing(self) -> QWidget:
        made = QWidget()
        made.setLayout(
            column(
                label("Nothing is selected", "subheading"),
                label(
                    "Pick a panel on the drawing, a photo on the timeline, a repair area or a "
                    "receipt: all that hangs on it is shown here.",
                    "muted",
                ),
                None,
                margin=16,
            )
        )
        return made
