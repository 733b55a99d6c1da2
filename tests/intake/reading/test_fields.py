"""From rows of print to the fields of a receipt."""

from datetime import date
from decimal import Decimal

import pytest

from journal.domain.papers import Box
from journal.intake.reading.fields import TWO_RECEIPTS, Known, receipt_of
from journal.intake.reading.keywords import Kind, kind
from journal.intake.reading.layout import Page, Word, rows

TODAY = date(2026, 1, 1)


def page(text, *, fall=0.0, left=0.05, wide=0.9):
    """A page with a word for each cell; cells are parted by |, the last one stands right."""
    words = []
    lines = text.strip("\n").splitlines()
    for number, row in enumerate(lines):
        cells = [cell.strip() for cell in row.split("|")]
        top = 0.05 + 0.9 * number / len(lines)
        for place, cell in enumerate(cells):
            width = wide * min(len(cell), 40) / 50
            start = left + wide - width if place == len(cells) - 1 and place else left
            start += 0 if place in (0, len(cells) - 1) else wide * 0.2 * place
            middle = start + width / 2
            drop = fall * (middle - 0.5)
            extra = abs(fall) * width / 2
            box = Box(start, top + drop - extra, start + width, top + 0.02 + drop + extra)
            if cell:
                words.append(Word(cell, box, 0.99, fall))
    return Page(tuple(words), 0.5)


def read(text, currency="EUR", suppliers=(), **how):
    return receipt_of([page(text, **how)], Known(currency, suppliers), TODAY)


SIMPLE = """
Tollgate Motor Factors
14 Mill Lane
Date: 12.05.2019 14:32
2 x Brake hose | 25.00
Seam sealer | 9.90
TOTAL | £34.90
Cash | 50.00
Change | 15.10
VAT 20% | 5.82
"""


def test_a_whole_receipt_is_read():
    found = read(SIMPLE, "GBP")
    assert found.supplier.value == "Tollgate Motor Factors"
    assert found.when.value.edtf == "2019-05-12"
    assert found.currency.value == "GBP"
    assert found.total.value == 3490
    assert found.tax.value == 582
    lines = [(line.value.text, line.value.quantity, line.value.amount) for line in found.lines]
    assert lines == [("Brake hose", Decimal(2), 2500), ("Seam sealer", Decimal(1), 990)]
    assert "Seam sealer" in found.text


def test_each_field_tells_where_it_stands():
    found = read(SIMPLE, "GBP")
    assert found.total.box.left > 0.6
    assert found.supplier.box.top < found.when.box.top < found.total.box.top < found.tax.box.top


def test_a_total_that_the_lines_and_the_payment_make_is_surer_than_a_bare_one():
    bare = read("Shop of sorts\nBrake hose | 25.00\nSomething torn\nTOTAL | 34.90")
    assert read(SIMPLE).total.sure > 0.9 > bare.total.sure


@pytest.mark.parametrize(
    "text",
    [
        "Shop of sorts\nBrake hose | 25.00\nSeam sealer | 9.90",
        "Shop of sorts\nBrake hose | 25.00\nSubtotal | 25.00",
        "Shop of sorts\nBrake hose | 25.00\nVAT 20% | 4.17",
        "Shop of sorts\nBrake hose | 25.00\nCash | 50.00\nChange | 25.00",
        "Shop of sorts\nBrake hose | 25.00\nTOTAL",
        "Shop of sorts\nBrake hose | 25.00\nDelsumma | 25,00\nVäxel | 3,00",
    ],
)
def test_a_total_that_is_not_on_the_paper_is_left_empty(text):
    assert read(text).total is None


def test_a_sum_below_the_word_total_is_the_total():
    assert read("Shop of sorts\nBrake hose | 25.00\nTOTAL\n25.00").total.value == 2500


def test_a_misread_word_is_promoted_where_cash_less_change_makes_it():
    text = "Shop of sorts\nHose | 25.00\nSealer | 9.90\nTQFAI | 34.90\nCash | 40.00\nChange | 5.10"
    assert read(text).total.value == 3490


def test_a_misread_word_is_promoted_where_the_lines_add_up_to_it():
    text = "Shop of sorts\nHose | 25.00\nSealer | 9.90\nZwischensumme | 34.90\nXQFAI | 34.90"
    assert read(text).total.value == 3490


