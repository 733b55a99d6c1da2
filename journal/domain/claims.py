"""Claims: what the record supports of each repair area, in plain sentences, with the evidence.

Which record stands behind which claim (common practice, no source): a photo, hours or a note of
the time between two stages stand behind the stage they show, those of a stage's own day behind
it; photos from before behind what was found, photos from after behind what is finished; a receipt
by what it bought.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from decimal import Decimal

from journal.domain.areas import DEFAULT_STAGES, Area, Entry, StageChange
from journal.domain.claim_texts import Told, sentence_of
from journal.domain.claim_words import ClaimWords
from journal.domain.evidence import (
    Grade,
    Piece,
    is_word_alone,
    of_photo,
    of_reading,
    of_receipt,
    put_right,
    sorted_pieces,
)
from journal.domain.ids import AreaId, CameraId, PhotoId
from journal.domain.patches import Patch
from journal.domain.photos import AreaPhoto, Photo, Role
from journal.domain.readings import Measure, Moment, Reading
from journal.domain.receipts import Category, Receipt
from journal.domain.record import Record
from journal.domain.seams import Seam, SeamChange, SeamState
from journal.domain.when import When
from journal.domain.work import Work

FOUND, CUT, LET_IN, WELDED, DRESSED, PROTECTED, FINISHED = DEFAULT_STAGES

#: The claim that readings from before and after make; it is no stage.
MEASURED = "measured"

#: Which claim a thing bought speaks for; what isn't here speaks for the area as a whole.
_BOUGHT_FOR = {
    Category.PANELS: LET_IN,
    Category.CONSUMABLES: WELDED,
    Category.PAINT: PROTECTED,
}

_A_DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Claim:
    """One statement on a repair area.

    ``key`` is the stage it is about, or "measured". ``words`` is what the program says, ``own``
    what the owner says in its place ("" for nothing). ``when`` is the date it states, None where
    the record has none. A claim ``left_out`` isn't printed, and the dossier says so.
    """

    area_id: AreaId
    key: str
    words: str
    when: When | None
    pieces: tuple[Piece, ...]
    own: str = ""
    left_out: bool = False

    @property
    def said(self) -> str:
        """The sentence as it is printed."""
        return self.own or self.words

    @property
    def is_word_alone(self) -> bool:
        """Whether only the owner's word stands behind it."""
        return is_word_alone(self.pieces)

    @property
    def photo_ids(self) -> tuple[PhotoId, ...]:
        """The photos behind it."""
        return tuple(PhotoId(piece.id) for piece in self.pieces if piece.kind == "photo")


@dataclass(frozen=True, slots=True)
class AreaClaims:
    """The claims on one repair area in order of the work, and evidence that none of them takes."""

    area_id: AreaId
    claims: tuple[Claim, ...]
    loose: tuple[Piece, ...]


def all_claims(record: Record, lost: Collection[PhotoId] = frozenset()) -> dict[AreaId, AreaClaims]:
    """The claims on every repair area, with the owner's own words for them.

    ``lost`` are photos whose original isn't there any more: they show nothing.
    """
    sources = _by_area(record, lost)
    words = {(row.area_id, row.claim): row for row in record.claim_words}
    made = {}
    for area in record.areas:
        found = _claims(area, sources[area.id], record.car.stages)
        spoken_of = tuple(_worded(claim, words.get((area.id, claim.key))) for claim in found.claims)
        made[area.id] = replace(found, claims=spoken_of)
    return made


def claims_of(
    record: Record, area_id: AreaId, lost: Collection[PhotoId] = frozenset()
) -> AreaClaims:
    """The claims on one repair area; none where there is no such area."""
    return all_claims(record, lost).get(area_id, AreaClaims(area_id, (), ()))


def _worded(claim: Claim, words: ClaimWords | None) -> Claim:
    if words is None:
        return claim
    return replace(claim, own=words.words.strip(), left_out=words.left_out)


# --- what belongs to an area ---


@dataclass(slots=True)
class Sources:
    """All of the record that speaks of one repair area."""

    photos: list[tuple[Role, Photo]]
    receipts: list[Receipt]
    work: list[Work]
    entries: list[Entry]
    seams: list[Seam]
    seam_changes: list[SeamChange]
    patches: list[Patch]
    measures: list[Measure]
    readings: list[Reading]
    corrected: frozenset[CameraId]


