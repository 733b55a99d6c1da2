"""A pair as one picture to be given away: side by side or divided, with what it shows in words."""

import textwrap
from dataclasses import dataclass
from typing import Any

from journal.domain.pictures import Picture
from journal.files.assets import asset

_GROUND, _INK, _QUIET, _RULE = (255, 255, 255), (28, 28, 28), (92, 92, 92), (255, 255, 255)
#: Letters are this share of the sheet's width high, at least so many pixels.
_LETTERS, _SMALLEST = 0.018, 12
_MOST_LINES = 6


@dataclass(frozen=True, slots=True)
class SheetWords:
    """What is written on a sheet: the place, a line below each half, and the caption."""

    title: str
    before: str
    after: str
    caption: str


def side_by_side(before: Picture, after: Picture, words: SheetWords) -> Any:
    """Both halves beside each other, as an image of Pillow's."""
    gap = max(4, before.height // 60)
    wide, high = before.width + gap + after.width, max(before.height, after.height)
    sheet = _Sheet(wide, high, words)
    sheet.put(before, 0)
    sheet.put(after, before.width + gap)
    sheet.write(before.width + gap)
    return sheet.image


def divided(before: Picture, after: Picture, words: SheetWords, at: float = 0.5) -> Any:
    """The before picture up to a share of the width, the after from there, a rule between."""
    sheet = _Sheet(before.width, before.height, words)
    cut = round(min(max(at, 0.0), 1.0) * before.width)
    sheet.put(after, 0)
    if cut:
        sheet.put(before, 0, up_to=cut)
    rule = max(1, before.width // 400)
    left = sheet.margin + cut
    sheet.draw.rectangle(
        (left - rule, sheet.top, left + rule, sheet.top + before.height - 1), _RULE
    )
    sheet.write(before.width // 2)
    return sheet.image


class _Sheet:
    """White paper with room for pictures and words."""

    def __init__(self, wide: int, high: int, words: SheetWords) -> None:
        from PIL import Image, ImageDraw

        self.size = max(_SMALLEST, round(wide * _LETTERS))
        self.margin = self.size
        self._words = words
        signs = max(20, int(wide / (self.size * 0.55)))
        self._caption = textwrap.wrap(words.caption, signs)[:_MOST_LINES]
        line = round(self.size * 1.45)
        self._line, self._wide = line, wide
        self.top = self.margin + (line if words.title else 0)
        self._below = self.top + high + line // 4
        lines = (1 if words.before or words.after else 0) + len(self._caption)
        whole = self._below + lines * line + self.margin
        self.image = Image.new("RGB", (wide + 2 * self.margin, whole), _GROUND)
        self.draw = ImageDraw.Draw(self.image)

    def put(self, picture: Picture, left: int, up_to: int | None = None) -> None:
        """Put a picture on the paper, or what of it lies left of a place."""
        from PIL import Image

        image = Image.frombytes("RGB", (picture.width, picture.height), picture.rgb)
        if up_to is not None:
            image = image.crop((0, 0, up_to, picture.height))
        self.image.paste(image, (self.margin + left, self.top))

    def write(self, second: int) -> None:
        """Write the words, those of the second half from a place on."""
        words, line = self._words, self._line
        if words.title:
            self._text(self.margin, self.margin // 2, words.title, self._wide, _INK)
        low = self._below
        if words.before or words.after:
            self._text(self.margin, low, words.before, second - self.size, _QUIET)
            room = self._wide - second
            self._text(self.margin + second, low, words.after, room, _QUIET)
            low += line
        for row in self._caption:
            self._text(self.margin, low, row, self._wide, _INK)
            low += line

    def _text(self, x: int, y: int, words: str, room: int, colour: tuple[int, int, int]) -> None:
        from PIL import ImageFont

        font = ImageFont.truetype(asset("fonts/Cabin-Regular.otf"), self.size)
        while words and self.draw.textlength(words, font) > room:
            words = words[:-2].rstrip() + "\N{HORIZONTAL ELLIPSIS}" if len(words) > 2 else ""
        self.draw.text((x, y), words, fill=colour, font=font)
