"""The car a journal is about, and the turning points of its restoration."""

from dataclasses import dataclass
from enum import StrEnum

from journal.domain.areas import DEFAULT_STAGES
from journal.domain.ids import MilestoneId
from journal.domain.when import When


class MilestoneKind(StrEnum):
    """A dated turning point."""

    ACQUIRED = "acquired"
    STRIPPED = "stripped"
    ON_WHEELS = "back on its wheels"
    PAINTED = "painted"
    ON_THE_ROAD = "on the road"
    OTHER = "other"


@dataclass(frozen=True, slots=True)
class Milestone:
    """One turning point; everything dated after "on the road" is upkeep."""

    id: MilestoneId
    kind: MilestoneKind
    when: When
    note: str = ""


@dataclass(frozen=True, slots=True)
class Car:
    """The car, as its owner describes it, and the journal's own settings.

    ``currency`` is an ISO 4217 code: totals are in it. ``pause_minutes`` is the pause that parts
    two sittings, 0 to choose it from the photos. Identity fields are free text: cars built before
    17-character chassis numbers have none.
    """

    title: str
    body: str = "saloon"
    wheelbase_mm: int = 0
    length_mm: int = 0
    currency: str = "EUR"
    maker: str = ""
    model: str = ""
    year: str = ""
    chassis_number: str = ""
    engine_number: str = ""
    registration: str = ""
    colour: str = ""
    owner: str = ""
    story: str = ""
    pause_minutes: int = 0
    stages: tuple[str, ...] = DEFAULT_STAGES
