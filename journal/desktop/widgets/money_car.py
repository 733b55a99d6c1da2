"""Where the money went on the car: the drawing tinted by it, each panel to be pressed."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from journal.actions.charts import money_on_the_car
from journal.actions.drawings import drawing
from journal.actions.session import Session
from journal.actions.tints import Tinted
from journal.desktop.desk import Desk
from journal.desktop.locales import owner_locale
from journal.desktop.tasks import Task
from journal.desktop.widgets.canvas import DrawingCanvas
from journal.desktop.widgets.legend import Legend
from journal.desktop.widgets.parts import column
from journal.desktop.widgets.view_tabs import ViewTabs
from journal.domain.drawing import Drawing
from journal.domain.ids import PanelId
from journal.domain.price_index import InMoneyOf


class MoneyCar(QWidget):
    """The drawing, one view at a time, with the money of each panel.

    Attributes:
        canvas: the drawing.
    """

    #: A panel was pressed: its number, and its name.
    opened = Signal(int, str)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._reading: Task | None = None
        self._drawing: Drawing | None = None
        self.canvas = DrawingCanvas()
        self.canvas.setAcceptDrops(False)
        self.views = ViewTabs()
        self.legend = Legend()
        self.legend.set_pins(shown=False)
        layout = column(self.views, self.canvas, self.legend, spacing=4)
        layout.setStretch(1, 1)
        self.setLayout(layout)
        self.views.chosen.connect(self.canvas.set_view)
        self.canvas.view_changed.connect(self.views.mark)
        self.canvas.panel_clicked.connect(self._on_panel)
        self.canvas.panel_chosen.connect(self._on_panel)

    def read(self, wish: InMoneyOf | None) -> None:
        """Read the drawing and its money, as paid or in that of a year."""
        session = self._desk.session
        if self._reading is not None:
            self._reading.cancel()
        self._reading = self._desk.read(lambda _context: _read(session, wish), self._on_read, self)

    def _on_read(self, found: tuple[Drawing, Tinted]) -> None:
        self._reading = None
        whole, tinted = found
        if whole != self._drawing:
            self._drawing = whole
            self.views.set_drawing(whole)
            self.canvas.set_drawing(whole)
            if self.canvas.view_id is not None:
                self.views.mark(self.canvas.view_id)
        self.canvas.set_tint(tinted)
        self.legend.set_levels("Money spent", tinted.rows)
        self.setAccessibleDescription(_in_words(whole, tinted))

    def _on_panel(self, panel_id: int) -> None:
        if self._drawing is not None:
            self.opened.emit(panel_id, self._drawing.panel(PanelId(panel_id)).label)


def _read(session: Session, wish: InMoneyOf | None) -> tuple[Drawing, Tinted]:
    return drawing(session), money_on_the_car(session, wish, owner_locale())


def _in_words(whole: Drawing, tinted: Tinted) -> str:
    said = [f"{panel.label} {tinted.words[panel.id]}" for panel in whole.panels
            if panel.id in tinted.words]  # fmt: skip
    return "; ".join(said) or "no money went to any panel"
