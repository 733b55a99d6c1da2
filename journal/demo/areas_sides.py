"""Repair areas of the two sides: sills, floors, posts and what the jack lifts by."""

from journal.demo.story import AreaStory, shots_of, stages_of

SIDES = (
    AreaStory(
        key="inner-sill-left",
        name="Inner sill, left: rotten from the seat crossmember forward",
        panels=("Inner sill, left",),
        place="inner sill",
        spot=(300, 120, 0),
        found="Behind the carpet and two layers of pitch the inner sill was lace for 700 mm, from"
        " the seat crossmember to the A-post. Somebody had laid a plate over it years ago, spot"
        " brazed, and never closed the ends, so the water sat between.",
        done="Cross braces welded into both door apertures first and the gaps measured. Cut back to"
        " sound metal along the original spot welds; new inner sill folded up from 1.2 mm steel, "
        "plug welded at the old spacing, zinc primer on every face that would be shut in.",
        cautions=("load-bearing", "welding", "cutting discs", "car on stands"),
        stages=stages_of("""
            2018-04-14 found
            2018-10-20 cut back | Braces in, door gaps written on the bench wall.
            2018-10-28 new metal in
            2018-11-04 welded
            2018-11-10 dressed
            2018-11-11 protected | Zinc primer, seam sealer along the floor flange.
            2021-07-09 finished"""),
        shots=shots_of("""
            2018-04-14 rusty before flash
            2018-10-06 holed before lamp
            2018-10-20 marked during lamp
            2018-10-20 cut during lamp x2
            2018-10-28 clamped during tube
            2018-11-03 tacked during lamp P4
            2018-11-04 welded during lamp P4
            2018-11-10 dressed during day
            2018-11-11 sealed during tube
            2021-07-24 painted after day"""),
    ),
    AreaStory(
        key="sill-left",
        name="Sill, left: the outer sill",
        panels=("Sill, left",),
        place="sill",
        spot=(340, 116, 0),
        found="It looked straight, and was: straight filler, up to 9 mm of it over newspaper and "
        "wire gauze. Under it the foot of the sill was gone from the front jacking point back.",
        done="New outer sill pressed by the panel works in 1.0 mm, fitted with the doors hung to "
        "set the gap, clamped every 50 mm, plug welded along the flange and seam welded at both "
        "ends. Cavity wax twice, by the drain holes and from the A-post.",
        cautions=("load-bearing", "welding", "cutting discs", "lead"),
        stages=stages_of("""
            2018-04-14 found
            2018-10-21 cut back
            2018-11-17 new metal in | Doors hung for the gap: 4 mm front, 4.5 mm rear.
            2018-12-02 welded
            2018-12-09 dressed
            2018-12-16 protected
            2021-07-09 finished
        """),
        shots=shots_of("""
            2018-03-18 bought before yard
            2018-04-14 holed before day x2
            2018-10-06 holed before flash
            2018-10-21 cut during day
            2018-11-11 behind during tube
            2018-11-17 clamped during day P4
            2018-11-25 tacked during lamp
            2018-12-02 welded during lamp x2
            2018-12-09 dressed during tube
            2018-12-16 zinc during tube
            2021-07-24 painted after yard
            2023-09-16 painted after day"""),
    ),
    AreaStory(
        key="jack-front-left",
        name="Jacking point, front left",
        panels=("Jacking point, front, left",),
        place="box section",
        spot=(230, 130, 0),
        coated=True,
        found="The jack went up, the car did not. The socket had parted from the sill and the box "
        "above it held only by underseal.",
        done="Socket cut off a dry scrap shell and blasted. New box from 1.2 mm, doubled where the"
        " jack bears, welded to the new inner sill before the outer went on.",
        cautions=("load-bearing", "welding", "car on stands"),
        stages=stages_of("""
            2018-04-21 found
            2018-10-27 cut back
            2018-11-10 new metal in
            2018-11-11 welded
            2018-11-18 protected
            2021-08-14 finished | Stone chip over it all."""),
        shots=shots_of("""
            2018-04-21 rusty before flash
            2018-10-27 holed before flash
            2018-10-27 cut during lamp
            2018-11-10 clamped during lamp
            2018-11-11 welded during lamp
            2018-11-18 zinc during flash
            2021-08-14 chipped after flash"""),
    ),
    AreaStory(
        key="a-post-left",
        name="A-post, left: the foot behind the wing",
        panels=("A-post, left",),
        place="post",
        spot=(150, 170, 0),
        found="With the wing off, a wasps' nest of rust where the post meets the sill. The hinge "
        "plates are sound.",
        done="Outer skin of the foot let in, 1.0 mm, with a lip joggled under the old skin. The"
        " inner plate needed only a strip 40 mm wide.",
        cautions=("load-bearing", "welding"),
        stages=stages_of("""
            2018-09-15 found
            2018-11-24 cut back
            2019-01-05 new metal in
            2019-01-06 welded
            2019-01-12 dressed
            2019-01-20~ protected
            2021-07-09 finished"""),
        shots=shots_of("""
            2018-09-15 holed before day
            2018-11-24 cut during lamp
            2019-01-05 clamped during lamp
            2019-01-06 tacked during lamp
            2019-01-06 welded during lamp
            2019-01-12 dressed during tube
            2019-01-20 red during tube"""),
    ),
    AreaStory(
        key="floor-front-left",
        name="Floor pan, front left: the footwell",
        panels=("Floor pan, front, left",),
        place="floor",
        spot=(300, 220, 2),
        found="The screwdriver went through in eleven places. Daylight under the pedals.",
        done="Half a floor pan from 0.9 mm with the ribs swaged on a friend's bead roller, joggled"
        " edge, plug welded to the new inner sill, seam sealer above and below.",
        cautions=("load-bearing", "welding", "cutting discs", "fuel and brake lines"),
        stages=stages_of("""
            2018-04-14 found
            2019-01-19 cut back | Brake pipe along the tunnel taken out first.
            2019-02-02 new metal in
            2019-02-10 welded
            2019-02-16 dressed
            2019-02-23 protected
            2021-08-07 finished"""),
        shots=shots_of("""
            2018-04-14 rusty before flash
            2018-09-08 holed before day x2
            2019-01-19 marked during lamp
            2019-01-19 cut during lamp P4
            2019-02-02 clamped during tube
            2019-02-09 tacked during lamp
            2019-02-10 welded during lamp
            2019-02-16 dressed during day
            2019-02-23 sealed during tube
            2021-08-07 satin after day"""),
    ),
    AreaStory(
        key="floor-rear-left",
        name="Floor pan, rear left, round the belt mount",
        panels=("Floor pan, rear, left", "Seat-belt mount, sill, left"),
        place="floor",
        spot=(210, 150, -4),
        found="A hand-sized hole by the heelboard and thin metal round the captive nut of the belt."
        " Nothing to be brave about.",
        done="New corner in 1.2 mm with a fresh reinforcing plate and captive nut, welded all"
        " round, and looked at by the inspection engineer in Harrowmouth before it was closed.",
        cautions=("load-bearing", "belt anchorages", "welding"),
        stages=stages_of("""
            2018-09-08 found
            2019-02-24 cut back
            2019-03-02 new metal in
            2019-03-03 welded
            2019-03-09 dressed
            2019-03-17 protected | Inspected on the 12th, letter in the folder.
            2021-08-07 finished"""),
        shots=shots_of("""
            2018-09-08 holed before flash
            2019-02-24 cut during lamp
            2019-03-02 clamped during lamp P4
            2019-03-03 welded during lamp x2
            2019-03-09 dressed during tube
            2019-03-17 zinc during day
            2021-08-07 satin after flash"""),
    ),
    AreaStory(
        key="inner-sill-right",
        name="Inner sill, right: the rear half",
        panels=("Inner sill, right",),
        place="inner sill",
        spot=(260, 110, 2),
        mirrored=True,
        found="Better than the left: sound as far as the B-post, then 400 mm of nothing.",
        done="Rear half renewed in 1.2 mm, stepped joint under the B-post so that no seam runs "
        "straight across.",
        cautions=("load-bearing", "welding", "car on stands"),
        stages=stages_of("""
            2018-04-14 found
            2019-04-06 cut back
            2019-04-13 new metal in
            2019-04-14 welded
            2019-04-27 dressed
            2019-04-28 protected
            2021-07-09 finished"""),
        shots=shots_of("""
            2018-04-14 rusty before flash
            2019-04-06 holed before day
            2019-04-06 cut during day
            2019-04-13 clamped during tube
            2019-04-14 welded during lamp P4
            2019-04-27 dressed during tube
            2019-04-28 zinc during day
            2021-07-24 painted after day"""),
    ),
    AreaStory(
        key="sill-right",
        name="Sill, right: the outer sill",
        panels=("Sill, right",),
        place="sill",
        spot=(280, 104, 0),
        mirrored=True,
        found="Two older patches, one over the other, gas welded, the lower one still wearing its "
        "first owner's hand-brushed paint.",
        done="Outer sill in 1.0 mm from the same pressing run as the left one. An afternoon quicker"
        " than the first: it shows what the other one taught us.",
        cautions=("load-bearing", "welding", "cutting discs", "lead"),
        stages=stages_of("""
            2018-04-14 found
            2019-05-04 cut back
            2019-05-18 new metal in
            2019-05-26 welded
            2019-06-01 dressed
            2019-06-08 protected
            2021-07-09 finished"""),
        shots=shots_of("""
            2018-03-18 bought before yard
            2018-04-14 rusty before day
            2019-05-04 holed before day
            2019-05-04 cut during day x2
            2019-05-11 behind during tube
            2019-05-18 clamped during day P4
            2019-05-19 tacked during lamp
            2019-05-26 welded during tube
            2019-06-01 dressed during day
            2019-06-08 red during day
            2021-07-24 painted after yard"""),
    ),
    AreaStory(
        key="floor-front-right",
        name="Floor pan, front right: two patches",
        panels=("Floor pan, front, right",),
        place="floor",
        spot=(180, 130, 5),
        mirrored=True,
        found="Two holes, each the size of a saucer, where the mat had lain wet.",
        done="Two patches butt welded, 0.9 mm, dressed on both faces. From below you have to know.",
        cautions=("welding", "fuel and brake lines"),
        stages=stages_of("""
            2018-04-14 found
            2019-06-15 cut back
            2019-06-16 new metal in
            2019-06-22 welded
            2019-06-23 dressed
            2019-07 protected
            2021-08-07 finished"""),
        shots=shots_of("""
            2018-09-08 holed before flash
            2019-06-15 marked during day
            2019-06-15 cut during day
            2019-06-16 clamped during tube
            2019-06-22 welded during tube
            2019-06-23 dressed during day x2
            2019-07-06 zinc during day
            2021-08-07 satin after day"""),
    ),
    AreaStory(
        key="outrigger-front-right",
        name="Outrigger, front right",
        panels=("Outrigger, front, right",),
        place="box section",
        spot=(250, 140, 3),
        coated=True,
        mirrored=True,
        found="The lower plate was two leaves with rust between them, swollen to 14 mm.",
        done="Rebuilt from 1.2 mm, closed on three sides, the last plate plug welded after two"
        " coats of zinc inside.",
        cautions=("load-bearing", "welding", "car on stands"),
        stages=stages_of("""
            2018-04-21 found
            2019-07-07 cut back
            2019-07-20 new metal in
            2019-07-21 welded
            2019-07-28 protected
            2021-08-14 finished"""),
        shots=shots_of("""
            2018-04-21 rusty before flash
            2019-07-07 holed before flash
            2019-07-07 cut during flash
            2019-07-20 clamped during lamp
            2019-07-21 welded during lamp
            2019-07-28 zinc during flash
            2021-08-14 chipped after flash"""),
    ),
    AreaStory(
        key="jack-rear-right",
        name="Jacking point, rear right",
        panels=("Jacking point, rear, right",),
        place="box section",
        spot=(200, 120, -2),
        coated=True,
        mirrored=True,
        found="Crushed by somebody's trolley jack, split along the weld and rusting from it.",
        done="Pulled straight, the split ground out and welded, a 1.2 mm doubler over it.",
        cautions=("load-bearing", "welding", "car on stands"),
        stages=stages_of("""
            2018-04-21 found
            2019-08-03 cut back
            2019-08-04 welded
            2019-08-10 dressed
            2019-08-11 protected
            2021-08-14 finished"""),
        shots=shots_of("""
            2019-08-03 rusty before flash
            2019-08-03 marked during flash
            2019-08-04 tacked during lamp
            2019-08-04 welded during lamp
            2019-08-10 dressed during tube
            2019-08-11 zinc during flash
            2021-08-14 chipped after flash"""),
    ),
)
