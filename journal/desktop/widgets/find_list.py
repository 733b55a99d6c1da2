"""The list of what was found: kind, title, the words in their place, date."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter
from PySide6.QtWidgets import (
    QListWidget,
    QListWidgetItem,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from journal.desktop import icons
from journal.desktop.theme import colours_of
from journal.domain.found import Hit
from journal.domain.when import spoken

HIT_ROLE = Qt.ItemDataRole.UserRole

#: What each kind of find is called, and its icon.
KINDS = {
    "photo": ("Photo", "photo"),
    "area": ("Repair area", "area"),
    "panel": ("Panel", "panel"),
    "entry": ("Entry", "entry"),
    "receipt": ("Receipt", "receipt"),
    "work": ("Work", "hours"),
    "wanted": ("Wanted part", "wanted"),
    "finding": ("Finding", "survey"),
}

_ROW = 50
_PAD = 10
_ICON = 20
_ALIGN = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft


class FindList(QListWidget):
    """Shows finds below the field; the field keeps the keyboard."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QListWidget.ScrollMode.ScrollPerPixel)
        self.setUniformItemSizes(True)
        self.setAccessibleName("Found")
        self.setItemDelegate(_HitDelegate(self))
        self.hide()

    def show_hits(self, hits: tuple[Hit, ...]) -> None:
        """Show these finds, the first one marked; say so where there are none."""
        self.clear()
        for hit in hits:
            item = QListWidgetItem(f"{KINDS[hit.kind][0]}: {hit.title}")
            item.setData(HIT_ROLE, hit)
            self.addItem(item)
        if hits:
            self.setCurrentRow(0)
        else:
            item = QListWidgetItem("Nothing in the journal holds all these words.")
            item.setFlags(Qt.ItemFlag.NoItemFlags)
            self.addItem(item)

    def hit(self) -> Hit | None:
        """The find that is marked."""
        item = self.currentItem()
        found = item.data(HIT_ROLE) if item else None
        return found if isinstance(found, Hit) else None

    def step(self, rows: int) -> None:
        """Mark another find, so many rows on."""
        if self.hit() is not None:
            self.setCurrentRow(max(0, min(self.count() - 1, self.currentRow() + rows)))

    def height_for(self, room: int) -> int:
        """How high the list wants to be, at most ``room``."""
        return min(room, self.count() * _ROW + 2 * self.frameWidth() + 2)


class _HitDelegate(QStyledItemDelegate):
    """Paints one find on two lines."""

    def sizeHint(
        self, _option: QStyleOptionViewItem, _index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        """Every row is as high."""
        return QSize(200, _ROW)

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """Paint the icon, the title with the date, and the words found below."""
        hit = index.data(HIT_ROLE)
        widget = self.parent()
        colours = colours_of(widget.palette() if isinstance(widget, QWidget) else option.palette)
        area = option.rect
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        if chosen:
            painter.fillRect(area, QColor(colours.accent))
        ink = QColor(colours.on_accent if chosen else colours.text)
        quiet = QColor(colours.on_accent if chosen else colours.muted)
        if not isinstance(hit, Hit):
            painter.setPen(quiet)
            painter.drawText(area.adjusted(_PAD, 0, -_PAD, 0), _ALIGN, index.data())
            return
        sign = icons.pixmap(KINDS[hit.kind][1], ink.name(), _ICON)
        painter.drawPixmap(area.left() + _PAD, area.top() + (_ROW - _ICON) // 2, sign)
        left = area.left() + 2 * _PAD + _ICON
        upper = QRect(left, area.top() + 5, area.right() - left - _PAD, 20)
        lower = upper.translated(0, 20)
        date = spoken(hit.when) if hit.when else KINDS[hit.kind][0]
        _title(painter, option.font, upper, hit.title, date, (ink, quiet))
        _snippet(painter, option.font, lower, hit.snippet, (ink, quiet))


def _title(
    painter: QPainter, font: QFont, area: QRect, title: str, date: str, inks: tuple[QColor, QColor]
) -> None:
    metrics = QFontMetrics(font)
    reach = metrics.horizontalAdvance(date)
    painter.setFont(font)
    painter.setPen(inks[1])
    painter.drawText(area, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, date)
    bold = QFont(font)
    bold.setWeight(QFont.Weight.DemiBold)
    painter.setFont(bold)
    painter.setPen(inks[0])
    room = area.width() - reach - 12
    words = QFontMetrics(bold).elidedText(title, Qt.TextElideMode.ElideRight, room)
    painter.drawText(area, _ALIGN, words)


def _snippet(
    painter: QPainter, font: QFont, area: QRect, snippet: str, inks: tuple[QColor, QColor]
) -> None:
    """The words found are bold and underlined, the rest is plain."""
    strong = QFont(font)
    strong.setWeight(QFont.Weight.DemiBold)
    strong.setUnderline(True)
    left = area.left()
    for piece in snippet.replace("\n", " ").split("\u2039"):
        found, mark, rest = piece.partition("\u203a")
        parts = ((found, strong), (rest, font)) if mark else ((piece, font),)
        for words, face in parts:
            painter.setFont(face)
            painter.setPen(inks[0] if face is strong else inks[1])
            painter.drawText(QRect(left, area.top(), area.right() - left, 20), _ALIGN, words)
            left += QFontMetrics(face).horizontalAdvance(words)
            if left >= area.right():
                return
