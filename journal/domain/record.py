"""The whole record of a car as plain values: what gaps, sums and the dossier are made of."""

from dataclasses import dataclass

from journal.domain.anchors import AnchorPoint
from journal.domain.areas import Area, Entry
from journal.domain.car import Car, Milestone
from journal.domain.drawing import Drawing
from journal.domain.patches import Patch
from journal.domain.people import Person
from journal.domain.photos import AreaPhoto, Camera, Photo, Pin
from journal.domain.readings import Measure, Reading
from journal.domain.receipts import Receipt
from journal.domain.seams import Seam, SeamChange
from journal.domain.wanted import Wanted
from journal.domain.work import Work


@dataclass(frozen=True, slots=True)
class Record:
    """Everything a journal holds, in reading order, removed things left out.

    Photos are sorted by time; pins and area photos name photos by number.
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
