"""A finished PDF read back: whether anything that is withheld can still be found in its bytes."""

import re
import zlib
from collections.abc import Iterator

from journal.domain.hidden_words import Finder
from journal.domain.private_words import Private
from journal.files.pdfium import opened_pdf

#: Where a stream begins and ends.
_BEGIN = re.compile(rb"stream\r?\n")
_END = b"endstream"

#: Streams that are no words: pictures, fonts, colour profiles, tables of where things lie.
_BINARY = re.compile(rb"/Image|/Length1|/CIDFontType0C|/OpenType|/XRef|/Alternate|/CMap")

#: A string of a PDF: in brackets, or as pairs of hexadecimal digits.
_STRING = re.compile(rb"\(((?:[^()\\]|\\.)*)\)|<((?:[0-9A-Fa-f]{2})+)>", re.DOTALL)

_ESCAPE = re.compile(rb"\\([0-7]{1,3}|.|\r?\n)", re.DOTALL)
_ESCAPES = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}


def leaks(pdf: bytes, finder: Finder) -> dict[Private, tuple[int, ...]]:
    """The sorts of withheld things that a PDF still holds, with their pages; 0 is no page.

    Looked at are the words on its pages, and beside them everything else it says: titles,
    alternative texts, bookmarks and metadata, unpacked. What is private by its form alone (a price,
    an address) isn't looked for: there a page number after "cost" would read as one.
    """
    found: dict[Private, list[int]] = {}
    beside = "\n\x00|\n".join(dict.fromkeys(texts_within(pdf)))
    for page, text in enumerate((beside, *_pages(pdf))):
        for kind in finder.found(text, by_form=False):
            found.setdefault(kind, []).append(page)
    return {kind: tuple(pages) for kind, pages in found.items()}


def _pages(pdf: bytes) -> Iterator[str]:
    with opened_pdf(pdf) as document:
        for page in document:
            yield page.get_textpage().get_text_bounded()


def texts_within(pdf: bytes) -> Iterator[str]:
    """Everything a PDF says outside its pages' own words: titles, alternative texts, metadata."""
    at = 0
    while match := _BEGIN.search(pdf, at):
        head = pdf[max(at, pdf.rfind(b" obj", at, match.start())) : match.start()]
        yield from _strings(pdf[at : match.start()])
        end = pdf.find(_END, match.end())
        at = end + len(_END) if end >= 0 else len(pdf)
        if not _BINARY.search(head):
            yield from _of_stream(_unpacked(pdf[match.end() : end], head), head)
    yield from _strings(pdf[at:])


def _of_stream(data: bytes, head: bytes) -> Iterator[str]:
    if b"/Metadata" in head or b"<?xpacket" in data[:200]:
        yield data.decode("utf-8", "replace")
    else:
        yield from _strings(data, only_unicode=b"/ObjStm" not in head)


def _unpacked(data: bytes, head: bytes) -> bytes:
    if b"FlateDecode" not in head:
        return data
    try:
        return zlib.decompressobj().decompress(data)
    except zlib.error:
        return data


def _strings(data: bytes, *, only_unicode: bool = False) -> Iterator[str]:
    """The strings of PDF's own kind; in what is drawn the others are numbers of glyphs."""
    for match in _STRING.finditer(data):
        raw = bytes.fromhex(match[2].decode()) if match[2] else _unescaped(match[1] or b"")
        if raw.startswith(b"\xfe\xff"):
            yield raw[2:].decode("utf-16-be", "replace")
        elif not only_unicode and len(raw) > 1:
            yield raw.decode("latin-1")


def _unescaped(text: bytes) -> bytes:
    if b"\\" not in text:
        return text
    return _ESCAPE.sub(lambda m: _ESCAPES.get(m[1], b"") or _octal(m[1]), text)


def _octal(code: bytes) -> bytes:
    return bytes([int(code, 8) & 255]) if code.isdigit() else code
