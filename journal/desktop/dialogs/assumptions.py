"""What the estimate of wire and gas rests on, to be changed by the owner."""

from dataclasses import fields
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QDoubleSpinBox, QWidget

from journal.actions.settings import (
    assumptions,
    load_settings,
    save_settings,
    with_assumptions,
)
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.parts import button, label
from journal.domain.consumption import ABOUT, Assumptions, check_assumptions
from journal.domain.guidance import COMMON_PRACTICE, WIRES

if TYPE_CHECKING:
    from journal.desktop.desk import Desk


class AssumptionsDialog(FormDialog):
    """One box for each assumption, with where its first value comes from."""

    def __init__(self, desk: "Desk", parent: QWidget | None = None) -> None:
        super().__init__("Wire and gas: what the estimate assumes", "&Keep", parent)
        self._desk = desk
        self.form.addRow(
            label(
                "Rules of thumb to buy by: common practice without a source, unless one is named. "
                "They change nothing in the journal and stay on this computer.",
                "muted",
            )
        )
        sizes = ", ".join(f"{wire.diameter_mm:g}" for wire in WIRES)
        self.boxes: dict[str, QDoubleSpinBox] = {}
        for name, about in ABOUT.items():
            box = QDoubleSpinBox()
            box.setDecimals(2)
            box.setSingleStep(0.1)
            box.setRange(about.least, about.most)
            box.setSuffix(f" {about.unit}" if about.unit else "")
            box.lineEdit().setTextMargins(8, 0, 0, 0)
            hint = "" if about.basis == COMMON_PRACTICE else about.basis
            hint = f"{sizes} mm" if name == "wire_mm" else hint
            self.boxes[name] = box
            self.add_row(about.label, box, hint)
        self.buttons.addButton(
            button("As it came", lambda: self._show(Assumptions())),
            self.buttons.ButtonRole.ResetRole,
        )
        self._show(assumptions(desk.settings))
        self.setMinimumWidth(620)

    def _show(self, shown: Assumptions) -> None:
        for field in fields(shown):
            self.boxes[field.name].setValue(getattr(shown, field.name))

    def submit(self) -> bool:
        """Keep the assumptions for all journals on this computer."""
        chosen = Assumptions(**{name: box.value() for name, box in self.boxes.items()})
        check_assumptions(chosen)
        self._desk.settings = with_assumptions(self._desk.settings, chosen)
        # Something else may have been saved since this desk was made.
        save_settings(with_assumptions(load_settings(), chosen))
        return True
