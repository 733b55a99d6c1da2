"""The whole made-up story in one value."""

from dataclasses import dataclass

from journal.demo.areas_ends import ENDS
from journal.demo.areas_sides import SIDES
from journal.demo.days import WORK
from journal.demo.entries import ENTRIES
from journal.demo.life import CAR, MILESTONES
from journal.demo.receipts_metal import METAL
from journal.demo.receipts_road import ROAD
from journal.demo.story import AreaStory, EntryStory, MilestoneStory, ReceiptStory, WorkStory
from journal.domain.car import Car


@dataclass(frozen=True, slots=True)
class Scenario:
    """A car, its years and all that the owner would have written down of them."""

    car: Car
    milestones: tuple[MilestoneStory, ...]
    areas: tuple[AreaStory, ...]
    receipts: tuple[ReceiptStory, ...]
    work: tuple[WorkStory, ...]
    entries: tuple[EntryStory, ...]


SCENARIO = Scenario(CAR, MILESTONES, (*SIDES, *ENDS), (*METAL, *ROAD), WORK, ENTRIES)
