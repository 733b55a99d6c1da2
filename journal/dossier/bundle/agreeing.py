"""Whether the parts of a bundle agree: what bag-info.txt and the list of originals say of the rest.

Whoever changes one part and writes the bag's lists anew has to change these too, each its own way.
"""

import csv
import io
from collections.abc import Iterator

from journal.domain.bags import BagRefusedError, shown_path
from journal.domain.checks import ChainFound, Fault, SignatureFound
from journal.dossier.bag_check import Bag, tag_file
from journal.dossier.bag_sources import Source
from journal.dossier.bundle import layout


def disagreements(
    source: Source, bag: Bag, signed: SignatureFound | None, history: ChainFound | None
) -> Iterator[Fault]:
    """Name each part of one of our bundles that another part says otherwise of."""
    yield from _key(bag, signed)
    told = bag.told(layout.DIGEST)
    if history is not None and told and history.digest != told and not history.broken:
        what = f"It does not end where bag-info.txt says, after edit {bag.told(layout.EDITS)}."
        yield Fault(layout.HISTORY, what)
    yield from _originals(source, bag)


def _key(bag: Bag, signed: SignatureFound | None) -> Iterator[Fault]:
    told = bag.told(layout.KEY)
    if signed is None and told:
        what = f"It is missing: bag-info.txt says that it was signed with the {told}."
        yield Fault(layout.SIGNATURE, what)
    elif signed is not None and signed.good and told != f"Ed25519 {signed.fingerprint}":
        names = "names another key" if told else "says nothing of a key"
        yield Fault(layout.PUBLIC_KEY, f"It is not the key that signed: bag-info.txt {names}.")


def _originals(source: Source, bag: Bag) -> Iterator[Fault]:
    """Originals that are others than their list says: two exchanged, or one put for another."""
    if layout.ORIGINALS_LIST not in source.files:
        return
    try:
        text = tag_file(source, layout.ORIGINALS_LIST).decode("utf-8-sig", "replace")
        rows = list(csv.DictReader(io.StringIO(text, newline=""), strict=True))
    except (BagRefusedError, csv.Error) as error:
        yield Fault(layout.ORIGINALS_LIST, f"It can't be read as a list ({error}).")
        return
    for row in rows:
        path, listed = row.get("path") or "", row.get("sha256") or ""
        found = bag.digests.get(path, {}).get("sha256", listed)
        if found != listed:
            said = shown_path(layout.ORIGINALS_LIST)
            yield Fault(path, f"It is another original than the one that {said} has there.")
