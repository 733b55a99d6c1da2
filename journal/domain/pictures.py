"""Pixels on their way to a screen."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Picture:
    """A decoded picture, upright: ``rgb`` holds three bytes a pixel, row by row, no padding."""

    width: int
    height: int
    rgb: bytes
