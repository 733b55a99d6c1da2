from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journal.domain.areas import Entry
from journal.domain.covers import CoverBox, check_box, on_pixels, turned
from journal.domain.errors import JournalError
from journal.domain.hidden_words import MARK, Finder, Sought, money_pattern
from journal.domain.ids import CameraId, CoverBoxId, EntryId, PersonId, PhotoId, PrivateWordId
from journal.domain.money import format_money
from journal.domain.people import Person
from journal.domain.photos import Camera
from journal.domain.privacy import redact, title_for_others
from journal.domain.private_words import Private, PrivateWord, check_private_word
from journal.domain.record import Record
from journal.domain.when import parse
from tests.dossier.records import finished_record, record, work

EVERYTHING = frozenset(Private)


def finder(names: tuple[str, ...] = (), numbers: tuple[str, ...] = ()) -> Finder:
    return Finder(
        Sought({Private.PEOPLE: frozenset(names)}, {Private.PLATE: frozenset(numbers)}, None, False)
    )


def worded(text: str) -> PrivateWord:
    return PrivateWord(PrivateWordId(1), text, Private.OTHER)


# --- words however they are written ---


@pytest.mark.parametrize(
    "written", ["AB 12-CD", "ab12cd", "Ab.12 cd", "AB\u00a012\u2011CD", "a b 1 2 c d", "ÄB12CD"]
)
def test_a_number_plate_is_found_however_it_is_spaced_and_accented(written: str) -> None:
    taken = finder(numbers=("AB 12-CD",)).text(f"Plates {written}, still on.")
    assert taken == f"Plates {MARK}, still on."


def test_a_number_is_not_found_inside_a_longer_one() -> None:
    assert finder(numbers=("AB12CD",)).text("part XAB12CD3") == "part XAB12CD3"


@pytest.mark.parametrize(
    "written", ["Søren Åkesson", "SOREN  AKESSON", "soren_akesson", "So\u0308ren A\u030akesson"]
)
def test_a_name_is_found_without_its_accents_and_in_any_case(written: str) -> None:
    assert finder(("Søren Åkesson",)).text(f"with {written}'s help") == f"with {MARK}'s help"


def test_a_name_is_a_word_in_texts_and_any_part_of_a_files_name() -> None:
    edo = finder(("Edo",))
    assert edo.text("Edoardo and a tornedo, but edo.") == f"Edoardo and a tornedo, but {MARK}."
    assert edo.file_name("IMG_edoWelding.jpg") == f"IMG_{MARK}Welding.jpg"


@given(st.text(max_size=60), st.text(max_size=60))
def test_what_was_taken_out_is_never_found_again(before: str, after: str) -> None:
    look = finder(("Edo Tarsk",), ("AB 12-CD",))
    for secret in ("Edo Tarsk", "AB12CD", "edo  tarsk"):
        taken = look.text(f"{before} {secret} {after}")
        assert MARK in taken
        assert not look.has(taken)


@given(st.text(alphabet="klmpqruvwxyz .,;", max_size=80))
def test_texts_without_anything_private_stay_as_they_are(text: str) -> None:
    assert finder(("Edo",), ("AB12CD",)).text(text) == text


# --- money ---


@pytest.mark.parametrize(
    "said",
    [
        "€120.50", "EUR 1.200,50", "1 200 EUR", "35 euros", "£5", "5 quid", "SEK5000", "1200,-",
        "kr 300", "$1,200", "CHF 1'200.–", "¥12000",
    ],
)  # fmt: skip
def test_sums_of_money_are_taken_out(said: str) -> None:
    taken = Finder(Sought({}, {}, money_pattern(["EUR"]))).text(f"He asked {said} for both.")
    assert not any(sign.isdigit() for sign in taken)


@pytest.mark.parametrize(
    "said",
    ["1.2 mm steel", "spent 3 hours", "cost a day", "12 March 2016", "R24 and P3", "worth 20 days"],
)
def test_other_numbers_stay(said: str) -> None:
    assert Finder(Sought({}, {}, money_pattern(["EUR"]))).text(said) == said


@given(st.integers(0, 10**9), st.sampled_from(["EUR", "USD", "GBP", "JPY", "SEK", "KWD", "CZK"]))
def test_every_sum_that_the_program_writes_is_found(minor: int, currency: str) -> None:
    record = replace(finished_record(), car=replace(finished_record().car, currency=currency))
    look = redact(record, {Private.PRICES}, ()).finder
    taken = look.text(f"It says {format_money(minor, currency)}.")
    assert not any(sign.isdigit() for sign in taken)


# --- the record ---


def private_record() -> Record:
    full = finished_record()
    car = replace(
        full.car,
        owner="Ada Lindqvist",
        registration="AB 12-CD",
        title="Ada's Rook",
        story="Ada paid 450 for it. It wore AB12CD.",
    )
    entries = (
        Entry(EntryId(1), parse("2016"), "Ben came; Ostwell sent €12 too much.", None, None),
        Entry(EntryId(2), parse("2016"), "Number HR-10482 under the paint.", None, None),
    )
    return replace(
        full,
        car=car,
        entries=entries,
        cameras=(Camera(CameraId(1), "Orrin", "P2", "SERIAL77", 0),),
        photos=(replace(full.photos[0], name="ada_2016.jpg"), *full.photos[1:]),
        boxes=(CoverBox(CoverBoxId(1), PhotoId(1), 0.1, 0.1, 0.2, 0.2, Private.PLATE),),
        work=(*full.work, work(3, 30, 1, person="Ben")),
    )


