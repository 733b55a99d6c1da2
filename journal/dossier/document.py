"""What a dossier holds, as plain values in the order they are read; texts are ready to print."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from journal.domain.car import Car
from journal.domain.cuts import Choices, Cut
from journal.domain.drawing import Drawing
from journal.domain.homographies import Matrix
from journal.domain.ids import AreaId, PanelId, PhotoId, Sha256
from journal.domain.patches import Patch
from journal.domain.photos import Photo, Role
from journal.domain.seams import Seam, SeamChange


@dataclass(frozen=True, slots=True)
class Labelled:
    """A value under its name: "Chassis number", "HR 10482"."""

    label: str
    value: str


@dataclass(frozen=True, slots=True)
class Moment:
    """Something at a date: a milestone, an entry."""

    date: str
    title: str
    text: str


@dataclass(frozen=True, slots=True)
class Shown:
    """A photo the dossier shows.

    ``number`` counts from 1 in the order of the pages, the cover's own aside. ``known`` says how
    its date is known; ``alt`` is what a screen reader says in the picture's place.
    """

    number: int
    photo: Photo
    role: Role | None
    date: str
    known: str
    alt: str


@dataclass(frozen=True, slots=True)
class Step:
    """A repair area's coming to a stage, and what stands behind that statement."""

    date: str
    stage: str
    note: str
    behind: str


@dataclass(frozen=True, slots=True)
class Bought:
    """What one receipt paid for in a repair area; ``number`` is the receipt's in this document."""

    number: int
    supplier: str
    date: str
    items: str
    paper: str


@dataclass(frozen=True, slots=True)
class Warned:
    """A caution: what it is about, what it says, and the numbers of the areas it is about."""

    title: str
    text: str
    areas: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Measured:
    """One place measured: its numbers before and after, the difference, and what is said of it."""

    name: str
    before: str
    after: str
    difference: str
    unit: str
    remark: str


@dataclass(frozen=True, slots=True)
class Metalwork:
    """What was welded, let in and measured in a repair area, in sentences and rows.

    ``bearings`` are the sentences on what lies near load-bearing mountings, ``cautions`` the keys
    of the cautions that they give reason for.
    """

    seams: tuple[str, ...] = ()
    patches: tuple[str, ...] = ()
    measured: tuple[Measured, ...] = ()
    diagonals: tuple[str, ...] = ()
    bearings: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Cited:
    """Evidence of one grade behind a claim.

    ``refs`` are the numbers it has in this document ("P3", "R24"), ``more`` what is said of the
    rest of it: "2 more in the journal", "3 days".
    """

    grade: str
    refs: tuple[str, ...]
    more: str = ""


@dataclass(frozen=True, slots=True)
class Stated:
    """A claim as it is printed: its number ("3.2"), the sentence, and what stands behind it.

    ``alone`` tells that it is the owner's word and nothing else, ``own`` that the sentence is the
    owner's.
    """

    number: str
    words: str
    cited: tuple[Cited, ...]
    alone: bool
    own: bool


@dataclass(frozen=True, slots=True)
class AreaStory:
    """All that the dossier says of one repair area; ``number`` counts from 1 in order of time."""

    number: int
    area_id: AreaId
    name: str
    panels: str
    standing: str
    found: str
    done: str
    steps: tuple[Step, ...]
    entries: tuple[Moment, ...]
    shown: tuple[Shown, ...]
    bought: tuple[Bought, ...]
    figures: tuple[Labelled, ...]
    evidence: tuple[str, ...]
    lacking: tuple[str, ...]
    cautions: tuple[Warned, ...]
    metal: Metalwork = Metalwork()
    claims: tuple[Stated, ...] = ()
    left_out: int = 0


@dataclass(frozen=True, slots=True)
class Paid:
    """A receipt as the list of receipts has it; ``sums`` is the total, and its own currency's."""

    number: int
    date: str
    supplier: str
    items: str
    total: str
    paper: str
    stands_in: str
    papers: tuple[Sha256, ...]


@dataclass(frozen=True, slots=True)
class Grid:
    """A table: its heading, column names, rows and the row of totals, all as text."""

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    total: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Costs:
    """Money and hours: the figures, what they mean, tables, and every receipt."""

    figures: tuple[Labelled, ...]
    remarks: tuple[str, ...]
    grids: tuple[Grid, ...]
    receipts: tuple[Paid, ...]


