"""Where an unplaced photo may belong, and why the program thinks so; it never pins by itself."""

from collections import Counter, defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, replace

from journal.domain.ids import PanelId, PhotoId

#: So many panels are proposed.
MOST = 3

#: From here on two photos look much alike, or somewhat: at 0.85 nearly half of the pairs show one
#: place, at 0.75 one in eight (measured on the made-up car's pictures, of 37 panels).
MUCH_ALIKE, SOMEWHAT_ALIKE = 0.85, 0.75

_HOUR, _DAY = 60.0, 1440.0
#: Past this the time between two photos says nothing of their place, in minutes.
_FAR = 14 * _DAY


@dataclass(frozen=True, slots=True)
class Proposal:
    """One panel that a photo may belong to.

    ``score`` orders the proposals of one photo. ``nearest`` is the photo pinned there that is
    nearest in time, ``apart`` by how many minutes this one is later (negative: earlier), None where
    the dates are too vague to say. ``alike`` is the photo pinned there that looks most like it,
    None where pixels are lacking, ``likeness`` from 0 to 1. ``share`` tells for how many of the
    photos asked about together this panel comes first.
    """

    panel_id: PanelId
    score: float
    nearest: PhotoId
    apart: float | None
    alike: PhotoId | None
    likeness: float
    share: int = 1

    @property
    def shown(self) -> PhotoId:
        """The photo to put beside the words: the look-alike, else the nearest in time."""
        return self.nearest if self.alike is None else self.alike


def reason(proposal: Proposal, label: str = "") -> str:
    """Why, in words: "20 minutes after a photo pinned to Sill, left; looks much like it".

    Without the panel's label, which stands above then: "20 minutes after a photo there; ...".
    """
    photo = f"a photo pinned to {label}" if label else "a photo there"
    time = "" if proposal.apart is None else _apart(proposal.apart)
    if proposal.alike is None or proposal.likeness < SOMEWHAT_ALIKE:
        look = ""
    else:
        look = "much" if proposal.likeness >= MUCH_ALIKE else "somewhat"
    if time and look:
        other = "it" if proposal.alike == proposal.nearest else "another"
        return f"{time} {photo}; looks {look} like {other}"
    if time:
        return f"{time} {photo}"
    if look:
        return f"looks {look} like {photo}"
    return "a faint guess: little like it, and far in time"


def _apart(minutes: float) -> str:
    """The time between as words before a noun: "20 minutes after", "" where it says nothing."""
    size, side = abs(minutes), "after" if minutes >= 0 else "before"
    if size > _FAR:
        return ""
    if size < 1:
        return "within a minute of"
    if size < 1.5 * _HOUR:
        return f"{_counted(size, 'minute')} {side}"
    if size < 1.5 * _DAY:
        return f"{_counted(size / _HOUR, 'hour')} {side}"
    return f"{_counted(size / _DAY, 'day')} {side}"


def _counted(size: float, unit: str) -> str:
    number = max(1, round(size))
    return f"1 {unit}" if number == 1 else f"{number} {unit}s"


def together(found: Mapping[PhotoId, tuple[Proposal, ...]]) -> tuple[Proposal, ...]:
    """What photos in hand have in common: the panels that come first for most of them.

    Each panel is given with the reasons of the photo that speaks for it most.
    """
    firsts: Counter[PanelId] = Counter()
    weights: defaultdict[PanelId, float] = defaultdict(float)
    best: dict[PanelId, Proposal] = {}
    for proposals in found.values():
        for rank, proposal in enumerate(proposals):
            panel_id = proposal.panel_id
            firsts[panel_id] += rank == 0
            weights[panel_id] += proposal.score
            if panel_id not in best or proposal.score > best[panel_id].score:
                best[panel_id] = proposal
    order = sorted(best, key=lambda panel_id: (-firsts[panel_id], -weights[panel_id]))
    return tuple(replace(best[panel_id], share=firsts[panel_id]) for panel_id in order[:MOST])
