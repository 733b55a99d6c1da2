"""How a panel is filled on paper: by stage and by level, never by colour alone.

Stage colours are from the Okabe-Ito palette (as listed by the R package khroma), darkened where
white paper would swallow them.
"""

from collections.abc import Mapping, Sequence

from journal.domain.ids import PanelId
from journal.domain.svg_marks import PLAIN, Look, Row

#: From the least to the most advanced stage: what is to be done catches the eye.
STAGE_LOOKS = (
    Look("#f7dcc9", "M0 0L8 8M8 0L0 8", "#c24e00"),
    Look("#f3dde9", "M-2 2L2 -2M0 8L8 0M6 10L10 6", "#a8527f"),
    Look("#d8e8f4", "M0 4H8", "#0072b2"),
    Look("#f2e7c4", "M0 4H8M4 0V8", "#7a5c00"),
    Look("#d3ece2", "M3 3H5V5H3Z", "#007a5a"),
    Look("#dde7ed", "M4 0V8", "#3f7396"),
    Look("#cfcbc4", "", "#35312b"),
)

#: From nothing to the most: darker, and with ever more dots.
LEVEL_LOOKS = (
    PLAIN,
    Look("#e3edf5", "M3.5 4H4.5", "#1d3f5e"),
    Look("#c6dcec", "M1.5 2H2.5M5.5 6H6.5", "#1d3f5e"),
    Look("#9cc3de", "M0 8L8 0M-1 1L1 -1M7 9L9 7", "#1d3f5e"),
    Look("#6aa3cd", "M0 2H8M0 6H8", "#12283d"),
    Look("#3a7db3", "M0 2H8M0 6H8M2 0V8M6 0V8", "#0b1a29"),
)


def stage_look(stage: str, stages: Sequence[str]) -> Look:
    """How a stage looks: the first like the first, the last like the last.

    One that isn't in the list looks as the least advanced.
    """
    if stage not in stages:
        return STAGE_LOOKS[0]
    place = stages.index(stage)
    last = len(STAGE_LOOKS) - 1
    return STAGE_LOOKS[last if place == len(stages) - 1 else place % last]


def stage_looks(
    states: Mapping[PanelId, str], stages: Sequence[str]
) -> tuple[dict[PanelId, Look], tuple[Row, ...]]:
    """The look of every panel with a stage, and a legend of the whole list."""
    looks = {panel_id: stage_look(stage, stages) for panel_id, stage in states.items()}
    return looks, tuple((stage_look(stage, stages), stage) for stage in stages)


def level_looks(levels: Mapping[PanelId, int]) -> dict[PanelId, Look]:
    """The look of every panel with a level, 0 to 5."""
    return {panel_id: LEVEL_LOOKS[level] for panel_id, level in levels.items()}
