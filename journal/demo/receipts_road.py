"""Receipts from the running gear to the upkeep. Suppliers, towns and prices are made up."""

from datetime import date
from decimal import Decimal

from journal.demo.story import ReceiptStory, lines_of
from journal.domain.receipts import Paper


def _r(day: str, supplier: str, town: str, table: str, form: str = "invoice") -> ReceiptStory:
    return ReceiptStory(date.fromisoformat(day), supplier, town, lines_of(table), form=form)


ROAD = (
    _r(
        "2020-12-11",
        "Hollin and Daughter, engineers",
        "Dunvorth",
        """
        2 | Rear brake drums skimmed | 64.00 | work | recon
        4 | Brake shoes relined | 96.00 | mech | recon | new=148.00""",
    ),
    _r(
        "2021-01-15",
        "Rook Register spares",
        "Ostervale",
        """
        1 | Brake pipes, copper-nickel, full set | 148.00 | mech | new
        3 | Flexible brake hoses | 57.00 | mech | new
        1 | Master cylinder, sleeved | 122.00 | mech | recon | new=265.00""",
    ),
    _r(
        "2021-01-29",
        "Marlstreet Motor Factors",
        "Harrowmouth",
        """
        4 | Dampers | 236.00 | mech | new
        1 | Wheel bearing kit, front | 58.00 | mech | new""",
    ),
    _r(
        "2021-02-12",
        "Ashgrove Blasting and Coating",
        "Dunvorth",
        """
        1 | Axle, wishbones, springs: blasted and coated | 420.00 | work | -""",
    ),
    ReceiptStory(
        date(2021, 3, 5),
        "Halewick Rubber and Trim",
        "Wexhollow",
        lines_of("""
            1 | Body seal set, saloon | 212.00 | trim | new
            1 | Windscreen rubber with insert | 68.00 | trim | new | scuttle
            1 | Postage | 24.50 | fees | -"""),
        currency="GBP",
        rate=Decimal("1.158"),
    ),
    _r(
        "2021-03-26",
        "Tidewell Tyres",
        "Harrowmouth",
        """
        5 | Tyres 165 R 13, fitted and balanced | 395.00 | mech | new
        5 | Wheels blasted and painted | 175.00 | work | -""",
    ),
    _r(
        "2021-04-16",
        "Saltgate Paint Supply",
        "Harrowmouth",
        """
        1 | Epoxy primer, 5 l with hardener | 164.00 | paint | new
        3 | Body filler, fine | 41.70 | paint | new
        1 | Abrasives 80 to 320 | 58.30 | cons | new""",
    ),
    _r(
        "2021-07-09",
        "Ferrand Coachpaint",
        "Ostervale",
        """
        1 | Paint Marsh green, two-pack, body outside and shuts | 3650.00 | work | -
        1 | Flatting and preparation, 22 h | 1210.00 | work | -
        1 | Materials | 780.00 | paint | new""",
    ),
    _r(
        "2021-07-30",
        "Saltgate Paint Supply",
        "Harrowmouth",
        """
        4 | Stone chip, black, overpaintable | 39.60 | paint | new | jack-front-left \
            outrigger-front-right jack-rear-right inner-arch-right
        6 | Cavity wax, 500 ml | 81.00 | paint | new | sill-left:2 sill-right:2 door-left \
            leg-rear-left""",
    ),
    _r(
        "2021-08-20",
        "Rook Register spares",
        "Ostervale",
        """
        1 | Fastener set, body | 64.00 | mech | new
        2 | Door check straps | 31.00 | mech | nos""",
    ),
    _r(
        "2021-09-03",
        "Pellworth Glass",
        "Harrowmouth",
        """
        1 | Windscreen, laminated | 285.00 | trim | new | scuttle
        1 | Fitting, assisted | 90.00 | work | - | scuttle""",
    ),
    _r(
        "2021-09-24",
        "Lumley Looms",
        "Wexhollow",
        """
        1 | Wiring loom, cloth braided, engine bay and cabin | 468.00 | elec | new
        1 | Fuse box, reproduction | 39.00 | elec | new""",
    ),
    _r(
        "2021-10-08",
        "Hollin and Daughter, engineers",
        "Dunvorth",
        """
        1 | Block bored 0.5 mm over, crank ground, balanced | 890.00 | work | -
        1 | Pistons, bearings, gaskets | 612.00 | mech | new
        1 | Cylinder head, hard seats, guides | 540.00 | work | recon""",
    ),
    _r(
        "2021-10-15",
        "Marlstreet Motor Factors",
        "Harrowmouth",
        """
        1 | Carburettor kit, jets and diaphragm | 46.00 | mech | new
        1 | Clutch kit | 129.00 | mech | new
        2 | Engine oil 20W-50, 5 l | 57.80 | cons | new""",
        "till",
    ),
    _r(
        "2021-11-12",
        "Skerrow Plating",
        "Dunvorth",
        """
        2 | Bumpers rechromed | 760.00 | work | recon | new=1380.00
        14 | Small bright parts | 266.00 | work | recon""",
    ),
    ReceiptStory(
        date(2021, 12, 3),
        "Cobb and Finch, trimmers",
        "Saltwyke",
        lines_of("""
            1 | Front seats, new foam and covers | 820.00 | trim | recon
            1 | Headlining, fitted | 310.00 | work | -"""),
        paper=Paper.LOST,
        form="",
        stands_in="Bank transfer, 6 December 2021; their quotation of October.",
    ),
    _r(
        "2022-01-21",
        "Halewick Rubber and Trim",
        "Wexhollow",
        """
        1 | Carpet set, grey loop | 240.00 | trim | new
        4 | Door cards, re-covered | 288.00 | trim | recon""",
    ),
    _r(
        "2022-02-18",
        "Marlstreet Motor Factors",
        "Harrowmouth",
        """
        1 | Battery 12 V 55 Ah | 84.00 | elec | new | battery-tray
        1 | Exhaust, complete | 218.00 | mech | new
        1 | Antifreeze, hoses, clips | 63.40 | mech | new""",
    ),
    _r(
        "2022-05-13",
        "District inspection office",
        "Harrowmouth",
        """
        1 | Full inspection | 96.00 | fees | -
        1 | Registration and plates | 74.50 | fees | -""",
        "till",
    ),
    _r(
        "2022-07-02",
        "Marlstreet Motor Factors",
        "Harrowmouth",
        """
        1 | Engine oil, filter, after running in | 41.90 | cons | new""",
        "till",
    ),
    _r(
        "2022-09-03",
        "Rook Register",
        "Saltwyke",
        """
        1 | Membership and meeting | 55.00 | fees | -""",
        "note",
    ),
    _r(
        "2022-10-14",
        "Marlstreet Motor Factors",
        "Harrowmouth",
        """
        1 | Caliper seal kit, front | 24.00 | mech | new
        1 | Brake fluid, 1 l | 12.60 | cons | new""",
        "till",
    ),
    _r(
        "2023-03-25",
        "Saltgate Paint Supply",
        "Harrowmouth",
        """
        2 | Cavity wax, 500 ml | 28.40 | paint | new | sill-left sill-right""",
        "till",
    ),
    _r(
        "2023-04-21",
        "Hollin and Daughter, engineers",
        "Dunvorth",
        """
        1 | Carburettor re-bushed, new spindle | 138.00 | work | recon""",
    ),
    _r(
        "2023-06-10",
        "District inspection office",
        "Harrowmouth",
        """
        1 | Periodic inspection | 68.00 | fees | -""",
        "till",
    ),
    _r(
        "2023-09-15",
        "Kettlemark Hardware",
        "Saltwyke",
        """
        1 | Car shampoo, wax, leathers | 33.70 | cons | new""",
        "till",
    ),
    _r(
        "2023-10-13",
        "Saltgate Paint Supply",
        "Harrowmouth",
        """
        1 | Zinc primer, spray | 16.20 | paint | new | boot-lid
        1 | Rust converter, 250 ml | 11.90 | paint | new | boot-lid""",
        "till",
    ),
    _r(
        "2024-01-20",
        "Tidewell Tyres",
        "Harrowmouth",
        """
        1 | Front wheels aligned | 79.00 | work | -""",
    ),
    _r(
        "2024-02-24",
        "Marlstreet Motor Factors",
        "Harrowmouth",
        """
        1 | Oil, filter, plugs, points | 66.30 | mech | new""",
        "till",
    ),
)
