"""The metalwork of one repair area: metres, new metal, what lies near mountings, readings."""

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QListWidgetItem, QWidget

from journal.actions.load_bearing import area_bearings
from journal.actions.settings import assumptions
from journal.desktop.desk import Desk, MetalKind, MetalSelected
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.tasks import Task
from journal.desktop.widgets.bearing_box import BearingBox
from journal.desktop.widgets.metal_reading import MetalFound, read_metal
from journal.desktop.widgets.parts import PlainList, button, column, label, row
from journal.desktop.widgets.reading_tables import ComparedTable, pair_words
from journal.domain.areas import Area
from journal.domain.bearings import Bearing
from journal.domain.consumption import estimate
from journal.domain.diagonals import compare_diagonals, pair_diagonals
from journal.domain.metal_words import (
    consumption_in_words,
    patch_in_words,
    patches_in_words,
    seam_in_words,
    states_in_words,
    sums_in_words,
)
from journal.domain.patches import patch_sums
from journal.domain.progress import Context
from journal.domain.seam_sums import sums
from journal.domain.weld_work import welded

_THING = Qt.ItemDataRole.UserRole
_ROW, _MOST_SHOWN = 46, 5


class AreaMetal(QWidget):
    """Seams, patches and measures of an area; each opens in the inspector of the drawing."""

    #: The metalwork of the area was read, and with it the cautions there is reason for.
    was_read = Signal()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._area: Area | None = None
        self._found: MetalFound | None = None
        self._reading: Task | None = None
        self.sums = label("")
        self.bearing = BearingBox()
        self.list = PlainList("Seams and patches of this repair area")
        self.table = ComparedTable()
        self.pairs = label("")
        self._acts = [
            button("&Seam", self._on_seam, icon="seam", hint="Draw a seam by numbers"),
            button("Patc&h", self._on_patch, icon="patch", hint="Draw a patch by numbers"),
            button("Meas&ure", self._on_measure, icon="measure", hint="Define a place to measure"),
        ]
        heading = row(label("Metal", "subheading", wrap=False), None, *self._acts)
        layout = column(spacing=6)
        layout.addLayout(heading)
        for part in (self.sums, self.bearing, self.list, self.table, self.pairs):
            layout.addWidget(part)
        self.setLayout(layout)
        self.list.itemActivated.connect(self._on_item)
        self.table.on_opened(self._on_reading)
        for act in self._acts:
            act.setEnabled(not desk.read_only)

    def show_area(self, area: Area) -> None:
        """Read an area's metalwork in a reader's thread, and show it as it is now."""
        is_another = self._area is None or self._area.id != area.id
        self._area = area
        if is_another:
            self._clear()
        if self._reading is not None:
            self._reading.cancel()
        session = self._desk.session

        def job(_context: Context) -> tuple[MetalFound, tuple[Bearing, ...]]:
            found = read_metal(session)
            return found, area_bearings(session, [area.id], found.laid.metal)

        self._reading = self._desk.read(job, partial(self._show, area), self)

    def _clear(self) -> None:
        """Say nothing of the area before."""
        self.sums.setText("")
        self.bearing.show_bearings(())
        self.list.clear()
        for part in (self.list, self.pairs):
            part.hide()
        self.table.show_measures((), ())

    def _show(self, area: Area, read: tuple[MetalFound, tuple[Bearing, ...]]) -> None:
        self._reading = None
        found, bearings = read
        self._found = found
        metal = found.laid.metal
        seams = [seam for seam in metal.seams if seam.area_id == area.id]
        patches = [patch for patch in metal.patches if patch.area_id == area.id]
        measures = [m for m in found.laid.measures if m.area_id == area.id]
        self._show_sums(found, area)
        self.bearing.show_bearings(bearings)
        self.list.clear()
        for seam in seams:
            states = states_in_words(seam, metal.changes).capitalize()
            self._add(MetalSelected(MetalKind.SEAM, seam.id), f"{seam_in_words(seam)}\n{states}")
        for patch in patches:
            words = f"{patch_in_words(patch)}\n{found.views.get(patch.view_id, '')}"
            self._add(MetalSelected(MetalKind.PATCH, patch.id), words)
        self.list.setVisible(bool(seams or patches))
        self.list.setFixedHeight(min(self.list.count(), _MOST_SHOWN) * (_ROW + 8) + 6)
        self.table.show_measures(measures, found.laid.readings)
        pairs = [
            pair_words(compare_diagonals(one, other, found.laid.readings))
            for one, other in pair_diagonals(measures)
        ]
        self.pairs.setText("\n\n".join(pairs))
        self.pairs.setVisible(bool(pairs))
        self.was_read.emit()

    def caution_keys(self) -> tuple[str, ...]:
        """The cautions that what lies near mountings gives reason for."""
        return tuple(dict.fromkeys(one.mark.caution for one in self.bearing.found))

    def _show_sums(self, found: MetalFound, area: Area) -> None:
        metal = found.laid.metal
        seams = [seam for seam in metal.seams if seam.area_id == area.id]
        patches = [patch for patch in metal.patches if patch.area_id == area.id]
        if not seams and not patches:
            self.sums.setText("No seam and no patch is drawn for it yet.")
            return
        lines = []
        if seams:
            lines.append(f"Seams: {sums_in_words(sums(seams, metal.changes))}.")
        if patches:
            lines.append(f"New metal: {patches_in_words(patch_sums(patches))}.")
        if seams:
            chosen = assumptions(self._desk.settings)
            made = partial(welded, seams, metal.changes, patches)
            done, ahead = estimate(made(), chosen), estimate(made(still_to_do=True), chosen)
            lines.append(
                f"By a rule of thumb: {consumption_in_words(done)} so far;"
                f" {consumption_in_words(ahead)} still to come."
            )
        self.sums.setText("\n".join(lines))

    def _add(self, thing: MetalSelected, words: str) -> None:
        item = QListWidgetItem(words)
        item.setData(_THING, thing)
        self.list.addItem(item)

    def _on_item(self, item: QListWidgetItem) -> None:
        self._open(item.data(_THING))

    def _open(self, thing: MetalSelected) -> None:
        self._desk.select(thing)
        self._desk.show_page("Drawing")

    def _on_reading(self, compared: object) -> None:
        from journal.desktop.dialogs.reading import ReadingDialog
        from journal.desktop.widgets.reading_tables import ComparedRow

        if isinstance(compared, ComparedRow) and self._found and not self._desk.read_only:
            known = self._found.laid.readings
            open_dialog(ReadingDialog(self._desk, compared.measure, self.window(), known=known))

    def _on_seam(self) -> None:
        from journal.desktop.dialogs.seam import SeamDialog

        if self._area is not None:
            open_dialog(SeamDialog(self._desk, self.window(), area_id=self._area.id))

    def _on_patch(self) -> None:
        from journal.desktop.dialogs.patch import PatchDialog

        if self._area is not None:
            open_dialog(PatchDialog(self._desk, self.window(), area_id=self._area.id))

    def _on_measure(self) -> None:
        from journal.desktop.dialogs.measure import MeasureDialog

        if self._area is not None:
            open_dialog(MeasureDialog(self._desk, self.window(), area_id=self._area.id))
