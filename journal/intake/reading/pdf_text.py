"""PDFs of receipts: words from their text layer, and pages as pictures."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from journal.domain.errors import JournalError
from journal.domain.papers import Box
from journal.domain.pictures import Picture
from journal.files.pdfium import opened_pdf
from journal.intake.reading.layout import Page, Word

#: A receipt has few pages; of a longer paper only so many are read.
MOST_PAGES = 5
#: Letters that a page with a text layer has at least; fewer are a stamp on a scan.
_FEWEST_LETTERS = 20
_MOST_LETTERS = 20_000
#: A gap of this part of a letter's height begins another word.
_WORD_GAP = 0.25
_MOST_PIXELS = 4000


@contextmanager
def opened(path: Path) -> Iterator[Any]:
    """A PDF to be read; nobody else reads any while it is open.

    Raises:
        JournalError: it is locked with a password, broken or gone, in half a sentence.
    """
    import pypdfium2

    try:
        data = path.read_bytes()
    except OSError as error:
        raise JournalError(f"it can't be read ({error.strerror or error})") from error
    is_open = False
    try:
        with opened_pdf(data) as document:
            is_open = True
            yield document
    except pypdfium2.PdfiumError as error:
        said = "it is a broken PDF" if is_open else _reason(str(error))
        raise JournalError(said) from error


def _reason(words: str) -> str:
    if "password" in words.lower():
        return "it is locked with a password; save a copy without one and read that"
    return "it is a broken PDF"


def count_pages(path: Path) -> int:
    """How many pages it has; JournalError as with ``opened``."""
    with opened(path) as document:
        return len(document)


def page_of_pdf(path: Path, number: int) -> Page | None:
    """The words of a page's text layer; None where it has none worth the name."""
    with opened(path) as document:
        page = document[number]
        width, height = page.get_size()
        text = page.get_textpage()
        try:
            words = tuple(_words(text, page, width, height))
        finally:
            text.close()
            page.close()
    if sum(len(word.text) for word in words) < _FEWEST_LETTERS:
        return None
    return Page(words, width / height, number)


def picture_of_page(path: Path, number: int, longest: int) -> Picture:
    """A page as a picture, its longer side ``longest`` pixels."""
    with opened(path) as document:
        page = document[number]
        width, height = page.get_size()
        scale = min(longest, _MOST_PIXELS) / max(width, height, 1.0)
        bitmap = page.render(scale=scale, rev_byteorder=True, prefer_bgrx=False)
        image = bitmap.to_pil().convert("RGB")
        page.close()
        return Picture(image.width, image.height, image.tobytes())


def _words(text: Any, page: Any, width: float, height: float) -> Iterator[Word]:
    """Words by letters that stand close together; the page's own turn is taken into account."""
    place = _Placer(page)
    letters: list[tuple[str, Box]] = []
    count = min(text.count_chars(), _MOST_LETTERS)
    written = text.get_text_range(0, count) if count else ""
    if len(written) != count:
        written = "".join(text.get_text_range(i, 1) or " " for i in range(count))
    for index, letter in enumerate(written):
        if letter.isspace() or not letter.isprintable():
            if letters:
                yield _word(letters)
            letters = []
            continue
        box = place.box(text.get_charbox(index, loose=True))
        if letters and _apart(letters[-1][1], box, width / height):
            yield _word(letters)
            letters = []
        letters.append((letter, box))
    if letters:
        yield _word(letters)


class _Placer:
    """From a PDF's points, counted from below, to parts of the page as it is shown."""

    def __init__(self, page: Any) -> None:
        left, bottom, right, top = page.get_cropbox()
        self._left, self._bottom = left, bottom
        self._wide, self._high = max(right - left, 1.0), max(top - bottom, 1.0)
        self._turn = page.get_rotation()

    def box(self, at: tuple[float, float, float, float]) -> Box:
        left = (at[0] - self._left) / self._wide
        right = (at[2] - self._left) / self._wide
        top = 1 - (at[3] - self._bottom) / self._high
        bottom = 1 - (at[1] - self._bottom) / self._high
        if self._turn == 90:
            return Box(1 - bottom, left, 1 - top, right)
        if self._turn == 180:
            return Box(1 - right, 1 - bottom, 1 - left, 1 - top)
        if self._turn == 270:
            return Box(top, 1 - right, bottom, 1 - left)
        return Box(left, top, right, bottom)


def _apart(before: Box, after: Box, aspect: float) -> bool:
    high = max(before.bottom - before.top, 1e-6)
    gap = (after.left - before.right) * aspect
    return gap > _WORD_GAP * high or gap < -2 * high or abs(after.bottom - before.bottom) > high / 2


def _word(letters: list[tuple[str, Box]]) -> Word:
    box = letters[0][1]
    for _, other in letters[1:]:
        box = box.joined(other)
    return Word("".join(letter for letter, _ in letters), box)
