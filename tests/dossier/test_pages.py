"""How things are laid out: rows of photos, the drawing, and texts made fit to print."""

import unicodedata
from itertools import pairwise
from typing import Any
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.drawing import Drawing
from journal.domain.ids import PanelId
from journal.domain.looks import STAGE_LOOKS
from journal.domain.photos import Role
from journal.dossier import diagram, glyphs
from journal.dossier.document import Labelled, Lack, PanelMark, Shown
from journal.dossier.pages import _lack, grouped
from journal.dossier.rows import GUTTER, MEASURE, in_rows, pixels, placed, shape_of
from journal.dossier.words import count, excerpt, hours, listed, sentence, shortened
from tests.dossier import records
from tests.dossier.records import photo

STAGES = ("found", "welded", "finished")


def shown(number: int, role: Role = Role.DURING, **changes: Any) -> Shown:
    return Shown(number, photo(number, **changes), role, "", "", "")


# Rows


def test_one_of_each_role_stand_side_by_side() -> None:
    rows = in_rows([shown(1, Role.BEFORE), shown(2), shown(3, Role.AFTER)])
    assert [[s.number for s in row] for row in rows] == [[1, 2, 3]]


def test_four_photos_are_two_pairs() -> None:
    rows = in_rows([shown(1, Role.BEFORE), shown(2), shown(3), shown(4, Role.AFTER)])
    assert [[s.number for s in row] for row in rows] == [[1, 4], [2, 3]]


@given(st.lists(st.sampled_from(Role), max_size=30))
def test_every_photo_stands_in_one_row_of_three_at_most(roles: list[Role]) -> None:
    cells = [shown(n, role) for n, role in enumerate(roles)]
    rows = in_rows(cells)
    assert sorted(s.number for row in rows for s in row) == list(range(len(roles)))
    assert all(1 <= len(row) <= 3 for row in rows)


@given(st.lists(st.floats(0.01, 60), min_size=1, max_size=3))
def test_a_row_never_leaves_the_page(ratios: list[float]) -> None:
    cells = [shown(n) for n in range(len(ratios))]
    row = placed(cells, dict(enumerate(ratios)))
    assert sum(c.width for c in row) + GUTTER * (len(row) - 1) <= MEASURE + 1e-6
    assert len({c.height for c in row}) == 1
    assert all(c.width >= 28 and 0 < c.height < 70 for c in row)


def test_a_turned_photo_has_its_sides_exchanged() -> None:
    assert shape_of(photo(1, width=1600, height=1200)) == pytest.approx(4 / 3)
    assert shape_of(photo(1, width=1600, height=1200, turn=90)) == pytest.approx(3 / 4)
    assert shape_of(photo(1, width=0, height=0)) == pytest.approx(4 / 3)


def test_print_size_in_pixels() -> None:
    assert pixels(25.4, 12.7, 200) == 200
    assert pixels(0.001, 0.001, 200) == 1


# The drawing


def test_every_stage_has_a_look_of_its_own_from_first_to_last() -> None:
    stages = ("a", "b", "c", "d", "e", "f", "g")
    looks = [diagram.look_of(stage, stages) for stage in stages]
    assert looks == list(range(7))


def test_the_last_stage_of_any_list_looks_finished() -> None:
    assert diagram.look_of("finished", STAGES) == 6
    assert diagram.look_of("", STAGES) == 0
    assert diagram.look_of("unheard of", STAGES) == 0


def test_no_two_looks_share_a_pattern_so_that_colour_is_never_alone() -> None:
    patterns = [look.pattern for look in STAGE_LOOKS]
    assert len(set(patterns)) == 7


def test_a_view_is_well_formed_svg_with_a_path_for_every_shape() -> None:
    marks = (PanelMark(PanelId(1), "welded", (1, 3)),)
    (picture,) = diagram.pictures(records.drawing(), marks, STAGES)
    root = ElementTree.fromstring(picture.svg)
    paths = root.findall("{http://www.w3.org/2000/svg}path")
    assert len(paths) == 3  # the marked panel has a tint and a pattern over it
    assert [label.text for label in picture.labels] == ["1, 3"]
    assert picture.alt == "Drawing, Left side. Sill, left: welded."


def test_a_panel_of_many_areas_has_a_label_that_fits() -> None:
    marks = (PanelMark(PanelId(1), "welded", tuple(range(1, 8))),)
    (picture,) = diagram.pictures(records.drawing(), marks, STAGES)
    assert picture.labels[0].text == "1, 2, 3, 4 +3"


