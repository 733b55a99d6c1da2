"""What the demo's owner chose for the readers of the dossier."""

from collections.abc import Mapping

from journal.actions import claims, covers, dossier_cuts, photos, privacy
from journal.actions.session import Session
from journal.domain.ids import AreaId


def record_choices(session: Session, area_ids: Mapping[str, AreaId]) -> None:
    """Record standard views, covers on photos, private words, and words for a claim.

    Of a demo with few pictures, what belongs to the others is passed over.
    """
    from journal.demo import readers

    by_name = {photo.name: photo for photo in photos.all_photos(session)}
    for view, name in readers.STANDARD_VIEWS.items():
        if name in by_name:
            dossier_cuts.set_standard_view(session, view, by_name[name].id)
    for cover in readers.COVERS:
        if cover.name in by_name:
            covers.add_cover(session, by_name[cover.name], cover.place, cover.hides)
    for words, kind in readers.PRIVATE_WORDS:
        privacy.add_private_word(session, words, kind)
    for key, claim, words in readers.CLAIM_WORDS:
        claims.set_claim_words(session, area_ids[key], claim, words)
