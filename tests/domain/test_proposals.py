"""Proposals in words, and those of many photos put together."""

import pytest

from journal.domain.ids import PanelId, PhotoId
from journal.domain.proposals import Proposal, reason, together


def proposal(panel=1, score=10.0, nearest=5, apart=None, alike=None, likeness=0.0):
    return Proposal(PanelId(panel), score, nearest, apart, alike, likeness)


@pytest.mark.parametrize(
    ("made", "words"),
    [
        (
            proposal(apart=20.2, alike=5, likeness=0.9),
            "20 minutes after a photo pinned to Sill, left; looks much like it",
        ),
        (
            proposal(apart=-61, alike=6, likeness=0.8),
            "61 minutes before a photo pinned to Sill, left; looks somewhat like another",
        ),
        (proposal(apart=0.2), "within a minute of a photo pinned to Sill, left"),
        (proposal(apart=1.0), "1 minute after a photo pinned to Sill, left"),
        (proposal(apart=300), "5 hours after a photo pinned to Sill, left"),
        (proposal(apart=-3 * 1440), "3 days before a photo pinned to Sill, left"),
        (
            proposal(apart=90 * 1440, alike=5, likeness=0.9),
            "looks much like a photo pinned to Sill, left",
        ),
        (
            proposal(apart=90 * 1440, alike=5, likeness=0.5),
            "a faint guess: little like it, and far in time",
        ),
    ],
)
def test_the_reason_says_how_near_in_time_and_how_alike(made, words):
    assert reason(made, "Sill, left") == words


def test_under_the_panels_name_it_is_not_said_again():
    made = proposal(apart=20, alike=5, likeness=0.9)
    assert reason(made) == "20 minutes after a photo there; looks much like it"


def test_beside_the_words_stands_the_look_alike_else_the_nearest_in_time():
    assert proposal(alike=6, nearest=5).shown == 6
    assert proposal(nearest=5).shown == 5


def test_photos_together_go_where_most_of_them_would():
    found = {
        PhotoId(1): (proposal(1, 12), proposal(2, 11), proposal(3, 3)),
        PhotoId(2): (proposal(2, 20), proposal(1, 9)),
        PhotoId(3): (proposal(1, 13), proposal(4, 10)),
        PhotoId(4): (),
    }
    made = together(found)
    assert [(p.panel_id, p.share, p.score) for p in made] == [(1, 2, 13), (2, 1, 20), (4, 0, 10)]
    assert together({}) == ()
