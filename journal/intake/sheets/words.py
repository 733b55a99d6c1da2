"""Words that head columns and fill them, in English, German, French, Dutch and Swedish.

Common practice, no source.
"""

import re
import unicodedata
from collections.abc import Mapping, Sequence
from enum import StrEnum
from functools import lru_cache
from typing import TypeVar

from journal.domain.receipts import Category, Condition, Paper
from journal.domain.sheet_rows import Role

#: What headings mean; the longest that fits counts.
HEADINGS: dict[Role, tuple[str, ...]] = {
    Role.DATE: (
        "date", "day", "when", "bought", "bought on", "purchased", "paid on", "booking date",
        "transaction date", "posting date", "invoice date", "datum", "tag", "buchungstag",
        "buchungsdatum", "kaufdatum", "rechnungsdatum", "jour", "date achat", "date operation",
        "aankoopdatum", "boekdatum", "dag", "bokforingsdag", "bokforingsdatum",
    ),
    Role.SUPPLIER: (
        "supplier", "shop", "store", "vendor", "seller", "from", "bought from", "company", "firm",
        "where", "dealer", "payee", "merchant", "paid to", "counterparty", "beneficiary", "name",
        "lieferant", "handler", "firma", "verkaufer", "empfanger", "begunstigter",
        "auftraggeber empfanger", "beguenstigter zahlungspflichtiger", "fournisseur", "magasin",
        "vendeur", "beneficiaire", "leverancier", "winkel", "verkoper", "tegenpartij",
        "leverantor", "butik", "saljare", "mottagare",
    ),
    Role.NUMBER: (
        "receipt number", "receipt no", "receipt nr", "receipt id", "invoice", "invoice no",
        "invoice number", "bill no", "order no", "voucher", "rechnung", "rechnungsnummer",
        "rechnungsnr", "rechnung nr", "belegnummer", "beleg nr", "facture", "numero de facture",
        "factuur", "factuurnummer", "bonnummer", "fakturanummer", "kvittonummer", "verifikation",
    ),
    Role.WHAT: (
        "what", "what was bought", "item", "items", "description", "part", "parts", "article",
        "text", "details", "particulars", "narrative", "purpose", "reference", "memo", "goods",
        "bezeichnung", "artikel", "beschreibung", "teil", "ware", "gegenstand", "verwendungszweck",
        "designation", "libelle", "piece", "omschrijving", "onderdeel", "mededelingen",
        "beskrivning", "benamning", "del", "meddelande", "what for", "work", "work done", "task",
        "tatigkeit", "arbeit", "travail", "werk", "arbete",
    ),
    Role.QUANTITY: (
        "quantity", "qty", "how many", "count", "pcs", "pieces", "number of", "anzahl", "menge",
        "stuck", "stk", "quantite", "qte", "aantal", "antal", "st",
    ),
    Role.AMOUNT: (
        "amount", "sum", "total", "cost", "costs", "price", "paid", "spent", "total price",
        "value", "lines total", "line total", "betrag", "summe", "preis", "kosten", "gesamt",
        "gesamtpreis", "bezahlt", "umsatz", "montant", "prix", "cout", "prix total", "bedrag",
        "prijs", "totaal", "belopp", "pris", "kostnad", "summa", "totalt",
    ),
    Role.EACH: (
        "each", "price each", "unit price", "price per piece", "einzelpreis", "stuckpreis",
        "preis pro stuck", "prix unitaire", "stukprijs", "styckpris", "a pris",
    ),
    Role.MONEY_OUT: (
        "money out", "out", "paid out", "debit", "debit amount", "withdrawal", "withdrawals",
        "expense", "expenses", "soll", "ausgabe", "ausgaben", "lastschrift", "belastung",
        "depense", "af", "uit", "uitgaven", "uttag", "utgift", "ut",
    ),
    Role.MONEY_IN: (
        "money in", "in", "paid in", "credit", "credit amount", "deposit", "deposits", "income",
        "refund", "haben", "einnahme", "einnahmen", "gutschrift", "recette", "bij", "inkomsten",
        "insattning", "inkomst",
    ),
    Role.TOTAL: ("printed total", "receipt total", "invoice total", "rechnungsbetrag"),
    Role.CURRENCY: ("currency", "curr", "ccy", "wahrung", "devise", "monnaie", "munt", "valuta"),
    Role.RATE: ("rate", "exchange rate", "kurs", "wechselkurs", "taux", "wisselkoers"),
    Role.NEW_PRICE: (
        "new price", "price new", "cost new", "list price", "rrp", "neupreis", "prix neuf",
        "nieuwprijs", "nypris",
    ),
    Role.CATEGORY: (
        "category", "type", "kind", "group", "kategorie", "art", "gruppe", "categorie", "genre",
        "soort", "kategori", "typ",
    ),
    Role.CONDITION: ("condition", "new used", "zustand", "neu gebraucht", "etat", "staat", "skick"),
    Role.SPREAD: ("spread",),
    Role.AREA: (
        "where on car", "where on the car", "place", "repair area", "area", "areas",
        "for", "panel", "job", "section", "bereich", "baustelle",
        "bauteil", "zone", "gebied", "omrade",
    ),
    Role.PAPER: (
        "paper", "receipt", "have receipt", "proof", "beleg", "quittung", "recu", "bon", "kvitto",
    ),
    Role.STANDS_IN: ("stands in", "what stands in", "instead of paper"),
    Role.HOURS: (
        "hours", "hrs", "hour", "h", "time", "duration", "hours worked", "labour", "stunden", "std",
        "zeit", "arbeitszeit", "heures", "temps", "duree", "uren", "tijd", "timmar", "tid",
    ),
    Role.MINUTES: ("minutes", "min", "mins", "minuten", "minuter"),
    Role.PERSON: (
        "person", "who", "worker", "by", "done by", "mechanic", "wer", "helfer", "qui", "wie",
        "vem",
    ),
    Role.NOTE: (
        "note", "notes", "remark", "remarks", "comment", "comments", "bemerkung", "bemerkungen",
        "notiz", "anmerkung", "kommentar", "remarque", "commentaire", "opmerking", "notitie",
        "anteckning",
    ),
    Role.LEAVE_OUT: (
        "id", "line id", "no", "nr", "balance", "running balance", "saldo", "kontostand", "solde",
        "value date", "valuta", "wertstellung", "valutadatum", "refund of", "tax", "vat", "mwst",
        "iban", "bic", "account", "account number", "sort code", "konto", "kontonummer", "sha256",
        "papers sha256",
    ),
}  # fmt: skip

