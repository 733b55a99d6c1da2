"""From a file on disk to a receipt as read, whatever kind of file it is."""

from dataclasses import replace
from datetime import date
from pathlib import Path

from journal.domain.errors import JournalError
from journal.domain.papers import ReadReceipt, nothing_read
from journal.domain.pictures import Picture
from journal.domain.progress import Context
from journal.intake import decode
from journal.intake.reading import engine, pdf_text, pictures
from journal.intake.reading.fields import Known, receipt_of
from journal.intake.reading.layout import Page

NO_ENGINE = (
    "Pictures can't be read here: the reading of pictures is an extra that isn't installed. "
    'Add it with: pip install "restoration-journal[reading]"'
)
_PDF = b"%PDF-"
#: Where a PDF may begin: some have a few bytes of something else in front.
_BEGINS_WITHIN = 1024


def is_pdf(path: Path) -> bool:
    """Whether a file is a PDF by what it begins with."""
    try:
        with path.open("rb") as file:
            return _PDF in file.read(_BEGINS_WITHIN)
    except OSError:
        return False


def read_file(path: Path, known: Known, today: date, context: Context) -> ReadReceipt:
    """Read the paper in a file; what can't be read is an empty receipt with the reason.

    Raises:
        Cancelled: between two pages, as the person asked.
    """
    try:
        return _read(path, known, today, context)
    except JournalError as error:
        return nothing_read(f"“{path.name}” can't be read: {error}.")


def page_picture(path: Path, page: int, turn: int, longest: int) -> Picture:
    """A page of a paper as a picture, turned clockwise; JournalError in half a sentence."""
    if is_pdf(path):
        return pictures.turned_picture(pdf_text.picture_of_page(path, page, longest), turn)
    return decode.picture(path, longest, turn=turn)


def _read(path: Path, known: Known, today: date, context: Context) -> ReadReceipt:
    if is_pdf(path):
        return _read_pdf(path, known, today, context)
    reader = engine.reader()
    if reader is None:
        decode.picture(path, 64)  # a broken picture is said to be one even so
        return nothing_read(NO_ENGINE)
    return receipt_of([pictures.page_of_file(path, reader)], known, today)


def _read_pdf(path: Path, known: Known, today: date, context: Context) -> ReadReceipt:
    count = pdf_text.count_pages(path)
    if not count:
        return nothing_read(f"“{path.name}” can't be read: it has no page.")
    found: list[Page] = []
    unread = 0
    for number in range(min(count, pdf_text.MOST_PAGES)):
        context.checkpoint()
        page = _page(path, number)
        if page is None:
            unread += 1
        else:
            found.append(page)
    if not found:
        return nothing_read(NO_ENGINE)
    remarks = []
    if count > pdf_text.MOST_PAGES:
        remarks.append(f"Of its {count} pages only the first {pdf_text.MOST_PAGES} were read.")
    if unread:
        remarks.append(f"{unread} of its pages are pictures. {NO_ENGINE}")
    return _with_remarks(receipt_of(found, known, today), remarks)


def _page(path: Path, number: int) -> Page | None:
    """The words of a page: from its text layer, else from its picture; None without an engine."""
    page = pdf_text.page_of_pdf(path, number)
    reader = engine.reader() if page is None else None
    if reader is None:
        return page
    shown = pdf_text.picture_of_page(path, number, pictures.READ_AT)
    return pictures.page_of_picture(shown, reader, number)


def _with_remarks(read: ReadReceipt, remarks: list[str]) -> ReadReceipt:
    return replace(read, remarks=(*remarks, *read.remarks))
