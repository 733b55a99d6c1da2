"""The panel marked: name, side, system, its place in the stack, its fellow, its end."""

from collections.abc import Callable

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QFormLayout, QLineEdit, QWidget

from journal.actions import shaping
from journal.desktop.desk import Desk
from journal.desktop.modes.choices import SideEdit, SystemEdit
from journal.desktop.tools.corners import CornersTool
from journal.desktop.widgets.parts import button, column, label, row, tool
from journal.desktop.widgets.tool_canvas import ToolCanvas
from journal.domain.drawing import Drawing, Panel
from journal.domain.ids import ViewId
from journal.domain.shaping import making
from journal.domain.shaping.corners import Part
from journal.domain.shaping.making import LONGEST_NAME, Step
from journal.domain.shaping.mirroring import mirror_panel

_STEPS = (
    (Step.TOP, "move-top", "To the top of the stack", "to the top"),
    (Step.UP, "move-up", "One up in the stack", "up"),
    (Step.DOWN, "move-down", "One down in the stack", "down"),
    (Step.BOTTOM, "move-bottom", "To the bottom of the stack", "to the bottom"),
)

_CLICK = "No panel of this view is chosen: click one."
_BARE = (
    "Nothing is drawn on this view yet. Take up “New panel” above; to draw over a photo, lay it "
    "under the view in Trace first."
)


class PanelFields(QWidget):
    """What can be said and done of the panel marked without a hand on the canvas."""

    def __init__(
        self, desk: Desk, canvas: ToolCanvas, corners: CornersTool, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._desk = desk
        self._canvas = canvas
        self._corners = corners
        self._nothing = label(_CLICK, "muted")
        self._title = label("", "subheading")
        self.name = QLineEdit()
        self.name.setMaxLength(LONGEST_NAME)
        self.name.setAccessibleName("Name")
        self.side = SideEdit()
        self.system = SystemEdit()
        self._body = QWidget()
        self._build()
        self.name.editingFinished.connect(self._on_named)
        self.side.activated.connect(self._on_side)
        self.system.activated.connect(self._on_system)

    def _build(self) -> None:
        form = QFormLayout()
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
        form.addRow("&Name", self.name)
        form.addRow("&Side", self.side)
        form.addRow("S&ystem", self.system)
        corner = self._build_corner()
        stack = [tool(icon, what, self._stacks(step)) for step, icon, what, _ in _STEPS]
        self.mirror = button("&Mirror to the other side", self._on_mirror, icon="mirror")
        self.off_view = button("&Take off this view", self._on_off_view)
        self.off_view.setToolTip("The panel stays on its other views")
        self.remove = button("&Remove the panel", self._on_remove, icon="remove")
        body = column(spacing=8)
        body.addWidget(self._title)
        body.addWidget(corner)
        body.addLayout(form)
        body.addWidget(label("In the stack of this view", "muted"))
        body.addLayout(row(*stack, None))
        for act in (self.mirror, self.off_view, self.remove):
            body.addWidget(act)
        self._body.setLayout(body)
        self.setLayout(column(self._nothing, self._body))

    def _build_corner(self) -> QWidget:
        acts = self._corners
        self._acts = (
            tool("corner-in", "Put a corner into the edge before (I)", acts.insert_after),
            tool("corner-out", "Take the corner out (Del)", acts.take_out),
            tool("curve", "Bend the edge before (C)", acts.bend),
            tool("straight", "Make the edge before straight (L)", acts.straighten),
        )
        self._corner = QWidget()
        self._corner.setLayout(row(*self._acts, None))
        return self._corner

    def _stacks(self, step: Step) -> Callable[[], None]:
        return lambda: self._on_stack(step)

    # Showing

    @property
    def _panel(self) -> Panel | None:
        """The panel marked, where it is on the view shown."""
        marked = self._canvas.selected_panel
        found = (p for p in self._canvas.drawing.panels if p.id == marked)
        panel = next(found, None)
        return panel if panel and self._canvas.outline_of(panel.id) is not None else None

    def refresh(self) -> None:
        """Show the panel marked as it is now."""
        panel = self._panel
        view = self._canvas.view_id
        is_bare = view is not None and not self._canvas.drawing.shapes_on(view)
        self._nothing.setText(_BARE if is_bare else _CLICK)
        self._nothing.setVisible(panel is None)
        self._body.setVisible(panel is not None)
        self.show_corner()
        if panel is None:
            return
        self._title.setText(panel.label)
        self.name.setText(panel.name)
        self.side.show_side(panel.side)
        self.system.show_system(panel.system)
        self.off_view.setEnabled(len(self._canvas.drawing.views_of(panel.id)) > 1)

    def show_corner(self) -> None:
        """Offer what can be done with the corner chosen."""
        node = self._corners.node if self._corners.at_work else None
        self._corner.setVisible(node is not None)
        self._acts[1].setEnabled(node is not None and node.part is Part.TO)

    # Doing

    def _reshape(self, label: str, change: Callable[[Drawing], Drawing]) -> bool:
        done = self._desk.act(shaping.reshape, label, change) is not None
        self.refresh()
        return done

    @Slot()
    def _on_named(self) -> None:
        panel, name = self._panel, self.name.text()
        if panel is not None and name != panel.name:
            words = " ".join(name.split())
            self._reshape(
                f"Rename {panel.label} to {words}",
                lambda d: making.rename_panel(d, panel.id, name=name),
            )

    @Slot()
    def _on_side(self) -> None:
        panel, side = self._panel, self.side.side
        if panel is not None and side is not panel.side:
            words = f"the {side.value} side" if side.value else "neither side"
            self._reshape(
                f"Put {panel.name} on {words}",
                lambda d: making.rename_panel(d, panel.id, side=side),
            )

    @Slot()
    def _on_system(self) -> None:
        panel, system = self._panel, self.system.system
        if panel is not None and system is not panel.system:
            self._reshape(
                f"Count {panel.label} to {system.value}",
                lambda d: making.rename_panel(d, panel.id, system=system),
            )

    def _view(self) -> ViewId:
        view_id = self._canvas.view_id
        assert view_id is not None, "a panel is marked, and it is on this view"
        return view_id

    def _on_stack(self, step: Step) -> None:
        panel = self._panel
        if panel is None:
            return
        view = self._view()
        words = next(said for known, _, _, said in _STEPS if known is step)
        self._reshape(
            f"Move {panel.label} {words}", lambda d: making.reorder(d, panel.id, view, step)
        )

    def _on_mirror(self) -> None:
        panel = self._panel
        if panel is not None:
            view = self._view()
            self._reshape(f"Mirror {panel.label}", lambda d: mirror_panel(d, panel.id, view))

    def _on_off_view(self) -> None:
        panel = self._panel
        if panel is not None:
            view = self._canvas.drawing.view(self._view())
            self._reshape(
                f"Take {panel.label} off {view.name}",
                lambda d: making.take_shape_off(d, panel.id, view.id),
            )

    def _on_remove(self) -> None:
        panel = self._panel
        if panel is not None:
            self._desk.act(shaping.remove_panel, panel.id)
            self.refresh()
