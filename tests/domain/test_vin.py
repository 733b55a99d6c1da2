import pytest

from journal.domain.vin import check_digit, hint, weighted_sum


@pytest.mark.parametrize(
    ("number", "whole", "digit"),
    [
        # The worked example of 49 CFR 565, as copies of the rule print it.
        ("1G4AH59H45G118341", 411, "4"),
        # NHTSA's outline for manufacturers.
        ("1J9RP1A36A1644345", 314, "6"),
        # Quoted in articles on the rule; sums checked by hand.
        ("JH2RC3605MM101581", 280, "5"),
        ("LJCPCBLCX11000237", 186, "X"),
        ("11111111111111111", 89, "1"),
    ],
)
def test_published_numbers_have_their_sum_and_check_digit(
    number: str, whole: int, digit: str
) -> None:
    assert weighted_sum(number) == whole
    assert check_digit(number) == digit
    found = hint(number)
    assert found is not None
    assert found.fits
    assert "49 CFR 565" in found.words


def test_a_number_of_another_length_gets_no_hint() -> None:
    assert hint("HR4-017326") is None
    assert hint("") is None


def test_a_digit_that_does_not_fit_is_a_hint_and_no_verdict() -> None:
    found = hint("1G4AH59H 55G 118341")
    assert found is not None
    assert not found.fits
    assert "don’t use it" in found.words


def test_signs_that_no_such_number_has_are_named() -> None:
    found = hint("1G4AH59H45G1I834O")
    assert found is not None
    assert "I and O" in found.words