@dataclass(frozen=True, slots=True)
class Lack:
    """Gaps of one kind under their heading; each is what is lacking and why it matters."""

    heading: str
    items: tuple[Labelled, ...]


@dataclass(frozen=True, slots=True)
class Passage:
    """A heading with paragraphs under it."""

    heading: str
    paragraphs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PanelMark:
    """What the drawing shows on a panel: its least advanced stage, and its areas' numbers."""

    panel_id: PanelId
    stage: str
    areas: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class ViewShown:
    """A standard view of the car: its name, and its photo, None where none was chosen."""

    name: str
    shown: Shown | None


@dataclass(frozen=True, slots=True)
class PairShown:
    """A before and an after photo of one repair area, side by side.

    ``matrix`` leads a place on the after photo to its place on the before, in shares of the photos
    as they are shown; None where they aren't laid over each other. ``how`` says how that is known.
    """

    area: int
    name: str
    before: Shown
    after: Shown
    caption: str
    matrix: Matrix | None = None
    how: str = ""


@dataclass(frozen=True, slots=True)
class Then:
    """The drawing as it stood at the end of a day: what is said of the day, and every panel."""

    heading: str
    marks: tuple[PanelMark, ...]


@dataclass(frozen=True, slots=True)
class MetalMap:
    """The metal replaced, to be drawn on the views, and a table of it by repair area.

    ``numbers`` are those of the repair areas in this document.
    """

    patches: tuple[Patch, ...]
    seams: tuple[Seam, ...]
    seam_changes: tuple[SeamChange, ...]
    numbers: Mapping[AreaId, int]
    grid: Grid


@dataclass(frozen=True, slots=True)
class ChartShown:
    """A chart as SVG, with its title and what a screen reader says for it."""

    title: str
    svg: bytes
    alt: str


@dataclass(frozen=True, slots=True)
class Listed:
    """An original in the index that is on no page: a photo of the journal that isn't shown."""

    date: str
    known: str
    name: str
    sha256: Sha256


@dataclass(frozen=True, slots=True)
class Dossier:
    """The whole document, before it is laid out on pages.

    A part that the choices leave out is empty. ``withheld`` says what is withheld, a sentence each.
    """

    car: Car
    made_on: date
    program_version: str
    choices: Choices
    subtitle: str
    period: str
    cover: Shown | None
    figures: tuple[Labelled, ...]
    identity: tuple[Labelled, ...]
    milestones: tuple[Moment, ...]
    drawing: Drawing
    marks: tuple[PanelMark, ...]
    areas: tuple[AreaStory, ...]
    notes: tuple[Moment, ...]
    costs: Costs
    lacks: tuple[Lack, ...]
    cautions: tuple[Warned, ...]
    method: tuple[Passage, ...]
    was: Then | None = None
    views: tuple[ViewShown, ...] = ()
    condition: Grid | None = None
    metal_map: MetalMap | None = None
    pairs: tuple[PairShown, ...] = ()
    remaining: tuple[Labelled, ...] = ()
    people: Grid | None = None
    estimate: Grid | None = None
    values: tuple[Grid, ...] = ()
    charts: tuple[ChartShown, ...] = ()
    withheld: tuple[str, ...] = ()
    others: tuple[Listed, ...] = ()

    @property
    def cut(self) -> Cut:
        """For whom it is."""
        return self.choices.cut

    @property
    def shown(self) -> tuple[Shown, ...]:
        """Every photo shown, once each, in the order of the pages."""
        rows = [self.cover] if self.cover else []
        rows += [view.shown for view in self.views if view.shown]
        rows += [photo for pair in self.pairs for photo in (pair.before, pair.after)]
        rows += [shown for area in self.areas for shown in area.shown]
        once: dict[PhotoId, Shown] = {}
        for row in sorted(rows, key=lambda shown: shown.number):
            once.setdefault(row.photo.id, row)
        return tuple(once.values())


@dataclass(frozen=True, slots=True)
class DossierReport:
    """What came of making a dossier.

    ``photos`` is how many pictures are on its pages. ``notes`` are sentences on what could not be
    shown as it should be, "" never among them; ``withheld`` on what is not in it by choice.
    """

    path: Path
    pages: int
    photos: int
    notes: tuple[str, ...]
    withheld: tuple[str, ...] = ()
