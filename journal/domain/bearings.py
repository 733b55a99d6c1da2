"""What lies within the radius of anchor points: welded, let in, or found and shown by a photo.

Nothing here passes or fails a car: it says how far off a mounting is, and who should look at it.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from journal.domain.anchors import AnchorPoint, Mark, Near, marks, near_patch, near_pin, near_seam
from journal.domain.patches import Patch
from journal.domain.photos import Pin
from journal.domain.seams import Seam


@dataclass(frozen=True, slots=True)
class Bearing:
    """Work near a mounting: what of it is the nearest ("a seam"), and what to say of it."""

    what: str
    mark: Mark

    @property
    def text(self) -> str:
        """The whole sentence: how far what lies from which mounting, and who should look at it."""
        return f"{self.what[0].upper()}{self.what[1:]} lies {_uncapped(self.mark.text)}"


def bearings(
    anchors: Sequence[AnchorPoint],
    *,
    seams: Iterable[Seam] = (),
    patches: Iterable[Patch] = (),
    pins: Iterable[Pin] = (),
) -> tuple[Bearing, ...]:
    """For each mounting that is near, the nearest of what was welded, let in or pinned.

    Pins are the places of photos of the work; the nearest mounting comes first.
    """
    found: list[tuple[str, Near]] = []
    for seam in seams:
        found += [("a seam", near) for near in near_seam(anchors, seam)]
    for patch in patches:
        found += [("a patch", near) for near in near_patch(anchors, patch)]
    for pin in pins:
        found += [("what a photo shows", near) for near in near_pin(anchors, pin)]
    found.sort(key=lambda one: one[1].distance_mm)
    nearest: dict[int, tuple[str, Near]] = {}
    for what, near in found:
        nearest.setdefault(near.anchor.id, (what, near))
    return tuple(Bearing(what, marks([near])[0]) for what, near in nearest.values())


def _uncapped(text: str) -> str:
    return f"{text[0].lower()}{text[1:]}"
