"""Findings as rows of a list: the mark, a few words, and all the rest for the one picked."""

from dataclasses import dataclass

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QSize, Qt
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QApplication, QStyle, QStyledItemDelegate, QStyleOptionViewItem

from journal.desktop.theme import colours_of
from journal.desktop.widgets.survey_marks import MARK_SIZE, mark_icon
from journal.domain.findings import Finding, Severity, SurveySheet, spoken_money, spoken_time
from journal.domain.ids import FindingId, PanelId
from journal.domain.money import format_whole

#: The role that gives a row: a FindingRow.
ROW_ROLE = Qt.ItemDataRole.UserRole


@dataclass(frozen=True, slots=True)
class FindingRow:
    """One finding, put into words already: writing money takes its time."""

    id: FindingId
    severity: Severity
    number: int
    load_bearing: bool
    words: str
    detail: str


def finding_rows(
    sheet: SurveySheet,
    labels: dict[PanelId, str],
    currency: str,
    load_bearing: frozenset[FindingId],
) -> tuple[FindingRow, ...]:
    """The rows of a survey, in the order of their numbers."""
    rows = []
    for one in sheet.findings:
        panel = labels.get(one.panel_id or PanelId(0), "no panel")
        warns = one.id in load_bearing
        words = f"{one.text}\n{panel}\n{one.severity}, {format_whole(one.money.likely, currency)}"
        if warns:
            words += "\nLoad-bearing: have it inspected"
        detail = _detail(one, sheet, currency)
        rows.append(FindingRow(one.id, one.severity, one.rank, warns, words, detail))
    return tuple(rows)


def _detail(one: Finding, sheet: SurveySheet, currency: str) -> str:
    """All the rest of a finding: its figures, what it shares, its note."""
    cause = sheet.cause_of(one)
    shares = f"Shares “{cause.name}”, strength {cause.strength:g}." if cause else ""
    lines = (spoken_money(one.money, currency), spoken_time(one.minutes), shares, one.note)
    return "\n".join(line for line in lines if line)


class MarkDelegate(QStyledItemDelegate):
    """Draws the mark of a row when it is painted, not before: there may be hundreds."""

    def initStyleOption(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Leave room for the mark."""
        super().initStyleOption(option, index)
        option.features |= QStyleOptionViewItem.ViewItemFeature.HasDecoration
        option.decorationSize = QSize(MARK_SIZE, MARK_SIZE)

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """Paint the row with its mark."""
        own = QStyleOptionViewItem(option)
        self.initStyleOption(own, index)
        row = index.data(ROW_ROLE)
        if isinstance(row, FindingRow):
            colours = colours_of(own.palette)
            own.icon = mark_icon(row.severity, row.number, colours, load_bearing=row.load_bearing)
        widget = own.widget
        style = widget.style() if widget else QApplication.style()
        style.drawControl(QStyle.ControlElement.CE_ItemViewItem, own, painter, widget)
