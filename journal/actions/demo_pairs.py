"""The demo's pairs, laid by hand as a person would."""

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from journal.actions.pairs import fit_by_hand, keep_pair
from journal.actions.session import Session
from journal.domain.ids import AreaId, PhotoId

if TYPE_CHECKING:
    from journal.demo.plan import Planned


def record_pairs(
    session: Session,
    drawn: "Sequence[Planned]",
    photo_ids: Sequence[PhotoId],
    area_ids: Mapping[str, AreaId],
) -> None:
    """Keep the pairs that there are among the pictures drawn, in the order of ``photo_ids``."""
    from journal.demo.pairs import pairs_of

    for story in pairs_of(drawn):
        ids = photo_ids[story.before], photo_ids[story.after]
        before, after = session.journal.photos.get(ids)
        fit = fit_by_hand(before, after, story.points)
        keep_pair(session, area_ids[story.area], *ids, fit, story.caption)