#: Headings that only a bank's list has.
_BANK = (
    "balance", "running balance", "saldo", "kontostand", "solde", "value date", "wertstellung",
    "buchungstag", "buchungstext", "booking date", "transaction date", "posting date", "iban",
    "bic", "sort code", "valutadatum", "bokforingsdag", "verwendungszweck", "money out",
    "paid out", "withdrawal", "debit", "soll", "tegenpartij", "auftraggeber empfanger",
    "payee", "counterparty",
)  # fmt: skip

#: How a row of totals is labelled.
_TOTAL = re.compile(
    r"(?:grand |sub ?|running )?(?:total|totals|sum|summe|gesamt|gesamtsumme|zwischensumme|somme"
    r"|totaal|subtotaal|totalt|summa|delsumma|ubertrag|carried forward|brought forward|balance)\b"
    r"(?! (?:seal|kit|garage|station|motors?|parts?)).*"
)

CATEGORIES: dict[Category, tuple[str, ...]] = {
    Category.PANELS: (
        "panels", "panel", "metal", "steel", "sheet metal", "body", "bodywork", "bleche", "blech",
        "karosserie", "carrosserie", "tole", "plaatwerk", "plat", "kaross",
    ),
    Category.MECHANICAL: (
        "mechanical", "mechanics", "engine", "gearbox", "brakes", "suspension", "motor", "getriebe",
        "bremsen", "fahrwerk", "mechanik", "mecanique", "moteur", "freins", "mechanisch", "remmen",
        "mekanik", "bromsar",
    ),
    Category.ELECTRICAL: ("electric", "electrics", "wiring", "elektrik", "electricite", "el"),
    Category.TRIM: (
        "trim", "glass", "interior", "upholstery", "chrome", "seals", "innenraum", "sattlerei",
        "glas", "interieur", "sellerie", "bekleding", "inredning",
    ),
    Category.PAINT: (
        "paint", "painting", "primer", "rust protection", "protection", "lack", "farbe", "peinture",
        "verf", "lak", "farg",
    ),
    Category.CONSUMABLES: (
        "consumable", "welding wire", "gas", "abrasives", "verbrauchsmaterial", "consommables",
        "verbruik", "forbrukning",
    ),
    Category.TOOLS: ("tool", "werkzeug", "werkzeuge", "outil", "outils", "gereedschap", "verktyg"),
    Category.SERVICES: (
        "services", "service", "labour", "machining", "garage", "dienstleistung", "werkstatt",
        "main d oeuvre", "arbeid", "arbete", "tjanster",
    ),
    Category.FEES: (
        "fees", "fee", "postage", "shipping", "delivery", "registration", "insurance", "gebuhren",
        "versand", "porto", "frais", "port", "verzendkosten", "avgift", "frakt",
    ),
    Category.CAR: ("car", "the car", "vehicle", "auto", "fahrzeug", "voiture", "bil", "purchase"),
    Category.OTHER: ("misc", "miscellaneous", "various", "sonstiges", "divers", "overig", "ovrigt"),
}  # fmt: skip

