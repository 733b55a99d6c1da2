"""The whole record of a car as plain values: what gaps, sums and the dossier are made of."""

from dataclasses import dataclass

from journal.domain.anchors import AnchorPoint
from journal.domain.areas import Area, Entry
from journal.domain.car import Car, Milestone
from journal.domain.claim_words import ClaimWords
from journal.domain.covers import CoverBox
from journal.domain.drawing import Drawing
from journal.domain.findings import SurveySheet
from journal.domain.pairs import Pair
from journal.domain.patches import Patch
from journal.domain.people import Person
from journal.domain.photos import AreaPhoto, Camera, Photo, Pin
from journal.domain.price_index import PriceIndex
from journal.domain.private_words import Private
from journal.domain.readings import Measure, Reading
from journal.domain.receipts import Receipt
from journal.domain.seams import Seam, SeamChange
from journal.domain.standard_views import ViewPhoto
from journal.domain.valuations import Comparable, Valuation
from journal.domain.wanted import Wanted
from journal.domain.work import Work


@dataclass(frozen=True, slots=True)
class Record:
    """Everything a journal holds, in reading order, removed things left out.

    Photos are sorted by time; pins and area photos name photos by number. ``withheld`` is what was
    taken out of it before it left the house (``journal.domain.privacy``): where prices are among
    it, no sum in it means anything.
    """

    car: Car
    milestones: tuple[Milestone, ...]
    drawing: Drawing
    cameras: tuple[Camera, ...]
    photos: tuple[Photo, ...]
    pins: tuple[Pin, ...]
    areas: tuple[Area, ...]
    area_photos: tuple[AreaPhoto, ...]
    entries: tuple[Entry, ...]
    receipts: tuple[Receipt, ...]
    work: tuple[Work, ...]
    seams: tuple[Seam, ...] = ()
    seam_changes: tuple[SeamChange, ...] = ()
    patches: tuple[Patch, ...] = ()
    anchors: tuple[AnchorPoint, ...] = ()
    measures: tuple[Measure, ...] = ()
    readings: tuple[Reading, ...] = ()
    people: tuple[Person, ...] = ()
    wanted: tuple[Wanted, ...] = ()
    valuations: tuple[Valuation, ...] = ()
    comparables: tuple[Comparable, ...] = ()
    price_indices: tuple[PriceIndex, ...] = ()
    claim_words: tuple[ClaimWords, ...] = ()
    standard_views: tuple[ViewPhoto, ...] = ()
    boxes: tuple[CoverBox, ...] = ()
    pairs: tuple[Pair, ...] = ()
    withheld: frozenset[Private] = frozenset()
    surveys: tuple[SurveySheet, ...] = ()
