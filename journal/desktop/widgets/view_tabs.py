"""The views of the drawing as a row of small pictures to press."""

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import (
    QAbstractButton,
    QButtonGroup,
    QHBoxLayout,
    QSizePolicy,
    QToolButton,
    QWidget,
)

from journal.desktop import theme
from journal.desktop.widgets.drawing_preview import view_pixmap
from journal.domain.drawing import Drawing
from journal.domain.ids import ViewId

_PICTURE = QSize(60, 30)


class ViewTabs(QWidget):
    """One button for each view: its outline in small, and its name."""

    #: A view was pressed: its number.
    chosen = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Views of the drawing")
        self._drawing: Drawing | None = None
        self._group = QButtonGroup(self)
        self._group.buttonClicked.connect(self._on_clicked)
        self._layout = QHBoxLayout(self)
        self._layout.setContentsMargins(0, 0, 0, 0)
        self._layout.setSpacing(2)

    def set_drawing(self, drawing: Drawing) -> None:
        """Show the views of another drawing."""
        for old in self._group.buttons():
            self._group.removeButton(old)
            self._layout.removeWidget(old)
            old.deleteLater()
        self._drawing = drawing
        for view in drawing.views:
            made = QToolButton(self)
            made.setProperty("role", "view")
            made.setText(view.name)
            made.setAccessibleName(f"{view.name} view")
            made.setToolTip(f"{view.name} (Page Up and Page Down on the drawing)")
            made.setCheckable(True)
            made.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
            made.setIconSize(_PICTURE)
            made.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
            made.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
            made.setMinimumWidth(40)
            self._group.addButton(made, view.id)
            self._layout.addWidget(made)
        self._draw()

    def mark(self, view_id: ViewId | None) -> None:
        """Show which view is in front."""
        found = self._group.button(view_id) if view_id is not None else None
        if found is not None:
            found.setChecked(True)

    def changeEvent(self, event: QEvent) -> None:
        """Draw the pictures anew when light turns to dark."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange:
            self._draw()

    def _draw(self) -> None:
        if self._drawing is None:
            return
        colours, ratio = theme.colours_of(self.palette()), self.devicePixelRatioF()
        for view in self._drawing.views:
            picture = view_pixmap(self._drawing, view, _PICTURE, colours, ratio)
            self._group.button(view.id).setIcon(QIcon(picture))

    def _on_clicked(self, pressed: QAbstractButton) -> None:
        self.chosen.emit(self._group.id(pressed))
