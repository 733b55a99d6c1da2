"""The bundle: what is in it, checked by ordinary tools, and one flipped bit anywhere named."""

import json
import os
import random
import shutil
import subprocess
import tarfile
import zipfile
from dataclasses import replace
from hashlib import sha256, sha512
from pathlib import Path

import bagit
import pypdfium2
import pytest
from jsonschema import Draft202012Validator

from journal.actions import bundles, dossiers
from journal.actions.bundles import make_bundle
from journal.actions.checking import check_bundle
from journal.actions.session import Session
from journal.domain.bundles import BundleForm, OriginalsIn
from journal.domain.checks import BundleCheck
from journal.domain.cuts import Cut, usual
from journal.dossier.bundle import layout, signature
from journal.dossier.bundle.chain import walk
from journal.dossier.bundle.seals import seals_text
from tests.actions.bundled import EVERYTHING, made, quick

__all__ = ["made", "quick"]


@pytest.fixture
def bundle(made: tuple[Session, Path], tmp_path: Path) -> Path:
    """A copy of the bundle, to be spoilt."""
    return Path(shutil.copytree(made[1], tmp_path / "bundle"))


# What is in it, by ordinary tools


def test_the_dossier_in_it_is_typeset_with_the_fingerprint_of_the_key(
    made: tuple[Session, Path], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(bundles, "make_dossier", dossiers.make_dossier)
    choice = replace(EVERYTHING, dossier=usual(Cut.VALUER), originals=OriginalsIn.NONE)
    report = make_bundle(made[0], tmp_path / "out", choice)
    with pypdfium2.PdfDocument(tmp_path / "out" / layout.DOSSIER) as pdf:
        words = "".join("".join(page.get_textpage().get_text_range().split()) for page in pdf)
    assert report.fingerprint.replace(" ", "") in words


def test_the_bag_is_valid_by_the_library_of_congress(bundle: Path) -> None:
    bag = bagit.Bag(str(bundle))
    assert bag.validate()
    assert bag.version_info == (1, 0)
    assert {"sha256", "sha512"} == set(bag.algorithms)


@pytest.mark.parametrize("tool", ["sha256sum", "sha512sum"])
def test_ordinary_tools_find_it_whole_and_name_what_is_not(bundle: Path, tool: str) -> None:
    if shutil.which(tool) is None:
        pytest.skip(f"there is no {tool} on this computer")
    short = tool.removesuffix("sum")
    lists = [f"manifest-{short}.txt", f"tagmanifest-{short}.txt"]
    lists += [layout.SEALS] if short == "sha256" else []

    def run() -> "subprocess.CompletedProcess[str]":
        return subprocess.run(
            [tool, "--quiet", "-c", *lists], cwd=bundle, capture_output=True, text=True, check=False
        )

    assert (run().returncode, run().stdout) == (0, "")
    photo = next((bundle / "data" / "originals" / "photos").iterdir())
    photo.write_bytes(photo.read_bytes() + b"x")
    assert photo.name in run().stdout


def test_openssl_verifies_the_signature_by_the_words_of_the_read_me(bundle: Path) -> None:
    if shutil.which("openssl") is None:
        pytest.skip("there is no openssl on this computer")
    text = (bundle / layout.READ_ME).read_text("utf-8")
    command = text[text.index("openssl pkeyutl") : text.index("A signature says")]
    done = subprocess.run(
        command.replace("\\\n", " ").strip(), shell=True, cwd=bundle, capture_output=True, text=True
    )
    assert "Signature Verified Successfully" in done.stdout, done.stderr
    (bundle / layout.SEALED).write_bytes(b"other")
    assert subprocess.run(done.args, shell=True, cwd=bundle, capture_output=True).returncode != 0


def test_the_read_me_gives_the_fingerprint_that_openssl_works_out(bundle: Path) -> None:
    if shutil.which("openssl") is None:
        pytest.skip("there is no openssl on this computer")
    text = (bundle / layout.READ_ME).read_text("utf-8")
    command = next(line for line in text.splitlines() if "openssl pkey " in line)
    done = subprocess.run(command, shell=True, cwd=bundle, capture_output=True, text=True)
    assert done.stdout.split()[0] in text.replace(" ", "").replace("\n", "")


def test_the_python_of_the_read_me_walks_the_history(bundle: Path) -> None:
    text = (bundle / layout.READ_ME).read_text("utf-8")
    code = text[text.index("    import hashlib") : text.index("What this proves")]
    lines = [line.removeprefix("    ") for line in code.splitlines()]

    def run() -> list[str]:
        done = subprocess.run(
            ["python3", "-c", "\n".join(lines)], cwd=bundle, capture_output=True, text=True
        )
        return [line.split()[0] for line in done.stdout.splitlines()]

    assert set(run()) == {"whole"}
    history = bundle / layout.HISTORY
    history.write_bytes(history.read_bytes().replace(b"Not wanted", b"Much want", 1))
    assert run().count("ALTERED") == 1


def test_the_record_is_as_its_published_schema_says(bundle: Path) -> None:
    schema = json.loads((bundle / layout.SCHEMA).read_bytes())
    Draft202012Validator.check_schema(schema)
    record = json.loads((bundle / layout.RECORD).read_bytes())
    Draft202012Validator(schema).validate(record)
    assert record["record"]["car"]["title"] == "Halden Rook"
    assert len(record["record"]["photos"]) == 3
    record["record"]["photos"][0]["turn"] = "left"
    assert not Draft202012Validator(schema).is_valid(record)


def test_names_are_plain_in_the_bag_and_kept_in_its_list(bundle: Path) -> None:
    paths = [path.relative_to(bundle).as_posix() for path in bundle.rglob("*") if path.is_file()]
    assert all(path.isascii() for path in paths)
    assert "data/originals/photos/00002-Schweller-links-auen-2.jpg" in paths
    listed = (bundle / layout.ORIGINALS_LIST).read_text("utf-8-sig")
    assert '"Schweller links, außen (2).jpg"' in listed
    assert "'=cmd.jpg" in listed
    assert len(listed.splitlines()) == 5


@pytest.mark.usefixtures("quick")
@pytest.mark.parametrize("form", list(BundleForm))
def test_every_form_holds_the_same_and_is_found_whole(
    made: tuple[Session, Path], tmp_path: Path, form: BundleForm
) -> None:
    out = tmp_path / f"a bundle{form.suffix}"
    report = make_bundle(made[0], out, replace(EVERYTHING, form=form))
    checked = check_bundle(out)
    assert checked.whole
    assert checked.warnings == ()
    assert checked.title == "Halden Rook"
    assert checked.files == report.files + 10
    assert checked.signature is not None
    assert (checked.signature.good, checked.signature.ours) == (True, True)
    assert checked.chain is not None
    assert (checked.chain.broken, checked.chain.edits) == ("", 6)
    unpacked = tmp_path / "unpacked"
    if form is BundleForm.ZIP:
        zipfile.ZipFile(out).extractall(unpacked)
    elif form is BundleForm.TAR:
        with tarfile.open(out) as archive:
            archive.extractall(unpacked, filter="data")
    assert bagit.Bag(str(out if form is BundleForm.FOLDER else unpacked / "a bundle")).validate()


# One flipped bit


def flips(path: Path, chance: random.Random, many: bool) -> list[tuple[int, int]]:
    """Places and bits to flip in a file: one, or one in each byte of a small file."""
    size = path.stat().st_size
    if not many:
        return [(chance.randrange(size), 1 << chance.randrange(8))]
    places = range(size) if size <= 40 else [0, size - 1, *chance.sample(range(size), 5)]
    return [(place, 1 << chance.randrange(8)) for place in places]


def named(report: BundleCheck) -> str:
    return report.refused + " ".join(f"{fault.where} {fault.what}" for fault in report.faults)


@pytest.mark.parametrize("many", [False, pytest.param(True, marks=pytest.mark.slow)])
def test_one_flipped_bit_in_any_file_is_found_and_the_file_named(bundle: Path, many: bool) -> None:
    chance = random.Random(20161)
    for path in sorted(path for path in bundle.rglob("*") if path.is_file()):
        name = path.relative_to(bundle).as_posix()
        whole = path.read_bytes()
        for place, bit in flips(path, chance, many):
            spoilt = bytearray(whole)
            spoilt[place] ^= bit
            path.write_bytes(spoilt)
            report = check_bundle(bundle)
            assert not report.whole, (name, place, bit)
            assert name in named(report), (name, place, bit, named(report))
        path.write_bytes(whole)
    assert check_bundle(bundle).whole


@pytest.mark.parametrize(
    "name", [layout.SEALS, layout.SEALED, "tagmanifest-sha512.txt", "manifest-sha256.txt"]
)
def test_even_a_letter_made_large_in_a_list_is_found(bundle: Path, name: str) -> None:
    """Hexadecimal means the same in either case, so no digest tells of it."""
    path = bundle / name
    whole = path.read_bytes()
    letters = [at for at, sign in enumerate(whole[:64]) if sign in b"abcdef"]
    path.write_bytes(
        whole[: letters[0]] + bytes([whole[letters[0]] - 32]) + whole[letters[0] + 1 :]
    )
    assert name in named(check_bundle(bundle))


def test_every_file_that_is_lost_is_named(bundle: Path) -> None:
    for path in sorted(path for path in bundle.rglob("*") if path.is_file()):
        whole = path.read_bytes()
        path.unlink()
        name = path.relative_to(bundle).as_posix()
        assert path.name in named(check_bundle(bundle)), name
        path.write_bytes(whole)


@pytest.mark.parametrize("place", ["data/more.jpg", "more.txt", "signature/more.sig"])
def test_a_file_put_in_afterwards_is_named(bundle: Path, place: str) -> None:
    (bundle / place).write_bytes(b"x")
    assert place in named(check_bundle(bundle))


def lists_made_anew(bundle: Path) -> None:
    """Do what somebody would who wants to hide a change and has no key."""
    import hashlib

    def listed(folder: str, algorithm: str) -> str:
        digest = {"sha256": hashlib.sha256, "sha512": hashlib.sha512}[algorithm]
        paths = sorted(path for path in (bundle / folder).rglob("*") if path.is_file())
        return "".join(
            f"{digest(path.read_bytes()).hexdigest()}  {path.relative_to(bundle).as_posix()}\n"
            for path in paths
        )

    shutil.rmtree(bundle / "signature", ignore_errors=True)
    (bundle / layout.SEALS).unlink()
    for algorithm in ("sha256", "sha512"):
        (bundle / f"manifest-{algorithm}.txt").write_text(listed("data", algorithm), "utf-8")
        (bundle / f"tagmanifest-{algorithm}.txt").unlink()


def test_a_photo_exchanged_with_all_lists_made_anew_is_told_by_the_history(bundle: Path) -> None:
    photo = next((bundle / "data" / "originals" / "photos").iterdir())
    photo.write_bytes(b"another picture!")
    lists_made_anew(bundle)
    assert "none of the originals that the history names" in named(check_bundle(bundle))


def whole_lists_made_anew(bundle: Path, key: bytes | None = None) -> None:
    """The same with the seals and, with another ``key``, a signature too."""
    lists_made_anew(bundle)
    tags = sorted(path for path in bundle.iterdir() if path.is_file())
    for name, hashed in (("sha256", sha256), ("sha512", sha512)):
        listed = "".join(f"{hashed(tag.read_bytes()).hexdigest()}  {tag.name}\n" for tag in tags)
        (bundle / f"tagmanifest-{name}.txt").write_text(listed, "utf-8")
    sealed = {path.name: path.read_bytes() for path in bundle.glob("tagmanifest-*.txt")}
    if key is not None:
        sealed[layout.SIGNATURE] = signature.sign(key, sealed[layout.SEALED])
        sealed[layout.PUBLIC_KEY] = signature.public_of(key)
        (bundle / "signature").mkdir()
        for name in (layout.SIGNATURE, layout.PUBLIC_KEY):
            (bundle / name).write_bytes(sealed[name])
    (bundle / layout.SEALS).write_text(seals_text(sealed), "utf-8")


def test_a_signature_taken_off_or_made_by_another_is_told(bundle: Path) -> None:
    whole_lists_made_anew(bundle)
    assert "bag-info.txt says that it was signed" in named(check_bundle(bundle))
    whole_lists_made_anew(bundle, signature.new_key())
    report = check_bundle(bundle)
    assert report.signature is not None
    assert report.signature.good
    assert "bag-info.txt names another key" in named(report)


def test_two_originals_exchanged_with_all_lists_made_anew_are_told(bundle: Path) -> None:
    one, other, *_ = sorted((bundle / "data" / "originals" / "photos").iterdir())
    first, second = one.read_bytes(), other.read_bytes()
    one.write_bytes(second)
    other.write_bytes(first)
    whole_lists_made_anew(bundle)
    said = named(check_bundle(bundle))
    for path in (one, other):
        assert f"{path.relative_to(bundle)} It is another original than the one" in said


def test_a_history_cut_short_with_all_lists_made_anew_is_told(bundle: Path) -> None:
    history = bundle / layout.HISTORY
    lines = history.read_text("utf-8").splitlines(keepends=True)
    ends = [number for number, line in enumerate(lines, 1) if line.startswith("digest ")]
    history.write_text("".join(lines[: ends[-2]]), "utf-8")
    whole_lists_made_anew(bundle)
    assert "It does not end where bag-info.txt says" in named(check_bundle(bundle))


def test_a_row_changed_with_all_lists_made_anew_is_told_by_the_history(bundle: Path) -> None:
    rows = bundle / layout.ROWS
    rows.write_bytes(rows.read_bytes().replace(b'"amount":8950', b'"amount":1950'))
    lists_made_anew(bundle)
    assert "of lines is not as the history" in named(check_bundle(bundle))


def test_an_edit_rewritten_breaks_the_history_from_there_and_says_what_held(
    bundle: Path,
) -> None:
    history = bundle / layout.HISTORY
    history.write_bytes(history.read_bytes().replace(b"Marrow & Quill", b"Marrow & Quell"))
    lists_made_anew(bundle)
    report = check_bundle(bundle)
    assert report.chain is not None
    assert report.chain.broken.startswith("edit 3 ")
    assert report.chain.good_until.startswith("edit 2 ")
    assert "does not hold from edit 3" in named(report)


def test_a_chain_of_odd_lines_is_broken_and_never_an_error() -> None:
    for text in ("", "digest \n", "edit [\nchange x\ndigest " + "0" * 64 + "\n", "change\n", "\n"):
        found, _ = walk(text.splitlines(keepends=True))
        assert found.broken


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes with names")
def test_only_files_of_a_replys_size_are_read_beside_a_bundle(
    made: tuple[Session, Path], tmp_path: Path
) -> None:
    path = tmp_path / "b.zip"
    with zipfile.ZipFile(path, "w") as archive:
        for file in sorted(file for file in made[1].rglob("*") if file.is_file()):
            archive.write(file, f"b/{file.relative_to(made[1]).as_posix()}")
    os.mkfifo(tmp_path / "b.zip.1.tsr")
    assert check_bundle(path).whole
    with (tmp_path / "b.zip.2.tsr").open("wb") as large:
        large.truncate(1 << 40)
    (found,) = check_bundle(path).stamps
    assert "too large" in found.said[0]
