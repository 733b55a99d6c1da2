"""Cautions: short plain words where the work recorded can hurt somebody.

They remind and defer; nothing here says how a job is done, and nothing passes a car as safe. Each
names the publisher of the fact behind it, where there is one.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from journal.domain.drawing import Panel, System
from journal.domain.errors import JournalError


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution: its key in the journal, its title, its text, and whose fact it rests on.

    ``source`` is "" where the caution is common practice, no source.
    """

    key: str
    title: str
    text: str
    source: str


#: All cautions, in the order they are shown in.
CAUTIONS = (
    Caution(
        "load-bearing",
        "Load-bearing: have it inspected",
        "This metal carries the car: what is welded, cut or left here can decide whether it holds"
        " in a crash. Have the work inspected by somebody licensed to, under your local rules.",
        "DVSA, MOT inspection manual, Appendix A: metal within 30 cm of a mounting counts",
    ),
    Caution(
        "belt anchorages",
        "Seat-belt anchorages",
        "A belt holds only as well as the metal round its anchorage. Have any repair near one"
        " inspected by a qualified person before anybody relies on it.",
        "DVSA, MOT inspection manual, Appendix A: metal within 30 cm of a mounting counts",
    ),
    Caution(
        "welding",
        "Welding: fume, burns and fire",
        "Welding fume and the light of the arc cause cancer, and open windows are not enough:"
        " extract the fume at the weld and follow your local rules on breathing protection. Keep"
        " a second person and a means to put out a fire at hand, during and after.",
        "IARC, Monograph 118 (welding fume, ultraviolet from welding); the rest common practice",
    ),
    Caution(
        "cutting discs",
        "Cutting and grinding discs",
        "A disc that bursts or a spark in the eye takes an instant. Never run a disc faster than"
        " the speed marked on it; keep the guard on and protect the eyes.",
        "EN 12413, as summarised by its trade",
    ),
    Caution(
        "fuel and brake lines",
        "Fuel and brake lines",
        "Petrol vapour is heavier than air, gathers low down and catches from a spark some way"
        " off; tanks and lines that look empty have killed. Leave cleaning, cutting and welding of"
        " them to those licensed for it, and have brakes checked before the car moves.",
        "HSE, motor vehicle repair: fires and explosions from tanks and lines",
    ),
    Caution(
        "car on stands",
        "A car on stands",
        "Never be under a car that only a jack holds. Stands within their rating, under strong"
        " points, on firm level ground, and the wheels chocked.",
        "HSE, INDG434, and its advice on working under vehicles",
    ),
    Caution(
        "isocyanate paint",
        "Two-pack (2K) paint: isocyanates",
        "The mist can cause asthma for life, and filter masks are not enough: it takes air-fed"
        " breathing equipment, and stays in the air after it can no longer be seen. Leave it to a"
        " shop equipped for it, or follow your local rules.",
        "HSE, motor vehicle repair: isocyanate paints",
    ),
    Caution(
        "lead",
        "Lead in old paint and body solder",
        "Old paint and old filler may hold lead, and its sanding dust harms those who breathe or"
        " swallow it, children at home most of all. Have it tested before you sand, and follow"
        " your local rules for dust and waste.",
        "Australian Government, DCCEEW: lead in auto paints",
    ),
    Caution(
        "asbestos",
        "Asbestos in brakes, clutches and gaskets",
        "In an old car these parts may hold asbestos. Never blow or brush the dust: wipe it up"
        " wet, and have it disposed of as your local rules say.",
        "HSE, motor vehicle repair: asbestos",
    ),
    Caution(
        "airbags",
        "Airbags and belt pretensioners",
        "They are explosives and can go off while you work. Leave taking them out, testing and"
        " storing them to those trained and licensed for it.",
        "HSE, motor vehicle repair: airbags and pretensioners",
    ),
)

_BY_KEY = {caution.key: caution for caution in CAUTIONS}

# Which words make which caution worth proposing: common practice, no source.
_WORDS = {
    "load-bearing": r"load.?bearing|sills?|chassis|sub.?frames?|jacking points?|cross.?members?"
    r"|box sections?|suspension mount\w*|spring hangers?|outriggers?|strut tops?|inner wings?"
    r"|bulkheads?|pillars?",
    "belt anchorages": r"(?:seat.?)?belt anchor\w*|(?:seat.?)?belt mount\w*|seat.?belts?"
    r"|seat mount\w*",
    "welding": r"weld\w*|tack(?:ed|ing)?|mig|tig|braz(?:e|ed|ing)|new metal|patch(?:es|ed|ing)?"
    r"|let in|sills?|jacking points?",
    "cutting discs": r"grind\w*|ground (?:back|down|off|flush)|cut(?:s|ting)?|discs?|slitting",
    "fuel and brake lines": r"fuel\w*|petrol\w*|diesel|(?:brake|clutch) (?:line|pipe|hose)s?"
    r"|carburett?ors?|tanks?",
    "car on stands": r"axle stands?|on stands|under(?:neath)? the car|underside|jack(?:ed|ing)?"
    r"|gear.?box|exhausts?|prop.?shaft|axles?|underseal\w*|floors?",
    "isocyanate paint": r"2[- ]?k|two.?pack|2[- ]?pack|isocyanates?|hardeners?|clear.?coat\w*"
    r"|lacquer\w*|polyurethane|pu",
    "lead": r"lead(?:ed|ing|.load\w*)?|body solder|old paint|paint strip\w*|sand(?:ed|ing)"
    r"|blast(?:ed|ing)?|stripp(?:ed|ing)",
    "asbestos": r"asbestos|brake (?:shoe|lining|pad|dust|drum)s?|clutch(?:es)?|gaskets?",
    "airbags": r"air.?bags?|pre.?tensioners?|srs",
}
_PATTERNS = {key: re.compile(rf"\b(?:{words})\b", re.IGNORECASE) for key, words in _WORDS.items()}

_BY_SYSTEM = {
    System.STRUCTURE: ("load-bearing", "welding"),
    System.FLOOR: ("load-bearing", "welding", "car on stands"),
    System.RUNNING_GEAR: ("car on stands",),
}


def caution(key: str) -> Caution:
    """The caution of that key.

    Raises:
        JournalError: there is none.
    """
    try:
        return _BY_KEY[key]
    except KeyError:
        raise JournalError(f"There is no caution called “{key}”.") from None


def suggest(text: str, panels: Sequence[Panel] = ()) -> tuple[str, ...]:
    """Keys of the cautions that words and panels give reason for, in the order they are shown in.

    ``text`` is whatever was written of the repair area; names of ``panels`` count as words, and
    what a panel belongs to counts too. It is a proposal for the owner: words can be missed, so
    that none proposed does not mean no danger.
    """
    words = "\n".join([text, *(panel.name for panel in panels)])
    keys = {key for key, pattern in _PATTERNS.items() if pattern.search(words)}
    keys.update(key for panel in panels for key in _BY_SYSTEM.get(panel.system, ()))
    return tuple(caution.key for caution in CAUTIONS if caution.key in keys)
