"""What rows of a receipt are about, by words in English, German, French, Dutch and Swedish."""

import re
import unicodedata
from enum import IntEnum
from functools import lru_cache


class Kind(IntEnum):
    """What a row is about; where several fit, the first one counts."""

    SUBTOTAL = 1
    CHANGE = 2
    TAX = 3
    GRAND_TOTAL = 4
    TOTAL = 5
    CASH = 6
    OTHER = 7
    ITEM = 8


# A total "without tax" is a subtotal, one "with tax" is the total: longer words come first.
_WORDS: dict[Kind, tuple[str, ...]] = {
    Kind.SUBTOTAL: (
        "subtotal", "sub total", "net total", "total net", "total excl", "net amount",
        "goods total", "zwischensumme", "netto", "nettosumme", "nettobetrag", "warenwert",
        "summe netto", "sous total", "total ht", "montant ht", "total hors", "subtotaal",
        "totaal excl", "excl btw", "delsumma", "summa exkl", "exkl moms", "total savings",
        "you saved", "total items", "items", "artikel", "antal varor", "nombre d articles",
        "discount total",
    ),
    Kind.CHANGE: (
        "change", "change due", "ruckgeld", "wechselgeld", "zuruck", "rendu", "monnaie rendue",
        "a rendre", "wisselgeld", "terug", "vaxel", "tillbaka", "ater",
    ),
    Kind.TAX: (
        "vat", "tax", "sales tax", "total tax", "gst", "mwst", "mehrwertsteuer", "ust",
        "umsatzsteuer", "steuer", "enthaltene mwst", "inkl mwst", "tva", "dont tva", "total tva",
        "btw", "waarvan btw", "moms", "varav moms",
    ),
    Kind.GRAND_TOTAL: (
        "grand total", "total due", "amount due", "balance due", "total to pay", "amount payable",
        "total incl", "invoice total", "total payable", "gesamtbetrag", "gesamtsumme",
        "rechnungsbetrag", "endbetrag", "zu zahlen", "zahlbetrag", "summe brutto", "total ttc",
        "montant ttc", "net a payer", "a payer", "total a payer", "te betalen", "totaal incl",
        "totaalbedrag", "att betala", "totalbelopp", "summa att betala", "totalt inkl",
    ),
    Kind.TOTAL: (
        "total", "amount", "summe", "gesamt", "betrag", "somme", "montant", "totaal", "bedrag",
        "summa", "totalt", "belopp",
    ),
    Kind.CASH: (
        "cash", "paid", "tendered", "card", "visa", "debit", "credit", "bar", "gegeben", "karte",
        "ec karte", "kartenzahlung", "especes", "carte", "cb", "recu", "contant", "pin", "pinnen",
        "kontant", "kort", "kortbetalning", "betalt", "bezahlt", "betaald", "paye",
    ),
    Kind.OTHER: (
        "tel", "phone", "telefon", "fax", "iban", "bic", "receipt no", "invoice no",
        "rechnungsnr", "order no",
    ),
}  # fmt: skip

#: Words of payment that are parts of a car as well ("tow bar", "split pin", "oil change"): they
#: count only where nothing but these stand in the row with them.
_PARTS_TOO = frozenset(("bar", "pin", "change", "card", "kort", "credit", "carte", "tax", "rendu"))
_BESIDE = frozenset((
    "eur", "gbp", "usd", "chf", "sek", "nok", "dkk", "kr", "due", "given", "total", "payment",
    "gegeben", "erhalten", "betaling", "tendered", "sales", "debit", "cash", "paid", "incl", "inc",
    "included", "of", "rate", "bleue", "bancaire", "visa",
))  # fmt: skip

#: Words that head a paper and are nobody's name.
HEADINGS = frozenset((
    "receipt", "sales receipt", "invoice", "tax invoice", "vat receipt", "bill", "customer copy",
    "welcome", "thank you", "rechnung", "quittung", "kassenbon", "beleg", "kassenbeleg",
    "kundenbeleg", "bon", "facture", "ticket", "ticket de caisse", "recu", "merci", "bienvenue",
    "factuur", "kassabon", "welkom", "bedankt", "kvitto", "faktura", "kassakvitto", "valkommen",
    "tack", "copy", "kopie", "page", "seite",
))  # fmt: skip

