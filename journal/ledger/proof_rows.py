"""What proves what, as rows of tables: claims with their evidence, pairs, standard views."""

from collections.abc import Iterator, Mapping

from journal.domain.claims import all_claims
from journal.domain.evidence import Grade
from journal.domain.ids import AreaId
from journal.domain.record import Record

Row = tuple[str | int | None, ...]

CLAIMS = (
    "area", "area id", "claim", "date", "words", "owner's words", "left out",
    "owner's word alone", *(grade.value for grade in Grade), "photo ids",
)  # fmt: skip
PAIRS = ("id", "area", "before photo", "after photo", "how", "pixels off", "caption")
VIEWS = ("view", "photo id")


def claim_rows(record: Record, areas: Mapping[AreaId, str]) -> Iterator[Row]:
    """Every claim with how many pieces of evidence of each grade stand behind it."""
    for area_id, found in all_claims(record).items():
        for claim in found.claims:
            yield (
                areas.get(area_id, ""),
                area_id,
                claim.key,
                claim.when.edtf if claim.when else None,
                claim.said,
                "yes" if claim.own else "no",
                "yes" if claim.left_out else "no",
                "yes" if claim.is_word_alone else "no",
                *(sum(piece.grade is grade for piece in claim.pieces) for grade in Grade),
                " ".join(str(photo_id) for photo_id in claim.photo_ids),
            )


def pair_rows(record: Record, areas: Mapping[AreaId, str]) -> Iterator[Row]:
    """The pairs of photos that the owner kept."""
    for pair in record.pairs:
        off = "" if pair.fit.error_px is None else f"{pair.fit.error_px:.1f}"
        area = areas.get(pair.area_id, "")
        yield pair.id, area, pair.before_id, pair.after_id, pair.fit.how.value, off, pair.caption


def view_rows(record: Record) -> Iterator[Row]:
    """The photo of each standard view."""
    for view in record.standard_views:
        yield view.name, view.photo_id