def _by_area(record: Record, lost: Collection[PhotoId]) -> defaultdict[AreaId, Sources]:
    corrected = put_right(record.cameras)
    found: defaultdict[AreaId, Sources] = defaultdict(
        lambda: Sources([], [], [], [], [], [], [], [], [], corrected)
    )
    there = (photo for photo in record.photos if photo.id not in lost)
    _photos(there, record.area_photos, found)
    for receipt in record.receipts:
        for area_id in {s.area_id: None for line in receipt.lines for s in line.shares}:
            found[area_id].receipts.append(receipt)
    for work in record.work:
        for area_id in {share.area_id: None for share in work.shares}:
            found[area_id].work.append(work)
    for entry in record.entries:
        if entry.area_id is not None:
            found[entry.area_id].entries.append(entry)
    _metal(record, found)
    return found


def _photos(
    photos: Iterable[Photo], chosen: Iterable[AreaPhoto], found: defaultdict[AreaId, Sources]
) -> None:
    by_id = {photo.id: photo for photo in photos}
    for row in chosen:
        if row.photo_id in by_id:
            found[row.area_id].photos.append((row.role, by_id[row.photo_id]))


def _metal(record: Record, found: defaultdict[AreaId, Sources]) -> None:
    owner: dict[int, AreaId] = {}
    for seam in record.seams:
        found[seam.area_id].seams.append(seam)
        owner[seam.id] = seam.area_id
    for change in record.seam_changes:
        if change.seam_id in owner:
            found[owner[change.seam_id]].seam_changes.append(change)
    for patch in record.patches:
        found[patch.area_id].patches.append(patch)
    measured: dict[int, AreaId] = {}
    for measure in record.measures:
        if measure.area_id is not None:
            found[measure.area_id].measures.append(measure)
            measured[measure.id] = measure.area_id
    for reading in record.readings:
        if reading.measure_id in measured:
            found[measured[reading.measure_id]].readings.append(reading)


# --- the claims on one area ---


def _claims(area: Area, has: Sources, stages: Sequence[str]) -> AreaClaims:
    keys = _keys(area, has, stages)
    behind: dict[str, list[Piece]] = {key: [] for key in keys}
    loose: list[Piece] = []
    for key, piece in _pieces(area, has, stages):
        behind.get(key, loose).append(piece)
    made = []
    for key in keys:
        changes = [change for change in area.changes if change.stage == key]
        told = Told(area, key, changes, has.patches, has.seams, has.seam_changes, stages)
        words, when = sentence_of(told, has.measures, has.readings)
        pieces = sorted_pieces([*behind[key], *_own_word(area, key, changes, stages)])
        made.append(Claim(area.id, key, words, when, pieces))
    used = {piece for claim in made for piece in claim.pieces}
    return AreaClaims(area.id, tuple(made), sorted_pieces(p for p in loose if p not in used))


def _keys(area: Area, has: Sources, stages: Sequence[str]) -> tuple[str, ...]:
    """The claims that the record gives reason for, in the order of the journal's stages."""
    reached = {change.stage for change in area.changes}
    if stages and (area.found.strip() or any(role is Role.BEFORE for role, _ in has.photos)):
        reached.add(stages[0])
    order = list(dict.fromkeys((*stages, *DEFAULT_STAGES)))
    beyond = any(_place(stage, order) > _place(LET_IN, order) for stage in reached)
    # A patch with no day may be drawn ahead of the work.
    if any(patch.when for patch in has.patches) or (has.patches and beyond):
        reached.add(LET_IN)
    if any(change.state.rank >= SeamState.WELDED.rank for change in has.seam_changes):
        reached.add(WELDED)
    last = stages[-1] if stages else FINISHED
    ordered = sorted(reached, key=lambda key: (key == last, _place(key, order)))
    if has.readings:
        ordered.insert(len(ordered) - (bool(ordered) and ordered[-1] == last), MEASURED)
    return tuple(ordered)


def _place(key: str, order: Sequence[str]) -> int:
    return order.index(key) if key in order else len(order)


def _own_word(
    area: Area, key: str, changes: Sequence[StageChange], stages: Sequence[str]
) -> Iterable[Piece]:
    """What the owner's record itself says: the date of a stage, the words on what was found."""
    for change in changes:
        yield Piece(Grade.WORD, "stage", change.id, change.when)
    words = area.found if stages and key == stages[0] else ""
    if not changes and (words.strip() or key in (LET_IN, WELDED)) and key != MEASURED:
        yield Piece(Grade.WORD, "words", area.id)


