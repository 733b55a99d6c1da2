"""The pane of the tracing mode: the picture under the view, and its size in numbers."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Qt, QTimer, Slot
from PySide6.QtWidgets import (
    QCheckBox,
    QDoubleSpinBox,
    QFileDialog,
    QFormLayout,
    QSlider,
    QVBoxLayout,
    QWidget,
)

from journal.actions import tracing
from journal.desktop.desk import Desk, PhotosSelected, Selection
from journal.desktop.modes.point_fields import PointFields
from journal.desktop.tools.picture_scale import ScaleTool
from journal.desktop.tools.picture_square import SquareUpTool
from journal.desktop.tools.picture_tool import PictureTool
from journal.desktop.tools.tool import Tool
from journal.desktop.widgets.parts import button, column, label, scrolled
from journal.desktop.widgets.tool_canvas import ToolCanvas
from journal.domain.ids import PhotoId
from journal.domain.shapes import Point

_MOST_MM = 50_000.0
#: How long the strength rests, moved by key, before it is recorded, in milliseconds.
_REST_MS = 300
_EMPTY = (
    "Lay a photo taken square-on, or a scanned sketch, under this view; square it up and set its "
    "scale; then draw over it in Shape. It is kept among the originals."
)


class TracingPane(QWidget):
    """Lays a picture under the view and says how strongly it shows.

    Attributes:
        choose: asks for the file; None for none.
    """

    def __init__(
        self,
        desk: Desk,
        canvas: ToolCanvas,
        square: SquareUpTool,
        scale: ScaleTool,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName("Tracing")
        self.choose: Callable[[], Path | None] = self._ask_file
        self._desk, self._canvas = desk, canvas
        self._square, self._scale = square, scale
        self._photo: PhotoId | None = None
        self._tool: PictureTool | None = None
        lay = "&Lay a picture under\N{HORIZONTAL ELLIPSIS}"
        self.lay = button(lay, self._on_lay, icon="photo", role="primary")
        self.lay_photo = button("Lay the photo &selected under", self._on_lay_photo, icon="photo")
        self.shown = QCheckBox("S&how the picture")
        self.strength = QSlider(Qt.Orientation.Horizontal)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST_MS)
        self.width_box, self.height_box = _mm("Width in truth"), _mm("Height in truth")
        self.distance = _mm("Distance in truth")
        self.point = PointFields()
        self.go_square = button("S&quare it up", self._on_square, icon="square-up", role="primary")
        self.go_scale = button("Set the &scale", self._on_scale, icon="scale-by", role="primary")
        self.take = button("&Take the picture away", self._on_take, icon="remove")
        self._build()
        self._connect()

    def _build(self) -> None:
        self.strength.setRange(5, 100)
        self.strength.setPageStep(10)
        self.strength.setAccessibleName("Strength of the picture")
        self._empty = label(_EMPTY, "muted")
        self._laid = QWidget()
        self._square_part = _part(
            ("&Width", self.width_box), ("&Height", self.height_box), go=self.go_square
        )
        self._scale_part = _part(("&Distance", self.distance), go=self.go_scale)
        self._laid.setLayout(
            column(
                self.shown,
                label("Strength", "muted"),
                self.strength,
                self._square_part,
                self._scale_part,
                self.point,
                self.take,
            )
        )
        inner = QWidget()
        inner.setLayout(
            column(self._empty, self.lay, self.lay_photo, self._laid, None, margin=8, spacing=10)
        )
        self.setLayout(column(scrolled(inner)))

    def _connect(self) -> None:
        self.shown.clicked.connect(self._on_shown)
        self.strength.valueChanged.connect(self._on_strength)
        self.strength.sliderReleased.connect(self._keep_strength)
        self._rest.timeout.connect(self._keep_strength)
        self.point.put.connect(self._on_put)
        for tool in (self._square, self._scale):
            tool.here_changed.connect(self._show_point)
        self.width_box.valueChanged.connect(self._take_numbers)
        self.height_box.valueChanged.connect(self._take_numbers)
        self.distance.valueChanged.connect(self._take_numbers)
        for box in (self.width_box, self.height_box):
            box.lineEdit().returnPressed.connect(self._on_square)
        self.distance.lineEdit().returnPressed.connect(self._on_scale)

    # Showing

    @Slot()
    def refresh(self) -> None:
        """Show the picture under the view as it is now."""
        laid = self._canvas.laid()
        self._empty.setVisible(laid is None)
        self._laid.setVisible(laid is not None)
        self.lay.setText(
            "&Lay a picture under\N{HORIZONTAL ELLIPSIS}"
            if laid is None
            else "&Lay another under\N{HORIZONTAL ELLIPSIS}"
        )
        if laid is not None:
            self.shown.setChecked(laid.underlay.shown)
            if not self.strength.isSliderDown() and not self._rest.isActive():
                self.strength.blockSignals(True)
                self.strength.setValue(round(100 * laid.underlay.strength))
                self.strength.blockSignals(False)
        self._show_point()

    @Slot(object)
    def show_tool(self, tool: Tool | None) -> None:
        """Show the numbers of another tool."""
        self._tool = tool if isinstance(tool, PictureTool) else None
        self._square_part.setVisible(tool is self._square)
        self._scale_part.setVisible(tool is self._scale)
        self._show_point()

    def show_selection(self, selection: Selection) -> None:
        """Offer the photo selected."""
        is_one = isinstance(selection, PhotosSelected) and bool(selection.ids)
        self._photo = selection.ids[0] if is_one else None  # type: ignore[union-attr]
        self.lay_photo.setVisible(self._photo is not None)

    @Slot()
    def _show_point(self) -> None:
        tool = self._tool
        has_handles = tool is not None and tool in (self._square, self._scale)
        if tool is None or not has_handles or not tool.at_work or not tool.places:
            self.point.show_point(None, None, draws=False)
            return
        self.point.show_point(tool.here(), tool.places[tool.chosen - 1], draws=False)
        wide, high = self._square.size_now() if tool is self._square else (0.0, 0.0)
        for box, now in ((self.width_box, wide), (self.height_box, high)):
            box.setToolTip(f"Now about {now:,.0f} mm" if now else "")

    # Acting

    @Slot()
    def _take_numbers(self) -> None:
        self._square.width_mm = self.width_box.value()
        self._square.height_mm = self.height_box.value()
        self._scale.distance_mm = self.distance.value()

    @Slot()
    def _on_square(self) -> None:
        self._take_numbers()
        if self._square.at_work:
            self._square.apply()

    @Slot()
    def _on_scale(self) -> None:
        self._take_numbers()
        if self._scale.at_work:
            self._scale.apply()

    @Slot(object)
    def _on_put(self, point: Point) -> None:
        if self._tool is not None and self._tool.at_work:
            self._tool.put(point)

    def _on_lay(self) -> None:
        view, file = self._canvas.view_id, self.choose()
        if view is not None and file is not None:
            self._desk.act(tracing.lay_under, view, file)

    def _on_lay_photo(self) -> None:
        view = self._canvas.view_id
        if view is not None and self._photo is not None:
            self._desk.act(tracing.lay_photo_under, view, self._photo)

    @Slot(bool)
    def _on_shown(self, shown: bool) -> None:
        if (view := self._canvas.view_id) is not None:
            self._desk.act(tracing.set_underlay, view, shown=shown)

    @Slot(int)
    def _on_strength(self, value: int) -> None:
        if self._canvas.underlay_item is not None:
            self._canvas.underlay_item.set_strength(value / 100)
        if not self.strength.isSliderDown():
            self._rest.start()

    @Slot()
    def _keep_strength(self) -> None:
        self._rest.stop()
        if (view := self._canvas.view_id) is not None:
            self._desk.act(tracing.set_underlay, view, strength=self.strength.value() / 100)

    def _on_take(self) -> None:
        if (view := self._canvas.view_id) is not None:
            self._desk.act(tracing.take_underlay, view)

    def _ask_file(self) -> Path | None:
        name, _ = QFileDialog.getOpenFileName(self, "Lay which picture under?", "", "All files (*)")
        return Path(name) if name else None


def _part(*rows: tuple[str, QWidget], go: QWidget) -> QWidget:
    made = QWidget()
    form = QFormLayout()
    form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
    for words, field in rows:
        form.addRow(words, field)
    layout = QVBoxLayout(made)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.addLayout(form)
    layout.addWidget(go)
    made.hide()
    return made


def _mm(name: str) -> QDoubleSpinBox:
    made = QDoubleSpinBox()
    made.setRange(0.0, _MOST_MM)
    made.setDecimals(1)
    made.setSuffix(" mm")
    made.setSpecialValueText("not given")
    made.setAccessibleName(name)
    made.lineEdit().setTextMargins(8, 0, 0, 0)
    return made
