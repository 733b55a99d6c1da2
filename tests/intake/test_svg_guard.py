"""What could do harm is refused before anything in it is followed."""

import gzip

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.intake import svg_guard
from journal.intake.svg_drawing import read_svg

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink">'
RECT = '<rect width="50" height="50"/>'


def refused(data: bytes | str) -> str:
    with pytest.raises(JournalError) as caught:
        read_svg(data.encode() if isinstance(data, str) else data, name="wing.svg")
    said = str(caught.value)
    assert said.startswith("wing.svg ")
    assert said.endswith(".")
    assert "\n" not in said
    return said


@pytest.mark.parametrize(
    ("inside", "said"),
    [
        ("<script>alert(1)</script>", "script"),
        ('<script href="x.js"/>', "script"),
        ('<rect onclick="alert(1)"/>', "onclick"),
        ('<g ONLOAD="x()"/>', "script"),
        ('<a xlink:href="javascript:alert(1)"><rect/></a>', "script"),
        ('<a xlink:href=" JavaScript:alert(1)"><rect/></a>', "script"),
        ('<image xlink:href="http://example.org/a.png"/>', "outside of itself"),
        ('<image href="file:///etc/passwd"/>', "outside of itself"),
        ('<image href="a.png"/>', "outside of itself"),
        ('<use href="other.svg#wing"/>', "outside of itself"),
        ('<rect style="fill:url(http://example.org/a)"/>', "outside of itself"),
        ("<rect fill=\"url( 'a.svg#b' )\"/>", "outside of itself"),
        ("<style>@import 'a.css';</style>", "style sheet"),
        ("<style>@\\69mport 'a.css';</style>", "style sheet"),
        ("<style>rect{fill:url(//example.org)}</style>", "outside of itself"),
        ('<g xml:base="http://example.org/"/>', "outside of itself"),
    ],
)
def test_scripts_and_links_are_refused(inside: str, said: str) -> None:
    assert said in refused(f"{HEAD}{RECT}{inside}</svg>")


@pytest.mark.parametrize(
    "head",
    [
        '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/x.dtd">',
        '<!DOCTYPE svg [<!ENTITY a "aaaa">]>',
        '<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>',
        "<!DOCTYPE svg>",
    ],
)
def test_document_types_and_entities_are_refused(head: str) -> None:
    assert "DOCTYPE" in refused(f"{head}{HEAD}{RECT}</svg>")


def test_a_thousand_million_laughs_are_never_told() -> None:
    entities = "".join(f'<!ENTITY a{n} "{f"&a{n - 1};" * 10}">' for n in range(1, 10))
    said = refused(f'<!DOCTYPE svg [<!ENTITY a0 "ha">{entities}]>{HEAD}<text>&a9;</text></svg>')
    assert "DOCTYPE" in said


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "no element found in line 1"),
        (b"hello", "in line 1"),
        (f"{HEAD}<rect></svg>".encode(), "mismatched tag in line 1"),
        (f"{HEAD}<text>&nbsp;</text></svg>".encode(), "undefined entity"),
        (f"{HEAD}{RECT}".encode(), "no element found"),
        (b"<html><body/></html>", "no SVG drawing but “html”"),
        (b'<?xml version="1.0" encoding="x-none"?><svg/>', "unknown encoding"),
        (b"\xff\xfe<\x00", "in line 1"),
        (b"%PDF-1.7 \x00\x01", "in line 1"),
        (b'<?xml-stylesheet href="a.css"?><svg/>', "style sheet"),
        (gzip.compress(b"<svg/>"), "is packed"),
    ],
)
def test_what_is_no_svg_is_refused_with_the_place(data: bytes, said: str) -> None:
    assert said in refused(data)


