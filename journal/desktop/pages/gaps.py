"""The page of gaps: what the record lacks, each a press away from being filled."""

from functools import partial

from PySide6.QtWidgets import QButtonGroup, QPushButton, QStackedWidget, QWidget

from journal.actions import areas as area_actions
from journal.actions import receipts as receipt_actions
from journal.actions.gaps import gaps
from journal.actions.timeline import count_photos
from journal.desktop.desk import (
    AreaSelected,
    Desk,
    PanelSelected,
    PhotosSelected,
    ReceiptSelected,
    WantedSelected,
)
from journal.desktop.dialogs.area import AreaDialog
from journal.desktop.dialogs.choose_photos import ChoosePhotosDialog
from journal.desktop.dialogs.hours import HoursDialog
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.photo_hours import PhotoHoursDialog
from journal.desktop.dialogs.receipt import ReceiptDialog
from journal.desktop.dialogs.stage import StageDialog
from journal.desktop.pages import Page
from journal.desktop.pages.gap_list import GapList
from journal.desktop.tasks import Task
from journal.desktop.widgets.parts import EmptyState, button, column, label, row
from journal.domain.areas import Area
from journal.domain.changes import Changes
from journal.domain.gaps import Gap, GapKind, Reader
from journal.domain.ids import AreaId, PanelId, PhotoId, ReceiptId, WantedId
from journal.domain.photos import Role

_ROLES = {
    GapKind.AREA_NO_BEFORE: Role.BEFORE,
    GapKind.AREA_NO_DURING: Role.DURING,
    GapKind.WELD_UNSEEN: Role.DURING,
    GapKind.CLAIM_WORD_ALONE: Role.DURING,
    GapKind.AREA_NO_AFTER: Role.AFTER,
}
_STAGES = frozenset({GapKind.AREA_UNDATED, GapKind.AREA_NOT_FINISHED})
#: What is filled on the area's own page.
_SHOWN = frozenset(
    {
        GapKind.AREA_NOT_WELDED,
        GapKind.AREA_NOT_READ_AFTER,
        GapKind.AREA_NO_READING,
        GapKind.METAL_NO_PAPER,
    }
)
_READERS = {None: "An&ybody", Reader.BUYER: "A b&uyer", Reader.VALUER: "A va&luer"}


