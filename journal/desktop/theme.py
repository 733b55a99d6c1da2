"""How the window looks: colours by name, stage marks, palette and style sheet, light and dark.

Workshop plainness: warm greys like bare board and dust, and one strong accent, the red oxide of
primer. Stages are told apart by pattern and sign as well as by colour; their colours are from the
Okabe-Ito palette (as listed by the R package khroma), darkened or lightened where the ground
would swallow them.
"""

from dataclasses import dataclass
from typing import Literal

from PySide6.QtCore import Qt
from PySide6.QtGui import QBrush, QColor, QFont, QGuiApplication, QPalette

#: Smallest height of anything to press, in device-independent pixels.
TARGET = 36

Choice = Literal["system", "light", "dark"]


@dataclass(frozen=True, slots=True)
class Colours:
    """The colours of one theme, each named after what it is for.

    Attributes:
        page: the ground of the window.
        surface: the ground of lists, fields and cards.
        sheet: the ground of the drawing.
        rail: the ground of the page rail and the strips.
        text: words.
        muted: words of less weight; still readable.
        edge: outlines of controls and cards that carry meaning.
        rule: thin lines that only divide.
        accent: what is chosen, and the main act.
        on_accent: words and signs on the accent.
        hover: the ground under the pointer.
        focus: the ring round what has the keyboard.
        panel: the fill of a panel nothing is recorded of.
        panel_edge: outlines of panels.
        pin: the mark of a photo's place.
        warning: the mark and words of a caution.
        danger: the mark and words of a failure.
        good: the mark and words of success.
        stages: mark colours from the least to the most advanced stage.
    """

    page: str
    surface: str
    sheet: str
    rail: str
    text: str
    muted: str
    edge: str
    rule: str
    accent: str
    on_accent: str
    hover: str
    focus: str
    panel: str
    panel_edge: str
    pin: str
    warning: str
    danger: str
    good: str
    stages: tuple[str, ...]


LIGHT = Colours(
    page="#EFECE6",
    surface="#FBFAF7",
    sheet="#F7F5F0",
    rail="#E3DFD7",
    text="#24211D",
    muted="#595349",
    edge="#857D72",
    rule="#CFC9BE",
    accent="#97361D",
    on_accent="#FFFFFF",
    hover="#E6DDD3",
    focus="#0072B2",
    panel="#E9E5DD",
    panel_edge="#6B645A",
    pin="#0072B2",
    warning="#7A4B00",
    danger="#A3132B",
    good="#00604A",
    stages=("#C24E00", "#A8527F", "#0072B2", "#7A5C00", "#007A5A", "#3F7396", "#35312B"),
)

DARK = Colours(
    page="#211F1C",
    surface="#2A2825",
    sheet="#262421",
    rail="#191816",
    text="#F0ECE5",
    muted="#B9B1A5",
    edge="#8C8478",
    rule="#45413B",
    accent="#EE8A66",
    on_accent="#1E120C",
    hover="#3A3631",
    focus="#56B4E9",
    panel="#37342F",
    panel_edge="#A39A8D",
    pin="#56B4E9",
    warning="#F0B44C",
    danger="#FF8F8F",
    good="#5FD3AE",
    stages=("#F08A3C", "#DE9BC0", "#6FB7EE", "#E6CF52", "#3FC79B", "#9CC8DC", "#EFEBE4"),
)

#: (words, ground): every pairing of words and ground the window uses; 4.5:1 at the least.
TEXT_PAIRS = (
    ("text", "page"),
    ("text", "surface"),
    ("text", "sheet"),
    ("text", "rail"),
    ("text", "hover"),
    ("text", "panel"),
    ("muted", "page"),
    ("muted", "surface"),
    ("muted", "sheet"),
    ("muted", "rail"),
    ("muted", "hover"),
    ("on_accent", "accent"),
    ("accent", "page"),
    ("accent", "surface"),
    ("warning", "page"),
    ("warning", "surface"),
    ("danger", "page"),
    ("danger", "surface"),
    ("good", "page"),
    ("good", "surface"),
)

#: (mark, ground): every mark that carries meaning and the ground it lies on; 3:1 at the least.
MARK_PAIRS = (
    ("edge", "page"),
    ("edge", "surface"),
    ("focus", "page"),
    ("focus", "surface"),
    ("focus", "rail"),
    ("focus", "sheet"),
    ("accent", "rail"),
    ("accent", "sheet"),
    ("accent", "panel"),
    ("accent", "hover"),
    ("panel_edge", "panel"),
    ("panel_edge", "sheet"),
    ("pin", "panel"),
    ("pin", "sheet"),
    ("pin", "surface"),
)


