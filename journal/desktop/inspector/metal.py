"""A seam, patch, anchor point or measure: what it is, how far, what lies near, and its acts."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QToolButton, QWidget

from journal.actions import metalwork
from journal.actions import readings as reading_actions
from journal.desktop import icons
from journal.desktop.desk import AreaSelected, Desk, MetalKind, MetalSelected, Nothing, Selection
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.inspector import Pane
from journal.desktop.widgets.bearing_box import BearingBox
from journal.desktop.widgets.flow import FlowLayout
from journal.desktop.widgets.metal_reading import KINDS, MetalFound, read_metal
from journal.desktop.widgets.metal_side import guidance_text
from journal.desktop.widgets.parts import button, column, label, scrolled
from journal.desktop.widgets.reading_tables import ComparedTable, ReadingPlot, pair_words
from journal.domain.anchors import AnchorPoint
from journal.domain.bearings import bearings
from journal.domain.changes import Changes
from journal.domain.diagonals import compare_diagonals, pair_diagonals
from journal.domain.films import film_band
from journal.domain.guidance import mig_current
from journal.domain.ids import AnchorId, AreaId, MeasureId, PatchId, SeamId
from journal.domain.metal_words import number, patch_in_words, seam_in_words, states_in_words
from journal.domain.patches import Patch
from journal.domain.readings import (
    OUTSIDE,
    Measure,
    MeasureKind,
    Reading,
    as_micrometres,
    series,
)
from journal.domain.seams import Joint, Seam, SeamChange
from journal.domain.when import spoken

_GUIDES = {Joint.PLUGS: ("plugs", "plug count"), Joint.SPOTS: ("spots", "more spots")}


class MetalPane(Pane):
    """One thing of the metalwork."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._thing: MetalSelected | None = None
        self._found: MetalFound | None = None
        self.title = label("", "subheading")
        self.facts = label("")
        self.bearing = BearingBox()
        self._acts = QWidget()
        self._acts_flow = FlowLayout(self._acts, spacing=6)
        self._dates = QWidget()
        self._dates_flow = FlowLayout(self._dates, spacing=4)
        self.table = ComparedTable(narrow=True)
        self.remark = label("")
        self.pair = label("")
        self.plot = ReadingPlot()
        self.words = label("", "muted")
        inner = QWidget()
        inner.setLayout(
            column(
                self.title,
                self.facts,
                self.bearing,
                self._acts,
                self._dates,
                self.table,
                self.remark,
                self.pair,
                self.plot,
                self.words,
                None,
                margin=12,
            )
        )
        self.setLayout(column(scrolled(inner)))

    # --- showing ---

    def show_selection(self, selection: Selection) -> None:
        """Show a thing of the metalwork."""
        if isinstance(selection, MetalSelected):
            self._thing = selection
            self._read()

    def refresh(self, changes: Changes | None) -> None:
        """Read it again where the metalwork changed; it may be gone."""
        if self._thing is not None and (changes is None or changes.kinds & KINDS):
            self._read()

    def _read(self) -> None:
        thing = self._thing
        found = self.desk.ask(read_metal)
        if found is None or thing is None:
            return
        self._found = found
        things: dict[MetalKind, tuple[Seam | Patch | AnchorPoint | Measure, ...]] = {
            MetalKind.SEAM: found.laid.metal.seams,
            MetalKind.PATCH: found.laid.metal.patches,
            MetalKind.ANCHOR: found.laid.metal.anchors,
            MetalKind.MEASURE: found.laid.measures,
        }
        shown = next((one for one in things[thing.kind] if one.id == thing.id), None)
        if shown is None:
            self._thing = None
            if self.desk.selection == thing:
                self.desk.select(Nothing())
            return
        self._clear()
        if isinstance(shown, Seam):
            self._show_seam(shown, found)
        elif isinstance(shown, Patch):
            self._show_patch(shown, found)
        elif isinstance(shown, AnchorPoint):
            self._show_anchor(shown, found)
        else:
            self._show_measure(shown, found)

    def _clear(self) -> None:
        self._acts_flow.clear()
        self._dates_flow.clear()
        self.bearing.show_bearings(())
        for shown in (self.table, self.remark, self.pair, self.plot, self._dates, self.words):
            shown.hide()

    def _show_seam(self, seam: Seam, found: MetalFound) -> None:
        metal = found.laid.metal
        own = [change for change in metal.changes if change.seam_id == seam.id]
        self.title.setText(seam_in_words(seam))
        self.facts.setText(
            "\n".join(
                part
                for part in (
                    states_in_words(seam, own).capitalize(),
                    f"{found.areas.get(seam.area_id, '')}, {found.views.get(seam.view_id, '')}",
                    seam.note,
                )
                if part
            )
        )
        self.bearing.show_bearings(bearings(metal.anchors, seams=[seam]))
        self._act("&Move on", lambda: self._move_on(seam, own), primary=True)
        self._common_acts(seam.area_id, lambda: self._edit_seam(seam), self._remove)
        for change in own:
            self._date(change)
        self._dates.setVisible(bool(own))
        keys = _GUIDES.get(seam.joint, ("stitches", "current", "braces"))
        self._say(f"{self._current(seam, metal.patches)}{guidance_text(keys)}")

    def _current(self, seam: Seam, patches: tuple[Patch, ...]) -> str:
        thick = sorted({p.thickness_mm for p in patches if p.area_id == seam.area_id})
        said = [f"about {mig_current(mm):.0f} A for {mm:g} mm" for mm in thick]
        return f"MIG current to begin with: {', '.join(said)}.\n\n" if said else ""

    def _show_patch(self, patch: Patch, found: MetalFound) -> None:
        self.title.setText(patch_in_words(patch))
        when = f"In since {spoken(patch.when)}" if patch.when else "No day recorded for it"
        where = f"{found.areas.get(patch.area_id, '')}, {found.views.get(patch.view_id, '')}"
        self.facts.setText("\n".join(part for part in (when, where, patch.note) if part))
        self.bearing.show_bearings(bearings(found.laid.metal.anchors, patches=[patch]))
        self._common_acts(patch.area_id, lambda: self._edit_patch(patch), self._remove)
        current = f"MIG current to begin with: about {mig_current(patch.thickness_mm):.0f} A."
        self._say(f"{current}\n\n{guidance_text(['current'])}")

    def _show_anchor(self, anchor: AnchorPoint, found: MetalFound) -> None:
        metal = found.laid.metal
        self.title.setText(f"Anchor point “{anchor.name}”")
        view = found.views.get(anchor.view_id, "")
        self.facts.setText(f"{anchor.kind.value}, {anchor.radius_mm:g} mm round it, {view}")
        near = bearings([anchor], seams=metal.seams, patches=metal.patches)
        self.bearing.show_bearings(near)
        self._common_acts(None, lambda: self._edit_anchor(anchor), self._remove)
        if not near:
            self._say("Nothing drawn lies within its radius.")

    def _show_measure(self, measure: Measure, found: MetalFound) -> None:
        readings = found.laid.readings
        own = series(measure, readings)
        self.title.setText(measure.name)
        self.facts.setText(_measure_facts(measure, found))
        self._act("&Read", lambda: self._read_measure(measure), primary=True)
        self._common_acts(measure.area_id, lambda: self._edit_measure(measure), self._remove)
        self.table.show_measures([measure], readings)
        outside = [row for row in self.table.rows_model.rows() if row.note == OUTSIDE]
        places = [str(row.compared.point + 1) for row in outside]
        where = f"Place {', '.join(places)}: " if measure.places > 1 else ""
        self.remark.setText(f"{where}{OUTSIDE}".capitalize())
        self.remark.setVisible(bool(outside))
        for one, other in pair_diagonals(found.laid.measures):
            if measure.id in (one.id, other.id):
                self.pair.setText(pair_words(compare_diagonals(one, other, readings)))
                self.pair.show()
        self.plot.show_measure(measure, own)
        for reading in own:
            self._reading_chip(measure, reading)
        self._dates.setVisible(bool(own))
        if measure.kind is MeasureKind.FILM and own:
            self._say(_film_words(measure, own))

    def _say(self, words: str) -> None:
        self.words.setText(words)
        self.words.show()

    # --- acts ---

    def _act(
        self, text: str, do: Callable[[], object], *, icon: str = "", primary: bool = False
    ) -> None:
        made = button(text, do, icon=icon, role="primary" if primary else "")
        made.setEnabled(not self.desk.read_only)
        self._acts_flow.addWidget(made)

    def _common_acts(
        self, area_id: AreaId | None, edit: Callable[[], object], remove: Callable[[], object]
    ) -> None:
        self._act("E&dit", edit, icon="edit")
        self._act("Remo&ve", remove, icon="remove")
        if area_id is not None:
            go = button("Repair &area", lambda: self.desk.select(AreaSelected(area_id)))
            self._acts_flow.addWidget(go)
        self._acts.updateGeometry()

    def _chip(self, text: str, hint: str, away: Callable[[], object]) -> None:
        made = QToolButton()
        made.setText(text.replace("&", "&&"))
        made.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        made.setLayoutDirection(Qt.LayoutDirection.RightToLeft)
        icons.put(made, "close")
        made.setToolTip(hint)
        made.setAccessibleName(f"{text}; press to take it out")
        made.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        made.setEnabled(not self.desk.read_only)
        made.clicked.connect(lambda: away())
        self._dates_flow.addWidget(made)

    def _date(self, change: SeamChange) -> None:
        part = f", {change.start_mm:,.0f} to {change.end_mm:,.0f} mm"
        photos = f", {len(change.photo_ids)} photos" if change.photo_ids else ""
        text = f"{change.state.value}, {spoken(change.when)}{part}{photos}"
        hint = change.note or f"Take out the date of “{change.state.value}”"
        self._chip(text, hint, lambda: self.desk.act(metalwork.remove_seam_change, change.id))

    def _reading_chip(self, measure: Measure, reading: Reading) -> None:
        place = "" if measure.places == 1 else f"place {reading.point + 1}: "
        text = (
            f"{place}{number(reading.value)} {measure.unit}, {reading.moment.value},"
            f" {spoken(reading.when)}"
        )
        hint = ", ".join(part for part in (reading.instrument, reading.note) if part)
        self._chip(
            text,
            hint or "Take this reading out",
            lambda: self.desk.act(reading_actions.remove_reading, reading.id),
        )

    def _remove(self) -> None:
        thing = self._thing
        if thing is None:
            return
        if thing.kind is MetalKind.SEAM:
            self.desk.act(metalwork.remove_seam, SeamId(thing.id))
        elif thing.kind is MetalKind.PATCH:
            self.desk.act(metalwork.remove_patch, PatchId(thing.id))
        elif thing.kind is MetalKind.ANCHOR:
            self.desk.act(metalwork.remove_anchor, AnchorId(thing.id))
        else:
            self.desk.act(reading_actions.remove_measure, MeasureId(thing.id))

    def _move_on(self, seam: Seam, own: list[SeamChange]) -> None:
        from journal.desktop.dialogs.seam_state import SeamStateDialog

        open_dialog(SeamStateDialog(self.desk, seam, self.window(), changes=own))

    def _edit_seam(self, seam: Seam) -> None:
        from journal.desktop.dialogs.seam import SeamDialog

        open_dialog(SeamDialog(self.desk, self.window(), seam=seam))

    def _edit_patch(self, patch: Patch) -> None:
        from journal.desktop.dialogs.patch import PatchDialog

        open_dialog(PatchDialog(self.desk, self.window(), patch=patch))

    def _edit_anchor(self, anchor: AnchorPoint) -> None:
        from journal.desktop.dialogs.anchor import AnchorDialog

        open_dialog(AnchorDialog(self.desk, self.window(), anchor=anchor))

    def _edit_measure(self, measure: Measure) -> None:
        from journal.desktop.dialogs.measure import MeasureDialog

        open_dialog(MeasureDialog(self.desk, self.window(), measure=measure))

    def _read_measure(self, measure: Measure) -> None:
        from journal.desktop.dialogs.reading import ReadingDialog

        known = self._found.laid.readings if self._found else ()
        open_dialog(ReadingDialog(self.desk, measure, self.window(), known=known))


def _measure_facts(measure: Measure, found: MetalFound) -> str:
    places = "1 place" if measure.places == 1 else f"{measure.places} places"
    facts = [f"{measure.kind.value.capitalize()} in {measure.unit}, {places}"]
    if measure.target is not None:
        set_to = f"You set {number(measure.target)} {measure.unit}"
        if measure.tolerance is not None:
            set_to += f", give or take {number(measure.tolerance)}"
        facts.append(set_to)
    facts.append(found.views.get(measure.view_id, ""))
    if measure.area_id is not None:
        facts.append(found.areas.get(measure.area_id, ""))
    return "\n".join(part for part in facts if part)


def _film_words(measure: Measure, own: tuple[Reading, ...]) -> str:
    """What the films suggest, each band once, with whose figures those are."""
    bands = {film_band(float(as_micrometres(measure, reading.value))): None for reading in own}
    lines = [
        f"{band.least:,.0f} to {band.most:,.0f} µm: {band.text} ({band.source})"
        if band.most < float("inf")
        else f"over {band.least:,.0f} µm: {band.text} ({band.source})"
        for band in sorted(bands, key=lambda band: band.least)
    ]
    return "\n\n".join(["What such films suggest, and no more than that:", *lines])
