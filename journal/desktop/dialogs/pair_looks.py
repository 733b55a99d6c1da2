"""The bar over a pair: how the two are shown, and the slider that goes with it."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QButtonGroup, QPushButton, QSlider, QWidget

from journal.desktop import icons
from journal.desktop.widgets.overlay_view import (
    QUICKEST_MS,
    SLOWEST_MS,
    Look,
    OverlayView,
)
from journal.desktop.widgets.parts import button, label, row

_WHOLE = 1000
_HINTS = {
    Look.DIVIDED: "A handle between before and after; drag it, or use the arrow keys",
    Look.FADED: "After shows through before",
    Look.BLINKING: "One after the other, once you start it; it stops by itself",
    Look.SIDE_BY_SIDE: "Beside each other, the same part of both",
}


class PairLooks(QWidget):
    """Chooses the look of an ``OverlayView``."""

    def __init__(self, view: OverlayView, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view = view
        self._group = QButtonGroup(self)
        self.choices: dict[Look, QPushButton] = {}
        for look in Look:
            choice = QPushButton(look.value)
            choice.setCheckable(True)
            choice.setToolTip(_HINTS[look])
            self._group.addButton(choice)
            self.choices[look] = choice
            choice.clicked.connect(lambda _on=False, look=look: self.choose(look))
        self.start = button("S&tart", self._on_start, icon="play")
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setMinimumWidth(160)
        self._words = label("", "muted", wrap=False)
        line = row(*self.choices.values(), None, self._words, self.slider, self.start, spacing=6)
        self.setLayout(line)
        self.slider.valueChanged.connect(self._on_slid)
        view.moved.connect(self._show_place)
        view.blinking.connect(self._on_blinking)
        self._is_laid = False
        self.choose(Look.DIVIDED)

    def set_laid(self, *, is_laid: bool) -> None:
        """Offer what can be done: photos that don't lie on each other only stand side by side."""
        was, self._is_laid = self._is_laid, is_laid
        for look, choice in self.choices.items():
            choice.setEnabled(is_laid or look is Look.SIDE_BY_SIDE)
        if not is_laid:
            self.choose(Look.SIDE_BY_SIDE)
        elif not was and self._view.look is Look.SIDE_BY_SIDE:
            self.choose(Look.DIVIDED)

    def choose(self, look: Look) -> None:
        """Show the pair so."""
        self.choices[look].setChecked(True)
        self._view.set_look(look)
        blinks = look is Look.BLINKING
        self.start.setVisible(blinks)
        for part in (self.slider, self._words):
            part.setVisible(look is not Look.SIDE_BY_SIDE)
        self.slider.blockSignals(True)
        if blinks:
            self.slider.setRange(QUICKEST_MS, SLOWEST_MS)
            self.slider.setSingleStep(100)
            self.slider.setInvertedAppearance(False)
            self.slider.setValue(self._view.interval)
        else:
            self.slider.setRange(0, _WHOLE)
            self.slider.setSingleStep(_WHOLE // 50)
            self.slider.setValue(round(self._view.at * _WHOLE))
        self.slider.blockSignals(False)
        self._say()

    def _say(self) -> None:
        look = self._view.look
        words = {
            Look.DIVIDED: "Handle",
            Look.FADED: "After shows",
            Look.BLINKING: f"Every {self._view.interval / 1000:.1f} s",
        }.get(look, "")
        self._words.setText(words)
        self.slider.setAccessibleName(words)

    def _on_slid(self, value: int) -> None:
        if self._view.look is Look.BLINKING:
            self._view.set_interval(value)
            self._say()
        else:
            self._view.set_at(value / _WHOLE)

    def _show_place(self, at: float) -> None:
        if self._view.look is not Look.BLINKING:
            self.slider.blockSignals(True)
            self.slider.setValue(round(at * _WHOLE))
            self.slider.blockSignals(False)

    def _on_start(self) -> None:
        if self._view.is_blinking:
            self._view.stop()
        else:
            self._view.start()
            self._view.setFocus()

    def _on_blinking(self, on: bool) -> None:
        self.start.setText("S&top" if on else "S&tart")
        icons.put(self.start, "pause" if on else "play")