@pytest.mark.parametrize(
    ("row", "expected"),
    [
        ("SUBTOTAL 5.00", Kind.SUBTOTAL),
        ("Zwischensumme", Kind.SUBTOTAL),
        ("Sous-total", Kind.SUBTOTAL),
        ("Total HT", Kind.SUBTOTAL),
        ("Totaal excl. BTW", Kind.SUBTOTAL),
        ("Summa exkl moms", Kind.SUBTOTAL),
        ("TOTAL EUR", Kind.TOTAL),
        ("T0TAL", Kind.TOTAL),
        ("TOTALEUR12.50", Kind.TOTAL),
        ("Summe", Kind.TOTAL),
        ("Totaal", Kind.TOTAL),
        ("Total TTC", Kind.GRAND_TOTAL),
        ("Total incl. VAT", Kind.GRAND_TOTAL),
        ("Gesamtbetrag inkl. MwSt", Kind.GRAND_TOTAL),
        ("Te betalen", Kind.GRAND_TOTAL),
        ("Att betala", Kind.GRAND_TOTAL),
        ("À PAYER", Kind.GRAND_TOTAL),
        ("VAT 20%", Kind.TAX),
        ("VAT8%", Kind.TAX),
        ("inkl. MwSt 19%", Kind.TAX),
        ("dont TVA 20%", Kind.TAX),
        ("waarvan BTW", Kind.TAX),
        ("varav moms", Kind.TAX),
        ("Total VAT", Kind.TAX),
        ("Rückgeld", Kind.CHANGE),
        ("Växel", Kind.CHANGE),
        ("Wisselgeld", Kind.CHANGE),
        ("Cash", Kind.CASH),
        ("Espèces", Kind.CASH),
        ("Brake pads", Kind.ITEM),
        ("Barrel nut", Kind.ITEM),
        ("Car wax", Kind.ITEM),
        ("Tow bar 89.00", Kind.ITEM),
        ("2 x Split pin", Kind.ITEM),
        ("Pin, clevis", Kind.ITEM),
        ("Oil change", Kind.ITEM),
        ("Battery terminal", Kind.ITEM),
        ("Cross member", Kind.ITEM),
        ("Tax disc holder", Kind.ITEM),
        ("Steuerkette", Kind.ITEM),
        ("Torsion bar, left", Kind.ITEM),
        ("BAR EUR 50,00", Kind.CASH),
        ("PIN betaling 50,00", Kind.CASH),
        ("Card payment 50.00", Kind.CASH),
        ("Change due 1.50", Kind.CHANGE),
        ("Change £1.50", Kind.CHANGE),
        ("Sales tax 8% 1.50", Kind.TAX),
        ("Tax 8% 1.50", Kind.TAX),
    ],
)
def test_a_row_is_known_by_its_words_in_five_languages(row, expected):
    assert kind(row) is expected


@pytest.mark.parametrize(
    ("row", "expected"),
    [
        ("2 x Hose | 25.00", ("Hose", "2", 2500)),
        ("3 Copper washer | 1.50 | 4.50", ("Copper washer", "3", 450)),
        ("Copper washer 3 x 1.50 | 4.50", ("Copper washer", "3", 450)),
        ("Copper washer 5 | 1.50 | 4.50", ("Copper washer 5", "1", 450)),
        ("3Copper washer | 1.50 | 4.50", ("Copper washer", "3", 450)),
        ("5 way plug | 4.50", ("5 way plug", "1", 450)),
        ("Discount | -4.50", ("Discount", "1", -450)),
        ("4006381333931 Wire | 4.50 A", ("Wire", "1", 450)),
        ("Copper washer\n  3 x 1.50 | 4.50", ("Copper washer", "3", 450)),
    ],
)
def test_a_line_is_read_with_its_quantity(row, expected):
    (line,) = read(f"Shop of sorts\n{row}\nTOTAL | 99.00").lines
    assert (line.value.text, str(line.value.quantity), line.value.amount) == expected


