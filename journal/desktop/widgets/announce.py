"""Words for a screen reader."""

from PySide6.QtWidgets import QWidget


def announce(widget: QWidget, words: str) -> None:
    """Have ``words`` read out, as coming from ``widget``."""
    from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent

    QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(widget, words))
