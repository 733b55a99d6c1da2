"""Bundle, check, stamp and key from the command line."""

import json
from pathlib import Path
from typing import Any

import pytest

from journal.actions import bundles
from journal.cli import _run
from tests.actions.authority import has_openssl, made_in
from tests.actions.bundled import no_dossier, small_journal


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(bundles, "make_dossier", no_dossier)
    small_journal(tmp_path).close()
    return tmp_path


def run(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, str, str]:
    status = _run([str(word) for word in words])
    said = capsys.readouterr()
    return status, said.out, said.err


def asked(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, Any]:
    status, out, _ = run(capsys, *words, "--json")
    return status, json.loads(out)


@pytest.mark.parametrize(
    ("name", "form"), [("b", "folder"), ("b.zip", "ZIP"), ("b.TAR", "tar"), ("b.2", "folder")]
)
def test_a_bundle_has_the_form_its_name_says_and_is_found_whole(
    folder: Path, capsys: pytest.CaptureFixture[str], name: str, form: str
) -> None:
    journal, out = folder / "Halden Rook", folder / name
    status, report = asked(capsys, "bundle", journal, "--out", out, "--sign")
    assert (status, report["originals"], report["missing"]) == (0, 4, [])
    status, checked = asked(capsys, "check", out)
    assert (status, checked["form"], checked["faults"]) == (0, form, [])
    assert checked["signature"] == {
        "fingerprint": report["fingerprint"],
        "good": True,
        "ours": True,
    }
    assert checked["chain"]["broken"] is None


def test_the_status_tells_done_in_part_and_refused(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    journal, out = folder / "Halden Rook", folder / "b"
    next(iter(journal.glob("originals/??/*"))).unlink()
    status, report = asked(capsys, "bundle", journal, "--out", out)
    assert (status, len(report["missing"]), report["fingerprint"]) == (1, 1, None)
    chosen = ("bundle", journal, "--out", folder / "c", "--photo", 2, "--photo", 99)
    assert asked(capsys, *chosen)[1]["originals"] <= 1
    (out / "data" / "dossier.pdf").write_bytes(b"other")
    status, said, errors = run(capsys, "check", out)
    assert (status, said) == (1, "")
    assert "data/dossier.pdf: It was altered" in errors
    (out / "data" / "link").symlink_to("/etc/hostname")
    status, _, errors = run(capsys, "check", out)
    assert status == 2
    assert "is refused. “data/link” is a link" in errors
    status, checked = asked(capsys, "check", out)
    assert "a link" in checked["refused"]
    status, _, errors = run(capsys, "bundle", journal, "--out", out)
    assert (status, "exists already" in errors) == (2, True)


def test_a_photo_is_looked_up_in_a_journal(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    photo = folder / "IMG_0001.JPG"
    status, found = asked(capsys, "check", photo, "--journal", folder / "Halden Rook")
    assert (status, found["pictures"][0]["likeness"]) == (0, "the original")
    status, _, errors = run(capsys, "check", photo)
    assert (status, "in which journal" in errors) == (2, True)


def test_a_tampered_journal_says_how_far_its_chain_holds(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    from journal.actions.journals import open_journal

    with open_journal(folder / "Halden Rook") as session:
        session.journal.db.execute("DROP TRIGGER edits_kept")
        session.journal.db.execute("UPDATE edits SET label = 'Other' WHERE id = 4")
    status, report = asked(capsys, "check", folder / "Halden Rook")
    assert status == 1
    assert report["good_until"].startswith("edit 3 ")
    assert "edit 3 (" in run(capsys, "check", folder / "Halden Rook")[2]


def test_the_key_is_shown_and_written(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    status, shown, _ = run(capsys, "key", "--public", folder / "public.pem")
    assert (status, len(shown.split())) == (0, 16)
    assert b"PUBLIC KEY" in (folder / "public.pem").read_bytes()
    status, found = asked(capsys, "key", "--export", folder / "key.pem")
    assert found["fingerprint"] == shown.strip()
    status, _, errors = run(capsys, "key", "--bring", folder / "public.pem")
    assert (status, "no private key" in errors) == (2, True)


def test_a_stamp_is_asked_for_and_brought_back(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    if not has_openssl():
        pytest.skip("there is no openssl on this computer to make an authority with")
    journal, out = folder / "Halden Rook", folder / "b"
    run(capsys, "bundle", journal, "--out", out)
    status, request = asked(capsys, "stamp", journal, out)
    assert (status, request["path"]) == (0, str(folder / "b.tsq"))
    authority = made_in(folder / "tsa")
    reply = authority.answer(folder / "b.tsq", folder / "b.tsr")
    words = ("stamp", journal, out, "--reply", reply, "--authority", authority.root)
    status, kept = asked(capsys, *words)
    assert (status, kept["trusted"], kept["authority"]) == (0, True, "CN=Stamper")
    status, checked = asked(capsys, "check", out, "--authority", authority.root)
    assert (status, checked["stamps"][0]["trusted"]) == (0, True)
    assert "Stamped 2" in run(capsys, "check", out)[2]
