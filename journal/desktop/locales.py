"""The language and country that money and months of the Ledger are written for."""

from functools import cache

from PySide6.QtCore import QLocale

from journal.domain.money import format_money


@cache
def owner_locale() -> str:
    """The system's locale ("de_DE"); "en" where it has none, or none that is known."""
    return known(QLocale.system().name())


def known(name: str) -> str:
    """A locale's name if it is one that money can be written for, else "en"."""
    from babel import Locale, UnknownLocaleError

    if name == "C":
        return "en"  # What a system without a language of its own calls itself.
    try:
        Locale.parse(name)
    except (UnknownLocaleError, ValueError):
        return "en"
    return name


def money(minor: int, currency: str) -> str:
    """A sum as the owner writes it."""
    return format_money(minor, currency, owner_locale())
