"""Who worked on the Rook, which days went by the clock, and which only photos tell of."""

from dataclasses import dataclass
from datetime import date

from journal.demo.life import HELPER, INSPECTOR, OWNER
from journal.domain.people import PersonKind


@dataclass(frozen=True, slots=True)
class CrewStory:
    """Somebody on the list of people; ``rate`` is in cents an hour."""

    name: str
    kind: PersonKind
    rate: int | None
    note: str


CREW = (
    CrewStory(OWNER, PersonKind.OWN, 2200, "What an hour in my own trade brings, after tax."),
    CrewStory(HELPER, PersonKind.OWN, None, "My brother-in-law; takes beer."),
    CrewStory(INSPECTOR, PersonKind.PAID, None, "The inspection engineer; see his two receipts."),
)

#: The winter Runa tried the clock: day -> when it was started. The hours are those written down.
CLOCKED = {
    date(2020, 1, 4): "13:10",
    date(2020, 1, 11): "10:05",
    date(2020, 1, 25): "14:20",
    date(2020, 2, 1): "10:15",
    date(2020, 2, 2): "13:30",
    date(2020, 2, 15): "09:50",
    date(2020, 2, 22): "13:00",
}

#: Days that nobody wrote hours down for; the photos show somebody was there.
FROM_PHOTOS = (date(2018, 3, 18), date(2021, 7, 24))
