"""The one style sheet of the program, made from a theme's colours.

Widgets ask for a look by a dynamic property: ``role`` is "primary" (the main act of a page),
"quiet" (a button without a frame), "heading", "subheading", "muted", "card" or "banner"; ``level``
of a banner is "info", "done", "warning" or "error".
"""

from string import Template

from PySide6.QtWidgets import QApplication

from journal.desktop.theme import DARK, TARGET, Colours, chosen, palette
from journal.files.assets import asset

_SHEET = Template("""
* { outline: none; }
QWidget { color: $text; }
QMainWindow, QDialog { background: $page; }
QToolTip { background: $surface; color: $text; border: 1px solid $edge; padding: 4px; }

QPushButton, QToolButton, QComboBox {
  min-height: ${inner}px; padding: 0 12px; border: 1px solid $edge; border-radius: 4px;
  background: $surface; color: $text;
}
QToolButton { min-width: ${inner}px; padding: 0 6px; }
QPushButton:hover, QToolButton:hover, QComboBox:hover { background: $hover; }
QPushButton:pressed, QToolButton:pressed { background: $rule; }
QPushButton:checked, QToolButton:checked {
  background: $accent; color: $on_accent; border-color: $accent;
}
QPushButton:focus, QToolButton:focus, QComboBox:focus { border: 2px solid $focus; }
QPushButton:disabled, QToolButton:disabled, QComboBox:disabled {
  color: $edge; border-color: $rule; background: $page;
}
QPushButton[role="primary"] {
  background: $accent; color: $on_accent; border-color: $accent; font-weight: 600;
}
QPushButton[role="primary"]:hover { border: 2px solid $text; }
QPushButton[role="primary"]:focus { border: 2px solid $focus; }
QPushButton[role="primary"]:disabled {
  background: $page; color: $edge; border-color: $rule;
}
QPushButton[role="quiet"], QToolButton[role="quiet"] {
  border-color: transparent; background: transparent;
}
QPushButton[role="quiet"]:hover, QToolButton[role="quiet"]:hover { background: $hover; }
QPushButton[role="quiet"]:checked, QToolButton[role="quiet"]:checked {
  background: $surface; color: $text; border-color: $edge;
}
QPushButton[role="quiet"]:focus, QToolButton[role="quiet"]:focus { border: 2px solid $focus; }
QPushButton[role="quiet"]:disabled, QToolButton[role="quiet"]:disabled {
  color: $edge; background: transparent;
}
QPushButton, QToolButton { icon-size: 20px; }
QComboBox::drop-down { width: 28px; border: none; }
QComboBox::down-arrow { image: url("$down"); width: 14px; height: 14px; }
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button {
  subcontrol-origin: border; width: 26px; border: none; background: transparent;
}
QAbstractSpinBox::up-button { subcontrol-position: top right; }
QAbstractSpinBox::down-button { subcontrol-position: bottom right; }
QAbstractSpinBox::up-button:hover, QAbstractSpinBox::down-button:hover { background: $hover; }
QAbstractSpinBox::up-arrow { image: url("$up"); width: 12px; height: 12px; }
QAbstractSpinBox::down-arrow { image: url("$down"); width: 12px; height: 12px; }
QCheckBox, QRadioButton { min-height: ${field}px; spacing: 8px; }
QCheckBox::indicator, QRadioButton::indicator, QListView::indicator, QTreeView::indicator {
  width: 16px; height: 16px; border: 1px solid $edge; border-radius: 3px; background: $surface;
}
QCheckBox::indicator:checked, QListView::indicator:checked, QTreeView::indicator:checked {
  image: url("$tick"); border-color: $text;
}
QRadioButton::indicator { border-radius: 9px; }
QRadioButton::indicator:checked { width: 8px; height: 8px; border: 5px solid $text; }
QCheckBox::indicator:hover, QRadioButton::indicator:hover { background: $hover; }
QCheckBox::indicator:disabled, QRadioButton::indicator:disabled {
  border-color: $rule; background: $page;
}
QCheckBox::indicator:focus { width: 14px; height: 14px; border: 2px solid $focus; }
QRadioButton::indicator:focus { width: 14px; height: 14px; border: 2px solid $focus; }
QRadioButton::indicator:checked:focus { width: 8px; height: 8px; border: 5px solid $focus; }
QComboBox QAbstractItemView { background: $surface; border: 1px solid $edge; }
QToolButton::menu-indicator { image: none; }

QLineEdit, QPlainTextEdit, QTextEdit, QSpinBox, QDoubleSpinBox, QDateEdit, QTimeEdit {
  background: $surface; color: $text; border: 1px solid $edge; border-radius: 4px;
  padding: 2px 8px; selection-background-color: $accent; selection-color: $on_accent;
}
QLineEdit, QSpinBox, QDoubleSpinBox, QDateEdit, QTimeEdit { min-height: ${field}px; }
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus, QSpinBox:focus, QDoubleSpinBox:focus,
QDateEdit:focus, QTimeEdit:focus { border: 2px solid $focus; }
QLineEdit:read-only { background: $page; }
QLineEdit:disabled { background: $page; border-color: $rule; color: $edge; }
QAbstractSpinBox QLineEdit, QAbstractSpinBox QLineEdit:focus {
  border: none; padding: 0 0 0 8px; min-height: 0; background: transparent;
}
QLineEdit[wrong="true"], QLineEdit[wrong="true"]:focus { border: 2px solid $danger; }
QLineEdit, QPlainTextEdit, QTextEdit { placeholder-text-color: $muted; }
QTextBrowser { background: $surface; border: 1px solid $rule; }

QListView, QTreeView, QTableView {
  background: $surface; alternate-background-color: $page; border: 1px solid $rule;
  border-radius: 4px; selection-background-color: $accent; selection-color: $on_accent;
  gridline-color: $rule;
}
QListView:focus, QTreeView:focus, QTableView:focus { border: 2px solid $focus; }
QListView::item { padding: 8px 4px; }
QTreeView::item { min-height: ${row}px; padding: 0 4px; }
QTableView::item { padding: 0 8px; }
QListView::item:hover, QTreeView::item:hover { background: $hover; color: $text; }
QListView::item:selected, QTreeView::item:selected, QTableView::item:selected {
  background: $accent; color: $on_accent;
}
QHeaderView::section {
  background: $page; color: $muted; border: none; border-bottom: 1px solid $edge;
  padding: 6px 8px; font-weight: 600;
}
QTableCornerButton::section { background: $page; border: none; }

QTabBar::tab {
  min-height: ${inner}px; padding: 0 14px; color: $text; background: transparent;
  border: none; border-bottom: 3px solid transparent;
}
QTabBar::tab:hover { background: $hover; }
QTabBar::tab:selected { border-bottom: 3px solid $accent; font-weight: 600; }
QTabBar:focus { border: 1px solid $focus; }
QTabWidget::pane { border: none; }

QMenuBar { background: $page; color: $text; }
QMenuBar::item { padding: 8px 12px; background: transparent; }
QMenuBar::item:selected { background: $hover; color: $text; }
QMenu { background: $surface; color: $text; border: 1px solid $edge; padding: 4px 0; }
QMenu::item { padding: 8px 28px 8px 12px; }
QMenu::icon { padding-left: 10px; }
QMenu::icon:checked { background: $hover; border: 1px solid $edge; border-radius: 4px; }
QMenu::indicator { left: 8px; width: 16px; height: 16px; }
QMenu::item:selected { background: $accent; color: $on_accent; }
QMenu::item:disabled { color: $edge; background: transparent; }
QMenu::separator { height: 1px; background: $rule; margin: 4px 0; }

QScrollBar:vertical { width: 14px; background: transparent; margin: 0; }
QScrollBar:horizontal { height: 14px; background: transparent; margin: 0; }
QScrollBar::handle { background: $edge; border-radius: 4px; margin: 3px; }
QScrollBar::handle:hover { background: $muted; }
QScrollBar::handle:vertical { min-height: 36px; }
QScrollBar::handle:horizontal { min-width: 36px; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }

QProgressBar {
  min-height: 12px; max-height: 12px; border: 1px solid $edge; border-radius: 6px;
  background: $surface; text-align: center;
}
QProgressBar::chunk { background: $accent; border-radius: 5px; }
QSplitter::handle { background: $rule; }
QSplitter::handle:hover { background: $edge; }
QScrollArea { background: transparent; border: none; }
QScrollArea > QWidget > QWidget#scrolled { background: transparent; }
QGroupBox {
  border: 1px solid $rule; border-radius: 4px; margin-top: 10px; padding-top: 10px;
  font-weight: 600;
}
QGroupBox::title { subcontrol-origin: margin; left: 8px; padding: 0 4px; }

QLabel[role="heading"] { font-size: ${h1}pt; font-weight: 600; }
QLabel[role="subheading"] { font-size: ${h2}pt; font-weight: 600; }
QLabel[role="muted"] { color: $muted; }
QLabel[role="error"] { color: $danger; font-weight: 600; }
QFrame[role="card"] { background: $surface; border: 1px solid $rule; border-radius: 6px; }
QFrame[role="banner"] { background: $surface; border: none; border-left: 6px solid $edge; }
QFrame[role="banner"][level="done"] { border-left-color: $good; }
QFrame[role="banner"][level="warning"] { border-left-color: $warning; }
QFrame[role="banner"][level="error"] { border-left-color: $danger; }
QToolButton[role="view"] {
  min-width: 40px; min-height: 52px; padding: 2px; border: 1px solid transparent;
  border-bottom: 3px solid transparent; border-radius: 0; background: transparent; color: $text;
}
QToolButton[role="view"]:hover { background: $hover; }
QToolButton[role="view"]:checked {
  background: $surface; color: $text; border-bottom: 3px solid $accent; font-weight: 600;
}
QToolButton[role="view"]:focus { border: 2px solid $focus; }
QFrame[role="rail"] { background: $rail; border: none; }
QFrame[role="strip"] { background: $rail; border: none; border-top: 1px solid $rule; }
QFrame[role="rail"] QToolButton {
  min-width: 84px; min-height: 60px; padding: 4px 2px; border: none; border-radius: 0;
  border-left: 4px solid transparent; background: transparent; color: $text;
}
QFrame[role="rail"] QToolButton:hover { background: $hover; }
QFrame[role="rail"] QToolButton:checked {
  background: $surface; color: $text; border-left: 4px solid $accent; font-weight: 600;
}
QFrame[role="rail"] QToolButton[running="true"] {
  background: $surface; color: $text; border-left: 4px solid $good; font-weight: 600;
}
QFrame[role="rail"] QToolButton:focus { border: 2px solid $focus; }
""")


