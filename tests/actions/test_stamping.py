"""Time stamps by RFC 3161, with an authority that OpenSSL makes on this computer."""

import hashlib
import random
from collections.abc import Iterator
from pathlib import Path

import pytest

from journal.actions import bundles
from journal.actions.bundles import make_bundle
from journal.actions.checking import check_bundle
from journal.actions.journals import open_journal
from journal.actions.session import Session
from journal.actions.stamping import ask_for_stamp, bring_stamp
from journal.domain.bundles import BundleChoice, BundleForm, OriginalsIn
from journal.domain.errors import JournalError, ReadOnlyError
from journal.dossier.bundle import layout, stamps
from tests.actions.authority import Authority, has_openssl, made_in
from tests.actions.bundled import no_dossier, small_journal

pytestmark = pytest.mark.skipif(
    not has_openssl(), reason="there is no openssl on this computer to make an authority with"
)
SMALL = BundleChoice(originals=OriginalsIn.NONE)


@pytest.fixture(scope="module")
def authority(tmp_path_factory: pytest.TempPathFactory) -> Authority:
    return made_in(tmp_path_factory.mktemp("authority") / "tsa")


@pytest.fixture
def session(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Session]:
    monkeypatch.setattr(bundles, "make_dossier", no_dossier)
    with small_journal(tmp_path) as made:
        make_bundle(made, tmp_path / "bundle", SMALL)
        yield made


def test_openssl_reads_the_request_and_it_is_of_the_list_of_lists(
    session: Session, tmp_path: Path, authority: Authority
) -> None:
    asked = ask_for_stamp(session, tmp_path / "bundle", tmp_path / "r.tsq")
    text = authority.run(f"ts -query -in {asked.path} -text")
    sealed = (tmp_path / "bundle" / layout.SEALED).read_bytes()
    assert asked.sha256 == hashlib.sha256(sealed).hexdigest()
    assert "Hash Algorithm: sha256" in text
    assert "Certificate required: yes" in text
    assert "Nonce: 0x" in text
    assert stamps.imprint_of(asked.path.read_bytes()) == asked.sha256


@pytest.mark.parametrize("enclose_root", [False, True])
def test_a_reply_is_verified_kept_in_the_bundle_and_verified_by_openssl_too(
    session: Session, tmp_path: Path, authority: Authority, enclose_root: bool
) -> None:
    bundle = tmp_path / "bundle"
    asked = ask_for_stamp(session, bundle, tmp_path / "r.tsq")
    reply = authority.answer(asked.path, tmp_path / "r.tsr", enclose_root=enclose_root)
    kept = bring_stamp(session, bundle, reply, [authority.root])
    assert kept.path == bundle / "timestamp" / "1.tsr"
    assert (kept.found.good, kept.found.trusted, kept.found.authority) == (True, True, "CN=Stamper")
    (stamp,) = session.journal.stamps.all()
    assert (stamp.reply, stamp.what) == (reply.read_bytes(), "bundle")
    words = f"-data {bundle / layout.SEALED} -in {kept.path} -CAfile {authority.root}"
    assert "Verification: OK" in authority.run(f"ts -verify {words}")
    trusted = check_bundle(bundle, authorities=(authority.root,))
    assert trusted.whole
    assert trusted.stamps[0].trusted
    (alone,) = check_bundle(bundle).stamps
    assert (alone.good, alone.trusted) == (True, False)
    assert "was not checked: no certificate" in " ".join(alone.said)
    if not enclose_root:
        assert "its signature was not verified" in " ".join(alone.said)
    # A bit in any part of it, signed or not, is found.
    chance = random.Random(3161)
    for path in (kept.path, kept.path.with_suffix(".tsq")):
        whole = path.read_bytes()
        for place in chance.sample(range(len(whole)), 8):
            path.write_bytes(
                whole[:place]
                + bytes([whole[place] ^ 1 << chance.randrange(8)])
                + whole[place + 1 :]
            )
            faults = check_bundle(bundle).faults
            assert path.relative_to(bundle).as_posix() in {fault.where for fault in faults}
        path.write_bytes(whole)


