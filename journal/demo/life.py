"""The car, its people, its turning points, and the pictures that belong to no repair area."""

from datetime import date

from journal.demo.story import MilestoneStory, OtherShot
from journal.domain.car import Car, MilestoneKind

OWNER = "Runa Mellgard"
HELPER = "Edo Tarsk"
INSPECTOR = "Th. Ravensund"
PEOPLE = {"R": OWNER, "E": HELPER, "I": INSPECTOR}

CAR = Car(
    title="Halden Rook",
    body="saloon",
    wheelbase_mm=2490,
    length_mm=4230,
    currency="EUR",
    maker="Halden",
    model="Rook 1500",
    year="1969",
    chassis_number="HR4-017326",
    engine_number="15C-22871",
    registration="RK 4069",
    colour="Marsh green",
    owner=OWNER,
    story="The Rook had three owners in one village and stood in the last one's barn from 1993. I"
    " bought it in March 2018 for its straight doors and its shine. The shine was six weeks old. "
    "What follows is what was under it, and what my brother-in-law Edo and I put there instead.",
)

MILESTONES = (
    MilestoneStory(MilestoneKind.ACQUIRED, "2018-03-17", "Brought home on Edo's trailer."),
    MilestoneStory(MilestoneKind.STRIPPED, "2018-09-22", "Bare shell on four stands."),
    MilestoneStory(MilestoneKind.OTHER, "2019-03-12", "First visit of the inspection engineer."),
    MilestoneStory(MilestoneKind.OTHER, "2020-11~", "Last weld on the shell."),
    MilestoneStory(MilestoneKind.ON_WHEELS, "2021-03-27", "Axles back under it."),
    MilestoneStory(MilestoneKind.PAINTED, "2021-07-09", "Home from the paint shop."),
    MilestoneStory(MilestoneKind.ON_THE_ROAD, "2022-05-14", "Inspected, registered, insured."),
)


def _d(text: str) -> date:
    return date.fromisoformat(text)


def _car(
    day: str, state: str, light: str, azimuth: float, caption: str, camera: str = ""
) -> OtherShot:
    return OtherShot(_d(day), "car", state, light, "", caption, azimuth=azimuth, camera=camera)


def _part(
    day: str,
    name: str,
    light: str,
    panel: str,
    caption: str,
    *,
    clean: bool = False,
    camera: str = "",
) -> OtherShot:
    return OtherShot(_d(day), "scene", name, light, panel, caption, clean, camera=camera)


WHOLE_CAR = (
    _car("2018-03-17", "bought", "yard", 38, "The day we fetched it."),
    _car("2018-03-17", "bought", "yard", 92, ""),
    _car("2018-03-18", "bought", "yard", 140, "From behind it still looks honest."),
    _car("2018-03-18", "bought", "yard", -52, ""),
    _car("2018-06-02", "bought", "day", 30, "Into the workshop."),
    _car("2018-07-14", "undressed", "tube", 44, "Bumpers, lamps and glass off.", "L20"),
    _car("2018-09-22", "shell", "tube", 42, "Bare shell."),
    _car("2018-09-22", "shell", "tube", -90, "", "P4"),
    _car("2019-06-08", "half welded", "day", 132, "Both sills on.", "L20"),
    _car("2020-05-16", "half welded", "tube", -138, "Rear end done.", "L20"),
    _car("2020-11-29", "welded", "lamp", 36, "No holes left that we know of."),
    _car("2021-03-27", "rolling", "day", 40, "Back on its wheels."),
    _car("2021-03-27", "rolling", "day", -130, "", "P4"),
    _car("2021-06-05", "primer", "tube", 35, "At the paint shop, in primer."),
    _car("2021-07-09", "painted", "yard", 38, "Home, in colour."),
    _car("2021-07-09", "painted", "yard", -88, ""),
    _car("2021-07-10", "painted", "day", 142, "", "L20"),
    _car("2021-11-20", "painted", "lamp", -40, "Loom in, glass next."),
    _car("2022-05-14", "finished", "yard", 36, "On the road."),
    _car("2022-05-14", "finished", "yard", 90, ""),
    _car("2022-05-14", "finished", "yard", -142, ""),
    _car("2022-09-03", "finished", "yard", 45, "At the meeting in Saltwyke.", "T1"),
    _car("2023-09-16", "finished", "day", -38, "Washed for the winter."),
)

PARTS = (
    _part("2018-05-26", "engine bay", "day", "Engine", "As found, last run in 1993."),
    _part("2018-06-09", "engine bay", "day", "Engine", "", camera="L20"),
    _part("2018-06-16", "bolts", "tube", "", "Bag 14: front bumper irons."),
    _part("2018-07-07", "dials", "day", "Instruments", "Before taking the panel out."),
    _part("2018-07-07", "loom", "tube", "Wiring loom, cabin", "Every end has its tag."),
    _part("2018-07-21", "brake", "day", "Front wheel, left", ""),
    _part("2018-07-28", "drums", "tube", "Rear wheel, left", "Rear drums as they came off."),
    _part("2018-08-11", "underside", "flash", "Rear axle", "What is oil and what is rust?"),
    _part("2018-08-25", "trim", "day", "Front bumper", "To be sorted: chrome, polish, bin."),
    _part("2020-12-27", "drums", "tube", "Rear wheel, left", "Skimmed and painted.", clean=True),
    _part("2021-01-30", "dampers", "tube", "Rear damper, left", "Old and tired.", camera="L20"),
    _part("2021-02-13", "dampers", "day", "Rear damper, left", "", clean=True),
    _part("2021-03-13", "underside", "flash", "Rear axle", "Axle in, lines run.", clean=True),
    _part("2021-03-20", "brake", "tube", "Front wheel, left", "Calipers rebuilt.", clean=True),
    _part("2021-09-25", "loom", "lamp", "Wiring loom, engine bay", "", clean=True),
    _part("2021-10-16", "carburettor", "day", "Carburettor", "Soaked, not yet clean.", camera="P4"),
    _part("2021-10-23", "carburettor", "tube", "Carburettor", "Clean, new jets.", clean=True),
    _part("2021-12-11", "dials", "lamp", "Instruments", "Back in the dash.", clean=True),
    _part("2022-01-29", "trim", "day", "Front bumper", "Home from the plater.", clean=True),
    _part("2022-03-05", "engine bay", "day", "Engine", "First start at 16:40.", clean=True),
    _part("2022-03-05", "engine bay", "flash", "Engine", "", clean=True, camera="T1"),
    _part("2022-10-15", "brake", "day", "Front wheel, right", "A sticking piston.", clean=True),
    _part("2023-04-22", "carburettor", "day", "Carburettor", "Flat spot: worn spindle."),
    _part(
        "2024-02-24", "underside", "flash", "Rear axle", "Wax has held, two winters.", clean=True
    ),
)

PRINTS = tuple(
    OtherShot(_d(day), "print", state, "yard", "", caption, azimuth=azimuth, said=said)
    for day, state, azimuth, caption, said in (
        ("1990-06-15", "bought", 95.0, "", ""),
        ("1974-07-15", "new", 40.0, "From the second owner's album: the seaside.", "summer 1974"),
        ("1974-07-15", "new", -90.0, "", "summer 1974"),
        ("1979-05-15", "new", 142.0, "Written on the back: 'my Rook, May 1979'.", "May 1979"),
        ("1986-06-15", "bought", 35.0, "With the tow bar.", "1986?"),
        ("1993-10-15", "bought", -48.0, "The day it went into the barn.", "autumn 1993"),
    )
)
