"""Our own line icons, tinted to the theme."""

from functools import cache

from PySide6.QtCore import QByteArray, QObject, Qt
from PySide6.QtGui import QAction, QIcon, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QAbstractButton, QApplication

from journal.desktop import theme
from journal.files.assets import asset

#: Pixels; Qt draws it smaller where it must, and this is enough for screens of twice the density.
_SIZE = 48
_PROPERTY = "icon_name"


@cache
def icon(name: str, colour: str, checked: str = "", disabled: str = "") -> QIcon:
    """The icon drawn in one colour, and in others where its button is pressed in or disabled."""
    made = QIcon(pixmap(name, colour, _SIZE))
    if checked:
        made.addPixmap(pixmap(name, checked, _SIZE), QIcon.Mode.Normal, QIcon.State.On)
    if disabled:
        made.addPixmap(pixmap(name, disabled, _SIZE), QIcon.Mode.Disabled, QIcon.State.Off)
    return made


def pixmap(name: str, colour: str, size: int) -> QPixmap:
    """The icon in one colour on nothing, ``size`` pixels square."""
    drawing = asset(f"icons/{name}.svg").read_text(encoding="utf-8")
    renderer = QSvgRenderer(QByteArray(drawing.replace("currentColor", colour).encode()))
    made = QPixmap(size, size)
    made.fill(Qt.GlobalColor.transparent)
    painter = QPainter(made)
    renderer.render(painter)
    painter.end()
    return made


def put(target: QAbstractButton | QAction, name: str) -> None:
    """Give a button or an action its icon; it follows the theme (see ``retint``)."""
    target.setProperty(_PROPERTY, name)
    _tint(target)


def retint(root: QObject) -> None:
    """Draw every icon below ``root`` again in the colours of the application's palette."""
    for target in root.findChildren(QObject):
        if target.property(_PROPERTY):
            _tint(target)


def program_icon() -> QIcon:
    """The icon of the program itself, in its own colours."""
    return QIcon(str(asset("icons/app.svg")))


def _tint(target: QObject) -> None:
    colours = theme.colours_of(QApplication.palette())
    name = target.property(_PROPERTY)
    if not isinstance(target, QAbstractButton | QAction):
        return
    role = target.property("role")
    on_accent = isinstance(target, QAbstractButton) and target.isCheckable() and not role
    checked = colours.on_accent if on_accent else ""
    colour = colours.on_accent if role == "primary" else colours.text
    target.setIcon(icon(name, colour, checked, colours.edge))