def test_nothing_withheld_is_in_any_text_of_the_record() -> None:
    made = redact(private_record(), EVERYTHING, (worded("under the paint"),)).record
    said = repr(replace(made, drawing=finished_record().drawing)).casefold()
    for gone in (
        "ada", "lindqvist", "ben'", "ben ", "ostwell", "ab12cd", "ab 12-cd", "10482", "450", "€12",
        "serial77", "under the paint", "12000",
    ):  # fmt: skip
        assert gone not in said, gone
    assert made.withheld == EVERYTHING


def test_people_and_suppliers_keep_a_number_each() -> None:
    made = redact(private_record(), EVERYTHING, ()).record
    names = [row.person for row in made.work]
    assert len(set(names)) == 2
    assert names[1] == names[2]
    assert {receipt.supplier for receipt in made.receipts} == {"supplier 1"}


def test_with_nothing_withheld_only_serial_numbers_go() -> None:
    whole = private_record()
    made = redact(whole, (), ()).record
    assert made == replace(whole, cameras=made.cameras, boxes=())
    assert made.cameras[0].serial == ""


def test_only_covers_of_what_is_withheld_are_kept() -> None:
    assert redact(private_record(), {Private.PRICES}, ()).record.boxes == ()
    assert len(redact(private_record(), {Private.PLATE}, ()).record.boxes) == 1


@pytest.mark.parametrize("words", ["", "a", " - "])
def test_words_that_would_blot_out_everything_are_refused(words: str) -> None:
    with pytest.raises(JournalError):
        check_private_word(words, Private.OTHER)


# --- boxes ---

shares = st.floats(0, 1, allow_nan=False)


@given(shares, shares, st.floats(0.01, 1), st.floats(0.01, 1), st.sampled_from([0, 90, 180, 270]))
def test_a_box_turned_and_back_is_where_it_was(
    x: float, y: float, wide: float, high: float, degrees: int
) -> None:
    box = CoverBox(CoverBoxId(1), PhotoId(1), x, y, wide, high, Private.PLATE)
    back = turned(turned(box, degrees), -degrees)
    assert (back.x, back.y, back.width, back.height) == pytest.approx((x, y, wide, high))


@settings(max_examples=200)
@given(st.floats(0, 0.99), st.floats(0, 0.99), st.floats(0.01, 1), st.integers(2, 5000))
def test_a_box_covers_every_pixel_it_touches(x: float, y: float, side: float, size: int) -> None:
    box = check_box(CoverBox(CoverBoxId(1), PhotoId(1), x, y, side, side, Private.PLATE))
    left, top, right, low = on_pixels(box, size, size)
    assert 0 <= left < right <= size
    assert left <= box.x * size
    assert right >= min((box.x + box.width) * size, size)
    assert top <= box.y * size
    assert low >= min((box.y + box.height) * size, size)


def test_a_box_beside_the_picture_is_refused() -> None:
    with pytest.raises(JournalError, match="beside the picture"):
        check_box(CoverBox(CoverBoxId(1), PhotoId(1), 1.2, 0.1, 0.3, 0.3, Private.PLATE))


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("Nilsʼs shed", "[withheld]'s shed"),
        ("Åkessons lift", "[withheld] lift"),
        ("李明的车", "[withheld]的车"),
        ("Nils的车", "[withheld]的车"),
        ("stamped 017326", "stamped [withheld]"),
        ("number 17326 again", "number [withheld] again"),
        ("1,200.- for the lot", "[withheld] for the lot"),
        ("300:- a piece", "[withheld] a piece"),
        ("from 3.- to 4", "from [withheld] to 4"),
        ("tel. 0171 555 1234", "tel. [withheld]"),
        ("Phone: 070-1234567", "Phone: [withheld]"),
        ("call 3 times on 01-02-2016", "call 3 times on 01-02-2016"),
        ("Nilsson is another", "Nilsson is another"),
        ("paint 173260", "paint 173260"),
    ],
)
def test_names_and_numbers_are_found_as_people_write_them(text: str, kept: str) -> None:
    car = replace(record().car, owner="Nils Åkesson", chassis_number="HR4-017326")
    words = (PrivateWord(PrivateWordId(1), "李明", Private.OTHER),)
    assert redact(record(car=car), Private, words).text(text).replace("ʼ", "'") == kept


@pytest.mark.parametrize(
    ("title", "named"),
    [("Halden Rook", "Halden Rook"), ("Nils’ Rook AB12CD", "Rook"), ("Ada's Rook", "Rook")],
)
def test_a_file_for_others_is_not_called_by_what_is_withheld(title: str, named: str) -> None:
    car = replace(record().car, title=title, owner="Nils Åkesson", registration="AB 12 CD")
    people = (Person(PersonId(1), "Ada"),)
    assert title_for_others(car, people, EVERYTHING, ()) == named
    assert title_for_others(car, people, (), ()) == title
