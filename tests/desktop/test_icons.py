"""Icons: every one that is asked for is there, drawn, and follows the theme."""

import re
from pathlib import Path

import pytest
from PySide6.QtGui import QAction, QColor, QIcon
from PySide6.QtWidgets import QPushButton, QWidget

from journal.desktop import icons, theme
from journal.files.assets import asset

ROOT = Path(__file__).parents[2] / "journal" / "desktop"
DRAWN = sorted(p.stem for p in asset("icons").glob("*.svg"))


def dark_pixels(pixmap, colour):
    image, wanted = pixmap.toImage(), QColor(colour).rgb()
    return sum(
        image.pixelColor(x, y).rgb() == wanted
        for x in range(image.width())
        for y in range(image.height())
    )


#: Those the style sheet shows are there once for each theme.
OF_A_THEME = ("arrow-", "tick-")


@pytest.mark.parametrize("name", [n for n in DRAWN if n != "app" and not n.startswith(OF_A_THEME)])
def test_an_icon_is_drawn_in_the_colour_asked_for(qapp, name):
    assert dark_pixels(icons.pixmap(name, "#97361D", 48), "#97361D") > 20


def test_every_icon_the_program_names_is_there():
    named = set()
    for path in ROOT.rglob("*.py"):
        text = path.read_text("utf-8")
        named.update(re.findall(r'\bicon="([a-z-]+)"', text))
        named.update(re.findall(r'icons\.put\([^,]+, "([a-z-]+)"\)', text))
        named.update(re.findall(r'\btool\("([a-z-]+)"', text))
    assert len(named) > 20
    assert named <= set(DRAWN)


def test_icons_follow_the_theme(qapp, qtbot):
    holder = QWidget()
    qtbot.addWidget(holder)
    pressed, entry = QPushButton(holder), QAction(holder)
    for colours in (theme.LIGHT, theme.DARK):
        qapp.setPalette(theme.palette(colours))
        icons.put(pressed, "pin")
        icons.put(entry, "undo")
        for target in (pressed, entry):
            shown = target.icon().pixmap(48, 48)
            assert dark_pixels(shown, colours.text) > 20
    qapp.setPalette(theme.palette(theme.LIGHT))
    icons.retint(holder)
    assert dark_pixels(pressed.icon().pixmap(48, 48), theme.LIGHT.text) > 20


def test_a_disabled_icon_is_quieter(qapp):
    made = icons.icon("pin", "#000000", disabled="#888888")
    assert dark_pixels(made.pixmap(48, 48, QIcon.Mode.Disabled), "#888888") > 20


def test_the_program_has_an_icon_of_its_own(qapp):
    assert not icons.program_icon().pixmap(64, 64).isNull()