def test_a_table_with_headings_and_pieces_of_a_car_is_read():
    text = """
Autoteile Brandauer
Pos Artikel | Menge | Preis | Gesamt
1 Tow bar | 1 | 89,00 | 89,00
2 Split pin | 10 | 0,25 | 2,50
Summe netto | 76,89
MwSt 19% | 14,61
Rechnungsbetrag | 91,50
"""
    found = read(text)
    lines = [(line.value.text, int(line.value.quantity), line.value.amount) for line in found.lines]
    assert lines == [("Tow bar", 1, 8900), ("Split pin", 10, 250)]
    assert (found.total.value, found.tax.value) == (9150, 1461)


def test_a_name_with_one_more_word_inside_is_another_supplier():
    said = "Tollgate Motor Factors\nHose | 2.00\nTotal | 2.00"
    assert read(said, suppliers=("Tollgate Factors",)).supplier.value == "Tollgate Motor Factors"
    said = "TOLLGATEFACTORS LTD\nHose | 2.00\nTotal | 2.00"
    assert read(said, suppliers=("Tollgate Factors",)).supplier.value == "Tollgate Factors"


def test_the_journals_own_supplier_is_known_though_misread():
    known = ("Brandt Panels", "Fenwright")
    found = read("** Welcome **\nBRANDT PANEIS Ltd\nHose | 2.00\nTotal | 2.00", suppliers=known)
    assert found.supplier.value == "Brandt Panels"


def test_headings_and_addresses_are_no_suppliers():
    found = read("RECHNUNG\nMühlenweg 14, 24103 Süderau\nAutoteile Brandauer\nSumme | 2,00")
    assert found.supplier.value == "Autoteile Brandauer"


@pytest.mark.parametrize(
    ("text", "own", "expected"),
    [
        ("Total | 12,50 €", "GBP", "EUR"),
        ("Total | $12.50", "CAD", "CAD"),
        ("Total | $12.50", "EUR", "USD"),
        ("Summa | 12,50 kr", "NOK", "NOK"),
        ("Total CHF | 12.50", "EUR", "CHF"),
    ],
)
def test_the_currency_is_that_of_the_signs(text, own, expected):
    assert read(f"Shop of sorts\n{text}", own).currency.value == expected


def test_without_a_sign_no_currency_is_claimed():
    assert read("Shop of sorts\nTotal | 12.50").currency is None


def test_several_taxes_are_added_and_a_table_is_told_apart_by_its_rate():
    text = "Shop of sorts\nHose | 119,00\nTotal | 119,00\nMwSt 19% | 100,00 | 19,00 | 119,00"
    assert read(text).tax.value == 1900
    text = "Shop\nA hose | 10,00\nTotal | 10,00\nMwSt 19% | 1,00\nMwSt 7% | 0,20"
    assert read(text).tax.value == 120


def test_a_due_day_is_not_the_day_of_buying():
    text = "Shop of sorts\nDue date: 30.06.2019\nInvoice date: 12.06.2019\nTotal | 9.00"
    assert read(text).when.value.edtf == "2019-06-12"


@pytest.mark.parametrize("fall", [-0.12, -0.04, 0.05, 0.15])
def test_rows_are_found_on_slanted_paper(fall):
    found = rows(page(SIMPLE, fall=fall))
    assert [row.text.split()[-1] for row in found][3:6] == ["25.00", "9.90", "£34.90"]
    assert len(found) == 9


def test_two_receipts_side_by_side_are_told_and_nothing_is_guessed():
    both = page(SIMPLE, left=0.02, wide=0.4).words + page(SIMPLE, left=0.58, wide=0.4).words
    found = receipt_of([Page(both, 1.0)], Known("GBP"), TODAY)
    assert found.remarks == (TWO_RECEIPTS,)
    assert found.is_empty
    assert "Brake hose" in found.text


def test_two_receipts_below_each_other_are_told():
    other = SIMPLE.replace("34.90", "44.90").replace("12.05.2019", "13.05.2019")
    assert read(SIMPLE + other.strip("\n")).remarks == (TWO_RECEIPTS,)


def test_a_card_slip_below_a_receipt_is_no_second_one():
    slip = "Card payment\n12.05.2019 14:33\nVISA | 34.90\nAmount | 34.90\nAuthorised"
    found = read(SIMPLE + slip, "GBP")
    assert found.remarks == ()
    assert found.total.value == 3490


def test_an_empty_paper_says_so():
    found = receipt_of([Page((), 1.0)], Known("EUR"), TODAY)
    assert found.is_empty
    assert found.remarks == ("No words could be read on this paper.",)
