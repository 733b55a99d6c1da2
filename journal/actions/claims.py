"""Claims: what the record supports of each repair area, and the owner's words for it."""

from journal.actions.pictures import original_path
from journal.actions.session import Session
from journal.domain import claims as rules
from journal.domain.changes import Changes
from journal.domain.claim_words import ClaimWords, check_words
from journal.domain.claims import AreaClaims, Claim
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PhotoId
from journal.domain.record import Record
from journal.store.record import record


def claims(session: Session) -> dict[AreaId, AreaClaims]:
    """The claims on every repair area, in the order of the journal's areas."""
    whole = record(session.journal)
    return rules.all_claims(whole, lost_photos(session, whole))


def area_claims(session: Session, area_id: AreaId) -> AreaClaims:
    """The claims on one repair area; none where there is no such area."""
    whole = record(session.journal)
    return rules.claims_of(whole, area_id, lost_photos(session, whole))


def lost_photos(session: Session, whole: Record) -> frozenset[PhotoId]:
    """The photos chosen for repair areas whose original isn't in the journal's folder."""
    chosen = {row.photo_id for row in whole.area_photos}
    photos = (photo for photo in whole.photos if photo.id in chosen)
    return frozenset(p.id for p in photos if not original_path(session, p).is_file())


def set_claim_words(session: Session, area_id: AreaId, claim: str, words: str) -> Changes:
    """Say a claim in words of the owner's; "" gives it the program's again.

    Evidence and grades stay as they are: they follow from the record.

    Raises:
        JournalError: there is no such claim, or the words are too many.
    """
    check_words(words)
    now = _claim(session, area_id, claim)
    words = words.strip()
    own = "" if words == now.words else words
    name = session.journal.areas.get(area_id).name
    with session.journal.edit(f"Word the claim “{claim}” of “{name}”") as edit:
        session.journal.claims.set(ClaimWords(area_id, claim, own, now.left_out))
    return edit.changes()


def leave_out_claim(
    session: Session, area_id: AreaId, claim: str, *, left_out: bool = True
) -> Changes:
    """Leave a claim out of what is printed, or take it in again.

    Raises:
        JournalError: there is no such claim.
    """
    now = _claim(session, area_id, claim)
    name = session.journal.areas.get(area_id).name
    what = f"Leave out the claim “{claim}” of" if left_out else f"Print the claim “{claim}” of"
    with session.journal.edit(f"{what} “{name}”") as edit:
        session.journal.claims.set(ClaimWords(area_id, claim, now.own, left_out))
    return edit.changes()


def _claim(session: Session, area_id: AreaId, key: str) -> Claim:
    name = session.journal.areas.get(area_id).name
    found = area_claims(session, area_id).claims
    for claim in found:
        if claim.key == key:
            return claim
    keys = ", ".join(claim.key for claim in found) or "none"
    raise JournalError(f"“{name}” has no claim “{key}”; it has {keys}.")
