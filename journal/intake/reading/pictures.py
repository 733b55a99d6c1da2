"""Words out of photos and scans of paper, whichever way up they were taken."""

from pathlib import Path

from journal.domain.pictures import Picture
from journal.intake import decode
from journal.intake.reading.engine import Reader
from journal.intake.reading.layout import Page, Word

#: Pictures are decoded to this longer side, pixels; the engine makes them smaller itself.
READ_AT = 1600
#: Print that stands right reads this surely, in so many words at least, and lies wide.
_FAIRLY_SURE = 0.85
_FEW_WORDS = 6
#: Lightest and darkest of a page with nothing on it differ by no more, of 255.
_PLAIN = 12
_TURNS = (180, 90, 270)


def page_of_file(path: Path, engine: Reader) -> Page:
    """The words of a picture file; JournalError in half a sentence where it can't be decoded."""
    return page_of_picture(decode.picture(path, READ_AT), engine)


def page_of_picture(picture: Picture, engine: Reader, number: int = 0) -> Page:
    """The words of a picture, turned by quarters where it can't be read as it lies."""
    if _is_blank(picture):
        return Page((), picture.width / picture.height, number)
    best = Page(engine.words(picture), picture.width / picture.height, number)
    if _reads_well(best):
        return best
    for turn in _TURNS:
        turned = turned_picture(picture, turn)
        tried = Page(engine.words(turned), turned.width / turned.height, number, turn)
        if _worth(tried) > 1.15 * _worth(best):
            best = tried
        if _reads_well(tried):
            break
    return best


def _is_blank(picture: Picture) -> bool:
    """Whether nothing is printed on it: the empty pages of a PDF needn't be tried four ways up."""
    import numpy as np

    rgb = np.frombuffer(picture.rgb, np.uint8)
    return bool(rgb.size) and int(rgb.max()) - int(rgb.min()) <= _PLAIN


def turned_picture(picture: Picture, degrees: int) -> Picture:
    """A picture turned clockwise by a multiple of 90 degrees."""
    import numpy as np

    if degrees % 360 == 0:
        return picture
    rgb = np.frombuffer(picture.rgb, np.uint8).reshape(picture.height, picture.width, 3)
    turned = np.ascontiguousarray(np.rot90(rgb, -degrees // 90))
    return Picture(turned.shape[1], turned.shape[0], turned.tobytes())


def _reads_well(page: Page) -> bool:
    """Whether there are enough words, read surely, in boxes that lie along lines of print."""
    if len(page.words) < _FEW_WORDS:
        return False
    lying = sum(_lies(word, page) for word in page.words if len(word.text) > 2)
    longer = sum(len(word.text) > 2 for word in page.words)
    mean = sum(word.sure for word in page.words) / len(page.words)
    return mean >= _FAIRLY_SURE and lying >= 0.6 * longer


def _worth(page: Page) -> float:
    """How much was read surely: letters, each by how far above a guess it is."""
    return sum(
        len(word.text) * max(word.sure - 0.6, 0.0) * (1.0 if _lies(word, page) else 0.3)
        for word in page.words
    )


def _lies(word: Word, page: Page) -> bool:
    wide = (word.box.right - word.box.left) * page.aspect
    return wide > word.box.bottom - word.box.top
