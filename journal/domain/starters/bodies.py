"""The body styles a starter drawing can be made for, each with typical dimensions.

The figures are our own, for cars that never were; they are typical of their kind from memory.
"""

from dataclasses import dataclass, replace


@dataclass(frozen=True, slots=True)
class Style:
    """What tells one body from another.

    Lengths and heights are millimetres at the typical size. Stations along the car count from -1
    at the front bumper over 0 at the front axle and 1 at the rear axle to 2 at the rear bumper.

    Attributes:
        rear: what the body ends in: "boot", "hatch" (a tailgate or van doors) or "bed".
        doors: 4 where there are rear doors.
        front_share: how much of both overhangs together is in front.
        cowl, screen_top: foot and head of the windscreen.
        door_front, b_post, door_rear: shut lines of the doors; ``door_rear`` counts with 4 doors.
        side_end: where the side windows end at the waist.
        peak, roof_end: the highest spot of the roof, and where it breaks to the rear.
        deck: the foot of the rear window.
    """

    title: str
    rear: str
    doors: int
    wheelbase: float
    length: float
    width: float
    height: float
    wheel: float
    front_share: float
    cowl: float
    screen_top: float
    door_front: float
    b_post: float
    door_rear: float
    side_end: float
    peak: float
    roof_end: float
    deck: float
    nose: float = 765
    bonnet: float = 940
    waist: float = 885
    deck_height: float = 932
    tail: float = 838
    screen_height: float = 1388
    roof_end_height: float = 1380
    swage: float = 712
    roof: bool = True
    windows_behind: bool = True


_SALOON = Style(
    title="Saloon, four doors",
    rear="boot",
    doors=4,
    wheelbase=2540,
    length=4300,
    width=1620,
    height=1430,
    wheel=305,
    front_share=0.44,
    cowl=0.205,
    screen_top=0.41,
    door_front=0.245,
    b_post=0.585,
    door_rear=0.915,
    side_end=0.935,
    peak=0.62,
    roof_end=0.9,
    deck=1.2,
)

STYLES: dict[str, Style] = {
    "saloon": _SALOON,
    "saloon two-door": replace(
        _SALOON, title="Saloon, two doors", doors=2, b_post=0.66, door_rear=0, side_end=0.99
    ),
    "estate": replace(
        _SALOON,
        title="Estate",
        rear="hatch",
        side_end=1.62,
        peak=0.75,
        roof_end=1.7,
        deck=1.9,
        deck_height=935,
        tail=872,
        roof_end_height=1385,
    ),
    "coupe": Style(
        title="Coupé",
        rear="boot",
        doors=2,
        wheelbase=2420,
        length=4180,
        width=1620,
        height=1310,
        wheel=305,
        front_share=0.46,
        cowl=0.22,
        screen_top=0.46,
        door_front=0.265,
        b_post=0.72,
        door_rear=0,
        side_end=1.04,
        peak=0.64,
        roof_end=0.83,
        deck=1.45,
        nose=715,
        bonnet=872,
        waist=826,
        deck_height=872,
        tail=800,
        screen_height=1272,
        roof_end_height=1268,
        swage=668,
    ),
    "roadster": Style(
        title="Roadster",
        rear="boot",
        doors=2,
        wheelbase=2290,
        length=3900,
        width=1540,
        height=1180,
        wheel=295,
        front_share=0.46,
        cowl=0.32,
        screen_top=0.46,
        door_front=0.37,
        b_post=0.79,
        door_rear=0,
        side_end=0.8,
        peak=0.46,
        roof_end=0.8,
        deck=1.1,
        nose=700,
        bonnet=838,
        waist=792,
        deck_height=838,
        tail=740,
        screen_height=1170,
        roof_end_height=900,
        swage=640,
        roof=False,
        windows_behind=False,
    ),
    "pickup": Style(
        title="Pickup",
        rear="bed",
        doors=2,
        wheelbase=2720,
        length=4600,
        width=1680,
        height=1560,
        wheel=325,
        front_share=0.42,
        cowl=0.19,
        screen_top=0.34,
        door_front=0.225,
        b_post=0.58,
        door_rear=0,
        side_end=0.61,
        peak=0.48,
        roof_end=0.63,
        deck=0.668,
        nose=830,
        bonnet=1010,
        waist=955,
        deck_height=985,
        tail=945,
        screen_height=1512,
        roof_end_height=1520,
        swage=780,
        windows_behind=False,
    ),
    "van": Style(
        title="Van",
        rear="hatch",
        doors=2,
        wheelbase=2500,
        length=4250,
        width=1690,
        height=1880,
        wheel=315,
        front_share=0.44,
        cowl=0.1,
        screen_top=0.25,
        door_front=0.195,
        b_post=0.53,
        door_rear=0,
        side_end=1.8,
        peak=0.8,
        roof_end=1.84,
        deck=1.95,
        nose=860,
        bonnet=1080,
        waist=1010,
        deck_height=1040,
        tail=990,
        screen_height=1790,
        roof_end_height=1800,
        swage=800,
        windows_behind=False,
    ),
}

#: Every car body, and its name as people read it.
CARS: dict[str, str] = {key: style.title for key, style in STYLES.items()}

#: Every body a starter drawing can be made for, and its name as people read it.
BODIES: dict[str, str] = {
    **CARS,
    "motorcycle": "Motorcycle",
    "tractor": "Tractor",
    "blank": "Blank sheet",
}