def test_a_reply_for_a_packed_bundle_lies_beside_it(
    session: Session, tmp_path: Path, authority: Authority
) -> None:
    packed = tmp_path / "b.zip"
    make_bundle(session, packed, BundleChoice(form=BundleForm.ZIP, originals=OriginalsIn.NONE))
    before = packed.read_bytes()
    asked = ask_for_stamp(session, packed, tmp_path / "r.tsq")
    kept = bring_stamp(session, packed, authority.answer(asked.path, tmp_path / "r.tsr"))
    assert kept.path == tmp_path / "b.zip.1.tsr"
    assert packed.read_bytes() == before
    (found,) = check_bundle(packed, authorities=(authority.root,)).stamps
    assert (found.name, found.trusted) == ("b.zip.1.tsr", True)


def test_a_reply_that_is_not_for_it_is_refused_with_the_reason(
    session: Session, tmp_path: Path, authority: Authority
) -> None:
    bundle = tmp_path / "bundle"
    reply = tmp_path / "r.tsr"
    other = tmp_path / "other.tsq"
    other.write_bytes(stamps.new_request((bundle / layout.SEALED).read_bytes()))
    with pytest.raises(JournalError, match="No time stamp was asked for"):
        bring_stamp(session, bundle, authority.answer(other, reply))
    asked = ask_for_stamp(session, bundle, tmp_path / "r.tsq")
    with pytest.raises(JournalError, match="answers another request: the nonce"):
        bring_stamp(session, bundle, reply)
    other.write_bytes(stamps.new_request(b"something else"))
    with pytest.raises(JournalError, match="stamps something else"):
        bring_stamp(session, bundle, authority.answer(other, reply))
    reply.write_bytes(b"no reply")
    with pytest.raises(JournalError, match="is no reply"):
        bring_stamp(session, bundle, reply)
    stranger = made_in(tmp_path / "stranger")
    authority.answer(asked.path, reply)
    with pytest.raises(JournalError, match="signature does not hold by the certificate given"):
        bring_stamp(session, bundle, reply, [stranger.root])
    with pytest.raises(JournalError, match="holds no certificate"):
        bring_stamp(session, bundle, reply, [asked.path])
    assert not (bundle / "timestamp").exists()
    assert [stamp.reply for stamp in session.journal.stamps.all()] == [b""]
    assert check_bundle(bundle).whole


def test_a_refusal_of_the_authority_is_told(
    session: Session, tmp_path: Path, authority: Authority
) -> None:
    asked = ask_for_stamp(session, tmp_path / "bundle", tmp_path / "r.tsq")
    settings = authority.folder / "set.cnf"
    kept = settings.read_text()
    settings.write_text(kept.replace("digests = sha256", "digests = sha512"))
    reply = authority.answer(asked.path, tmp_path / "r.tsr")
    settings.write_text(kept)
    with pytest.raises(JournalError, match="The authority refused to stamp it"):
        bring_stamp(session, tmp_path / "bundle", reply)


def test_a_journal_that_is_only_read_keeps_no_stamp(session: Session, tmp_path: Path) -> None:
    with (
        open_journal(session.folder, read_only=True) as reader,
        pytest.raises(ReadOnlyError),
    ):
        ask_for_stamp(reader, tmp_path / "bundle", tmp_path / "r.tsq")
    assert not (tmp_path / "r.tsq").exists()


def test_asking_refuses_what_is_no_bundle_and_what_is_there(
    session: Session, tmp_path: Path
) -> None:
    (tmp_path / "r.tsq").write_bytes(b"mine")
    with pytest.raises(JournalError, match="exists already"):
        ask_for_stamp(session, tmp_path / "bundle", tmp_path / "r.tsq")
    for path in (tmp_path / "r.tsq", session.folder, tmp_path / "nowhere"):
        with pytest.raises(JournalError):
            ask_for_stamp(session, path, tmp_path / "q.tsq")
