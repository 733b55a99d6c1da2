"""The repair areas that photos show, and in what role: before, during or after."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtWidgets import QFrame, QPushButton, QVBoxLayout, QWidget

from journal.actions import areas as actions
from journal.actions import pairs as pair_actions
from journal.desktop.desk import AreaSelected, Desk
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.widgets.parts import button, clear_layout, label, row
from journal.desktop.widgets.pick_edit import PickEdit
from journal.domain.areas import Area
from journal.domain.ids import AreaId, PanelId, PhotoId
from journal.domain.photos import Role

#: So many areas of the photos' panels are offered; the others can be named.
_MOST_FITTING = 12
_PAIR = 2


@dataclass(frozen=True, slots=True)
class Offered:
    """An area offered for photos, and the role they all have in it, None where they haven't."""

    area: Area
    role: Role | None


class PhotoAreas(QWidget):
    """A row of three role buttons for every area of the photos' panels, and a field for others."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._ids: tuple[PhotoId, ...] = ()
        self._areas: tuple[Area, ...] = ()
        self._added: set[AreaId] = set()
        self._rows = QVBoxLayout()
        self._rows.setSpacing(8)
        self._none = label("", "muted")
        self.pick = PickEdit()
        self.pick.setPlaceholderText("Another repair area ...")
        self.pick.setAccessibleName("Another repair area")
        self.pick.on_picked(self._on_picked)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(8)
        layout.addLayout(self._rows)
        layout.addWidget(self._none)
        layout.addWidget(self.pick)

    def show_photos(self, ids: Sequence[PhotoId], panels: Sequence[PanelId]) -> None:
        """Show what these photos, pinned to these panels, are chosen for or could be."""
        if tuple(ids) != self._ids:
            self._added.clear()
        self._ids = tuple(ids)
        self._areas = self._desk.ask(actions.areas) or ()
        offered = self._offered(set(panels))
        clear_layout(self._rows)
        for one in offered:
            self._rows.addWidget(self._row(one))
        self._none.setText("" if self._areas else "There are no repair areas yet.")
        self._none.setVisible(not self._areas)
        rest = [a.name for a in self._areas if a.id not in {o.area.id for o in offered}]
        self.pick.set_choices(rest)
        self.pick.setVisible(bool(rest) and not self._desk.read_only)

    def _offered(self, panels: set[PanelId]) -> list[Offered]:
        roles = self._roles()
        fitting = [area for area in self._areas if panels & set(area.panel_ids)]
        wanted = {area.id for area in fitting[:_MOST_FITTING]} | set(roles) | self._added
        return [Offered(a, roles.get(a.id)) for a in self._areas if a.id in wanted]

    def _roles(self) -> dict[AreaId, Role | None]:
        """The role that the photos have in each area; None where not all have the same."""
        found: dict[AreaId, list[Role]] = {}
        for photo_id in self._ids:
            for chosen, area in self._desk.ask(actions.photo_areas, photo_id) or ():
                found.setdefault(area.id, []).append(chosen.role)
        return {
            area_id: roles[0] if len(roles) == len(self._ids) and len(set(roles)) == 1 else None
            for area_id, roles in found.items()
        }

    def _row(self, offered: Offered) -> QFrame:
        area = offered.area
        made = QFrame()
        made.setProperty("role", "card")
        name = button(
            area.name.replace("&", "&&"),
            lambda: self._desk.select(AreaSelected(area.id)),
            icon="area",
            role="quiet",
            hint="Show this repair area",
        )
        name.setStyleSheet("text-align: left")
        roles = [self._role_button(offered, role) for role in Role]
        layout = QVBoxLayout(made)
        layout.setContentsMargins(8, 4, 8, 8)
        layout.setSpacing(4)
        layout.addWidget(name)
        layout.addLayout(row(*roles, spacing=4))
        if both := self._both(area):
            words = "&Lay over each other" if len(self._ids) == _PAIR else "Before and a&fter"
            layout.addWidget(
                button(words, lambda: self._lay(area, both), icon="before-after", role="quiet")
            )
        return made

    def _both(self, area: Area) -> tuple[PhotoId, PhotoId] | None:
        """Two photos that can be laid over each other: the two selected, or a pair of the one."""
        if len(self._ids) == _PAIR:
            return self._ids[0], self._ids[1]
        if len(self._ids) != 1:
            return None
        found = self._desk.ask(pair_actions.photo_pairs, self._ids[0]) or ()
        return next(((p.before_id, p.after_id) for p, of in found if of.id == area.id), None)

    def _lay(self, area: Area, both: tuple[PhotoId, PhotoId]) -> None:
        from journal.desktop.dialogs.pair import PairDialog

        before, after = both
        open_dialog(PairDialog(self._desk, area, self.window(), before=before, after=after))

    def _role_button(self, offered: Offered, role: Role) -> QPushButton:
        made = QPushButton(role.value.capitalize())
        made.setCheckable(True)
        made.setChecked(offered.role is role)
        made.setEnabled(not self._desk.read_only)
        made.setAccessibleName(f"{role.value.capitalize()} of {offered.area.name}")
        made.setToolTip("Press again to take it out" if made.isChecked() else "")
        made.clicked.connect(lambda on: self._choose(offered.area.id, role, choose=on))
        return made

    def _choose(self, area_id: AreaId, role: Role, *, choose: bool) -> None:
        if choose:
            self._desk.act(actions.choose_photos, area_id, self._ids, role)
        else:
            self._desk.act(actions.unchoose_photos, area_id, self._ids)

    def _on_picked(self, name: str) -> None:
        area = next((a for a in self._areas if a.name == name), None)
        if area is not None:
            self._added.add(area.id)
            self.pick.clear()
            self._desk.act(actions.choose_photos, area.id, self._ids, Role.DURING)
