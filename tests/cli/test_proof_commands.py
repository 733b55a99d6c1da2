"""The commands of proof: claims, gaps for a reader, private words, views, the dossier's cuts."""

import json
from pathlib import Path

import pypdfium2
import pytest

from journal.actions.add_photos import add_photos
from tests.cli.conftest import Run
from tests.intake.made import jpeg
from tests.welding import welded


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "IMG_0001.JPG").write_bytes(jpeg("2016:04:02 10:00:00", seed=1))
    with welded(tmp_path) as session:
        add_photos(session, [tmp_path / "IMG_0001.JPG"])
        return session.folder


def test_claims_are_read_worded_and_left_out(run: Run, folder: Path) -> None:
    found = json.loads(run("claims", folder, "--json")[1])
    area = found[0]["area"]
    assert {"welded", "new metal in"} <= {row["claim"] for row in found}
    assert all(row["evidence"] for row in found)
    code, out, _ = run(
        "claims", folder, area, "--claim", "welded", "--say", "Twice over.", "--json"
    )
    (worded,) = json.loads(out)
    before = next(row for row in found if row["claim"] == "welded")
    assert (code, worded["words"], worded["own"]) == (0, "Twice over.", True)
    assert worded["evidence"] == before["evidence"]
    _, out, _ = run("claims", folder, area, "--claim", "welded", "--leave-out")
    assert "(left out)" in out
    assert run("claims", folder, "--say", "x")[0] == 2


def test_gaps_name_the_claim_they_would_make_stronger(run: Run, folder: Path) -> None:
    code, out, _ = run("gaps", folder, "--for", "buyer", "--json")
    found = json.loads(out)
    assert code == 0
    assert [gap["weight"] for gap in found] == sorted((g["weight"] for g in found), reverse=True)
    assert any(gap["claim"] for gap in found if gap["target"] == "area")
    valued = json.loads(run("gaps", folder, "--for", "valuer", "--json")[1])
    assert valued[0]["kind"] == "identity of the car not filled in"


def test_private_words_and_covers_are_listed_and_taken_off(run: Run, folder: Path) -> None:
    assert run("private", folder, "Kveldsund", "--as", "addresses")[0] == 0
    assert run("private", folder, "Kveldsund", "--as", "people")[0] != 0
    assert run("private", folder, "x")[0] != 0
    place = ("--cover", "IMG_0001.JPG", "--at", "0.1,0.1,0.2,0.2", "--as", "number plate")
    assert run("private", folder, *place)[0] == 0
    found = json.loads(run("private", folder, "--json")[1])
    assert [word["words"] for word in found["words"]] == ["Kveldsund"]
    (box,) = found["covers"]
    assert (box["hides"], box["x"]) == ("number plate", pytest.approx(0.1))
    assert run("private", folder, "--uncover", box["id"])[0] == 0
    assert run("private", folder, "Kveldsund", "--remove")[0] == 0
    assert run("private", folder, "--cover", "IMG_0001.JPG", "--at", "nowhere")[0] != 0
    _, out, _ = run("private", folder)
    assert "Addresses: nothing" in out


def test_a_standard_view_is_chosen_and_cleared(run: Run, folder: Path) -> None:
    assert run("views", folder, "front", "IMG_0001.JPG")[0] == 0
    rows = json.loads(run("views", folder, "--json")[1])
    assert [row["name"] for row in rows if row["photo"]] == ["IMG_0001.JPG"]
    assert run("views", folder, "front", "--clear")[0] == 0
    assert "front: no photo" in run("views", folder)[1]


def test_a_dossier_is_cut_and_its_choices_kept(run: Run, folder: Path, tmp_path: Path) -> None:
    out = tmp_path / "a.pdf"
    chosen = ("--for", "buyer", "--paper", "letter", "--without", "gaps", "--keep", "--out", out)
    code, said, _ = run("dossier", folder, *chosen, "--json")
    report = json.loads(said)
    assert (code, report["for"]) == (0, "buyer")
    assert "Prices: every sum of money." in report["withheld"]
    document = pypdfium2.PdfDocument(out.read_bytes())
    assert document[0].get_size() == pytest.approx((612, 792), abs=0.5)
    text = " ".join(page.get_textpage().get_text_bounded() for page in document)
    document.close()
    assert "What this record does not show" not in text
    again = json.loads(run("dossier", folder, "--for", "buyer", "--out", out, "--json")[1])
    assert again["pages"] == report["pages"]
    assert run("dossier", folder, "--chapter", "no such", "--out", out)[0] == 2
