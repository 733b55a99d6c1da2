"""Repair areas of the rear, the front and the doors and lids."""

from journal.demo.story import AreaStory, shots_of, stages_of

ENDS = (
    AreaStory(
        key="boot-floor",
        name="Boot floor: the left corner",
        panels=("Boot floor",),
        place="floor",
        spot=(260, 180, 0),
        found="The boot seal had leaked for thirty years into the one corner with no drain.",
        done="Corner let in, 0.9 mm, with a drain hole and grommet it never had.",
        cautions=("welding", "fuel and brake lines"),
        stages=stages_of("""
            2018-04-14 found
            2019-11-02 cut back | Tank out and in the neighbour's barn.
            2019-11-09 new metal in
            2019-11-10 welded
            2019-11-16 dressed
            2019-11-17 protected
            2021-08-07 finished"""),
        shots=shots_of("""
            2018-04-14 bought before flash
            2019-11-02 holed before lamp
            2019-11-02 cut during lamp
            2019-11-09 clamped during lamp P4
            2019-11-10 welded during lamp
            2019-11-16 dressed during tube
            2019-11-17 sealed during tube
            2021-08-07 satin after day"""),
    ),
    AreaStory(
        key="well",
        name="Spare wheel well",
        panels=("Spare wheel well",),
        place="well",
        spot=(230, 170, 0),
        found="A pond with a wheel in it. The lowest third could be pushed out by hand.",
        done="Well bought used from a breaker with one good third, that third cut out and welded "
        "in. Cheaper than a pressing, and original.",
        cautions=("welding", "cutting discs", "fuel and brake lines"),
        stages=stages_of("""
            2018-04-14 found
            2019-11-23 cut back
            2019-12-07 new metal in
            2019-12-08 welded
            2019-12-15 dressed
            2019-12-21 protected
            2021-08-07 finished"""),
        shots=shots_of("""
            2018-04-14 rusty before flash x2
            2019-11-23 holed before lamp
            2019-11-23 cut during lamp
            2019-12-07 clamped during lamp
            2019-12-08 tacked during lamp P4
            2019-12-08 welded during lamp P4
            2019-12-15 dressed during tube
            2019-12-21 red during tube
            2021-08-07 satin after day"""),
    ),
    AreaStory(
        key="leg-rear-left",
        name="Chassis leg, rear left, above the axle",
        panels=("Chassis leg, rear, left",),
        place="box section",
        spot=(240, 120, 4),
        coated=True,
        found="Found late, with the axle out: perforated behind the bump stop.",
        done="Lower half renewed in 1.2 mm over 350 mm, ends cut at an angle. Waxed inside by"
        " the bump-stop hole.",
        cautions=("load-bearing", "welding", "fuel and brake lines", "car on stands"),
        stages=stages_of("""
            2019-12-28 found
            2020-01-04 cut back
            2020-01-11 new metal in
            2020-01-12 welded
            2020-01-19 protected
            2021-08~ finished"""),
        shots=shots_of("""
            2019-12-28 holed before flash
            2020-01-04 cut during flash
            2020-01-11 clamped during lamp
            2020-01-12 welded during lamp P4
            2020-01-19 zinc during flash"""),
    ),
    AreaStory(
        key="inner-arch-right",
        name="Rear inner arch, right, by the belt mount",
        panels=("Rear inner arch, right", "Seat-belt mount, rear, right"),
        place="tower",
        spot=(190, 140, 8),
        coated=True,
        mirrored=True,
        found="The seam between inner and outer arch had blown; two holes within a hand of the"
        " upper belt mount.",
        done="Flange and 180 mm of the inner arch renewed in 1.0 mm, the plate behind the mount in"
        " 1.2 mm. On the engineer's list for his second visit; passed.",
        cautions=("load-bearing", "belt anchorages", "welding"),
        stages=stages_of("""
            2019-08-17 found
            2020-01-25 cut back
            2020-02-01 new metal in
            2020-02-02 welded
            2020-02-08 dressed
            2020-02-09 protected
            2021-08-14 finished"""),
        shots=shots_of("""
            2019-08-17 rusty before flash
            2020-01-25 holed before lamp
            2020-01-25 cut during lamp
            2020-02-01 clamped during lamp
            2020-02-02 welded during lamp x2
            2020-02-08 dressed during tube
            2020-02-09 sealed during tube
            2021-08-14 chipped after day"""),
    ),
    AreaStory(
        key="arch-left",
        name="Rear wing, left: the wheel arch",
        panels=("Rear wing, left",),
        place="arch",
        spot=(250, 104, 6),
        found="Blisters under the paint when we bought it, none larger than a pea. Each had a "
        "hole behind it.",
        done="Arch repair section, 0.9 mm, butt welded in short runs a hand apart to keep the heat "
        "down. Lead wiped along the joint as the makers did, no filler.",
        cautions=("welding", "lead"),
        stages=stages_of("""
            2018-03-18 found
            2020-02-15 cut back
            2020-02-22 new metal in
            2020-03-01 welded
            2020-03-07 dressed
            2020-03-15 protected
            2021-07-09 finished"""),
        shots=shots_of("""
            2018-03-18 bought before yard x2
            2018-05-05 rusty before day
            2020-02-15 holed before lamp
            2020-02-15 cut during lamp
            2020-02-16 inner during tube
            2020-02-22 clamped during tube
            2020-02-29 tacked during lamp P4
            2020-03-01 welded during lamp
            2020-03-07 dressed during day
            2020-03-15 zinc during day
            2021-07-24 painted after yard"""),
    ),
    AreaStory(
        key="arch-right",
        name="Rear wing, right: the wheel arch",
        panels=("Rear wing, right",),
        place="arch",
        spot=(220, 96, 4),
        mirrored=True,
        found="Filler to the thickness of a finger, nicely shaped. A pity about what was under it.",
        done="Second arch section, same way. The edge is 2 mm flatter than the left; nobody has "
        "seen it yet.",
        cautions=("welding", "lead"),
        stages=stages_of("""
            2018-05-05 found
            2020-03-21 cut back
            2020-04-04 new metal in
            2020-04-11 welded
            2020-04-13 dressed
            2020-04-18 protected
            2021-07-09 finished"""),
        shots=shots_of("""
            2018-05-05 bought before day
            2020-03-21 holed before day
            2020-03-21 cut during day
            2020-04-04 clamped during tube
            2020-04-10 tacked during lamp
            2020-04-11 welded during lamp x2
            2020-04-13 dressed during day
            2020-04-18 red during day
            2021-07-24 painted after day"""),
    ),
    AreaStory(
        key="rear-valance",
        name="Rear valance",
        panels=("Rear valance",),
        place="valance",
        spot=(300, 100, 0),
        found="Salt, and a tow bar bolted straight through it in about 1985.",
        done="Lower 120 mm renewed in 0.9 mm, rolled over a length of scaffold tube to the curve. "
        "Tow bar holes closed; it will not be asked to tow again.",
        cautions=("welding",),
        stages=stages_of("""
            2018-05-05 found
            2020-04-25 cut back
            2020-05-02 new metal in
            2020-05-09 welded
            2020-05-10 dressed
            2020-05-16 protected
            2021-07-09 finished"""),
        shots=shots_of("""
            2018-05-05 rusty before day
            2020-04-25 holed before day
            2020-04-25 cut during day
            2020-05-02 clamped during day
            2020-05-09 welded during tube
            2020-05-10 dressed during day
            2020-05-16 zinc during yard
            2021-07-24 painted after yard"""),
    ),
    AreaStory(
        key="battery-tray",
        name="Battery tray and the bulkhead under it",
        panels=("Battery tray", "Bulkhead"),
        place="tray",
        spot=(240, 180, 0),
        found="Fifty years of acid. The tray came out with the battery.",
        done="New tray folded from 1.0 mm, the bulkhead under it patched in 1.0 mm, epoxy primer"
        " and two coats of chassis black, a rubber mat on top.",
        cautions=("welding", "cutting discs"),
        stages=stages_of("""
            2018-06-09 found
            2020-06-06 cut back
            2020-06-13 new metal in
            2020-06-14 welded
            2020-06-20 protected
            2021-07-09 finished"""),
        shots=shots_of("""
            2018-06-09 holed before day
            2020-06-06 cut during day
            2020-06-13 clamped during day P4
            2020-06-14 welded during tube
            2020-06-14 dressed during tube
            2020-06-20 zinc during day
            2021-07-31 painted after day"""),
    ),
    AreaStory(
        key="tower-left",
        name="Inner wing, left, at the damper top",
        panels=("Inner wing, left", "Suspension mount, front, left"),
        place="tower",
        spot=(180, 130, -12),
        found="A crack from the rear stud, and rust creeping out of the seam to meet it.",
        done="Crack drilled at its end and welded, then a ring of 1.2 mm under the dome and a patch"
        " beside it. Measured across to the right tower before and after: 1 mm apart.",
        cautions=("load-bearing", "welding"),
        stages=stages_of("""
            2018-06-09 found
            2020-06-27 cut back
            2020-07-04 new metal in
            2020-07-05 welded
            2020-07-11 dressed
            2020-07-12 protected
            2021-07-09 finished"""),
        shots=shots_of("""
            2018-06-09 rusty before day
            2020-06-27 holed before day
            2020-06-27 cut during day
            2020-07-04 clamped during tube P4
            2020-07-05 welded during tube x2
            2020-07-11 dressed during day
            2020-07-12 sealed during tube
            2021-07-31 painted after day"""),
    ),
    AreaStory(
        key="wing-left",
        name="Front wing, left: the rear foot",
        panels=("Front wing, left",),
        place="wing edge",
        spot=(190, 150, 0),
        found="Mud packed behind it since the car was new. The foot flapped.",
        done="Foot made over a wooden former in 0.8 mm, butt welded, hammered on the dolly while "
        "warm.",
        cautions=("welding", "lead"),
        stages=stages_of("""
            2018-03-18 found
            2020-08-01 cut back
            2020-08-08 new metal in
            2020-08-09 welded
            2020-08-15 dressed
            2020-08-22~ protected
            2021-07-09 finished"""),
        shots=shots_of("""
            2018-03-18 rusty before yard
            2018-06-23 holed before yard
            2020-08-01 cut during yard
            2020-08-08 clamped during day
            2020-08-08 tacked during tube
            2020-08-09 welded during tube
            2020-08-15 dressed during yard
            2020-08-22 zinc during yard
            2021-07-24 painted after yard"""),
    ),
    AreaStory(
        key="wing-right",
        name="Front wing, right: new old stock",
        panels=("Front wing, right",),
        place="wing edge",
        spot=(230, 170, 4),
        mirrored=True,
        found="Hit once and filled once. Nothing of the lower edge to weld to.",
        done="The lower half of a wing that had hung in a dealer's loft since 1974 let into ours,"
        " whose upper half is sound and fits its bonnet. 0.9 mm, still in its black primer.",
        cautions=("welding",),
        stages=stages_of("""
            2018-05-05 found
            2020-09-05 cut back
            2020-09-12 new metal in
            2020-09-13 welded
            2020-09-19 protected
            2021-07-09 finished"""),
        shots=shots_of("""
            2018-05-05 rusty before day
            2018-06-23 holed before yard
            2020-09-05 cut during yard
            2020-09-12 clamped during day
            2020-09-13 welded during tube
            2020-09-19 red during yard
            2021-07-24 painted after yard
            2023-09-16 painted after day"""),
    ),
    AreaStory(
        key="scuttle",
        name="Scuttle panel, under the windscreen's left corner",
        panels=("Scuttle panel",),
        place="surround",
        spot=(190, 110, -4),
        found="The screen rubber had been painted in. Under it the corner was wet, brown and soft.",
        done="Screen out, corner made in two pieces from 0.8 mm, sealed, primed and painted before "
        "the new rubber went in.",
        cautions=("welding",),
        stages=stages_of("""
            2018-08-18 found
            2020-10-10 cut back
            2020-10-17 new metal in
            2020-10-18 welded
            2020-10-25 dressed
            2020-11-01 protected
            2021-07-09 finished"""),
        shots=shots_of("""
            2018-03-18 bought before yard
            2018-08-18 holed before day
            2020-10-10 cut during lamp
            2020-10-17 clamped during lamp
            2020-10-18 tacked during lamp
            2020-10-18 welded during lamp
            2020-10-25 dressed during tube
            2020-11-01 zinc during tube
            2021-09-11 painted after day"""),
    ),
    AreaStory(
        key="door-left",
        name="Front door, left: the foot of the skin",
        panels=("Front door, left",),
        place="door bottom",
        spot=(290, 96, 0),
        found="Drain slots closed with underseal, water up to the window winder.",
        done="Strip of skin 90 mm high let in, 0.8 mm, the fold closed over the new frame foot. "
        "Drains open, wax inside.",
        cautions=("welding", "cutting discs"),
        stages=stages_of("""
            2018-05-05 found
            2020-11-14 cut back
            2020-11-21 new metal in
            2020-12-05 welded
            2020-12-12 dressed
            2021-01-09 protected
            2021-07-09 finished"""),
        shots=shots_of("""
            2018-05-05 bought before day
            2018-06-30 rusty before yard
            2020-11-14 holed before lamp
            2020-11-14 cut during lamp
            2020-11-21 inner during lamp
            2020-11-21 clamped during lamp P4
            2020-12-05 welded during lamp x2
            2020-12-12 dressed during tube
            2021-01-09 zinc during tube
            2021-07-24 painted after yard
            2021-08-21 waxed after day"""),
    ),
    AreaStory(
        key="boot-lid",
        name="Boot lid: a blister at the lower edge",
        panels=("Boot lid",),
        place="lid edge",
        spot=(130, 80, 0),
        found="One blister, two winters after paint, at the fold. Water sits there when the car "
        "stands nose up on the drive.",
        done="Opened, ground back and treated. Paint waits for warm weather.",
        cautions=("isocyanate paint",),
        stages=stages_of("""
            2023-10-07 found
            2023-10-14 cut back
            2023-10-15 protected | Zinc primer only: keep it in the dry."""),
        shots=shots_of("""
            2023-10-07 bought before day
            2023-10-07 rusty before flash
            2023-10-14 marked during tube
            2023-10-15 zinc during tube"""),
    ),
)
