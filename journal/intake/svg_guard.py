"""The hardened first look at an SVG file: refused before anything in it is followed or run.

Nothing is ever loaded from here: no document type, no entity, no link. What passes is well formed
and of a bounded size.
"""

import re
from collections import Counter
from xml.etree import ElementTree
from xml.parsers import expat

from journal.domain.errors import JournalError

#: The largest file, in bytes, and the most elements, also counting every use of one.
MOST_BYTES, MOST_ELEMENTS = 20_000_000, 50_000

#: The most signs that the outlines of all figures together are written with.
MOST_OUTLINE = 3_000_000

#: How deep elements may be nested.
DEEPEST = 100

SVG = "http://www.w3.org/2000/svg"

_URL = re.compile(r"url\(\s*['\"]?\s*([^'\")]*)", re.IGNORECASE)


def read_tree(data: bytes, name: str) -> ElementTree.Element:
    """The elements of an SVG file, once it is known to be harmless.

    Raises:
        JournalError: it is huge, packed, malformed, no SVG, or holds a document type, entities,
            scripts or links to somewhere else.
    """
    if len(data) > MOST_BYTES:
        raise JournalError(
            f"{name} is too large to be read as a drawing: {len(data) / 1e6:.0f} MB, "
            f"{MOST_BYTES / 1e6:.0f} MB at most."
        )
    if data[:2] == b"\x1f\x8b":
        raise JournalError(f"{name} is packed: save it as plain SVG first.")
    _Guard(name).read(data)
    root = ElementTree.fromstring(data)
    _refuse_multiplying(root, name)
    return root


def local(tag: object) -> str:
    """The name of an element of SVG, empty for any other."""
    text = str(tag)
    space, _, word = text.rpartition("}")
    return word if space in ("", "{" + SVG) else ""


class _Guard:
    """Reads through a file once, and refuses at the first thing that has no place in it."""

    def __init__(self, name: str) -> None:
        self._name = name
        self._count = 0
        self._outline = 0
        self._open: list[str] = []
        self._style: list[str] = []

    def read(self, data: bytes) -> None:
        parser = expat.ParserCreate(namespace_separator="}")
        parser.StartDoctypeDeclHandler = self._doctype
        parser.EntityDeclHandler = self._doctype
        parser.ProcessingInstructionHandler = self._instruction
        parser.StartElementHandler = self._start
        parser.EndElementHandler = self._end
        parser.CharacterDataHandler = self._text
        try:
            parser.Parse(data, True)
        except expat.ExpatError as error:
            why = expat.errors.messages.get(error.code, "unreadable")
            raise JournalError(
                f"{self._name} can't be read as SVG: {why} in line {error.lineno}."
            ) from error
        except (LookupError, ValueError) as error:
            raise JournalError(f"{self._name} is written in an unknown encoding.") from error

    def _refuse(self, why: str) -> JournalError:
        return JournalError(f"{self._name} was not read: {why}.")

    def _doctype(self, *_: object) -> None:
        raise self._refuse(
            "it has a document type (DOCTYPE), which can hide things; save it as plain SVG"
        )

    def _instruction(self, target: str, _: str) -> None:
        if target.lower() == "xml-stylesheet":
            raise self._refuse("it links to a style sheet in another file")

    def _start(self, tag: str, attributes: dict[str, str]) -> None:
        word = tag.rpartition("}")[2]
        if not self._open and word != "svg":
            raise self._refuse(f"it is no SVG drawing but “{word[:40]}”")
        self._count += 1
        self._open.append(word)
        if self._count > MOST_ELEMENTS:
            raise self._refuse(f"it has more than {MOST_ELEMENTS} elements")
        if len(self._open) > DEEPEST:
            raise self._refuse(f"its elements are nested more than {DEEPEST} deep")
        if word.lower() in ("script", "handler", "listener"):
            raise self._refuse("it has a script in it")
        for key, value in attributes.items():
            self._attribute(key.rpartition("}")[2].lower(), value)

    def _attribute(self, key: str, value: str) -> None:
        if key in ("d", "points"):
            self._outline += len(value)
            if self._outline > MOST_OUTLINE:
                raise self._refuse("its outlines are too fine: simplify them first")
        if key.startswith("on") and len(key) > 2:
            raise self._refuse(f"it has a script in it ({key[:40]})")
        if key in ("href", "src", "base"):
            self._link(value)
        for target in _URL.findall(value):
            self._link(target)

    def _link(self, target: str) -> None:
        target = target.strip()
        if target.lower().startswith("javascript:"):
            raise self._refuse("it has a script in it")
        if target and not target.startswith("#") and not target.lower().startswith("data:"):
            raise self._refuse(f"it links to something outside of itself ({target[:60]})")

    def _text(self, text: str) -> None:
        if self._open and self._open[-1] == "style":
            self._style.append(text)

    def _end(self, _: str) -> None:
        if self._open.pop() == "style":
            style = "".join(self._style)
            self._style.clear()
            # A backslash could spell either word in a way that a search doesn't see.
            if "@import" in style.lower() or "\\" in style:
                raise self._refuse("its style sheet brings in another file")
            for target in _URL.findall(style):
                self._link(target)


def _refuse_multiplying(root: ElementTree.Element, name: str) -> None:
    """Refuse uses of uses that would come to more elements than a file may have, or never end."""
    by_id = {e.get("id"): e for e in root.iter() if e.get("id")}
    sizes: dict[ElementTree.Element, int] = {}
    under_way: Counter[ElementTree.Element] = Counter()

    def size(element: ElementTree.Element) -> int:
        if element in sizes:
            return sizes[element]
        if under_way[element]:
            raise JournalError(f"{name} was not read: an element in it uses itself.")
        under_way[element] += 1
        total = 1 + sum(size(child) for child in element)
        if local(element.tag) == "use":
            links = (v for k, v in element.attrib.items() if k.rpartition("}")[2] == "href")
            used = [by_id[link[1:]] for link in links if link[1:] in by_id]
            total += sum(size(other) for other in used)
        under_way[element] -= 1
        sizes[element] = total
        return total

    try:
        most = size(root)
    except RecursionError as error:
        raise JournalError(f"{name} was not read: its elements use each other too deep.") from error
    if most > MOST_ELEMENTS:
        raise JournalError(
            f"{name} was not read: its elements repeat each other more than {MOST_ELEMENTS} times."
        )
