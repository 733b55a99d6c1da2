"""The demo's pairs: laid by spots on the drawn metal."""

import math

import numpy as np
import pytest

from journal.demo.canvas import Canvas, Framing, plane_to_picture
from journal.demo.pairs import CAPTIONS, pairs_of
from journal.demo.plan import plan
from journal.domain.homographies import mapped
from journal.vision.aligning import lay_by_hand


def _pixels(spot):
    return spot.x * 1600, spot.y * 1200


def test_three_pairs_are_laid_by_six_spots_that_a_hand_missed_by_little():
    found = pairs_of(plan())
    assert [pair.area for pair in found] == list(CAPTIONS)
    for pair in found:
        before, after = plan()[pair.before], plan()[pair.after]
        assert before.true < after.true
        spots = [(_pixels(p.before), _pixels(p.after)) for p in pair.points]
        laid = lay_by_hand(spots)
        assert len(pair.points) == 6
        assert 0 < laid.error_px < 3
        middle = mapped(laid.matrix, (800, 600))
        assert math.dist(middle, (800, 600)) < 400


def test_where_few_pictures_are_drawn_there_are_fewer_pairs():
    assert pairs_of(plan()[:3]) == ()


def test_the_way_to_the_picture_is_the_one_it_is_drawn_by():
    framing = Framing(x=12, y=-30, width=700, yaw=14, pitch=-6, roll=2)
    canvas = Canvas((160, 120), framing, 5)
    x, y = float(canvas.x[20, 130]), float(canvas.y[20, 130])
    u, v, w = plane_to_picture(framing) @ np.array([x, y, 1.0])
    assert (u / w, v / w) == pytest.approx(((130.5 - 80) / 160, (20.5 - 60) / 160), abs=1e-5)
