"""Metal at the side of the drawing: what shows, metres by state, new metal, wire and gas."""

from collections.abc import Callable, Hashable, Mapping
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtWidgets import QCheckBox, QComboBox, QLabel, QListWidgetItem, QWidget

from journal.actions.settings import assumptions
from journal.desktop import theme
from journal.desktop.desk import AreaSelected, Desk, PanelSelected
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.widgets import metal_pens
from journal.desktop.widgets.flow import FlowLayout
from journal.desktop.widgets.layers import Layer
from journal.desktop.widgets.metal_reading import MetalFound
from journal.desktop.widgets.parts import PlainList, button, column, label, row, scrolled
from journal.desktop.widgets.seam_chart import SeamChart
from journal.domain.consumption import estimate
from journal.domain.guidance import GUIDANCE
from journal.domain.ids import AreaId, PanelId, ViewId
from journal.domain.metal_words import (
    consumption_in_words,
    metres,
    patches_in_words,
    sums_in_words,
)
from journal.domain.patches import patch_sums
from journal.domain.seam_sums import SeamSums, sums, sums_by
from journal.domain.seams import Seam, SeamState
from journal.domain.weld_work import welded
from journal.domain.when import When, spoken

if TYPE_CHECKING:
    from collections.abc import Iterable

_BY = ("repair area", "panel", "view")
_ROW_HEIGHT = 60
_KEY_ROLE = Qt.ItemDataRole.UserRole
#: The metal here is told by day; guidance is closed until it is asked for.
_THUMB_RULE = "A rule of thumb, from what you assume."


