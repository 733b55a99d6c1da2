"""What the screens say of a photo in a few words: for cells, tool tips and screen readers."""

from journal.domain.photos import Basis, Kind, Photo
from journal.domain.when import When, spoken

#: How a photo's date is known, as a sentence's end.
BASIS_WORDS = {
    Basis.OWNER: "date given by you",
    Basis.CAMERA: "date from the camera",
    Basis.FILE_NAME: "date from the file's name",
    Basis.NEIGHBOURS: "date from its neighbours",
    Basis.DIGITISED: "date of the scan or edit",
    Basis.FILE_TIME: "date of the file itself",
    Basis.UNKNOWN: "date unknown",
}


def to_the_minute(when: When) -> bool:
    """Whether the time of day is known."""
    return (when.latest - when.earliest).total_seconds() < 60


def cell_words(photo: Photo) -> str:
    """The line under a thumbnail: the caption, else the time of day, else the name."""
    if photo.caption:
        return photo.caption
    if photo.when is not None and to_the_minute(photo.when):
        # Called in every frame: strftime would import a module each time.
        return f"{photo.when.earliest.hour:02}:{photo.when.earliest.minute:02}"
    return photo.name


def facts_words(photo: Photo) -> str:
    """When it was taken, how that is known, and with what."""
    date = spoken(photo.when) if photo.when is not None else "No date"
    words = [date, BASIS_WORDS[photo.basis]] if photo.when is not None else [date]
    return " \u00b7 ".join([*words, photo.camera] if photo.camera else words)


def mark_words(photo: Photo) -> list[str]:
    """What the marks on a cell mean, one phrase each."""
    words = [BASIS_WORDS[photo.basis], "placed on the drawing" if photo.placed else "not placed"]
    if photo.kind is not Kind.PICTURE:
        words.append(photo.kind.value)
    if photo.damage:
        words.append(f"damaged: {photo.damage}")
    return words