def _pieces(area: Area, has: Sources, stages: Sequence[str]) -> Iterable[tuple[str, Piece]]:
    """Every piece of evidence with the claim it stands behind, more than once where it may."""
    first, last = (stages[0], stages[-1]) if stages else (FOUND, FINISHED)
    yield from _photo_pieces(area, has, first, last)
    for receipt in has.receipts:
        for key in _bought_for(receipt, area.id, has.receipts):
            yield key, of_receipt(receipt)
    for work in has.work:
        for key in _shown_at(area, work.when):
            yield key, Piece(Grade.HOURS, "work", work.id, work.when)
    for entry in has.entries:
        for key in _shown_at(area, entry.when):
            yield key, Piece(Grade.WORD, "entry", entry.id, entry.when)
    for reading in has.readings:
        yield MEASURED, of_reading(reading)
        if reading.moment is Moment.BEFORE:
            yield first, of_reading(reading)
        elif reading.moment is Moment.AFTER:
            yield last, of_reading(reading)


def _photo_pieces(area: Area, has: Sources, first: str, last: str) -> Iterable[tuple[str, Piece]]:
    by_id = {photo.id: photo for _, photo in has.photos}
    for role, photo in has.photos:
        piece = of_photo(photo, has.corrected)
        if role is Role.BEFORE:
            yield first, piece
        elif role is Role.AFTER and not _earlier(photo, area):
            yield last if area.stage in ("", last) else area.stage, piece
        else:
            for key in _shown_at(area, photo.when):
                yield key, piece
    for change in has.seam_changes:
        if change.state.rank >= SeamState.WELDED.rank:
            for photo_id in change.photo_ids:
                if photo_id in by_id:
                    yield WELDED, of_photo(by_id[photo_id], has.corrected)


def _earlier(photo: Photo, area: Area) -> bool:
    """Whether a photo was surely taken before the stage that an area came to last."""
    if photo.when is None or not area.changes:
        return False
    return photo.when.latest < area.changes[-1].when.earliest


def _bought_for(receipt: Receipt, area_id: AreaId, others: Iterable[Receipt]) -> Iterable[str]:
    """The claims that what was bought speaks for, "" for the area as a whole.

    What went back was never built in: a refund speaks for no claim, nor does a purchase for what
    as much was taken back of.
    """
    if receipt.refund_of is not None:
        return ("",)
    bought = _quantities(receipt, area_id)
    gone: defaultdict[Category, Decimal] = defaultdict(Decimal)
    for refund in (other for other in others if other.refund_of == receipt.id):
        for category, quantity in _quantities(refund, area_id).items():
            gone[category] += quantity
    kept = [category for category, quantity in bought.items() if quantity > gone[category]]
    return dict.fromkeys(_BOUGHT_FOR.get(category, "") for category in kept) or ("",)


def _quantities(receipt: Receipt, area_id: AreaId) -> Mapping[Category, Decimal]:
    """How much of each category a receipt has for a repair area."""
    found: defaultdict[Category, Decimal] = defaultdict(Decimal)
    for line in receipt.lines:
        if any(share.area_id == area_id for share in line.shares):
            found[line.category] += abs(line.quantity)
    return found


def _shown_at(area: Area, when: When | None) -> Iterable[str]:
    """The stages that something of that date shows: those of its time, else the one reached then.

    "" where the date doesn't say.
    """
    if when is None or when.earliest == datetime.min or when.latest == datetime.max:
        return ("",)
    same = [c for c in area.changes if _within(when, c.when)]
    before = [c for c in area.changes if c.when.latest < when.earliest]
    after = [c for c in area.changes if c.when.earliest > when.latest]
    if same:
        return _told_apart(same)
    if len(before) + len(after) == len(area.changes) and before:
        return (before[-1].stage,)
    return ("",)


def _told_apart(changes: Sequence[StageChange]) -> tuple[str, ...]:
    """Of the stages whose time holds something, those it shows: of its day, or the only one."""
    of_the_day = [c.stage for c in changes if c.when.latest - c.when.earliest < _A_DAY]
    stages = tuple(dict.fromkeys(of_the_day or [c.stage for c in changes]))
    return stages if of_the_day or len(stages) == 1 else ("",)


def _within(inner: When, outer: When) -> bool:
    return outer.earliest <= inner.earliest and inner.latest <= outer.latest
