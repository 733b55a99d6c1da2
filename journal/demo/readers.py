"""What the made-up owner chose for those who will read the dossier."""

from typing import NamedTuple

from journal.domain.private_words import Private


class Cover(NamedTuple):
    """A box on a photo, by the photo's file name; shares of the picture."""

    name: str
    place: tuple[float, float, float, float]
    hides: Private


#: Standard view -> the name of the photo's file. Nobody took one of the right side.
STANDARD_VIEWS = {
    "front": "IMG_20220514_131800.jpg",
    "rear": "IMG_20220514_132244.jpg",
    "left side": "IMG_20220514_132024.jpg",
    "interior": "IMG_20211211_201500.jpg",
    "engine bay": "LUMN0449.JPG",
    "underside": "LUMN0441.JPG",
}

#: The number plate, where it can be seen from behind.
COVERS = (
    Cover("IMG_20220514_132244.jpg", (0.68, 0.53, 0.14, 0.11), Private.PLATE),
    Cover("IMG_20180318_131200.jpg", (0.14, 0.56, 0.14, 0.12), Private.PLATE),
)

#: Words that follow from nothing else in the record.
PRIVATE_WORDS = (("Saltwyke", Private.ADDRESSES), ("Harrowmouth", Private.ADDRESSES))

#: Repair area, claim, and what the owner says in its place.
CLAIM_WORDS = (
    (
        "sill-left",
        "finished",
        "Finished with the rest of the shell, in colour, on 9 July 2021.",
    ),
)
