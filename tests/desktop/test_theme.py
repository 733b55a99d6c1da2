"""Contrast by WCAG 2.2, and stages told apart without colour."""

import pytest

from journal.desktop import theme
from journal.domain.areas import DEFAULT_STAGES

THEMES = {"light": theme.LIGHT, "dark": theme.DARK}


@pytest.mark.parametrize(
    ("colour", "ratio"),
    [
        ("#000000", 21.0),
        ("#767676", 4.542),
        ("#777777", 4.478),
        ("#949494", 3.033),
        ("#0000FF", 8.592),
        ("#FF0000", 3.998),
        ("#0072B2", 5.19),
        ("#F0E442", 1.32),
    ],
)
def test_contrast_on_white_agrees_with_published_values(colour, ratio):
    assert theme.contrast(colour, "#FFFFFF") == pytest.approx(ratio, abs=0.006)


def test_contrast_does_not_depend_on_the_order():
    assert theme.contrast("#123456", "#FEDCBA") == theme.contrast("#FEDCBA", "#123456")


@pytest.mark.parametrize("name", THEMES)
@pytest.mark.parametrize(("words", "ground"), theme.TEXT_PAIRS)
def test_words_can_be_read(name, words, ground):
    colours = THEMES[name]
    assert theme.contrast(getattr(colours, words), getattr(colours, ground)) >= 4.5


@pytest.mark.parametrize("name", THEMES)
@pytest.mark.parametrize(("mark", "ground"), theme.MARK_PAIRS)
def test_marks_can_be_seen(name, mark, ground):
    colours = THEMES[name]
    assert theme.contrast(getattr(colours, mark), getattr(colours, ground)) >= 3


@pytest.mark.parametrize("name", THEMES)
@pytest.mark.parametrize("ground", ["panel", "sheet", "surface", "page"])
def test_stage_marks_can_be_seen(name, ground):
    colours = THEMES[name]
    for colour in colours.stages:
        assert theme.contrast(colour, getattr(colours, ground)) >= 3


@pytest.mark.parametrize("name", THEMES)
def test_stages_differ_without_their_colour(name):
    marks = [theme.stage_mark(THEMES[name], DEFAULT_STAGES, stage) for stage in DEFAULT_STAGES]
    assert len({mark.pattern for mark in marks}) == len(DEFAULT_STAGES)
    assert len({mark.sign for mark in marks}) == len(DEFAULT_STAGES)


def test_a_short_list_of_stages_still_ends_with_the_last_look():
    stages = ("found", "mended")
    first = theme.stage_mark(theme.LIGHT, stages, "found")
    last = theme.stage_mark(theme.LIGHT, stages, "mended")
    assert first.pattern != last.pattern
    assert last.colour == theme.LIGHT.stages[-1]


def test_a_long_list_of_stages_keeps_a_sign_of_its_own_for_each():
    stages = tuple(f"step {n}" for n in range(12))
    signs = {theme.stage_mark(theme.DARK, stages, stage).sign for stage in stages}
    assert len(signs) == 12


def test_no_stage_has_no_mark():
    assert theme.stage_mark(theme.LIGHT, DEFAULT_STAGES, "") is None
    assert theme.stage_mark(theme.LIGHT, DEFAULT_STAGES, "unheard of") is None


def test_a_palette_tells_which_theme_it_belongs_to(qapp):
    assert theme.colours_of(theme.palette(theme.DARK)) is theme.DARK
    assert theme.colours_of(theme.palette(theme.LIGHT)) is theme.LIGHT


def test_a_choice_is_followed(qapp):
    assert theme.chosen("dark") is theme.DARK
    assert theme.chosen("light") is theme.LIGHT
    assert theme.chosen("system") in (theme.LIGHT, theme.DARK)
