"""The owner's own notes, dated as surely as she knew."""

from journal.demo.story import EntryStory as E

ENTRIES = (
    E("2018-03-17", "610 km, one flat tyre on the trailer, and she is in the yard. The doors shut"
      " with one finger. Edo says a car that shuts like that can't be bad. Mr Vossenkamp gave me"
      " the second owner's album with it."),
    E("2018-03-18", "Washed it. The sponge came up green, which is odd for paint six weeks old. "
      "Blisters on both rear arches, small ones."),
    E("2018-04-14", "Carpets out, and then I sat on the step for a while. Eleven holes in one"
      " footwell. The sills are filler over newspaper; the newspaper is from 2018.",
      "sill-left"),
    E("2018-04-21", "The jack went through the jacking point. Decided: all of it or none of it. "
      "All of it.", "jack-front-left"),
    E("2018-05-01~", "Asked three shops. Two said scrap, one said 'how long have you got?'. I said"
      " five years. He laughed and lent me his bead roller."),
    E("2018-07-07", "Every wire has a tag and every tag a line in the notebook. If I get hit by a "
      "bus Edo can put it together.", panel="Wiring loom, cabin"),
    E("2018-09-22", "Bare shell. Weighed what we swept up from the floor: 11 kg of car."),
    E("2018-10-06", "Braces in both apertures before anything is cut. Diagonals 1312 and 1310 left,"
      " 1311 and 1311 right, written on the wall where nobody can lose them.", "inner-sill-left"),
    E("2018-10-20", "Cut the inner sill out along the old spot welds. Took four hours for 700 mm. "
      "What was behind it smelled like a cellar.", "inner-sill-left"),
    E("2018-11-04", "Welded. 38 plugs, two of them cold; ground out and done again. Diagonals "
      "still 1312 and 1310.", "inner-sill-left"),
    E("2018-11-17", "Hung both doors to set the sill by them, not the other way round. Gaps 4 mm"
      " and 4.5 mm. Lifted a door off, put it back: same again.", "sill-left"),
    E("2019-01", "Too cold for the torch hand. Read about lead loading instead."),
    E("2019-03-12", "Mr Ravensund came with his little hammer and tapped for an hour. Wants the nut"
      " plate as I drew it. No word of praise but he took his hat off.", "floor-rear-left"),
    E("2019-06-08", "Right sill on. One afternoon less than the left.", "sill-right"),
    E("2019-07-28", "Outrigger shut. I signed my name inside it in paint pen.",
      "outrigger-front-right"),
    E("2019-11-02", "Fuel tank out before any spark. It stays in the neighbour's barn, open and"
      " empty.", "boot-floor"),
    E("2019-12-28", "Found the leg with the axle out, by the light of the phone. Merry Christmas.",
      "leg-rear-left"),
    E("2020-03-07", "First lead since my apprenticeship. Half of it is on my boots. No wire brush "
      "on the dust, wet cloths, and the dog stays out.", "arch-left"),
    E("2020-04~", "Nobody may visit, so Edo holds the other end by telephone."),
    E("2020-07-05", "Crack in the left tower drilled, welded, ringed. Across the studs: 1 mm. "
      "Measured it three times because I didn't believe it.", "tower-left"),
    E("2020-09-05", "The wing arrived in a crate made for a piano. It has hung in a loft since "
      "1974. Half of it goes on the car. It fits; I had forgotten that things can fit.",
      "wing-right"),
    E("2020-11-29", "Last weld on the shell. 302 days after I said it would be."),
    E("2021-03-27", "It rolls! Pushed it to the gate and back, to show it the road."),
    E("2021-06-05", "Visited the shell at Ferrand's. In primer it looks like a photo of itself."),
    E("2021-07-09", "Marsh green. Drove behind the trailer all the way and saw nothing else."),
    E("2021-08-21", "Wax in every cavity I have a hole for. It runs out of the doors like honey.",
      "door-left"),
    E("2021-10-23", "Carburettor back together with two washers fewer than it came apart with, both"
      " accounted for.", panel="Carburettor"),
    E("2022-03-05", "First start, 16:40. Oil pressure at once, a tappet, then not even that. Edo "
      "cried, or it was the fumes.", panel="Engine"),
    E("2022-05-14", "On the road. Four years, one month and 27 days. Went for rolls."),
    E("2022-09-03", "Meeting at Saltwyke. Somebody asked who did the sills. We did."),
    E("2022-10-15", "Pulled to the left under braking: sticky piston, new seals, fluid changed.",
      panel="Front wheel, right"),
    E("2023-04-22", "Flat spot at a third throttle. Spindle worn oval; off to Hollin's.",
      panel="Carburettor"),
    E("2023-10-07", "A blister on the boot lid. I stood before it like in 2018, then fetched the "
      "scraper.", "boot-lid"),
    E("2024-02-24", "Under it with the lamp for the yearly look: wax everywhere, rust nowhere."),
    E("2024-03", "Still to do: boot lid paint, and find the trimmer's invoice.", "boot-lid"),
)  # fmt: skip
