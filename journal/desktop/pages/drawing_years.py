"""What the drawing shows of a day: stages or another tint, and the pins there were by then."""

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, QTimer, Signal, Slot
from PySide6.QtWidgets import QComboBox, QHBoxLayout

from journal.actions import areas as area_actions
from journal.actions import cars, metalwork
from journal.desktop.desk import Desk
from journal.desktop.tasks import Task
from journal.desktop.widgets.as_it_stood import AsItStood
from journal.desktop.widgets.canvas_sheet import CanvasSheet
from journal.desktop.widgets.legend import Legend
from journal.desktop.widgets.parts import row
from journal.domain.areas import Area
from journal.domain.ids import PanelId
from journal.domain.states import PanelYears
from journal.domain.tints import TintBy
from journal.domain.when import When

if TYPE_CHECKING:
    from journal.actions.tints import Tinted
    from journal.desktop.widgets.pin_years import PinYears

#: How long the handle rests before a tint's sums are worked out for its day, in milliseconds.
_REST_MS = 150


class DrawnYears(QObject):
    """Gives the canvas and the legend what belongs to the day that the years stand at.

    States and pins follow the handle at once, out of what was worked out before; the sums of a
    tint follow when it rests.
    """

    #: The canvas shows another day, or other states of it.
    shown = Signal()

    def __init__(self, desk: Desk, canvas: CanvasSheet, years: AsItStood, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._canvas = canvas
        self._years = years
        self._names: tuple[str, ...] = ()
        self._panels = PanelYears((), ())
        self._pins: PinYears | None = None
        self._stages: Mapping[PanelId, str] = {}
        self._reading: Task | None = None
        self.legend = Legend()
        self.chooser = QComboBox()
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST_MS)
        self._build()

    def _build(self) -> None:
        self.chooser.addItem("Stages", "")
        for by in TintBy:
            self.chooser.addItem(by.value[:1].upper() + by.value[1:], by.value)
        self.chooser.setAccessibleName("What the drawing is tinted by")
        self.chooser.setToolTip("Tint the drawing by stages, hours, money, photos, days or gaps")
        self.chooser.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.chooser.currentIndexChanged.connect(self._on_chosen)
        self._years.moved.connect(self._on_moved)
        self._rest.timeout.connect(self._read_tint)

    def bar(self) -> QHBoxLayout:
        """The chooser with the legend beside it."""
        made = row(self.chooser, self.legend, spacing=12)
        made.setStretch(1, 1)
        made.setAlignment(self.chooser, Qt.AlignmentFlag.AlignTop)
        return made

    @property
    def stages(self) -> Mapping[PanelId, str]:
        """The stage of each panel on the day shown."""
        return self._stages

    @property
    def by(self) -> TintBy | None:
        """What the drawing is tinted by; None for stages."""
        found = self.chooser.currentData()
        return TintBy(found) if found else None

    @property
    def is_read(self) -> bool:
        """Whether the tint is up to date."""
        return self._reading is None and not self._rest.isActive()

    def read(self) -> None:
        """Read the stages of all repair areas again."""
        car = self._desk.ask(cars.car)
        found = self._desk.ask(area_actions.areas) or ()
        self._names = car.stages if car else ()
        self._panels = PanelYears(found, self._names)
        self._set_days(found)
        self._show_states()
        self.refresh_tint()

    def read_metal(self) -> None:
        """Metalwork went on, at other dates than the stages perhaps."""
        self._set_days(self._desk.ask(area_actions.areas) or ())

    def _set_days(self, areas: Sequence[Area]) -> None:
        found = self._desk.ask(metalwork.metal)
        moved = [change.when for change in found.changes] if found else []
        let_in = [patch.when for patch in found.patches if patch.when] if found else []
        self._years.set_areas(areas, (*moved, *let_in))

    def refresh_tint(self) -> None:
        """Something that a tint adds up has changed."""
        if self.by is not None:
            self._rest.start()

    def set_pins(self, pins: "PinYears") -> None:
        """Take the pins of all the years."""
        self._pins = pins
        self._show_pins()

    def _show_states(self) -> None:
        when = self._years.when
        self._stages = self._panels.on(when) if when else self._panels.now
        self._canvas.set_stages(dict(self._stages), self._names)
        if self.by is None:
            self.legend.set_stages(self._names, set(self._stages.values()))
        self.shown.emit()

    def _show_pins(self) -> None:
        if self._pins is not None:
            when = self._years.when
            self._canvas.set_places(self._pins.on(when.latest.date() if when else None))
            self.shown.emit()

    @Slot(object)
    def _on_moved(self, _when: When | None) -> None:
        self._show_states()
        self._show_pins()
        self.refresh_tint()

    @Slot()
    def _on_chosen(self) -> None:
        if self.by is None:
            self._stop()
            self._canvas.set_tint(None)
            self.legend.set_stages(self._names, set(self._stages.values()))
        else:
            self._read_tint()

    def _stop(self) -> None:
        self._rest.stop()
        if self._reading is not None:
            self._reading.cancel()
            self._reading = None

    @Slot()
    def _read_tint(self) -> None:
        from journal.actions.tints import tinted

        self._stop()
        session, by, when = self._desk.session, self.by, self._years.when
        if by is None:
            return
        self._reading = self._desk.read(
            lambda _context: tinted(session, by, when), self._on_tinted, self
        )

    def _on_tinted(self, found: "Tinted") -> None:
        self._reading = None
        if found.by is self.by:
            self._canvas.set_tint(found)
            self.legend.set_levels(self.chooser.currentText(), found.rows)
