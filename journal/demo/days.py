"""Days of work: who, how long, at what, and for which repair areas."""

from journal.demo.life import PEOPLE
from journal.demo.story import WorkStory, work_of

WORK: tuple[WorkStory, ...] = work_of(
    """
2018-04-14 R 3 Carpets out, screwdriver along every seam | floor-front-left:2 inner-sill-left \
            inner-sill-right well
2018-04-21 R 2 Under the car on stands | jack-front-left outrigger-front-right jack-rear-right
2018-06-09 R 3 Engine out with Edo's crane |
2018-06-09 E 3 Engine out |
2018-06-30 R 2.5 Doors, bonnet and boot lid off, hinges marked |
2018-07-07 R 2.5 Instruments and loom out, tags on all ends |
2018-09-08 R 3 Pitch off the floors with a hot-air gun and scraper | floor-front-left \
            floor-front-right floor-rear-left
2018-09-22 R 5 Axles out, shell on four stands |
2018-09-22 E 4 Axles out |
2018-10-06 R 3 Braces into both door apertures, diagonals measured | inner-sill-left sill-left \
            sill-right
2018-10-20 R 3.5 Cut the inner sill out | inner-sill-left
2018-10-21 R 3 Outer sill off, both ends unpicked | sill-left
2018-10-27 R 4 Jacking point cut out, edges cleaned | jack-front-left
2018-10-28 R 4 Folded and fitted the new inner sill | inner-sill-left
2018-11-03 R 3.5 Tacked, measured, tacked again | inner-sill-left
2018-11-03 E 3.5 Held, measured, argued | inner-sill-left
2018-11-04 R 4 Plug welds and the end seams | inner-sill-left
2018-11-04 E 3 Welding, second torch | inner-sill-left
2018-11-10 R 3.5 Dressing; the new jacking box fitted | inner-sill-left jack-front-left:2
2018-11-11 R 3 Jacking box welded; primer, sealer | jack-front-left:2 inner-sill-left
2018-11-17 R 5 Doors hung, sill clamped and set to them | sill-left
2018-11-17 E 4 Doors hung | sill-left
2018-11-25 R 3 Tacks along the flange | sill-left a-post-left
2018-12-02 R 3.5 Plug welds along the foot, seams at the ends | sill-left
2018-12-09 R 3 Dressed the plugs | sill-left
2019-01-05 R 4 A-post foot made and fitted | a-post-left
2019-01-06 R 3.5 Welded it | a-post-left
2019-01-12 R 2 Dressed | a-post-left
2019-01-19 R 4 Brake pipe out, footwell cut | floor-front-left
2019-01-19 E 2 Bead roller | floor-front-left
2019-02-02 R 4 Half pan fitted | floor-front-left
2019-02-10 R 3.5 Welded, sealer | floor-front-left
2019-02-16 R 2.5 Dressed | floor-front-left
2019-02-24 R 2.5 Rear corner cut, nut plate drawn on card | floor-rear-left
2019-03-02 R 3 Plate and corner fitted | floor-rear-left
2019-03-02 E 3 Plate drilled and tapped | floor-rear-left
2019-03-03 R 3 Welded | floor-rear-left
2019-03-12 I 1.5 Belt mount and sill structure inspected | floor-rear-left:2 \
            inner-sill-left
2019-04-06 R 4 Right inner sill cut | inner-sill-right
2019-04-13 R 3.5 Rear half fitted | inner-sill-right
2019-04-14 R 3 Welded | inner-sill-right
2019-04-14 E 3 Welded the underside | inner-sill-right
2019-05-04 R 4 Outer sill right off, two patches under it | sill-right
2019-05-18 R 4 Doors hung, sill clamped | sill-right
2019-05-18 E 3.5 Doors hung | sill-right
2019-05-26 R 4 Plug welds | sill-right
2019-06-01 R 2.5 Dressed | sill-right
2019-06-15 R 2.5 Two holes cut, patches filed to fit | floor-front-right
2019-06-22 R 3 Butt welded | floor-front-right
2019-06-23 R 2 Dressed both faces | floor-front-right
2019-07-07 R 3 Outrigger opened | outrigger-front-right
2019-07-20 R 3.5 Plates folded and fitted | outrigger-front-right
2019-07-21 R 3 Welded | outrigger-front-right
2019-08-04 R 3 Jacking point pulled straight and welded | jack-rear-right
2019-11-02 R 3.5 Tank out, corner cut | boot-floor
2019-11-09 R 3 Corner fitted | boot-floor
2019-11-09 E 3 Corner fitted | boot-floor
2019-11-10 R 3 Welded | boot-floor
2019-11-23 R 3 Well cut | well
2019-12-07 R 3.5 Used third let in | well
2019-12-08 R 3 Welded | well
2019-12-08 E 3 Welded from below | well
2020-01-04 R 2.5 Leg cut | leg-rear-left
2020-01-11 R 3 Lower half fitted | leg-rear-left
2020-01-12 R 2 Helped from above | leg-rear-left
2020-01-12 E 3 Welded it lying down | leg-rear-left
2020-01-25 R 2.5 Inner arch cut | inner-arch-right
2020-02-01 R 3 Flange made | inner-arch-right
2020-02-02 R 3 Welded | inner-arch-right
2020-02-15 R 3 Arch cut back | arch-left
2020-02-22 R 3.5 Section fitted | arch-left
2020-02-29 E 2.5 Tacked | arch-left
2020-03-01 R 3.5 Butt weld in short runs | arch-left
2020-03-07 R 3 Dressed and leaded | arch-left
2020-03-21 R 2.5 Filler off, cut | arch-right
2020-04-04 R 3.5 Section fitted | arch-right
2020-04-11 R 3.5 Welded | arch-right
2020-04-13 R 3 Dressed and leaded | arch-right
2020-05-02 R 3 Valance rolled and fitted | rear-valance
2020-05-09 R 2.5 Welded, tow-bar holes closed | rear-valance
2020-06-13 R 3 Tray folded and fitted | battery-tray
2020-06-13 E 2.5 Tray folded and fitted | battery-tray
2020-07-04 R 3 Ring made, crack drilled | tower-left
2020-07-04 E 3 Measured across | tower-left
2020-07-05 R 2.5 Welded | tower-left
2020-08-08 R 3.5 Wing foot hammered to shape | wing-left
2020-08-09 R 2.5 Welded | wing-left
2020-09-12 R 2.5 Lower half of the new old stock wing let in | wing-right
2020-10-17 R 3 Scuttle corner in two pieces | scuttle
2020-10-18 R 2.5 Welded | scuttle
2020-11-21 R 3.5 Door skin strip fitted | door-left
2020-11-21 E 2 Door skin strip fitted | door-left
2020-12-05 R 3 Welded | door-left
2021-03-13 R 3 Axle in, brake lines run |
2021-03-13 E 3 Axle in |
2021-03-27 R 3 On its wheels |
2021-09-11 R 3 Screen in with new rubber | scuttle
2022-10-15 R 2 Caliper stripped, new seals |
2023-10-14 R 1.5 Blister opened and ground back | boot-lid
""",
    PEOPLE,
)
