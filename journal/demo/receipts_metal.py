"""Receipts from the purchase to the last weld. Suppliers, towns and prices are made up."""

from datetime import date
from decimal import Decimal

from journal.demo.story import ReceiptStory, lines_of
from journal.domain.receipts import Paper


def _r(day: str, supplier: str, town: str, table: str, form: str = "invoice") -> ReceiptStory:
    return ReceiptStory(date.fromisoformat(day), supplier, town, lines_of(table), form=form)


METAL = (
    ReceiptStory(
        date(2018, 3, 17),
        "H. Vossenkamp, private sale",
        "Oberlund",
        lines_of("1 | Halden Rook 1500, 1969, not running | 3400.00 | car | used"),
        form="note",
        note="Handwritten contract, both signatures.",
    ),
    ReceiptStory(
        date(2018, 3, 17),
        "Edo Tarsk",
        "Saltwyke",
        lines_of("1 | Diesel for the trailer trip, 610 km | 72.00 | other | -"),
        paper=Paper.NEVER,
        form="",
        stands_in="Paid in cash, written in my calendar that evening.",
    ),
    _r(
        "2018-04-07",
        "Varrowby Tool Hire",
        "Harrowmouth",
        """
        1 | Axle stands, 3 t, two pairs | 98.00 | tool | new
        1 | Trolley jack, 2.5 t | 139.00 | tool | new""",
    ),
    _r(
        "2018-05-12",
        "Kettlemark Hardware",
        "Saltwyke",
        """
        4 | Penetrating oil | 27.60 | cons | new
        1 | Freezer bags and tags for parts | 11.40 | cons | new""",
        "till",
    ),
    _r(
        "2018-06-08",
        "Varrowby Tool Hire",
        "Harrowmouth",
        """
        1 | Engine crane, weekend | 58.00 | tool | -""",
        "till",
    ),
    _r(
        "2018-06-30",
        "Brackwell Stationers",
        "Saltwyke",
        """
        2 | Paint markers, white | 7.80 | cons | new
        1 | Notebook, squared | 6.20 | other | new""",
        "till",
    ),
    _r(
        "2018-09-15",
        "Ironmere Steel",
        "Dunvorth",
        """
        2 | Sheet 1.2 mm, 1 x 2 m, cold rolled | 96.00 | metal | new | inner-sill-left:3 \
            inner-sill-right:2 jack-front-left
        1 | Sheet 0.9 mm, 1 x 2 m, cold rolled | 39.50 | metal | new | floor-front-left:2 \
            floor-front-right boot-floor""",
    ),
    _r(
        "2018-09-22",
        "Tolvik Weld and Gas",
        "Harrowmouth",
        """
        1 | MIG welder, 180 A, used, serviced | 540.00 | tool | used | new=1150.00
        1 | Welding wire 0.6 mm, 5 kg | 38.90 | cons | new
        1 | Auto-darkening helmet | 89.00 | tool | new""",
    ),
    _r(
        "2018-09-29",
        "Tolvik Weld and Gas",
        "Harrowmouth",
        """
        1 | Shielding gas 82/18, 20 l, filling | 74.00 | cons | new""",
    ),
    _r(
        "2018-10-05",
        "Kettlemark Hardware",
        "Saltwyke",
        """
        12 | Cutting discs 1.0 x 125 | 21.60 | cons | new
        6 | Flap discs 60 grit | 25.20 | cons | new
        2 | Box section 25 x 25, for braces | 17.00 | metal | new | inner-sill-left sill-left \
            sill-right""",
        "till",
    ),
    _r(
        "2018-10-12",
        "Kettlemark Hardware",
        "Saltwyke",
        """
        8 | Locking pliers, 250 mm | 119.20 | tool | new
        1 | Fire blanket and 6 kg extinguisher | 64.00 | tool | new""",
        "till",
    ),
    _r(
        "2018-10-30",
        "Saltgate Paint Supply",
        "Harrowmouth",
        """
        3 | Weld-through zinc primer, spray | 44.70 | paint | new | inner-sill-left sill-left \
            jack-front-left
        2 | Seam sealer, grey, cartridge | 23.80 | paint | new | inner-sill-left \
            floor-front-left""",
    ),
    ReceiptStory(
        date(2018, 11, 6),
        "Grelling Panel Works",
        "Ostervale",
        lines_of("""
            1 | Outer sill, Rook four-door, left, 1.0 mm | 186.00 | metal | new | sill-left
            1 | Outer sill, Rook four-door, right, 1.0 mm | 186.00 | metal | new | sill-right
            1 | Freight | 34.00 | fees | - | sill-left sill-right"""),
    ),
    _r(
        "2018-11-09",
        "Netherquill Breakers",
        "Dunvorth",
        """
        1 | Jacking socket, cut from a dry shell | 25.00 | metal | used | new=88.00 | \
            jack-front-left""",
        "note",
    ),
    ReceiptStory(
        date(2018, 12, 1),
        "Kettlemark Hardware",
        "Saltwyke",
        lines_of(
            "10 | Flap discs and wire wheels | 46.00 | cons | new | sill-left inner-sill-left"
        ),
        paper=Paper.LOST,
        form="",
        stands_in="Card statement, December 2018.",
    ),
    _r(
        "2018-12-14",
        "Saltgate Paint Supply",
        "Harrowmouth",
        """
        4 | Cavity wax, 500 ml, with lance | 55.60 | paint | new | sill-left:2 inner-sill-left:2 \
            a-post-left""",
    ),
    _r(
        "2019-01-18",
        "Tolvik Weld and Gas",
        "Harrowmouth",
        """
        1 | Shielding gas 82/18, 20 l, filling | 76.00 | cons | new
        1 | Contact tips and shroud | 14.50 | cons | new""",
    ),
    _r(
        "2019-02-01",
        "Ironmere Steel",
        "Dunvorth",
        """
        1 | Sheet 0.9 mm, 1 x 2 m, cold rolled | 41.00 | metal | new | floor-front-left:3 \
            floor-rear-left
        1 | Sheet 1.2 mm, cut to 500 x 1000 | 19.80 | metal | new | floor-rear-left \
            outrigger-front-right jack-rear-right leg-rear-left""",
    ),
    _r(
        "2019-03-12",
        "Ing. Th. Ravensund, vehicle inspection",
        "Harrowmouth",
        """
        1 | Visit: belt mount rear left, sill structure left | 165.00 | work | - | \
            floor-rear-left:2 inner-sill-left""",
    ),
    _r(
        "2019-04-26",
        "Saltgate Paint Supply",
        "Harrowmouth",
        """
        2 | Weld-through zinc primer, spray | 30.60 | paint | new | inner-sill-right sill-right
        1 | Red oxide primer, 1 l | 22.40 | paint | new | sill-right a-post-left""",
    ),
    _r(
        "2019-06-14",
        "Kettlemark Hardware",
        "Saltwyke",
        """
        10 | Cutting discs 1.0 x 125 | 18.50 | cons | new
        2 | Files, half round | 23.00 | tool | new""",
        "till",
    ),
    _r(
        "2019-07-19",
        "Tolvik Weld and Gas",
        "Harrowmouth",
        """
        1 | Shielding gas 82/18, 20 l, filling | 76.00 | cons | new
        1 | Welding wire 0.6 mm, 5 kg | 41.20 | cons | new""",
    ),
    ReceiptStory(
        date(2019, 8, 24),
        "Autojumble, stall without a name",
        "Fennwick",
        lines_of("""
            1 | Pair of tail lamps | 60.00 | elec | nos | new=190.00
            1 | Bonnet badge | 15.00 | trim | used"""),
        paper=Paper.NEVER,
        form="",
        stands_in="Photo of the haul on the tailgate.",
    ),
    _r(
        "2019-10-25",
        "Grelling Panel Works",
        "Ostervale",
        """
        1 | Wheel arch section, rear, left, 0.9 mm | 74.00 | metal | new | arch-left
        1 | Wheel arch section, rear, right, 0.9 mm | 74.00 | metal | new | arch-right
        1 | Freight | 19.00 | fees | - | arch-left arch-right""",
    ),
    _r(
        "2019-11-30",
        "Netherquill Breakers",
        "Dunvorth",
        """
        1 | Spare wheel well, cut out, one side good | 40.00 | metal | used | new=165.00 | well""",
        "note",
    ),
    _r(
        "2020-01-24",
        "Ironmere Steel",
        "Dunvorth",
        """
        1 | Sheet 1.0 mm, 1 x 2 m, cold rolled | 43.50 | metal | new | inner-arch-right:2 \
            battery-tray:2 tower-left
        1 | Strip 1.2 mm, offcuts | 8.00 | metal | new | inner-arch-right""",
    ),
    _r(
        "2020-02-14",
        "Saltgate Paint Supply",
        "Harrowmouth",
        """
        3 | Body solder sticks, flux, paddles | 62.00 | cons | new | arch-left arch-right
        2 | Seam sealer, grey, cartridge | 25.20 | paint | new | inner-arch-right boot-floor \
            tower-left""",
    ),
    ReceiptStory(
        date(2020, 4, 24),
        "Tolvik Weld and Gas",
        "Harrowmouth",
        lines_of(
            "1 | Shielding gas 82/18, 20 l, filling | 79.00 | cons | new | arch-right rear-valance"
        ),
        paper=Paper.LOST,
        form="",
        stands_in="Bank statement, 27 April 2020.",
    ),
    _r(
        "2020-05-15",
        "Ing. Th. Ravensund, vehicle inspection",
        "Harrowmouth",
        """
        1 | Second visit: belt mount upper right, rear legs | 175.00 | work | - | \
            inner-arch-right:2 leg-rear-left""",
    ),
    _r(
        "2020-07-31",
        "Ironmere Steel",
        "Dunvorth",
        """
        1 | Sheet 0.8 mm, 1 x 2 m, cold rolled | 37.00 | metal | new | door-left:2 scuttle \
            wing-left:2""",
    ),
    ReceiptStory(
        date(2020, 8, 29),
        "Lindhaga Bildelar",
        "Norrvika",
        lines_of("""
            1 | Front wing, right, new old stock | 4200.00 | metal | nos | new=6900.00 | wing-right
            1 | Freight, crate | 690.00 | fees | - | wing-right"""),
        currency="SEK",
        rate=Decimal("0.0966"),
        note="Customs none. The rate is the one on the card statement.",
    ),
)
