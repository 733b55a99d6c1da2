"""The choices of side and system of a panel."""

from PySide6.QtWidgets import QComboBox, QWidget

from journal.domain.drawing import Side, System

_SIDES = {Side.LEFT: "Left", Side.RIGHT: "Right", Side.CENTRE: "Neither"}


class SideEdit(QComboBox):
    """Left, right or neither."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Side")
        for words in _SIDES.values():
            self.addItem(words)

    @property
    def side(self) -> Side:
        """The side chosen."""
        return list(_SIDES)[max(0, self.currentIndex())]

    def show_side(self, side: Side) -> None:
        """Choose a side."""
        self.setCurrentIndex(list(_SIDES).index(side))


class SystemEdit(QComboBox):
    """What a panel belongs to."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("System")
        for system in System:
            self.addItem(system.value.capitalize())

    @property
    def system(self) -> System:
        """The system chosen."""
        return list(System)[max(0, self.currentIndex())]

    def show_system(self, system: System) -> None:
        """Choose a system."""
        self.setCurrentIndex(list(System).index(system))
