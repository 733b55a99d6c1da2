"""The whole record at once, for gaps, sums and the dossier."""

from journal.domain.record import Record
from journal.store.journal import Journal


def record(journal: Journal) -> Record:
    """Everything the journal holds."""
    return Record(
        car=journal.car.get(),
        milestones=journal.car.milestones(),
        drawing=journal.drawing.get(),
        cameras=journal.photos.cameras(),
        photos=journal.photos.all(),
        pins=journal.pins.all(),
        areas=journal.areas.all(),
        area_photos=journal.areas.photos(),
        entries=journal.areas.entries(),
        receipts=journal.receipts.all(),
        work=journal.work.all(),
        seams=journal.metalwork.seams(),
        seam_changes=journal.metalwork.changes(),
        patches=journal.metalwork.patches(),
        anchors=journal.metalwork.anchors(),
        measures=journal.readings.measures(),
        readings=journal.readings.all(),
        people=journal.people.all(),
        wanted=journal.wanted.all(),
        valuations=journal.valuations.all(),
        comparables=journal.valuations.comparables(),
        price_indices=journal.price_indices.all(),
        claim_words=journal.claims.all(),
        standard_views=journal.cuts.standard_views(),
        boxes=journal.covers.all(),
        pairs=journal.pairs.all(),
        surveys=journal.surveys.sheets(),
    )
