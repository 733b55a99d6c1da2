"""The plan of all pictures: which camera, when by the true clock and by its own, in what file."""

import zlib
from collections import Counter, defaultdict
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from functools import cache

from journal.demo.areas_ends import ENDS
from journal.demo.areas_sides import SIDES
from journal.demo.cameras import CAMERAS, CameraStory, own_camera
from journal.demo.life import PARTS, PRINTS, WHOLE_CAR
from journal.demo.story import AreaShot, AreaStory, OtherShot
from journal.domain.photos import Role

#: When pictures in each light were taken, a day's first.
_HOURS = {
    "day": time(10, 20),
    "yard": time(13, 5),
    "tube": time(16, 10),
    "lamp": time(19, 40),
    "flash": time(21, 20),
}

#: What the owner wrote under some pictures of a look.
_WORDS = {
    "bought": "nothing to see, we thought",
    "rusty": "found it",
    "holed": "the screwdriver went through",
    "marked": "marked out for the cut",
    "cut": "cut back to sound metal",
    "behind": "primed inside, before it is shut",
    "inner": "new inner metal in",
    "clamped": "new metal clamped up",
    "tacked": "tacked",
    "welded": "welded, not yet dressed",
    "dressed": "dressed",
    "zinc": "in zinc primer",
    "red": "in red oxide",
    "sealed": "seam sealer on",
    "waxed": "wax coming out of the drains",
    "painted": "painted",
}


@dataclass(frozen=True, slots=True)
class Subject:
    """What a picture shows: a repair area in one look, or something else."""

    area: AreaStory | None
    shot: AreaShot | OtherShot
    frame: int = 0

    @property
    def seed(self) -> int:
        """A number of its own, the same every time."""
        words = repr((self.area.key if self.area else "", self.shot, self.frame))
        return zlib.crc32(words.encode())


@dataclass(frozen=True, slots=True)
class Planned:
    """One picture to be drawn. ``true`` is when it was taken, ``shown`` what the camera wrote."""

    path: str
    camera: CameraStory
    true: datetime | None
    shown: datetime | None
    portrait: bool
    subject: Subject

    @property
    def role(self) -> Role | None:
        """What it shows of its repair area."""
        return self.subject.shot.role if isinstance(self.subject.shot, AreaShot) else None

    @property
    def panel(self) -> str:
        """The label of the panel it shows, "" for none."""
        shot, area = self.subject.shot, self.subject.area
        if area:
            return area.panels[0]
        return shot.panel if isinstance(shot, OtherShot) else ""

    @property
    def caption(self) -> str:
        """What the owner wrote under it, "" for most."""
        shot, area = self.subject.shot, self.subject.area
        if isinstance(shot, OtherShot):
            return shot.caption
        words = _WORDS.get(shot.look, "")
        if area is None or not words or self.subject.seed % 3:
            return ""
        return f"{area.panels[0]}: {words}"

    @property
    def said(self) -> str:
        """Its date in the owner's words, where nothing else knows it."""
        return self.subject.shot.said if isinstance(self.subject.shot, OtherShot) else ""


def _subjects() -> dict[date, list[Subject]]:
    """All subjects by day, in the order they were taken."""
    days: dict[date, list[Subject]] = defaultdict(list)
    for other in (*WHOLE_CAR, *PARTS):
        days[other.day].append(Subject(None, other))
    for area in (*SIDES, *ENDS):
        for shot in area.shots:
            days[shot.day].extend(Subject(area, shot, frame) for frame in range(shot.frames))
    hours = list(_HOURS)
    for subjects in days.values():
        subjects.sort(key=lambda s: hours.index(s.shot.light))
    return dict(sorted(days.items()))


def _moments(day: date, subjects: list[Subject]) -> list[datetime]:
    """When each was taken; the frames of a burst lie within one second."""
    moments: list[datetime] = []
    clock = datetime.combine(day, time(0))
    for subject in subjects:
        if subject.frame:
            moments.append(moments[-1] + timedelta(milliseconds=317))
            continue
        step = timedelta(seconds=95 + subject.seed % 500)
        start = datetime.combine(day, _HOURS[subject.shot.light])
        start += timedelta(minutes=day.toordinal() * 37 % 40, milliseconds=subject.seed % 600)
        clock = max(clock + step, start)
        moments.append(clock)
    return moments


@cache
def plan() -> tuple[Planned, ...]:
    """Every picture of the demo, in the order they were taken, the scanned prints last."""
    numbers: Counter[str] = Counter({"L20": 412, "P4": 87})
    planned = []
    for day, subjects in _subjects().items():
        for subject, true in zip(subjects, _moments(day, subjects), strict=True):
            key = subject.shot.camera or own_camera(day)
            if subject.frame or (isinstance(subject.shot, AreaShot) and subject.shot.frames > 1):
                key = "C3" if day < date(2020, 9, 1) else "C5"
            numbers[key] += 1
            planned.append(_planned(subject, CAMERAS[key], true, numbers[key]))
    for index, shot in enumerate(PRINTS):
        camera = CAMERAS["flatbed" if index % 3 == 2 else "scan"]
        scanned = datetime(2018, 5, 20, 20, 10) + timedelta(minutes=3 * index)
        numbers["print"] += 1
        path = f"{camera.folder}/{camera.naming.format(number=numbers['print'])}.jpg"
        planned.append(Planned(path, camera, None, scanned, False, Subject(None, shot)))
    return tuple(planned)


def _planned(subject: Subject, camera: CameraStory, true: datetime, number: int) -> Planned:
    shown = true - camera.ahead
    name = camera.naming
    stem = name.format(number=number) if "{" in name else shown.strftime(name)
    if subject.frame:
        stem += f"_{subject.frame}"
    suffix = ".JPG" if "{" in name else ".jpg"
    portrait = camera.upright and subject.seed % 6 == 0 and subject.shot.light != "yard"
    if isinstance(subject.shot, OtherShot) and subject.shot.subject == "car":
        portrait = False
    path = f"{camera.folder}/{stem}{suffix}"
    return Planned(path, camera, true, shown, portrait, subject)