class GapsPage(Page):
    """Every gap, the weightiest kind first."""

    title = "Gaps"
    icon = "gaps"
    inspects = ()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._reading: Task | None = None
        self.list = GapList()
        self.count = label("", "heading", wrap=False)
        self.reader: Reader | None = None
        self.readers: dict[Reader | None, QPushButton] = {}
        self._stack = QStackedWidget()
        whole = QWidget()
        said = label("What matters most to that reader comes first. Press one to fill it.", "muted")
        layout = column(spacing=6, margin=12)
        layout.addLayout(row(self.count, None, *self._choice()))
        layout.addWidget(said)
        layout.addWidget(self.list, 1)
        whole.setLayout(layout)
        to_dossier = button("Go to the &dossier", self._to_dossier, icon="dossier", role="primary")
        self.nothing = EmptyState(
            "done",
            "Nothing is missing",
            "Every repair area shows before, during and after, every receipt is accounted for, "
            "every photo has its date and place.",
            to_dossier,
        )
        self._stack.addWidget(whole)
        self._stack.addWidget(self.nothing)
        self.setLayout(column(self._stack))
        self.setFocusProxy(self.list)
        self.list.pressed_gap.connect(self.fill)

    def _choice(self) -> tuple[QWidget, ...]:
        """Whose questions the gaps are sorted by, as three buttons of which one is pressed in."""
        group = QButtonGroup(self)
        for reader, words in _READERS.items():
            made = button(words, partial(self.sort_for, reader))
            made.setCheckable(True)
            made.setAccessibleName(f"Sorted for {words.replace('&', '').lower()}")
            group.addButton(made)
            self.readers[reader] = made
        self.readers[None].setChecked(True)
        return label("Sorted for", wrap=False), *self.readers.values()

    def sort_for(self, reader: Reader | None) -> None:
        """Sort them by what a reader asks for first; None for any reader."""
        self.reader = reader
        self.readers[reader].setChecked(True)
        self.refresh(Changes("", frozenset()))
        self.list.scrollToTop()

    def refresh(self, changes: Changes | None) -> None:
        """Look for gaps again, off the main thread: the whole record is read for it."""
        if self._reading is not None:
            self._reading.cancel()
        if changes is None:
            self.count.setText("Looking through the record ...")
        session, reader = self.desk.session, self.reader
        self._reading = self.desk.read(lambda _context: gaps(session, reader), self._show, self)

    def fill(self, gap: Gap) -> None:
        """Go where a gap is filled."""
        if gap.kind is GapKind.PHOTOS_NO_HOURS and not self.desk.read_only:
            open_dialog(PhotoHoursDialog(self.desk, self.window()))
        elif gap.target_kind in ("photo", "photos"):
            self._to_photos(gap)
        elif gap.target_kind == "area" and gap.target_id is not None:
            self._fill_area(gap, AreaId(gap.target_id))
        elif gap.target_kind == "receipt" and gap.target_id is not None:
            self._fill_receipt(ReceiptId(gap.target_id))
        elif gap.target_kind == "panel" and gap.target_id is not None:
            self.desk.select(PanelSelected(PanelId(gap.target_id)))
            self.desk.show_page("Drawing")
        elif gap.target_kind == "wanted" and gap.target_id is not None:
            self.desk.show_tab("Wanted")
            self.desk.select(WantedSelected(WantedId(gap.target_id)))
        else:
            self._fill_car(gap)

    def _fill_car(self, gap: Gap) -> None:
        if gap.target_kind == "milestone":
            from journal.desktop.dialogs.milestones import MilestonesDialog

            open_dialog(MilestonesDialog(self.desk, self.window()))
        elif gap.kind is GapKind.NO_STANDARD_VIEWS:
            from journal.desktop.dialogs.standard_views import StandardViewsDialog

            open_dialog(StandardViewsDialog(self.desk, self.window()))
        elif gap.target_kind == "car":
            from journal.desktop.dialogs.car import CarDialog

            open_dialog(CarDialog(self.desk, self.window()))

    def _show(self, found: tuple[Gap, ...]) -> None:
        self._reading = None
        self.list.set_gaps(found)
        self.count.setText("1 gap" if len(found) == 1 else f"{len(found):,} gaps")
        self._stack.setCurrentIndex(0 if found else 1)

    def _to_photos(self, gap: Gap) -> None:
        ids = gap.photo_ids
        if not ids and gap.target_id is not None:
            ids = (PhotoId(gap.target_id),)
        self.desk.show_page("Timeline")
        self.desk.select(PhotosSelected(ids))

    def _fill_area(self, gap: Gap, area_id: AreaId) -> None:
        area = self.desk.ask(area_actions.area, area_id)
        if area is None:
            return
        self.desk.select(AreaSelected(area_id))
        no_photos = gap.kind in _ROLES and not self.desk.ask(count_photos)
        if self.desk.read_only or no_photos or gap.kind in _SHOWN:
            self.desk.show_page("Areas")
            return
        self._open_area_dialog(gap, area)

    def _open_area_dialog(self, gap: Gap, area: Area) -> None:
        kind = gap.kind
        if kind is GapKind.STAGE_VAGUE:
            vague = next((one for one in area.changes if one.stage == gap.claim_key), None)
            open_dialog(StageDialog(self.desk, area, self.window(), change=vague))
        elif kind in _ROLES:
            open_dialog(ChoosePhotosDialog(self.desk, area, _ROLES[kind], self.window()))
        elif kind in _STAGES:
            open_dialog(StageDialog(self.desk, area, self.window()))
        elif kind is GapKind.AREA_NO_HOURS:
            open_dialog(HoursDialog(self.desk, self.window(), area_id=area.id))
        else:
            open_dialog(AreaDialog(self.desk, self.window(), area=area))

    def _fill_receipt(self, receipt_id: ReceiptId) -> None:
        receipt = self.desk.ask(receipt_actions.receipt, receipt_id)
        if receipt is None:
            return
        self.desk.select(ReceiptSelected(receipt_id))
        if self.desk.read_only:
            self.desk.show_page("Ledger")
        else:
            open_dialog(ReceiptDialog(self.desk, self.window(), receipt=receipt))

    def _to_dossier(self) -> None:
        self.desk.show_page("Dossier")
