"""The READ ME of a bundle: for a stranger with ordinary tools and no idea of this program."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from textwrap import wrap

from journal.domain.checks import Fault
from journal.dossier.bundle.layout import PUBLIC_KEY, SEALED, SEALS, SIGNATURE, STAMPS

_WIDTH = 88


@dataclass(frozen=True, slots=True)
class BundleFacts:
    """What a bundle's READ ME tells of it.

    ``withheld`` names what the owner kept back. ``originals`` is how many are in it. ``edits`` is
    how many edits the history has, 0 where it isn't in it. ``fingerprint`` is the signing key's,
    "" for a bundle without a signature.
    """

    title: str
    made: str
    program: str
    withheld: tuple[str, ...] = ()
    originals: int = 0
    edits: int = 0
    fingerprint: str = ""
    missing: tuple[Fault, ...] = field(default=())


def read_me(facts: BundleFacts) -> str:
    """The whole text."""
    parts = [
        _opening(facts),
        _contents(facts),
        _by_ordinary_tools(),
        *([_signature(facts)] if facts.fingerprint else []),
        _by_program(),
        *([_history()] if facts.edits else []),
        *([_withheld(facts)] if facts.withheld else []),
        *([_missing(facts)] if facts.missing else []),
        _what_it_proves(facts),
    ]
    return "\n\n".join(parts) + "\n"


def _opening(facts: BundleFacts) -> str:
    title = " ".join(facts.title.split())[:_WIDTH]
    return _head(f"{title}: a restoration, and what proves it") + _told(
        f"Made on {facts.made[:10]} by {facts.program}. This folder is a bag by BagIt 1.0 (RFC "
        "8493): plain files, with lists by which anybody can find out whether one of them was "
        "changed, lost or added since."
    )


def _contents(facts: BundleFacts) -> str:
    rows = [
        ("data/dossier.pdf", "the document: read this first"),
        ("data/record/tables", "the record as tables (CSV, UTF-8) for any spreadsheet"),
        ("data/record/record.json", "the whole record as JSON, described by record.schema.json"),
        ("data/record/originals.csv", "every photo and paper: its name, date and SHA-256"),
    ]
    if facts.edits:
        rows += [
            ("data/record/rows.json", "the record as the program's database holds it"),
            ("data/record/history.txt", f"every change ever made to it, {facts.edits:,} edits"),
        ]
    if facts.originals:
        count = f"{facts.originals:,} photos and papers, byte for byte"
        rows.append(("data/originals", f"{count} as they came in"))
    rows += [
        ("manifest-….txt", "the SHA-256 and SHA-512 of every file in data"),
        ("tagmanifest-….txt", "the same of the files beside data"),
        (SEALS, "the SHA-256 of the tagmanifests and of what seals them"),
    ]
    width = max(len(name) for name, _ in rows) + 2
    return _head("What is in it") + "\n".join(f"{name:{width}}{what}" for name, what in rows)


def _by_ordinary_tools() -> str:
    packed = (
        "Unpack it first if it is packed; then, in this folder, on Linux or on a Mac with the GNU "
        "tools:"
    )
    commands = (
        "    sha256sum --quiet -c manifest-sha256.txt\n"
        "    sha256sum --quiet -c tagmanifest-sha256.txt\n"
        f"    sha256sum --quiet -c {SEALS}"
    )
    after = (
        "Each says nothing if all is well, and names every file that is not as it was. sha512sum "
        "does the same with the lists of SHA-512. On Windows, “certutil -hashfile FILE SHA256” "
        "gives the number of one file, to be compared with its line in the list."
    )
    stamped = f"If there is a folder {STAMPS.rstrip('/')}, a time stamp authority vouches for when:"
    openssl = f"    openssl ts -verify -data {SEALED} -in timestamp/1.tsr -CAfile AUTHORITY.pem"
    stamp = f"{stamped}\n\n{openssl}\n\n" + _told(
        "AUTHORITY.pem is the authority's certificate, fetched from the authority itself."
    )
    parts = [_told(packed), commands, _told(after), stamp]
    return _head("To check it with ordinary tools") + "\n\n".join(parts)


def _signature(facts: BundleFacts) -> str:
    words = (
        "The list of all lists is signed with the owner's key (Ed25519, RFC 8032). With OpenSSL 3:"
    )
    command = (
        f"    openssl pkeyutl -verify -pubin -inkey {PUBLIC_KEY} \\\n"
        f"        -rawin -in {SEALED} -sigfile {SIGNATURE}"
    )
    groups = facts.fingerprint.split()
    key = "\n".join("    " + " ".join(groups[at : at + 8]) for at in range(0, len(groups), 8))
    after = (
        "A signature says no more than that whoever holds the key signed. Ask the owner for the "
        "key's fingerprint by another way than this bundle (by telephone, on paper) and compare. "
        "It is the SHA-256 of the 32 bytes of the public key:"
    )
    shown = f"    openssl pkey -pubin -in {PUBLIC_KEY} -outform DER | tail -c 32 | sha256sum"
    return _head("The signature") + "\n\n".join(
        (_told(words), command, _told(after), key, _told("Work it out yourself with:"), shown)
    )


def _by_program() -> str:
    return _head("To check it with the program") + _told(
        "“restoration-journal check PATH” does all of this at once, also on a packed bundle, walks "
        "the history, and names each fault. It needs no journal and writes nothing."
    )


def _history() -> str:
    words = (
        "data/record/history.txt holds every change, the oldest first: a line “edit”, a line "
        "“change” for every row touched (table, number, what was done, before, after), a line "
        "“digest”. The digest is the SHA-256 of the digest before (nothing, for the first) and of "
        "what follows the first word of the edit's lines, run together. So each edit hangs on all "
        "before it. In Python:"
    )
    code = (
        "    import hashlib\n"
        '    previous, texts = "", []\n'
        '    for line in open("data/record/history.txt", encoding="utf-8", newline="\\n"):\n'
        '        word, _, text = line.rstrip("\\n").partition(" ")\n'
        '        if word != "digest":\n'
        "            texts.append(text)\n"
        "            continue\n"
        '        found = hashlib.sha256((previous + "".join(texts)).encode()).hexdigest()\n'
        '        print("whole" if found == text else "ALTERED", texts[0])\n'
        "        previous, texts = text, []"
    )
    return _head("The history of changes") + _told(words) + "\n\n" + code


def _withheld(facts: BundleFacts) -> str:
    return _head("What the owner kept back") + _told(
        f"Kept back: {', '.join(facts.withheld)}. The dossier and the record say so where it is "
        "missing. The history of changes is left out, since it holds everything that was ever "
        "written, and so are the photos and papers themselves wherever what was kept back could be "
        "seen in them. Their SHA-256 are in data/record/originals.csv: when the owner shows you "
        "one, you can tell whether it is the one that the dossier names."
    )


def _missing(facts: BundleFacts) -> str:
    rows = "\n".join(f"- {fault.where}: {fault.what}" for fault in facts.missing[:20])
    more = len(facts.missing) - 20
    end = f"\n- and {more:,} more; data/missing.txt has all." if more > 0 else ""
    words = "The program could not put these in; data/missing.txt says the same:"
    return _head("What is missing") + _told(words) + "\n\n" + rows + end


def _what_it_proves(facts: BundleFacts) -> str:
    signed = (
        "A signature shows who vouches for it. "
        if facts.fingerprint
        else "It is not signed: whoever could change it could also write its lists anew. "
    )
    return _head("What this proves, and what it doesn't") + _told(
        "The lists show that nothing was changed since they were written. "
        + signed
        + "A time stamp shows that it existed no later than then. None of them shows that what "
        "was written is true: for that the dossier names its evidence, piece by piece."
    )


def _head(title: str) -> str:
    return f"{title}\n{'=' * len(title)}\n\n"


def _told(text: str) -> str:
    return "\n".join(_lines(text))


def _lines(text: str) -> Iterator[str]:
    yield from wrap(text, _WIDTH, break_long_words=False, break_on_hyphens=False)
