"""The way the camera faced, in degrees, as a box in the inspector."""

from collections.abc import Callable

from PySide6.QtWidgets import QSpinBox

_UNKNOWN = -1


class _FacingBox(QSpinBox):
    """Degrees round the compass; below 0 stands for a way that isn't known."""

    def stepBy(self, steps: int) -> None:
        """Go on from 359 to 0 and back; from unknown to 0."""
        if self.value() == _UNKNOWN:
            self.setValue(0)
        else:
            self.setValue((self.value() + steps * self.singleStep()) % 360)


def facing_box(facing: float | None, on_changed: Callable[[float | None], object]) -> QSpinBox:
    """A box for the way a camera faced; ``on_changed`` is told once it was edited."""
    box = _FacingBox()
    box.setRange(_UNKNOWN, 359)
    box.setSuffix("\N{DEGREE SIGN}")
    box.setSpecialValueText("not known")
    box.setSingleStep(15)
    box.setAccessibleName("The way the camera faced, in degrees clockwise from up")
    box.setToolTip("Degrees clockwise from up on the drawing; or Alt and drag from the pin")
    before = _UNKNOWN if facing is None else round(facing) % 360
    box.setValue(before)

    def done() -> None:
        if box.value() != before:
            on_changed(None if box.value() == _UNKNOWN else float(box.value()))

    box.editingFinished.connect(done)
    return box
