"""Options of commands that make something by a cut: for whom, which parts, what is withheld."""

import functools
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from typing import Any

import click

from journal.actions.areas import find_area
from journal.actions.dossier_cuts import choices_of
from journal.actions.session import Session
from journal.domain.cuts import Choices, Cut, Part
from journal.domain.private_words import Private

_PARTS = click.Choice([part.value for part in Part])
_KINDS = click.Choice([kind.value for kind in Private])


@dataclass(frozen=True, slots=True)
class CutAsked:
    """What was asked for; what wasn't is as it was chosen in the journal."""

    cut: Cut
    with_parts: frozenset[Part]
    without_parts: frozenset[Part]
    withhold: frozenset[Private]
    told: frozenset[Private]
    photos: int | None
    areas: tuple[str, ...]

    def choices(self, session: Session) -> Choices:
        """The choices of the cut with what was asked for."""
        kept = choices_of(session, self.cut)
        made = replace(
            kept,
            parts=(kept.parts | self.with_parts) - self.without_parts,
            withheld=(kept.withheld | self.withhold) - self.told,
        )
        if self.photos is not None:
            made = replace(made, photos=self.photos)
        if self.areas:
            found = frozenset(find_area(session, text).id for text in self.areas)
            made = replace(made, areas=found)
        return made


def cut_options(default: Cut) -> Callable[[Callable[..., Any]], Callable[..., Any]]:
    """Give a command the options of a cut; it gets them as one value, ``asked``."""
    options = (
        click.option(
            "--for",
            "cut",
            type=click.Choice([cut.value for cut in Cut]),
            default=default.value,
            show_default=True,
            help="Who is to read it; the parts are chosen on the Dossier page or here.",
        ),
        click.option("--with", "with_parts", type=_PARTS, multiple=True, help="Put a part in."),
        click.option(
            "--without", "without_parts", type=_PARTS, multiple=True, help="Leave a part out."
        ),
        click.option("--withhold", type=_KINDS, multiple=True, help="Keep something out of it."),
        click.option("--tell", "told", type=_KINDS, multiple=True, help="Withhold it no longer."),
        click.option(
            "--photos", type=click.IntRange(0), help="So many of one repair area; 0 for all."
        ),
        click.option(
            "--chapter", "areas", multiple=True, help="Only these repair areas, by number or name."
        ),
    )

    def given(command: Callable[..., Any]) -> Callable[..., Any]:
        @functools.wraps(command)
        def wrapped(**values: Any) -> Any:
            asked = CutAsked(
                Cut(values.pop("cut")),
                _members(Part, values.pop("with_parts")),
                _members(Part, values.pop("without_parts")),
                _members(Private, values.pop("withhold")),
                _members(Private, values.pop("told")),
                values.pop("photos"),
                values.pop("areas"),
            )
            return command(asked=asked, **values)

        made: Callable[..., Any] = wrapped
        for option in reversed(options):
            made = option(made)
        return made

    return given


def _members(kind: Any, names: Iterable[str]) -> frozenset[Any]:
    return frozenset(kind(name) for name in names)
