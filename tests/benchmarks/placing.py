"""How often a photo's panel is proposed first, or among three, on the made-up car's pictures.

Run it: ``python -m tests.benchmarks.placing [DEMO_JOURNAL]``; without a journal one is made first.
The truth is the plan that the pictures were drawn by. Four questions:

- sitting with one pin: one photo per panel of the sitting is pinned, the others are asked about;
- busy sitting with one pin: the same with the pictures dated anew, shuffled into visits of twelve
  photos of four panels, three minutes apart: time alone can't answer there;
- whole sitting unpinned: none of the sitting's photos is pinned; photos of a panel that no other
  sitting shows are left out, nothing could propose it;
- time only: the second and third without pixels.

The journal named is copied first, without what was kept of its pictures' looks.

The pictures are drawn, one hand's framing in every one: real photos vary more. The milliseconds are
of ``actions.proposals``, features kept, sitting by sitting, then once with all features to be made.
"""

import random
import shutil
import sqlite3
import sys
import tempfile
import time
from collections import defaultdict
from collections.abc import Iterable, Sequence
from contextlib import closing
from dataclasses import dataclass, replace
from pathlib import Path
from typing import NamedTuple

import numpy as np

from journal.actions import photos, pictures, timeline
from journal.actions.demo import make_demo
from journal.actions.journals import open_journal
from journal.actions.proposals import proposals
from journal.actions.session import Session
from journal.demo.plan import plan
from journal.domain.photos import Photo
from journal.vision import likeness, placing

_START = np.datetime64("1970-01-01")
_BUSY_PHOTOS, _BUSY_PANELS, _BUSY_STEP = 12, 4, 3.0


@dataclass(frozen=True)
class Shot:
    """A picture with the truth about it."""

    sitting: int
    panel: int
    taken: placing.Taken
    looks: np.ndarray


class Score(NamedTuple):
    """How many were proposed first, among three, and asked about."""

    first: int
    three: int
    asked: int

    def words(self) -> str:
        if not self.asked:
            return "nothing to ask about"
        first, three = self.first / self.asked, self.three / self.asked
        return f"top-1 {first:6.1%}   top-3 {three:6.1%}   of {self.asked}"


def _say(text: str) -> None:
    sys.stdout.write(f"{text}\n")


def _shots(session: Session) -> list[Shot]:
    panels = {Path(one.path).name: one.panel for one in plan()}
    numbers = {label: n for n, label in enumerate(sorted(set(panels.values()) - {""}), 1)}
    made = []
    for number, sitting in enumerate(timeline.sittings(session)):
        for photo in photos.photos(session, sitting.photo_ids):
            panel = panels.get(photo.name, "")
            grey = likeness.small_grey(pictures.thumbnail(session, photo) or b"")
            if panel and grey is not None:
                looks = likeness.unpack_all([likeness.pack(likeness.features(grey))])[0]
                made.append(Shot(number, numbers[panel], _taken(photo), looks))
    return made


def _taken(photo: Photo) -> placing.Taken:
    if photo.when is None:
        return placing.Taken(photo.id, *placing.UNDATED)
    ends = (np.datetime64(photo.when.earliest), np.datetime64(photo.when.latest))
    return placing.Taken(photo.id, *((end - _START) / np.timedelta64(1, "m") for end in ends))


def _busy(shots: Sequence[Shot], seed: int) -> list[Shot]:
    """The same pictures in busy visits: each takes three of four panels by turns."""
    chance = random.Random(seed)
    by_panel = defaultdict(list)
    for shot in shots:
        by_panel[shot.panel].append(shot)
    for found in by_panel.values():
        found.sort(key=lambda shot: shot.taken.earliest)
    made, sitting = [], 0
    while any(by_panel.values()):
        there = sorted(panel for panel, left in by_panel.items() if left)
        chosen = chance.sample(there, min(_BUSY_PANELS, len(there)))
        each = _BUSY_PHOTOS // _BUSY_PANELS
        visit = [by_panel[panel].pop(0) for panel in chosen for _ in range(each) if by_panel[panel]]
        chance.shuffle(visit)
        for place, shot in enumerate(visit):
            minute = sitting * 7 * 1440 + place * _BUSY_STEP
            taken = replace(shot.taken, earliest=minute, latest=minute)
            made.append(replace(shot, sitting=sitting, taken=taken))
        sitting += 1
    return made


