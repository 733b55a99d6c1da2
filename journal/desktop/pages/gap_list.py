"""The list of gaps under their headings: headings can't be picked, gaps are pressed."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QRect,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QFont, QKeyEvent, QPainter
from PySide6.QtWidgets import (
    QAbstractItemView,
    QListView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from journal.desktop import icons, theme
from journal.desktop.theme import Colours
from journal.domain.gaps import Gap, GapKind

_ROW_ROLE = Qt.ItemDataRole.UserRole
_Index = QModelIndex | QPersistentModelIndex
_ROOT = QModelIndex()
_ICON = 24

#: Which drawn icon stands for what a gap is about.
_ICONS = {
    "photo": "photo",
    "photos": "photo",
    "area": "area",
    "receipt": "receipt",
    "milestone": "milestone",
    "panel": "panel",
    "car": "car",
    "wanted": "wanted",
}

#: What pressing a gap of each kind does.
ACT_WORDS = {
    GapKind.PHOTO_DAMAGED: "Show the photo",
    GapKind.AREA_UNDATED: "Set the stage",
    GapKind.AREA_NO_BEFORE: "Choose photos",
    GapKind.AREA_NO_DURING: "Choose photos",
    GapKind.AREA_NO_AFTER: "Choose photos",
    GapKind.AREA_NOT_FINISHED: "Set the stage",
    GapKind.AREA_NOTHING_SAID: "Say it",
    GapKind.AREA_NO_PANEL: "Choose the panel",
    GapKind.AREA_NOT_WELDED: "Show the area",
    GapKind.AREA_NOT_READ_AFTER: "Show the area",
    GapKind.AREA_NO_HOURS: "Record hours",
    GapKind.WELD_UNSEEN: "Choose photos",
    GapKind.METAL_NO_PAPER: "Show the area",
    GapKind.CLAIM_WORD_ALONE: "Choose photos",
    GapKind.AREA_NO_READING: "Show the area",
    GapKind.STAGE_VAGUE: "Set the date",
    GapKind.RECEIPT_LOST: "Open the receipt",
    GapKind.RECEIPT_NEVER: "Open the receipt",
    GapKind.RECEIPT_NO_SCAN: "Attach a scan",
    GapKind.RECEIPT_TOTAL: "Open the receipt",
    GapKind.RECEIPT_UNSHARED: "Share it",
    GapKind.NO_ACQUIRED: "Set the date",
    GapKind.NO_ON_THE_ROAD: "Set the date",
    GapKind.CAR_IDENTITY: "Fill it in",
    GapKind.PHOTOS_UNDATED: "Show the photos",
    GapKind.PHOTOS_VAGUE: "Show the photos",
    GapKind.PHOTOS_UNPLACED: "Show the photos",
    GapKind.PHOTOS_NO_HOURS: "Take the hours from them",
    GapKind.PANELS_NO_PHOTO: "Show the panel",
    GapKind.NO_STANDARD_VIEWS: "Choose them",
    GapKind.WANTED_NOT_ARRIVED: "Show the part",
}


class GapListModel(QAbstractListModel):
    """Gaps grouped by kind, kinds in the order of their weightiest gap."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._rows: tuple[Gap | str, ...] = ()

    def set_gaps(self, gaps: Sequence[Gap]) -> None:
        """Show these gaps, which come the weightiest first."""
        by_kind: dict[GapKind, list[Gap]] = {}
        for gap in gaps:
            by_kind.setdefault(gap.kind, []).append(gap)
        rows: list[Gap | str] = []
        for kind, found in by_kind.items():
            rows.append(f"{kind.value[0].upper()}{kind.value[1:]}  ({len(found):,})")
            rows += found
        self.beginResetModel()
        self._rows = tuple(rows)
        self.endResetModel()

    def row_at(self, place: int) -> Gap | str | None:
        """The gap or heading at a place."""
        return self._rows[place] if 0 <= place < len(self._rows) else None

    def rowCount(self, parent: _Index = _ROOT) -> int:
        """How many, headings included."""
        return 0 if parent.isValid() else len(self._rows)

    def flags(self, index: _Index) -> Qt.ItemFlag:
        """Headings can't be picked."""
        if isinstance(self.row_at(index.row()), Gap):
            return Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return Qt.ItemFlag.NoItemFlags

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """The words of a row."""
        row = self.row_at(index.row())
        if row is None:
            return None
        if role == _ROW_ROLE:
            return row
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return row if isinstance(row, str) else _said(row, " ")
        if role == Qt.ItemDataRole.ToolTipRole and isinstance(row, Gap):
            return f"{_said(row, chr(10))}\nPress to fill it: {ACT_WORDS[row.kind].lower()}"
        return None


