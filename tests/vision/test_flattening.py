"""A picture laid flat on a view: what was drawn on it is where the millimetres say."""

import io

import pytest
from PIL import Image, ImageDraw

from journal.domain.errors import JournalError
from journal.domain.homographies import depth, inverse, mapped, outline
from journal.domain.pictures import Picture
from journal.vision.flattening import laid_flat
from journal.vision.squaring import square_up


def drawn(size, marks):
    image = Image.new("RGB", size, "white")
    pen = ImageDraw.Draw(image)
    for (x, y), colour in marks:
        pen.ellipse((x - 6, y - 6, x + 6, y + 6), fill=colour)
    return Picture(*size, image.tobytes())


def colour_at(picture, x, y):
    image = Image.open(io.BytesIO(_ppm(picture)))
    return image.getpixel((round(x), round(y)))


def _ppm(picture):
    return b"P6 %d %d 255\n" % (picture.width, picture.height) + picture.rgb


def test_marks_come_to_lie_where_the_homography_says():
    corners = [(60, 40), (540, 90), (520, 380), (80, 350)]
    matrix = square_up(corners, 2000, 1000, at=(250, 125))
    spots = {(400, 300): "red", (1250, 600): "blue", (2100, 1000): "green"}
    marks = [(mapped(inverse(matrix), at), colour) for at, colour in spots.items()]
    flat = laid_flat(drawn((600, 420), marks), matrix, 2500, 1250, 500)
    assert (flat.width, flat.height) == (500, 250)
    for (x, y), colour in spots.items():
        found = colour_at(flat, x / 5, y / 5)
        wanted = Image.new("RGB", (1, 1), colour).getpixel((0, 0))
        assert found == pytest.approx(wanted, abs=40)


def test_beside_the_picture_is_paper():
    flat = laid_flat(Picture(2, 2, bytes(12)), (50, 0, 0, 0, 50, 0, 0, 0, 1), 400, 200, 40)
    assert colour_at(flat, 5, 5) == (0, 0, 0)
    assert colour_at(flat, 30, 15) == (255, 255, 255)


def test_a_sheet_without_size_is_refused():
    with pytest.raises(JournalError, match="without a size"):
        laid_flat(Picture(1, 1, bytes(3)), (1, 0, 0, 0, 1, 0, 0, 0, 1), 0, 200, 40)


def test_what_lies_beyond_the_horizon_is_left_out():
    # A floor seen from low down: the horizon crosses the picture at a third of its height.
    corners = [(260, 240), (340, 240), (560, 420), (40, 420)]
    matrix = square_up(corners, 1000, 2000, at=(500, 0))
    flat = laid_flat(Picture(600, 420, bytes(3 * 600 * 420)), matrix, 2000, 2000, 200)
    assert colour_at(flat, 100, 100) == (0, 0, 0)
    shown = outline(matrix, 600, 420)
    assert min(point.y for point in shown) < -2000
    assert max(point.y for point in shown) == pytest.approx(2000, abs=1)
    assert all(depth(inverse(matrix), point) > 0 for point in shown)
    assert depth(matrix, (300, 0)) < 0 < depth(matrix, (300, 419))
