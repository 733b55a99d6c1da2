"""Banners over the page: why a journal is read-only, and what stood in the way just now."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from journal.desktop import icons, theme
from journal.desktop.widgets.parts import label, tool

_ICONS = {"info": "info", "done": "done", "warning": "warning", "error": "error"}
_SPOKEN = {"info": "Note", "done": "Done", "warning": "Caution", "error": "Not done"}


class Banner(QFrame):
    """One message with its icon; it can be put away unless it states how things are."""

    def __init__(
        self, text: str, level: str, *, lasting: bool, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setProperty("role", "banner")
        self.setProperty("level", level)
        self.text = text
        self.level = level
        self._sign = QLabel()
        words = label(text)
        words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        words.setAccessibleName(f"{_SPOKEN[level]}: {text}")
        layout = QHBoxLayout(self)
        layout.setContentsMargins(10, 4, 4, 4)
        layout.addWidget(self._sign)
        layout.addWidget(words, 1)
        if not lasting:
            away = tool("close", "Put this message away", self._put_away)
            away.setProperty("role", "quiet")
            layout.addWidget(away)
        self.tint()

    def tint(self) -> None:
        """Draw the icon in the colours of the theme in use."""
        colours = theme.colours_of(self.palette())
        by_level = {
            "info": colours.text,
            "done": colours.good,
            "warning": colours.warning,
            "error": colours.danger,
        }
        self._sign.setPixmap(icons.icon(_ICONS[self.level], by_level[self.level]).pixmap(24, 24))

    def _put_away(self) -> None:
        self.hide()
        self.deleteLater()


class MessageBar(QWidget):
    """The banners above the page, newest last; never more than three at once."""

    _MOST = 3

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(0, 0, 0, 0)
        self._layout.setSpacing(1)
        self._lasting: Banner | None = None

    def banners(self) -> list[Banner]:
        """The banners shown."""
        return [b for b in self.findChildren(Banner) if not b.isHidden()]

    def show_message(self, text: str, level: str) -> None:
        """Show a message until it is put away; the same one is not shown twice."""
        passing = [b for b in self.banners() if b is not self._lasting]
        for banner in passing:
            if banner.text == text:
                return
        for banner in passing[: max(0, len(passing) - self._MOST + 1)]:
            banner.hide()
            banner.deleteLater()
        self._layout.addWidget(Banner(text, level, lasting=False, parent=self))
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, text))

    def state(self, text: str) -> None:
        """State how things are (a journal that is read-only) until told otherwise by ""."""
        if self._lasting is not None:
            self._lasting.hide()
            self._lasting.deleteLater()
            self._lasting = None
        if text:
            self._lasting = Banner(text, "warning", lasting=True, parent=self)
            self._layout.insertWidget(0, self._lasting)

    def clear(self) -> None:
        """Put every passing message away."""
        for banner in self.banners():
            if banner is not self._lasting:
                banner.hide()
                banner.deleteLater()

    def tint(self) -> None:
        """Follow a change of theme."""
        for banner in self.banners():
            banner.tint()