def _said(gap: Gap, between: str) -> str:
    """All that is said of a gap."""
    parts = [f"{gap.title}.", gap.detail]
    if gap.claim:
        parts.append(_strengthens(gap))
    return between.join(parts)


def _strengthens(gap: Gap) -> str:
    return f"Would make stronger: “{gap.claim}”"


class GapList(QListView):
    """Gaps; one click or Enter on one goes where it is filled."""

    #: A gap is to be filled: a Gap.
    pressed_gap = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.gaps_model = GapListModel(self)
        self.setModel(self.gaps_model)
        self.setItemDelegate(_GapDelegate(self))
        self.setAccessibleName("What the record lacks")
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setMouseTracking(True)
        self.clicked.connect(self._press)

    def set_gaps(self, gaps: Sequence[Gap]) -> None:
        """Show these, and stay near where the keyboard was."""
        place, top = self.currentIndex().row(), self.verticalScrollBar().value()
        self.gaps_model.set_gaps(gaps)
        last = self.gaps_model.rowCount() - 1
        for near in (min(max(place, 0), last), min(max(place, 0) + 1, last)):
            if isinstance(self.gaps_model.row_at(near), Gap):
                self.setCurrentIndex(self.gaps_model.index(near))
                break
        self.verticalScrollBar().setValue(top)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Press with Enter."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._press(self.currentIndex())
        else:
            super().keyPressEvent(event)

    def _press(self, index: QModelIndex) -> None:
        row = self.gaps_model.row_at(index.row())
        if isinstance(row, Gap):
            self.pressed_gap.emit(row)


class _GapDelegate(QStyledItemDelegate):
    """Paints a heading, or a gap with its icon, words and act."""

    def sizeHint(self, option: QStyleOptionViewItem, index: _Index) -> QSize:
        """A heading is one large line, a gap two or, where it is about a claim, three."""
        line, row = option.fontMetrics.height(), index.data(_ROW_ROLE)
        if isinstance(row, str):
            return QSize(300, round(line * 1.4) + 20)
        return QSize(300, (3 if isinstance(row, Gap) and row.claim else 2) * line + 20)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: _Index) -> None:
        """Paint a row."""
        row = index.data(_ROW_ROLE)
        colours = theme.colours_of(option.palette)
        painter.save()
        if isinstance(row, str):
            painter.setFont(theme.heading_font(option.font, 2))
            painter.setPen(QColor(colours.text))
            area = option.rect.adjusted(12, 8, -12, -2)
            _write(painter, area, row, Qt.AlignmentFlag.AlignBottom)
        else:
            self._paint_gap(painter, option, row, colours)
        painter.restore()

    def _paint_gap(
        self, painter: QPainter, option: QStyleOptionViewItem, gap: Gap, colours: Colours
    ) -> None:
        selected = bool(option.state & QStyle.StateFlag.State_Selected)
        hovered = bool(option.state & QStyle.StateFlag.State_MouseOver)
        if selected or hovered:
            painter.fillRect(option.rect, QColor(colours.accent if selected else colours.hover))
        text = colours.on_accent if selected else colours.text
        muted = colours.on_accent if selected else colours.muted
        area: QRect = option.rect.adjusted(12, 8, -16, -8)
        sign = icons.icon(_ICONS[gap.target_kind], text).pixmap(_ICON, _ICON)
        painter.drawPixmap(area.left(), area.center().y() - _ICON // 2, sign)
        act = f"{ACT_WORDS[gap.kind]}  ›"
        painter.setFont(_bold(option.font))
        painter.setPen(QColor(text if selected else colours.accent))
        wide = painter.fontMetrics().horizontalAdvance(act) + 4
        how = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        painter.drawText(area, how, act)
        words = area.adjusted(_ICON + 12, 0, -wide - 12, 0)
        painter.setFont(option.font)
        lines = [(gap.title, text), (gap.detail, muted)]
        if gap.claim:
            lines.append((_strengthens(gap), text))
        high = words.height() // len(lines)
        for place, (said, colour) in enumerate(lines):
            painter.setPen(QColor(colour))
            _write(
                painter, QRect(words.left(), words.top() + place * high, words.width(), high), said
            )


def _bold(font: QFont) -> QFont:
    made = QFont(font)
    made.setBold(True)
    return made


def _write(
    painter: QPainter,
    area: QRect,
    words: str,
    how: Qt.AlignmentFlag = Qt.AlignmentFlag.AlignVCenter,
) -> None:
    shown = painter.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, area.width())
    painter.drawText(area, Qt.AlignmentFlag.AlignLeft | how, shown)