def test_a_label_stands_inside_its_panel() -> None:
    marks = (PanelMark(PanelId(1), "found", (1,)), PanelMark(PanelId(2), "found", (2,)))
    (picture,) = diagram.pictures(records.drawing(), marks, STAGES)
    sill, roof = picture.labels
    assert 900 < sill.x * 4200 < 3000
    assert 1000 < sill.y * 1400 < 1150
    assert 1000 < roof.x * 4200 < 3100
    assert 100 < roof.y * 1400 < 300


def test_a_drawing_of_nothing_is_no_picture() -> None:
    empty = Drawing((), (), ())
    assert diagram.pictures(empty, (), STAGES) == ()
    assert diagram.outline(empty) is None


# Gaps


def test_many_gaps_that_say_the_same_are_one_paragraph_and_none_is_lost() -> None:
    items = tuple(Labelled(f"R{n}, Ostwell: no scan", "Same.") for n in range(1, 10))
    laid = _lack(Lack("Receipts", items))
    assert len(laid["items"]) == 1
    assert laid["items"][0]["label"].split("; ")[0] == "R1, Ostwell"
    assert all(f"R{n}, Ostwell" in laid["items"][0]["label"] for n in range(1, 10))


def test_gaps_that_say_different_things_stay_apart() -> None:
    items = tuple(Labelled(f"Area {n}: not finished", f"Stage {n}.") for n in range(9))
    assert len(_lack(Lack("Areas", items))["items"]) == 9


# Texts


@given(st.text())
def test_nothing_shapeless_is_left_and_nothing_else_is_changed(text: str) -> None:
    printed = glyphs.literal(text)
    for sign in printed:
        assert sign == "\n" or unicodedata.category(sign) not in {"Cc", "Cs", "Co", "Cn"}
    if text.isprintable():
        assert printed == text


@given(st.text(alphabet=st.characters(codec="utf-8"), max_size=200))
def test_places_to_break_are_all_that_long_runs_gain(text: str) -> None:
    assert glyphs.breakable(text).replace("\u200b", "") == text.replace("\u200b", "")


def test_the_plainest_way_leaves_only_what_every_font_has() -> None:
    assert glyphs.plainest("a é 中 🚗") == "a é [U+4E2D] [U+1F697]"
    assert glyphs.plainer("中 🚗") == "中 [U+1F697]"
    assert glyphs.is_readable(glyphs.plainest("中 \x07 é"))


def test_lone_surrogates_do_not_reach_the_typesetter() -> None:
    assert glyphs.literal("name \udcff.jpg") == "name [U+DCFF].jpg"


def test_texts_deep_in_a_value_are_changed_and_keys_are_not() -> None:
    value = {"a": ["x", ("x", {"x": "x"})], "n": 1}
    assert glyphs.everywhere(value, str.upper) == {"a": ["X", ["X", {"x": "X"}]], "n": 1}


def test_a_hash_is_read_in_groups_of_eight() -> None:
    # FIPS 180-4's example: SHA-256 of "abc".
    known = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    assert grouped(known) == (
        "ba7816bf 8f01cfea 414140de 5dae2223 b00361a3 96177a9c b410ff61 f20015ad"
    )


@given(st.text(min_size=1, max_size=400), st.integers(10, 60))
def test_an_excerpt_is_never_much_longer_than_asked(text: str, most: int) -> None:
    cut = excerpt(text, most)
    assert cut == text or (len(cut) <= most + 2 and cut.endswith("…"))


def test_numbers_and_lists_in_words() -> None:
    assert [count(n, "photo") for n in (0, 1, 2, 1204)] == [
        "no photos", "1 photo", "2 photos", "1,204 photos",
    ]  # fmt: skip
    assert [listed(["a", "b", "c"][:n]) for n in range(4)] == ["", "a", "a and b", "a, b and c"]
    assert shortened(["a", "b", "c", "d"], 2) == "a, b and 2 more"
    assert [hours(m) for m in (45, 180, 750)] == ["45 min", "3 h", "12 h 30 min"]
    assert [sentence(t) for t in ("", " rust ", "done!", "so…")] == ["", "Rust.", "Done!", "So…"]


def test_longer_time_never_reads_shorter() -> None:
    assert all(hours(a) != hours(b) for a, b in pairwise(range(3000)))
