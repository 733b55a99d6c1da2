"""What the album's pages are called: by number, never by a name that somebody typed."""

#: Where all pages but the first lie, and where the pictures and the look do.
PAGES, PHOTOS, DRAWN, LOOK = "pages", "photos", "drawn", "look"

DRAWING, TIMELINE, AREAS, PHOTO_INDEX, COSTS, RECORD = (
    "drawing.html",
    "timeline.html",
    "areas.html",
    "photos.html",
    "costs.html",
    "record.html",
)


def area_file(number: int) -> str:
    """The page of the repair area of that number in the dossier."""
    return f"area-{number}.html"


def panel_file(number: int) -> str:
    """The page of the panel of that number in the journal."""
    return f"panel-{number}.html"


def photo_file(number: int) -> str:
    """The page of the photo of that number in the dossier."""
    return f"photo-{number}.html"


def small_name(number: int) -> str:
    """The file of a photo's small picture."""
    return f"small-{number}.jpg"