def test_huge_files_are_refused_unread(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(svg_guard, "MOST_BYTES", 2_000_000)
    assert "too large to be read as a drawing: 3 MB, 2 MB at most" in refused(b" " * 3_000_000)


def test_too_many_and_too_deep_elements_are_refused() -> None:
    many = "<g/>" * (svg_guard.MOST_ELEMENTS + 1)
    assert "more than 50000 elements" in refused(f"{HEAD}{many}</svg>")
    deep = "<g>" * 200 + "</g>" * 200
    assert "nested more than 100 deep" in refused(f"{HEAD}{deep}</svg>")


def test_outlines_of_too_many_points_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(svg_guard, "MOST_OUTLINE", 1000)
    fine = '<path d="M0 0' + "L5 5" * 200 + 'z"/>'
    assert "outlines are too fine" in refused(f"{HEAD}{fine * 2}</svg>")


def test_uses_that_multiply_are_refused_before_they_do() -> None:
    doubling = '<rect id="a0" width="5" height="5"/>' + "".join(
        f'<g id="a{n}">' + f'<use href="#a{n - 1}"/>' * 10 + "</g>" for n in range(1, 12)
    )
    assert "repeat each other" in refused(f"{HEAD}{doubling}</svg>")
    assert "uses itself" in refused(f'{HEAD}<g id="a"><use xlink:href="#a"/></g></svg>')
    chain = "".join(f'<use id="a{n}" href="#a{n + 1}"/>' for n in range(3000))
    assert "too deep" in refused(f"{HEAD}{chain}</svg>")


def test_harmless_links_within_the_file_pass() -> None:
    result = read_svg(
        f'{HEAD}<style>rect{{fill:url(#a)}}</style><rect id="sill" width="50" height="50" '
        'style="fill:url(#a)"/><image href="data:image/png;base64,AA"/></svg>'.encode()
    )
    assert [p.name for p in result.drawing.panels] == ["Sill"]


def _reads_or_says(data: bytes) -> None:
    """A drawing, or a sentence; any other error fails the test."""
    said = "."
    try:
        read_svg(data)
    except JournalError as error:
        said = str(error)
    assert said.endswith(".")


@given(st.binary(max_size=300))
@settings(max_examples=150, deadline=None)
def test_any_bytes_are_a_drawing_or_a_sentence(data: bytes) -> None:
    _reads_or_says(data)


pieces = st.lists(
    st.sampled_from(
        [
            "<g>", "</g>", '<path d="', "M0 0", "L1 1 ", "A5 5 0 1 1 9 9", "C1 2 3", "z", '"/>',
            '<rect width="', "1e9", "-5%", "nan", "1em", '" height="9"/>', "q1", " transform=",
            '"rotate(', "matrix(1 2)", ')"', '<circle r="1e400"/>', '<polygon points="1,2 3"/>',
            '<use href="#q"/>', '<svg viewBox="0 0 0 0">', "</svg>", "<symbol>", "</symbol>",
        ]
    ),
    max_size=14,
)  # fmt: skip


@given(pieces)
@settings(max_examples=300, deadline=None)
def test_any_near_svg_is_a_drawing_or_a_sentence(parts: list[str]) -> None:
    _reads_or_says(f"{HEAD}{''.join(parts)}</svg>".encode())


attributes = st.sampled_from(
    [
        'd="M0 0h50v50', 'd="M0,0 L1e400 5z"', 'd="A0 0 0 0 0 0 0z"', 'd="z"', 'd=""', 'd="M z"',
        'd="M0 0 Q5 5"', 'd="M0 0a-5 0 9 7 1 2 2z"', 'd="M0 0 C z"', 'd="M0 0T5 5S1 1 9 9z"',
        'transform="scale(0)"', 'transform="rotate()"', 'transform="matrix(1 0 0)"',
        'transform="translate(1e308 1e308) scale(1e308)"', 'transform="spin(5)"', 'points="a b"',
        'points="0,0 50,0 50,50"', 'points="0 0 50"', 'width="50" height="50"', 'width="-5"',
        'rx="9e9"', 'r="30"', 'r="5%"', 'cx="1e200"', 'style="display:none"', 'style=";;:"',
        'width="1ex"', 'height="inf"', 'id="a"', 'class="b"', 'fill="url(#a"', 'stroke-width="x"',
    ]
)  # fmt: skip


@given(
    st.sampled_from(["path", "rect", "circle", "ellipse", "polygon", "polyline", "line", "use"]),
    st.lists(attributes, max_size=3, unique_by=lambda text: text.split("=")[0]),
    st.sampled_from(
        ["", 'width="0"', 'width="9mm" height="x"', 'viewBox="0 0 1e9 1"', 'viewBox="a"']
    ),
)
@settings(max_examples=400, deadline=None)
def test_any_odd_figure_is_a_drawing_or_a_sentence(tag: str, odd: list[str], size: str) -> None:
    closed = [text if text.endswith('"') else f'{text}"' for text in odd]
    head = HEAD.replace("<svg", f"<svg {size}")
    _reads_or_says(f"{head}<{tag} {' '.join(closed)}/></svg>".encode())
