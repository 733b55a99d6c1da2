"""What lies near load-bearing mountings, with its distance and who should look at it."""

from collections.abc import Sequence

from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from journal.desktop.widgets.parts import clear_layout, column, label
from journal.domain.bearings import Bearing


class BearingBox(QWidget):
    """One banner for each mounting; nothing where none is near."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(0, 0, 0, 0)
        self._layout.setSpacing(6)
        self.found: tuple[Bearing, ...] = ()
        self.hide()

    @property
    def texts(self) -> tuple[str, ...]:
        """What is said of each."""
        return tuple(one.text for one in self.found)

    def show_bearings(self, found: Sequence[Bearing]) -> None:
        """Show these."""
        clear_layout(self._layout)
        self.found = tuple(found)
        for one in found:
            banner = QFrame()
            banner.setProperty("role", "banner")
            banner.setProperty("level", "warning")
            banner.setToolTip(f"After {one.mark.source}.")
            banner.setAccessibleName(f"{one.mark.title}. {one.text}")
            banner.setLayout(
                column(label(one.mark.title, "subheading"), label(one.text), spacing=2, margin=8)
            )
            self._layout.addWidget(banner)
        self.setVisible(bool(found))
