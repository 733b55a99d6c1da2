"""Cautions of a repair area: short plain words that defer to licensed practice."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QPushButton, QVBoxLayout, QWidget

from journal.desktop.widgets.parts import button, clear_layout, column, label, row
from journal.domain.cautions import CAUTIONS, Caution


class CautionsBox(QWidget):
    """The cautions kept with an area, and those its words and panels give reason for.

    Their titles always show; their texts too, or at the press of a button.

    Attributes:
        read_button: shows and hides the texts.
    """

    #: The owner has a caution always show with the area, or no longer: all the keys kept.
    kept_changed = Signal(object)

    def __init__(self, parent: QWidget | None = None, *, read_only: bool = False) -> None:
        super().__init__(parent)
        self._read_only = read_only
        self._kept: tuple[str, ...] = ()
        self.read_button = button("Read them", self._show_texts, role="quiet")
        self.read_button.setCheckable(True)
        self._titles = label("")
        self._brief = QFrame()
        self._brief.setProperty("role", "banner")
        self._brief.setProperty("level", "warning")
        brief = row(self._titles, self.read_button)
        brief.setContentsMargins(8, 4, 4, 4)
        brief.setStretch(0, 1)
        self._brief.setLayout(brief)
        self._texts = QWidget()
        self._layout = QVBoxLayout(self._texts)
        self._layout.setContentsMargins(0, 0, 0, 0)
        self._layout.setSpacing(6)
        self.setLayout(column(self._brief, self._texts, spacing=6))

    def show_cautions(
        self, kept: tuple[str, ...], suggested: tuple[str, ...], *, in_full: bool | None = None
    ) -> None:
        """Show the cautions of an area, those kept first; ``in_full`` None leaves texts as is."""
        self._kept = kept
        first = [caution for caution in CAUTIONS if caution.key in kept]
        first += [c for c in CAUTIONS if c.key in suggested and c.key not in kept]
        clear_layout(self._layout)
        for caution in first:
            self._layout.addWidget(self._banner(caution, kept=caution.key in kept))
        titles = "; ".join(caution.title for caution in first)
        self._titles.setText(f"{'Caution' if len(first) == 1 else 'Cautions'}: {titles}.")
        self.setVisible(bool(first))
        if in_full is not None:
            self.read_button.setChecked(in_full)
        self._show_texts()

    def _show_texts(self) -> None:
        in_full = self.read_button.isChecked()
        self._texts.setVisible(in_full)
        self._brief.setVisible(not in_full)

    def _banner(self, caution: Caution, *, kept: bool) -> QFrame:
        made = QFrame()
        made.setProperty("role", "banner")
        made.setProperty("level", "warning")
        title = label(f"Caution: {caution.title}", "subheading")
        text = label(caution.text)
        made.setAccessibleName(f"Caution: {caution.title}. {caution.text}")
        made.setToolTip(f"After {caution.source}." if caution.source else "Common practice.")
        head = row(title)
        head.setStretch(0, 1)
        if not self._read_only:
            head.addWidget(self._act(caution, kept=kept))
        layout = column(spacing=2, margin=8)
        layout.addLayout(head)
        layout.addWidget(text)
        made.setLayout(layout)
        return made

    def _act(self, caution: Caution, *, kept: bool) -> QPushButton:
        if kept:
            without = tuple(key for key in self._kept if key != caution.key)
            hint = "It shows with this area whatever its words say; press to let the words decide"
            made = button(
                "Always shown", lambda: self.kept_changed.emit(without), icon="done", hint=hint
            )
            made.setProperty("role", "quiet")
            made.setAccessibleName(f"Don't always show the caution “{caution.title}”")
            return made
        known = (*self._kept, caution.key)
        ordered = tuple(c.key for c in CAUTIONS if c.key in known)
        hint = "It shows because of the area's words or panels; show it whatever they say later"
        made = button(
            "Always show", lambda: self.kept_changed.emit(ordered), role="quiet", hint=hint
        )
        made.setAccessibleName(f"Always show the caution “{caution.title}” with this area")
        return made
