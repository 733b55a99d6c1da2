"""Banners over the page: why a journal is read-only, and what stood in the way just now."""

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from journal.desktop import icons, theme
from journal.desktop.widgets.announce import announce
from journal.desktop.widgets.parts import label, tool

_ICONS = {"info": "info", "done": "done", "warning": "warning", "error": "error"}
_SPOKEN = {"info": "Note", "done": "Done", "warning": "Caution", "error": "Not done"}


class Banner(QFrame):
    """One message with its icon; it can be put away unless it states how things are."""

    #: The person wants it put away: the banner itself.
    put_away = Signal(object)

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
            away = tool("close", "Put this message away", lambda: self.put_away.emit(self))
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


class MessageBar(QWidget):
    """The banners above the page, newest last; never more than three passing ones at once."""

    _MOST = 3

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(0, 0, 0, 0)
        self._layout.setSpacing(1)
        self._lasting: Banner | None = None
        self._passing: list[Banner] = []

    def banners(self) -> list[Banner]:
        """The banners shown, from the top."""
        return [*([self._lasting] if self._lasting else []), *self._passing]

    def show_message(self, text: str, level: str) -> None:
        """Show a message until it is put away; the same one is not shown twice."""
        if any(banner.text == text for banner in self._passing):
            return
        while len(self._passing) >= self._MOST:
            self._put_away(self._passing[0])
        banner = Banner(text, level, lasting=False, parent=self)
        banner.put_away.connect(self._on_put_away)
        self._passing.append(banner)
        self._layout.addWidget(banner)
        banner.show()
        announce(self, text)

    def state(self, text: str) -> None:
        """State how things are (a journal that is read-only) until told otherwise by ""."""
        if self._lasting is not None:
            self._lasting.hide()
            self._lasting.deleteLater()
            self._lasting = None
        if text:
            self._lasting = Banner(text, "warning", lasting=True, parent=self)
            self._layout.insertWidget(0, self._lasting)
            self._lasting.show()

    def clear(self) -> None:
        """Put every passing message away."""
        for banner in tuple(self._passing):
            self._put_away(banner)

    def tint(self) -> None:
        """Follow a change of theme."""
        for banner in self.banners():
            banner.tint()

    @Slot(object)
    def _on_put_away(self, banner: Banner) -> None:
        self._put_away(banner)

    def _put_away(self, banner: Banner) -> None:
        self._passing.remove(banner)
        banner.hide()
        banner.deleteLater()