#: Words beside a date that is not the day of buying.
OTHER_DAYS = (
    "due", "fallig", "lieferdatum", "delivery", "faellig", "echeance", "vervaldatum",
    "forfallodatum", "valid until", "gultig", "printed", "return by", "leverans", "livraison",
    "order date", "bestelldatum", "guarantee", "garantie", "garanti",
)  # fmt: skip
#: Words beside the day of buying.
ITS_DAY = (
    "date", "datum", "invoice date", "rechnungsdatum", "belegdatum", "factuurdatum", "le",
    "date de facture", "fakturadatum", "kopdatum",
)  # fmt: skip

_MENDED = str.maketrans({"0": "o", "1": "l", "|": "l", "5": "s"})
_SHORTEST_INEXACT = 5
# Reading leaves out the space between a word and what follows it: "TOTALEUR12.50".
_GLUED_NUMBER = re.compile(r"(?<=[a-z]{3})(?=[0-9]{2}|[0-9]\s?%)")
_GLUED_CODE = re.compile(r"(?<=[a-z]{4})(eur|gbp|usd|chf|sek)\b")


def plain(text: str) -> str:
    """Text in small letters without accents and marks, one space between words."""
    bare = unicodedata.normalize("NFKD", text.casefold())
    letters = "".join(one for one in bare if not unicodedata.combining(one))
    parted = _GLUED_NUMBER.sub(" ", letters)
    return " ".join(re.sub(r"[^0-9a-z%]+", " ", _GLUED_CODE.sub(r" \1", parted)).split())


def kind(text: str) -> Kind:
    """What a row is about; one without a known word is an item."""
    words = tuple(_word(token) for token in plain(text).split())
    found = {one: _weight(one, words) for one in _WORDS}
    best = max(found.values())
    if best == 0:
        return Kind.ITEM
    return min(one for one, weight in found.items() if weight and _wins(one, found))


def _wins(one: Kind, found: dict[Kind, int]) -> bool:
    """Whether no kind with a longer key takes in what this one was found by."""
    if one is Kind.TAX and found[Kind.GRAND_TOTAL] > found[Kind.TAX]:
        return False  # "Total incl. VAT" is the total
    return not (one is Kind.SUBTOTAL and found[Kind.GRAND_TOTAL] > found[Kind.SUBTOTAL])


def has_any(text: str, keys: tuple[str, ...]) -> bool:
    """Whether one of the keys stands in a text, a letter misread or not."""
    words = tuple(_word(token) for token in plain(text).split())
    return any(_stands_in(key, words) for key in keys)


def _weight(one: Kind, words: tuple[str, ...]) -> int:
    """How many letters the longest key of a kind has that stands among the words."""
    return max((len(key) for key in _WORDS[one] if _stands_in(key, words)), default=0)


def _stands_in(key: str, words: tuple[str, ...]) -> bool:
    parts = tuple(key.split())
    for at in range(len(words) - len(parts) + 1):
        if all(_like(words[at + i], part) for i, part in enumerate(parts)):
            return key not in _PARTS_TOO or _is_alone(key, words)
    glued = "".join(parts)
    return len(parts) > 1 and any(_like(word, glued) for word in words)


def _is_alone(key: str, words: tuple[str, ...]) -> bool:
    others = (word for word in words if word.isalpha() and len(word) > 1)
    return all(word == key or word in _BESIDE for word in others)


def _word(token: str) -> str:
    letters = sum(one.isalpha() for one in token)
    return token.translate(_MENDED) if letters * 2 > len(token) else token


@lru_cache(maxsize=8192)
def _like(word: str, key: str) -> bool:
    """Whether a word is the key, or, from five letters on, a letter off it."""
    if word == key:
        return True
    if len(key) < _SHORTEST_INEXACT or abs(len(word) - len(key)) > 1 or not word.isalpha():
        return False
    if len(word) == len(key):
        return sum(a != b for a, b in zip(word, key, strict=True)) == 1 and word[0] == key[0]
    shorter, longer = sorted((word, key), key=len)
    return any(longer[:i] + longer[i + 1 :] == shorter for i in range(1, len(longer)))