@dataclass(frozen=True, slots=True)
class StageMark:
    """How a stage shows itself: colour, pattern and a sign of one character."""

    colour: str
    pattern: Qt.BrushStyle
    sign: str

    def brush(self) -> QBrush:
        """The pattern in the stage's colour, to lay over a panel's plain fill."""
        return QBrush(QColor(self.colour), self.pattern)


#: The heaviest first: what is still to be done catches the eye, what is finished is quiet.
_PATTERNS = (
    Qt.BrushStyle.DiagCrossPattern,
    Qt.BrushStyle.CrossPattern,
    Qt.BrushStyle.HorPattern,
    Qt.BrushStyle.BDiagPattern,
    Qt.BrushStyle.FDiagPattern,
    Qt.BrushStyle.VerPattern,
    Qt.BrushStyle.Dense7Pattern,
)


def stage_mark(colours: Colours, stages: tuple[str, ...], stage: str) -> StageMark | None:
    """The mark of a stage in a journal's own list; None for "" and for one that isn't listed.

    The first stage has the first colour and pattern, the last one the last. A list longer than
    the patterns starts over with them, its signs (the stage's number) still differ.
    """
    if stage not in stages:
        return None
    place = stages.index(stage)
    if place == len(stages) - 1 and len(stages) <= len(_PATTERNS):
        look = len(_PATTERNS) - 1
    else:
        look = place % len(_PATTERNS)
    return StageMark(colours.stages[look], _PATTERNS[look], str(place + 1))


#: From little to much: the denser the more.
_DENSITIES = (
    Qt.BrushStyle.Dense7Pattern,
    Qt.BrushStyle.Dense6Pattern,
    Qt.BrushStyle.Dense5Pattern,
    Qt.BrushStyle.Dense4Pattern,
    Qt.BrushStyle.Dense3Pattern,
)


def level_mark(colours: Colours, level: int) -> StageMark | None:
    """The mark of a level of a tint, 1 to 5; None for 0, which is nothing."""
    if level <= 0:
        return None
    return StageMark(colours.pin, _DENSITIES[level - 1], str(level))


def luminance(colour: str) -> float:
    """Relative luminance by WCAG 2.2, from "#RRGGBB"."""

    def linear(channel: int) -> float:
        c = channel / 255
        return c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4

    red, green, blue = (linear(int(colour[i : i + 2], 16)) for i in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio by WCAG 2.2, 1 to 21."""
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def colours_of(palette: QPalette) -> Colours:
    """The theme that a widget's palette belongs to: ``colours_of(self.palette())``."""
    return DARK if palette.color(QPalette.ColorRole.Window).lightness() < 128 else LIGHT


def chosen(choice: str) -> Colours:
    """The colours for a choice of theme; "system" follows the desktop."""
    if choice == "system":
        scheme = QGuiApplication.styleHints().colorScheme()
        return DARK if scheme == Qt.ColorScheme.Dark else LIGHT
    return DARK if choice == "dark" else LIGHT


def palette(colours: Colours) -> QPalette:
    """The colours as Qt's stock widgets ask for them."""
    role = QPalette.ColorRole
    made = QPalette()
    for where, name in (
        (role.Window, colours.page),
        (role.WindowText, colours.text),
        (role.Base, colours.surface),
        (role.AlternateBase, colours.page),
        (role.Text, colours.text),
        (role.PlaceholderText, colours.muted),
        (role.Button, colours.surface),
        (role.ButtonText, colours.text),
        (role.BrightText, colours.danger),
        (role.ToolTipBase, colours.surface),
        (role.ToolTipText, colours.text),
        (role.Highlight, colours.accent),
        (role.HighlightedText, colours.on_accent),
        (role.Link, colours.accent),
        (role.LinkVisited, colours.accent),
        (role.Accent, colours.accent),
        (role.Light, colours.surface),
        (role.Mid, colours.rule),
        (role.Dark, colours.edge),
    ):
        made.setColor(where, QColor(name))
    for where in (role.WindowText, role.Text, role.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, where, QColor(colours.edge))
    return made


def heading_font(font: QFont, level: int) -> QFont:
    """The system's font for a heading: level 1 a page's title, 2 a section's."""
    made = QFont(font)
    made.setPointSizeF(font.pointSizeF() * (1.5 if level == 1 else 1.15))
    made.setWeight(QFont.Weight.DemiBold)
    return made