class MetalSide(QWidget):
    """The sums by the day looked at, and what of the metalwork the drawing shows."""

    #: Other layers are to show: a frozenset of Layer.
    layers_changed = Signal(object)
    #: A view is to be shown: its number.
    view_wanted = Signal(int)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        self._swatches: dict[SeamState, QLabel] = {}
        super().__init__(parent)
        self._desk = desk
        self._found: MetalFound | None = None
        self._on: When | None = None
        self.layer_buttons: dict[Layer, QCheckBox] = {}
        self._heading = label("", "muted")
        self._totals: dict[SeamState, QLabel] = {}
        self.by = QComboBox()
        self.list = PlainList("Metres of seam")
        self.chart = SeamChart()
        self.patches = label("")
        self.consumption = label("")
        self.guidance = label("", "muted")
        self.guidance_button = button("&Guidance", self._show_guidance, role="quiet")
        self._nothing = label(
            "No seam and no patch is drawn yet. Take up “Seam” or “Patch” above the drawing and "
            "click where the welding goes.",
            "muted",
        )
        self._sums = QWidget()
        self._build()

    def _build(self) -> None:
        shown = QWidget()
        flow = FlowLayout(shown, spacing=8)
        for layer in Layer:
            made = QCheckBox(layer.value.capitalize())
            made.setChecked(True)
            made.setToolTip(f"Show {layer.value} on the drawing, or leave them out")
            made.toggled.connect(self._on_layers)
            self.layer_buttons[layer] = made
            flow.addWidget(made)
        self.by.addItems([f"By {name}" for name in _BY])
        self.by.setAccessibleName("Sum the metres by")
        self.by.currentIndexChanged.connect(self._show)
        self.list.itemActivated.connect(self._on_item)
        self.list.itemClicked.connect(self._on_item)
        self.guidance_button.setCheckable(True)
        self.guidance.setVisible(False)
        assume = button("&Assumptions", self._on_assumptions, role="quiet")
        sums_column = column(*self._state_rows(), spacing=4)
        sums_column.addWidget(self.by)
        sums_column.addWidget(self.list)
        sums_column.addWidget(self.chart)
        sums_column.addWidget(label("New metal", "subheading"))
        sums_column.addWidget(self.patches)
        sums_column.addLayout(row(label("Wire and gas", "subheading", wrap=False), None, assume))
        sums_column.addWidget(self.consumption)
        self._sums.setLayout(sums_column)
        inner = QWidget()
        layout = column(label("Shown", "subheading"), shown, spacing=8, margin=8)
        layout.addWidget(label("Seams", "subheading"))
        layout.addWidget(self._heading)
        layout.addWidget(self._nothing)
        layout.addWidget(self._sums)
        layout.addLayout(row(self.guidance_button, None))
        layout.addWidget(self.guidance)
        layout.addStretch(1)
        inner.setLayout(layout)
        self.setLayout(column(scrolled(inner)))
        self._show()

    def _state_rows(self) -> list[QWidget]:
        rows: list[QWidget] = []
        for state in SeamState:
            swatch, total = QLabel(), label("", wrap=False)
            self._swatches[state], self._totals[state] = swatch, total
            one = QWidget()
            one.setLayout(row(swatch, label(state.value.capitalize(), wrap=False), None, total))
            rows.append(one)
        return rows

    @property
    def layers(self) -> frozenset[Layer]:
        """The layers that are to show."""
        return frozenset(layer for layer, made in self.layer_buttons.items() if made.isChecked())

    def show_found(self, found: MetalFound) -> None:
        """Show another record of the metalwork."""
        self._found = found
        self._show()

    def look_at(self, on: When | None) -> None:
        """Show the sums as they stood by the end of a date; None for today."""
        self._on = on
        self._show()

    # Showing

    def _show(self) -> None:
        when = f"By the end of {spoken(self._on)}" if self._on else "As of today"
        found = self._found
        has_any = found is not None and bool(found.laid.metal.seams or found.laid.metal.patches)
        self._nothing.setVisible(not has_any)
        self._sums.setVisible(has_any)
        self._heading.setVisible(has_any)
        self._heading.setText(f"{when}; each state counts what is further along.")
        self._dress()
        if found is None:
            return
        metal = found.laid.metal
        whole = sums(metal.seams, metal.changes, self._on)
        for state, total in self._totals.items():
            total.setText(metres(whole.at_least(state)))
        self._show_list(found)
        self.chart.set_days(found.days)
        self.chart.look_at(self._on)
        self.patches.setText(patches_in_words(patch_sums(metal.patches, self._on)).capitalize())
        self._show_consumption(found)

    def changeEvent(self, event: QEvent) -> None:
        """Draw the swatches anew when light turns to dark."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and self._swatches:
            self._dress()

    def _dress(self) -> None:
        colours = theme.colours_of(self.palette())
        for state, swatch in self._swatches.items():
            ratio = self.devicePixelRatioF()
            made = QPixmap(round(44 * ratio), round(18 * ratio))
            made.setDevicePixelRatio(ratio)
            made.fill(Qt.GlobalColor.transparent)
            painter = QPainter(made)
            metal_pens.paint_state_swatch(painter, QRectF(1, 0, 42, 18), state, colours)
            painter.end()
            swatch.setPixmap(made)

    def _show_list(self, found: MetalFound) -> None:
        rows, names = self._grouped(found)
        self.list.clear()
        for key, own in sorted(rows.items(), key=lambda one: -one[1].planned):
            item = QListWidgetItem(f"{names.get(key, '')}\n{sums_in_words(own)}")
            item.setData(_KEY_ROLE, key)
            self.list.addItem(item)
        self.list.setFixedHeight(min(4, max(1, len(rows))) * _ROW_HEIGHT + 6)
        for place in range(self.list.count()):
            self.list.item(place).setSizeHint(QSize(0, _ROW_HEIGHT))

    def _grouped(
        self, found: MetalFound
    ) -> tuple[Mapping[Hashable, SeamSums], Mapping[Hashable, str]]:
        metal = found.laid.metal
        keys: tuple[tuple[Callable[[Seam], Hashable | None], Mapping], ...] = (  # type: ignore[type-arg]
            (lambda seam: seam.area_id, found.areas),
            (lambda seam: found.panel_of.get(seam.id), found.panels),
            (lambda seam: seam.view_id, found.views),
        )
        key, names = keys[self.by.currentIndex()]
        return sums_by(metal.seams, metal.changes, key, self._on), names

    def _show_consumption(self, found: MetalFound) -> None:
        metal, chosen = found.laid.metal, assumptions(self._desk.settings)
        made = partial(welded, metal.seams, metal.changes, metal.patches, self._on)
        done, ahead = estimate(made(), chosen), estimate(made(still_to_do=True), chosen)
        self.consumption.setText(
            f"Welded so far: about {consumption_in_words(done)}.\n"
            f"Still to weld: about {consumption_in_words(ahead)}.\n"
            f"{_THUMB_RULE} Wire of {chosen.wire_mm:g} mm."
        )

    # Reacting

    def _on_layers(self) -> None:
        self.layers_changed.emit(self.layers)

    def _on_item(self, item: QListWidgetItem) -> None:
        key = item.data(_KEY_ROLE)
        if self.by.currentIndex() == 0:
            self._desk.select(AreaSelected(AreaId(key)))
        elif self.by.currentIndex() == 1:
            self._desk.select(PanelSelected(PanelId(key)))
        else:
            self.view_wanted.emit(int(ViewId(key)))

    def _show_guidance(self) -> None:
        opened = self.guidance_button.isChecked()
        self.guidance.setText(guidance_text() if opened else "")
        self.guidance.setVisible(opened)

    def _on_assumptions(self) -> None:
        from journal.desktop.dialogs.assumptions import AssumptionsDialog

        dialog = open_dialog(AssumptionsDialog(self._desk, self.window()))
        dialog.accepted.connect(self._show)


def guidance_text(pieces: "Iterable[str] | None" = None) -> str:
    """The guidance of the trade with its sources; all of it, or the pieces of these keys."""
    wanted = None if pieces is None else frozenset(pieces)
    shown = [piece for piece in GUIDANCE if wanted is None or piece.key in wanted]
    lines = [f"{piece.text} ({piece.source})" for piece in shown]
    lines.append("The product's data sheet and the maker's instructions go before all of this.")
    return "\n\n".join(lines)