def _asked(shots: Sequence[Shot], *, one_pin: bool, pixels: bool = True) -> Score:
    by_sitting = defaultdict(list)
    for shot in shots:
        by_sitting[shot.sitting].append(shot)
    first = three = asked = 0
    for number, sitting in by_sitting.items():
        others = [shot for shot in shots if shot.sitting != number]
        ones: dict[int, Shot] = {}
        if one_pin:
            for shot in sitting:
                ones.setdefault(shot.panel, shot)
        pinned = [*others, *ones.values()]
        known = {shot.panel for shot in pinned}
        questions = [s for s in sitting if s.panel in known and s is not ones.get(s.panel)]
        for panel, found in _answers(questions, pinned, pixels=pixels):
            first += found[:1] == [panel]
            three += panel in found
            asked += 1
    return Score(first, three, asked)


def _answers(
    questions: Iterable[Shot], shots: Sequence[Shot], *, pixels: bool
) -> Iterable[tuple[int, list[int]]]:
    looks = {shot.taken.photo_id: shot.looks for shot in shots}
    pinned = placing.Pinned(
        np.array([s.taken.photo_id for s in shots], np.int64),
        np.array([s.panel for s in shots], np.int64),
        np.array([s.taken.earliest for s in shots]),
        np.array([s.taken.latest for s in shots]),
    )
    for shot in questions:
        rows = pinned.nearest(shot.taken)
        theirs = np.stack([looks[n] for n in pinned.photo_ids[rows]])
        alike = likeness.likeness(shot.looks, theirs) if pixels else None
        found = placing.propose(shot.taken, pinned, rows, alike)
        yield shot.panel, [proposal.panel_id for proposal in found]


def _milliseconds(session: Session) -> tuple[float, float, float]:
    """For a photo: features all to be made, kept, and each asked about alone."""
    sittings = [sitting.photo_ids for sitting in timeline.sittings(session)]
    count = sum(len(ids) for ids in sittings)
    everything = [photo for ids in sittings for photo in ids]
    began = time.perf_counter()
    proposals(session, everything)
    made = time.perf_counter() - began
    began = time.perf_counter()
    for ids in sittings:
        proposals(session, ids)
    by_sitting = time.perf_counter() - began
    began = time.perf_counter()
    for photo_id in everything:
        proposals(session, [photo_id])
    alone = time.perf_counter() - began
    return tuple(1000 * seconds / count for seconds in (made, by_sitting, alone))


def _report(folder: Path) -> None:
    with closing(sqlite3.connect(folder / "previews.db", isolation_level=None)) as kept:
        kept.execute("DROP TABLE IF EXISTS features")
    with open_journal(folder) as session:
        shots = _shots(session)
        panels = len({shot.panel for shot in shots})
        _say(f"{len(shots)} drawn pictures of {panels} panels")
        _say(f"sitting with one pin       {_asked(shots, one_pin=True).words()}")
        busy = _busy(shots, 1)
        _say(f"busy sitting with one pin  {_asked(busy, one_pin=True).words()}")
        _say(f"  the same, time only      {_asked(busy, one_pin=True, pixels=False).words()}")
        _say(f"whole sitting unpinned     {_asked(shots, one_pin=False).words()}")
        _say(f"  the same, time only      {_asked(shots, one_pin=False, pixels=False).words()}")
        made, by_sitting, alone = _milliseconds(session)
        _say(f"a photo: {by_sitting:.1f} ms in its sitting, {alone:.1f} ms alone,")
        _say(f"{made:.1f} ms where every feature has to be made first")
        _say("goals: one pin 95 % / 99 %, unpinned top-3 85 %, 20 ms")


def main() -> None:
    """Report on the journal named, else on a demo journal made for it."""
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch) / "Halden Rook"
        if len(sys.argv) > 1:
            shutil.copytree(sys.argv[1], folder)
        else:
            make_demo(folder)
        _report(folder)


if __name__ == "__main__":
    main()
