"""A repair area in short: how far it is, what was found and done, what went into it."""

from datetime import date

from PySide6.QtWidgets import QPushButton, QWidget

from journal.actions import areas as actions
from journal.actions import cars, drawings
from journal.actions import pairs as pair_actions
from journal.actions.costs import costs
from journal.desktop.desk import AreaSelected, Desk, Selection
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.stage import StageDialog, next_stage
from journal.desktop.inspector import Pane
from journal.desktop.tasks import Task
from journal.desktop.widgets.parts import button, column, label, row, scrolled
from journal.desktop.widgets.photo_strip import PhotoStrip
from journal.desktop.widgets.stage_bar import StageBar
from journal.desktop.widgets.thumb_source import thumb_cache
from journal.domain.areas import Area
from journal.domain.cautions import caution, suggest
from journal.domain.changes import Changes
from journal.domain.costs import CostTable
from journal.domain.drawing import Panel
from journal.domain.hours import spoken_hours
from journal.domain.ids import AreaId, PhotoId
from journal.domain.money import format_money
from journal.domain.photos import Role
from journal.domain.when import When, spoken

_KINDS = frozenset({"areas", "pairs", "receipts", "work", "photos", "pins", "car", "drawing"})


class AreaPane(Pane):
    """What the inspector says of one repair area; the Areas page has it in full."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._reading: Task | None = None
        self._area: Area | None = None
        self._stages: tuple[str, ...] = ()
        self.name = label("", "heading")
        self.panels = label("", "muted")
        self.stage_bar = StageBar()
        self.since = label("", "muted")
        self.move_button = QPushButton()
        self.move_button.setProperty("role", "primary")
        self.move_button.clicked.connect(self._on_move)
        self._other = button("&Other", self._on_other, hint="Another stage or another date")
        self.found = label("")
        self.done = label("")
        self.figures = label("")
        self.cautions = label("", "muted")
        hint = "Drop photos of the work here"
        self.strip = PhotoStrip("Photos of this repair area", hint, thumb_cache(desk))
        self.strip.dropped.connect(self._on_dropped)
        self.strip.opened.connect(self._open)
        self._build()

    def _build(self) -> None:
        opened = button("Open in &Areas", self._open, icon="areas")
        self.pairs = button("&Before and after", self._on_pairs, icon="before-after")
        content = QWidget()
        content.setLayout(
            column(self.name, self.panels, self.stage_bar, self.since, spacing=8, margin=16)
        )
        layout = content.layout()
        assert layout is not None
        acts = QWidget()
        acts.setLayout(row(self.move_button, self._other, None))
        for piece in (
            acts,
            label("What was found", "subheading"),
            self.found,
            label("What was done", "subheading"),
            self.done,
            label("Photos", "subheading"),
            self.strip,
            self.pairs,
            label("Money and hours", "subheading"),
            self.figures,
            self.cautions,
            opened,
        ):
            layout.addWidget(piece)
        outer = column(scrolled(content))
        self.setLayout(outer)

    def show_selection(self, selection: Selection) -> None:
        """Show the area selected."""
        if isinstance(selection, AreaSelected):
            self._show(selection.id)

    def _on_pairs(self) -> None:
        from journal.desktop.dialogs.pair import PairDialog

        area = self._area
        found = self.desk.ask(pair_actions.area_pairs, area.id) if area else None
        if area is not None and found:
            before, after = found[0].before_id, found[0].after_id
            open_dialog(PairDialog(self.desk, area, self.window(), before=before, after=after))

    def refresh(self, changes: Changes | None) -> None:
        """Read the area again where something of it may have changed."""
        if self._area is not None and (changes is None or changes.kinds & _KINDS):
            self._show(self._area.id)

    def _show(self, area_id: AreaId) -> None:
        found = [area for area in self.desk.ask(actions.areas) or () if area.id == area_id]
        car = self.desk.ask(cars.car)
        self._area = found[0] if found else None
        self._stages = car.stages if car else ()
        if self._area is None:
            self.name.setText("This repair area has been removed")
            return
        area = self._area
        panels = self.desk.ask(drawings.area_panels, area) or ()
        self.name.setText(area.name)
        self.panels.setText("; ".join(panel.label for panel in panels) or "on no panel")
        self.found.setText(area.found or "Not said yet.")
        self.done.setText(area.done or "Not said yet.")
        self._show_stage(area)
        chosen = self.desk.ask(actions.area_photos, area_id) or ()
        self.strip.set_photos([photo for _, photo in chosen])
        self.pairs.setVisible(bool(self.desk.ask(pair_actions.area_pairs, area_id)))
        self.strip.setAcceptDrops(not self.desk.read_only)
        self._read_figures(area_id)
        self._show_cautions(area, panels)

    def _show_stage(self, area: Area) -> None:
        self.stage_bar.show_stage(self._stages, area.stage)
        self.since.setText(f"since {spoken(area.changes[-1].when)}" if area.changes else "no date")
        following = next_stage(self._stages, area.stage)
        self.move_button.setText(f"&Move to {following}")
        self.move_button.setVisible(bool(following))
        self.move_button.setEnabled(not self.desk.read_only)
        self._other.setEnabled(not self.desk.read_only)

    def _show_cautions(self, area: Area, panels: tuple[Panel, ...]) -> None:
        words = "\n".join((area.name, area.found, area.done))
        keys = tuple(dict.fromkeys((*area.cautions, *suggest(words, panels))))
        titles = [caution(key).title for key in keys]
        self.cautions.setText("Cautions: " + "; ".join(titles) if titles else "")
        self.cautions.setVisible(bool(titles))

    def _read_figures(self, area_id: AreaId) -> None:
        """Sum up in a reader's thread: the costs of an area rest on every receipt."""
        session = self.desk.session
        if self._reading is not None:
            self._reading.cancel()
        self._reading = self.desk.read(
            lambda _context: costs(session, "area"),
            lambda table: self.figures.setText(_figures(table, area_id)),
            self,
        )

    def _on_move(self) -> None:
        if self._area is not None:
            stage = next_stage(self._stages, self._area.stage)
            self.desk.act(actions.move_to_stage, self._area.id, stage, When.on(date.today()))

    def _on_other(self) -> None:
        if self._area is not None:
            open_dialog(StageDialog(self.desk, self._area, self.window()))

    def _on_dropped(self, photos: tuple[PhotoId, ...]) -> None:
        if self._area is not None:
            self.desk.act(actions.choose_photos, self._area.id, photos, Role.DURING)

    def _open(self) -> None:
        self.desk.show_page("Areas")


def _figures(table: CostTable, area_id: AreaId) -> str:
    """What an area cost, in money and hours."""
    for found in table.rows:
        if found.key == str(area_id):
            money = [format_money(found.money, table.currency)] if found.money else []
            time = [spoken_hours(found.minutes)] if found.minutes else []
            return ", ".join([*money, *time]) or "Nothing yet."
    return "Nothing yet."
