"""Every panel in a list with a filter: the equal of the picture for keyboard and ear."""

from collections.abc import Mapping

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtWidgets import QLineEdit, QListView, QVBoxLayout, QWidget

from journal.domain.drawing import Drawing, Panel
from journal.domain.ids import PanelId

_Index = QModelIndex | QPersistentModelIndex
_ROOT = QModelIndex()
_ROW = QSize(0, 36)


class PanelModel(QAbstractListModel):
    """The panels whose names hold every word of the filter, in order of name."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._all: tuple[Panel, ...] = ()
        self._shown: tuple[Panel, ...] = ()
        self._words: tuple[str, ...] = ()
        self._stages: Mapping[PanelId, str] = {}
        self._photos: Mapping[PanelId, int] = {}

    def set_panels(self, panels: tuple[Panel, ...]) -> None:
        """List these panels."""
        self._all = tuple(sorted(panels, key=lambda panel: panel.label.casefold()))
        self._reset()

    def set_filter(self, text: str) -> None:
        """List only panels with every word of ``text`` in their name, side or system."""
        self._words = tuple(text.casefold().split())
        self._reset()

    def set_state(self, stages: Mapping[PanelId, str], photos: Mapping[PanelId, int]) -> None:
        """Say how far each panel is, and how many photos it has."""
        self._stages, self._photos = stages, photos
        if self._shown:
            last = self.index(len(self._shown) - 1)
            self.dataChanged.emit(self.index(0), last, [Qt.ItemDataRole.DisplayRole])

    def panel(self, row: int) -> Panel | None:
        """The panel in a row."""
        return self._shown[row] if 0 <= row < len(self._shown) else None

    def row_of(self, panel_id: PanelId) -> int:
        """The row of a panel, -1 where the filter leaves it out."""
        return next((n for n, panel in enumerate(self._shown) if panel.id == panel_id), -1)

    def rowCount(self, parent: _Index = _ROOT) -> int:
        """How many panels are listed."""
        return 0 if parent.isValid() else len(self._shown)

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The panel's name, its stage and its photos."""
        panel = self.panel(index.row()) if index.isValid() else None
        if panel is None:
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return " \N{MIDDLE DOT} ".join([panel.label, *self._state(panel)])
        if role == Qt.ItemDataRole.ToolTipRole:
            return f"{panel.label}: {panel.system.value}"
        if role == Qt.ItemDataRole.SizeHintRole:
            return _ROW
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return ", ".join([panel.label, *self._state(panel)])
        return None

    def _state(self, panel: Panel) -> list[str]:
        found = [self._stages[panel.id]] if panel.id in self._stages else []
        if count := self._photos.get(panel.id):
            found.append("1 photo" if count == 1 else f"{count:,} photos")
        return found

    def _reset(self) -> None:
        self.beginResetModel()
        self._shown = tuple(panel for panel in self._all if self._fits(panel))
        self.endResetModel()

    def _fits(self, panel: Panel) -> bool:
        name = f"{panel.label} {panel.system.value}".casefold()
        return all(word in name for word in self._words)


class PanelList(QWidget):
    """A filter over a list of panels."""

    #: A panel was clicked or travelled to: its number.
    panel_clicked = Signal(int)
    #: A panel was chosen by Enter or a double click: its number.
    panel_chosen = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.model = PanelModel(self)
        self._filter = QLineEdit()
        self._filter.setPlaceholderText("Filter: sill, left, floor \N{HORIZONTAL ELLIPSIS}")
        self._filter.setAccessibleName("Filter the panels")
        self._filter.setClearButtonEnabled(True)
        self._list = QListView()
        self._list.setModel(self.model)
        self._list.setUniformItemSizes(True)
        self._list.setAccessibleName("Panels")
        self._telling = True
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self._filter)
        layout.addWidget(self._list, 1)
        self._filter.textChanged.connect(self.model.set_filter)
        self._filter.returnPressed.connect(self._on_return)
        self._list.selectionModel().currentChanged.connect(self._on_current)
        self._list.activated.connect(self._on_activated)

    def set_drawing(self, drawing: Drawing) -> None:
        """List the panels of a drawing."""
        self.model.set_panels(drawing.panels)

    def select_panel(self, panel_id: PanelId | None) -> None:
        """Mark a panel without telling anybody."""
        row = self.model.row_of(panel_id) if panel_id is not None else -1
        self._telling = False
        index = self.model.index(row) if row >= 0 else QModelIndex()
        self._list.setCurrentIndex(index)
        if index.isValid():
            self._list.scrollTo(index)
        self._telling = True

    def _on_return(self) -> None:
        if self.model.rowCount():
            self._list.setFocus()
            self._list.setCurrentIndex(self.model.index(0))

    def _on_current(self, current: QModelIndex, _previous: QModelIndex) -> None:
        panel = self.model.panel(current.row()) if current.isValid() else None
        if panel is not None and self._telling:
            self.panel_clicked.emit(panel.id)

    def _on_activated(self, index: QModelIndex) -> None:
        panel = self.model.panel(index.row())
        if panel is not None:
            self.panel_chosen.emit(panel.id)