def stylesheet(colours: Colours, points: float = 10.0) -> str:
    """The style sheet in a theme's colours; ``points`` is the size of the system's font."""
    name = "dark" if colours is DARK else "light"
    return _SHEET.substitute(
        text=colours.text,
        muted=colours.muted,
        page=colours.page,
        surface=colours.surface,
        rail=colours.rail,
        edge=colours.edge,
        rule=colours.rule,
        accent=colours.accent,
        on_accent=colours.on_accent,
        hover=colours.hover,
        focus=colours.focus,
        warning=colours.warning,
        danger=colours.danger,
        good=colours.good,
        down=asset(f"icons/arrow-down-{name}.svg").as_posix(),
        up=asset(f"icons/arrow-up-{name}.svg").as_posix(),
        tick=asset(f"icons/tick-{name}.svg").as_posix(),
        inner=TARGET - 2,
        field=TARGET - 6,
        row=TARGET - 4,
        h1=round(points * 1.5, 1),
        h2=round(points * 1.15, 1),
    )


def dress(app: QApplication, choice: str) -> Colours:
    """Dress the whole application in a theme ("system", "light", "dark"); the colours used."""
    colours = chosen(choice)
    if app.style().objectName().lower() != "fusion":
        app.setStyle("Fusion")
    app.setPalette(palette(colours))
    app.setStyleSheet(stylesheet(colours, app.font().pointSizeF()))
    return colours