CONDITIONS: dict[Condition, tuple[str, ...]] = {
    Condition.NEW: ("n", "neu", "neuf", "nieuw", "ny", "repro", "reproduction"),
    Condition.USED: (
        "u", "second hand", "secondhand", "2nd hand", "gebraucht", "occasion", "gebruikt",
        "begagnad",
    ),
    Condition.NEW_OLD_STOCK: ("nos", "new old", "old stock"),
    Condition.RECONDITIONED: (
        "recon", "rebuilt", "refurbished", "overhauled", "uberholt", "aufgearbeitet",
        "reconditionne", "gereviseerd", "renoverad", "exchange",
    ),
    Condition.NONE: ("none", "n a", "na", "keine"),
}  # fmt: skip

PAPERS: dict[Paper, tuple[str, ...]] = {
    Paper.HELD: (
        "yes", "y", "x", "ja", "j", "oui", "have", "have it", "got it", "scanned", "scan", "filed",
        "ordner", "vorhanden", "true", "1",
    ),
    Paper.LOST: (
        "no", "n", "missing", "nein", "non", "nee", "nej", "verloren", "fehlt", "false", "0",
    ),
    Paper.NEVER: ("never", "none", "never had one", "cash", "no receipt", "ohne", "keiner", "sans"),
}  # fmt: skip


@lru_cache(maxsize=4096)
def plain(text: str) -> str:
    """Lower-case letters and digits without accents, other marks as single spaces."""
    folded = text.casefold().replace("ß", "ss").replace("ø", "o").replace("æ", "ae")
    letters = unicodedata.normalize("NFKD", folded)
    bare = "".join(one for one in letters if not unicodedata.combining(one))
    return " ".join(re.findall(r"[a-z0-9]+", bare))


#: How well a heading names a role that it is the very name of.
WHOLE = 100

_MEANING = {
    word: role for role, words in HEADINGS.items() for word in words if role is not Role.LEAVE_OUT
}
_NOT_MEANT = frozenset(HEADINGS[Role.LEAVE_OUT]) - set(_MEANING)


def heading_score(text: str, role: Role) -> int:
    """How well a heading names a role, 0 for not at all: a whole heading before words in it."""
    said = plain(re.sub(r"[(\[].*?[)\]]|[€£$]", " ", text)) or plain(text)
    if not said:
        return 0
    if said in HEADINGS[role]:
        return WHOLE
    if said in _MEANING or said in _NOT_MEANT:
        return 0
    padded = f" {said} "
    found = [len(word) for word in HEADINGS[role] if len(word) > 2 and f" {word} " in padded]
    return 30 + max(found) if found else 0


def is_no_use(text: str) -> bool:
    """Whether a heading is of a column that brings nothing, such as a number or a balance."""
    return plain(text) in _NOT_MEANT


def is_bank_heading(text: str) -> bool:
    """Whether only a bank's list has this heading."""
    return plain(text) in _BANK


def is_total(text: str) -> bool:
    """Whether words label a row of totals."""
    return bool(_TOTAL.fullmatch(plain(text)))


_T = TypeVar("_T", bound=StrEnum)


def _table(words: Mapping[_T, Sequence[str]]) -> dict[str, _T]:
    """What each word means: the program's own word for a thing before any other."""
    made = {plain(one.value): one for one in words}
    for value, names in words.items():
        made.update((name, value) for name in names if name not in made)
    return made


_CATEGORIES: dict[str, Category] = _table(CATEGORIES)
_CONDITIONS: dict[str, Condition] = _table(CONDITIONS)
_PAPERS: dict[str, Paper] = _table(PAPERS)


def category(text: str) -> Category | None:
    """The category that a word means, None where it means none."""
    said = plain(text)
    return _CATEGORIES.get(said) or _CATEGORIES.get(said.removesuffix("s"))


def condition(text: str) -> Condition | None:
    """The condition that a word means."""
    return _CONDITIONS.get(plain(text))


def paper(text: str) -> Paper | None:
    """Where a paper is by a word such as "yes" or "lost"."""
    return _PAPERS.get(plain(text))


def disarmed(text: str) -> str:
    """A text without the apostrophe that keeps a spreadsheet from taking it for a formula."""
    is_guarded = len(text) > 1 and text[0] == "'" and text[1] in "=+-@\t\r"
    return text[1:] if is_guarded else text
