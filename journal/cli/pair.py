"""restoration-journal pair: lay an after photo over a before."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import click

from journal.actions.areas import areas, find_area
from journal.actions.journals import open_journal
from journal.actions.pair_pictures import SheetLook, export_pair
from journal.actions.pair_proposals import propose_all, propose_pairs
from journal.actions.pairs import (
    area_pairs,
    find_fit,
    fit_by_hand,
    keep_pair,
    pairs,
    remove_pair,
)
from journal.actions.photos import photo as photo_of
from journal.actions.session import Session
from journal.actions.timeline import find_photo
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, progress, tell
from journal.domain.areas import Area
from journal.domain.errors import JournalError
from journal.domain.ids import PairId, PhotoId
from journal.domain.pairs import MOST_POINTS, SIDE_BY_SIDE, Fit, Pair, PairProposal, PointPair
from journal.domain.shapes import Point


@click.command("pair")
@journal_argument
@click.argument("area", required=False)
@click.argument("before", required=False)
@click.argument("after", required=False)
@click.option("--propose", is_flag=True, help="Look for photos of one view; nothing is kept.")
@click.option(
    "--points",
    type=click.Path(exists=True, dir_okay=False, path_type=Path),
    help="A file of points seen on both: x y x y a line, in pixels of the upright photos.",
)
@click.option("--side-by-side", "flat", is_flag=True, help="Keep the two side by side alone.")
@click.option("--caption", default="", help="What the pair shows.")
@click.option("--remove", is_flag=True, help="Take the pair of BEFORE and AFTER apart.")
@click.option("--keep", is_flag=True, help="Keep the fit that was found; look at it first.")
@click.option("--out", type=click.Path(path_type=Path), help="Write the pair as a .jpg or .png.")
@click.option("--divided", is_flag=True, help="With --out: one picture, half before, half after.")
@json_option
def command(
    journal: Path,
    area: str | None,
    before: str | None,
    after: str | None,
    propose: bool,
    out: Path | None,
    divided: bool,
    as_json: bool,
    **asked: Any,
) -> None:
    """Lay the photo AFTER over the photo BEFORE of a repair area, and keep them as a pair.

    Without photos: the pairs of AREA, or of every one. How one lies on the other is found by what
    both show. Now and then that is wrong: draw it with --out, look, and keep it with --keep if it
    lies right. With --points it is laid by spots seen on both, four or better six: with four the
    error is always nothing.

    With --json: a list of objects with id (null where not kept), area, before, after (numbers of
    photos), how ("found", "by hand", "side by side"), inliers, error (in pixels of a picture 1600
    long), matrix (nine numbers from places on the after photo to the before, in shares of width
    and height, before the owner's own turn; null where side by side), caption.
    """
    if (before is None) != (after is None):
        raise click.UsageError("Give both photos, BEFORE and AFTER.")
    wants = _Wants(**asked)
    changing = before is not None and wants.changes
    with open_journal(journal, read_only=not changing) as session:
        if area is None:
            rows = _proposed_anywhere(session) if propose else list(pairs(session))
        else:
            rows = _of_area(session, find_area(session, area), (before, after), wants, propose)
        if out is not None and rows:
            look = SheetLook.DIVIDED if divided else SheetLook.SIDE_BY_SIDE
            tell(f"Written: {export_pair(session, rows[0], out, look)}")
        _say(session, rows, as_json=as_json)


@dataclass(frozen=True, slots=True)
class _Wants:
    """What is to be done with two photos."""

    points: Path | None
    flat: bool
    caption: str
    remove: bool
    keep: bool

    @property
    def changes(self) -> bool:
        """Whether anything is kept or taken apart."""
        return bool(self.flat or self.points or self.keep or self.remove)


def _of_area(
    session: Session,
    area: Area,
    photos: tuple[str | None, str | None],
    wants: _Wants,
    propose: bool,
) -> list[Pair]:
    before, after = photos
    if propose:
        with progress() as context:
            return _as_pairs(propose_pairs(session, area.id, context))
    if before is None or after is None:
        return list(area_pairs(session, area.id))
    both = find_photo(session, before).id, find_photo(session, after).id
    return _of_two(session, area, both, wants)


def _of_two(
    session: Session, area: Area, both: tuple[PhotoId, PhotoId], wants: _Wants
) -> list[Pair]:
    if wants.remove:
        _remove(session, area, both)
        return list(area_pairs(session, area.id))
    kept = _kept(session, area, both)
    if kept and not wants.changes:
        return kept
    fit = _fit(session, both, wants.points, flat=wants.flat)
    if fit is None:
        raise JournalError(
            "Could not find how one photo lies on the other. Give points seen on both with "
            "--points, or keep them with --side-by-side."
        )
    if not wants.changes:
        return [Pair(PairId(0), area.id, *both, fit, wants.caption)]
    made = keep_pair(session, area.id, *both, fit, wants.caption).made
    return [pair for pair in area_pairs(session, area.id) if pair.id == made]


def _proposed_anywhere(session: Session) -> list[Pair]:
    with progress() as context:
        found = propose_all(session, context)
    return [pair for rows in found for pair in _as_pairs(rows[:1])]


def _as_pairs(found: Sequence[PairProposal]) -> list[Pair]:
    return [
        Pair(PairId(0), row.area_id, row.before_id, row.after_id, row.fit or SIDE_BY_SIDE)
        for row in found
    ]


def _kept(session: Session, area: Area, both: tuple[PhotoId, PhotoId]) -> list[Pair]:
    """The pair of both photos, if it is kept."""
    return [p for p in area_pairs(session, area.id) if (p.before_id, p.after_id) == both]


def _remove(session: Session, area: Area, both: tuple[PhotoId, PhotoId]) -> None:
    found = _kept(session, area, both)
    if not found:
        raise JournalError("These two photos are no pair of the repair area.")
    remove_pair(session, found[0].id)
    tell("Taken apart; the photos stay.")


def _fit(
    session: Session, both: tuple[PhotoId, PhotoId], points: Path | None, *, flat: bool
) -> Fit | None:
    first, second = photo_of(session, both[0]), photo_of(session, both[1])
    if flat:
        return SIDE_BY_SIDE
    if points is None:
        return find_fit(session, first, second)
    sizes = [(p.height, p.width) if p.turn % 180 else (p.width, p.height) for p in (first, second)]
    if not all(side for size in sizes for side in size):
        raise JournalError("The size of one of the photos isn't known, so points mean nothing.")
    return fit_by_hand(first, second, _points(points, sizes))


def _points(path: Path, sizes: list[tuple[int, int]]) -> list[PointPair]:
    """Points from a file: four numbers a line, lines that begin with # left out."""
    made = []
    try:
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        raise JournalError(f"The points in “{path}” can't be read.") from error
    for number, line in enumerate(text.splitlines(), 1):
        words = line.replace(",", " ").replace(";", " ").split()
        if not words or words[0].startswith("#"):
            continue
        try:
            x, y, u, v = map(float, words)
        except ValueError as error:
            raise JournalError(
                f"Line {number} of “{path.name}” isn't four numbers: x y on the before photo, "
                "x y on the after."
            ) from error
        (w1, h1), (w2, h2) = sizes
        made.append(PointPair(Point(x / w1, y / h1), Point(u / w2, v / h2)))
        if len(made) > MOST_POINTS:
            raise JournalError(f"“{path.name}” holds more than {MOST_POINTS} points.")
    return made


def _say(session: Session, rows: list[Pair], *, as_json: bool) -> None:
    names = {area.id: area.name for area in areas(session)}
    if as_json:
        answer([_object(names[row.area_id], row) for row in rows])
        return
    if not rows:
        tell("No pair. Look for one with --propose.")
    for row in rows:
        before, after = (photo_of(session, i).name for i in (row.before_id, row.after_id))
        click.echo(f"{names[row.area_id]}: {row.before_id} {before} > {row.after_id} {after}")
        click.echo(f"  {_how(row)}")
        if row.caption:
            click.echo(f"  {row.caption}")


def _how(row: Pair) -> str:
    fit = row.fit
    words = fit.how.value
    if fit.inliers is not None:
        words += f", {fit.inliers} spots agree"
    if fit.error_px is not None:
        words += f", error {fit.error_px:.1f} pixels"
    return words if row.id else f"{words} (not kept)"


def _object(area: str, row: Pair) -> dict[str, object]:
    return {
        "id": row.id or None,
        "area": area,
        "before": row.before_id,
        "after": row.after_id,
        "how": row.fit.how.value,
        "inliers": row.fit.inliers,
        "error": row.fit.error_px,
        "matrix": None if row.fit.matrix is None else list(row.fit.matrix),
        "caption": row.caption,
    }
