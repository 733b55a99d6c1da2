"""What the next seam or patch is to be: joint and spacing, thickness and steel, repair area."""

from PySide6.QtWidgets import QComboBox, QFormLayout, QLabel, QLineEdit, QWidget

from journal.actions import areas as area_actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.metal_fields import mm_box
from journal.desktop.dialogs.seam import SPACINGS
from journal.desktop.tools.metal_drawing import MetalDrawing
from journal.desktop.tools.patch import PatchTool
from journal.desktop.tools.seam import SeamTool
from journal.desktop.tools.tool import Tool
from journal.desktop.widgets.parts import label
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.errors import JournalError
from journal.domain.guidance import guidance, mig_current
from journal.domain.ids import AreaId
from journal.domain.seams import Joint
from journal.domain.sheet import THICKEST_MM, THINNEST_MM, nearest_gauge

_BY_PANEL = "The one on the panel"


class MetalFields(QWidget):
    """The fields of the tool in hand; what stands in them is what is drawn next."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._tool: MetalDrawing | None = None
        self._title = label("", "subheading")
        self.area = QComboBox()
        self.joint = QComboBox()
        self.joint.addItems([joint.value for joint in Joint])
        self.spacing = mm_box(40, 1, 1000)
        self.thickness = mm_box(1.0, THINNEST_MM, THICKEST_MM, decimals=2)
        self.steel = QLineEdit()
        self.steel.setPlaceholderText("Zinc-coated sheet ...")
        self.when = WhenEdit(optional=True)
        self.when.set_today()
        self.guide = label("", "muted")
        self._rows = QFormLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
        self._rows.addRow(self._title)
        self._names: dict[QWidget, QLabel] = {
            field: self._add(words, field)
            for words, field in (
                ("&Repair area", self.area),
                ("&Joint", self.joint),
                ("Spacin&g", self.spacing),
                ("Thic&kness", self.thickness),
                ("&Steel", self.steel),
                ("&Went in on", self.when),
            )
        }
        self._rows.addRow(self.guide)
        self._connect()
        self.show_tool(None)

    def _add(self, words: str, field: QWidget) -> QLabel:
        name = QLabel(words)
        name.setBuddy(field)
        field.setAccessibleName(words.replace("&", ""))
        self._rows.addRow(name, field)
        return name

    def _connect(self) -> None:
        self.joint.currentIndexChanged.connect(self._on_joint)
        self.area.currentIndexChanged.connect(self._give)
        self.spacing.valueChanged.connect(self._give)
        self.thickness.valueChanged.connect(self._give)
        self.steel.textChanged.connect(self._give)
        self.when.changed.connect(self._give)

    def read_areas(self) -> None:
        """Offer the repair areas there are now."""
        chosen = self.area.currentData()
        self.area.blockSignals(True)
        self.area.clear()
        self.area.addItem(_BY_PANEL, None)
        for area in self._desk.ask(area_actions.areas) or ():
            self.area.addItem(area.name, area.id)
        self.area.setCurrentIndex(max(0, self.area.findData(chosen)))
        self.area.blockSignals(False)
        self._give()

    def show_tool(self, tool: Tool | None) -> None:
        """Show the fields of another tool; none for those without."""
        self._tool = tool if isinstance(tool, SeamTool | PatchTool) else None
        self.setVisible(self._tool is not None)
        self._title.setText("The next seam" if isinstance(tool, SeamTool) else "The next patch")
        self._show_rows()
        self._give()

    def _show_rows(self) -> None:
        is_seam = isinstance(self._tool, SeamTool)
        wanted = {
            self.joint: is_seam,
            self.spacing: is_seam and Joint(self.joint.currentText()) in SPACINGS,
            self.thickness: not is_seam,
            self.steel: not is_seam,
            self.when: not is_seam,
        }
        for field, shown in wanted.items():
            field.setVisible(shown)
            self._names[field].setVisible(shown)
        self.guide.setText(self._seam_words() if is_seam else self._patch_words())

    def _seam_words(self) -> str:
        found = SPACINGS.get(Joint(self.joint.currentText()))
        piece = guidance(found[1] if found else "stitches")
        return f"{piece.text} ({piece.source})"

    def _patch_words(self) -> str:
        thick = self.thickness.value()
        near = nearest_gauge(thick)
        words = f"About {near.number} gauge; " if near else ""
        source = guidance("current").source
        return f"{words}MIG current to begin with about {mig_current(thick):.0f} A ({source})"

    def _on_joint(self) -> None:
        joint = Joint(self.joint.currentText())
        if joint in SPACINGS:
            self.spacing.setValue(SPACINGS[joint][0])
        self._show_rows()
        self._give()

    def _give(self) -> None:
        """Tell the tool in hand what its next piece is to be."""
        tool, area_id = self._tool, self.area.currentData()
        if tool is None:
            return
        tool.area_id = None if area_id is None else AreaId(area_id)
        if isinstance(tool, SeamTool):
            tool.joint = Joint(self.joint.currentText())
            tool.spacing_mm = self.spacing.value()
        elif isinstance(tool, PatchTool):
            tool.thickness_mm = round(self.thickness.value(), 2)
            tool.steel = self.steel.text().strip()
            try:
                tool.when = self.when.value()
            except JournalError:
                return
            self.guide.setText(self._patch_words())
