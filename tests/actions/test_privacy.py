"""What leaves the house, from a journal on disk: covers burnt in, nothing beside the picture."""

import io
from dataclasses import replace
from hashlib import sha256
from pathlib import Path

import pytest
from PIL import Image

from journal.actions import claims as claim_acts
from journal.actions import covers, privacy
from journal.actions.add_photos import add_photos
from journal.actions.areas import add_area, change_area, choose_photos
from journal.actions.cars import change_car
from journal.actions.dossier_cuts import choices_of, choose, set_standard_view, standard_views
from journal.actions.dossiers import make_dossier, preview_dossier
from journal.actions.history import redo, undo
from journal.actions.photos import all_photos, set_caption, turn
from journal.actions.session import Session
from journal.domain.cuts import Cut, Part, usual
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId
from journal.domain.photos import Photo, Role
from journal.domain.private_words import Private
from journal.domain.when import parse
from tests.dossier.test_withheld import everything_said
from tests.intake.made import DATE, exif, lying, saved, scene

_SECRETS = (b"SERIAL4711", b"Kveldsund", b"GPS")


def photo_with_secrets(path: Path, orientation: int = 1) -> bytes:
    """A picture whose file says where it was taken, with which camera, and by whom."""
    gps = {1: "N", 2: (59.0, 54.0, 3.0), 3: "E", 4: (10.0, 44.0, 7.0)}
    main = {0x010F: "Rook Optical", 0x0110: "Rook 1", 0x013B: "Kveldsund", 0x0112: orientation}
    inner = {DATE: "2016:03:12 14:05:00", 0xA431: "SERIAL4711"}
    data = saved(lying(scene(), orientation), quality=95, exif=exif(main, inner, gps))
    path.write_bytes(data)
    return data


@pytest.fixture
def shown(session: Session, tmp_path: Path) -> Photo:
    photo_with_secrets(tmp_path / "AB12CD at home.jpg", 6)
    add_photos(session, [tmp_path / "AB12CD at home.jpg"])
    (photo,) = all_photos(session)
    return photo


def pixel(jpeg: bytes, x: float, y: float) -> tuple[int, int, int]:
    image = Image.open(io.BytesIO(jpeg)).convert("RGB")
    found = image.getpixel((int(x * image.width), int(y * image.height)))
    assert isinstance(found, tuple)
    return found[0], found[1], found[2]


def is_cover(colour: tuple[int, int, int]) -> bool:
    return max(colour) - min(colour) < 12 and 80 < colour[0] < 112


@pytest.mark.parametrize("degrees", [0, 90, 180, 270])
def test_a_cover_is_burnt_into_the_copy_and_turns_with_the_photo(
    session: Session, shown: Photo, degrees: int
) -> None:
    before = {p: sha256(p.read_bytes()).digest() for p in session.folder.glob("originals/??/*")}
    if degrees:
        turn(session, [shown.id], degrees)
    (now,) = all_photos(session)
    covers.add_cover(session, now, (0.1, 0.6, 0.3, 0.2), Private.PLATE)
    if degrees != 270:
        turn(session, [shown.id], 90)
    (now,) = all_photos(session)
    (box,) = covers.covers_on(session, now)
    given = privacy.redacted(session, {Private.PLATE})
    for copy in (privacy.copies(session, given.record), privacy.thumbnails(session, given.record)):
        jpeg = copy(now, 300)
        assert jpeg is not None
        assert is_cover(pixel(jpeg, box.x + box.width / 2, box.y + box.height / 2))
        assert not is_cover(pixel(jpeg, (box.x + box.width / 2 + 0.5) % 1, box.y + box.height / 2))
    after = {p: sha256(p.read_bytes()).digest() for p in session.folder.glob("originals/??/*")}
    assert after == before


def test_a_cover_of_what_is_not_withheld_is_not_burnt(session: Session, shown: Photo) -> None:
    covers.add_cover(session, shown, (0.1, 0.1, 0.5, 0.5), Private.PEOPLE)
    given = privacy.redacted(session, {Private.PLATE})
    jpeg = privacy.copies(session, given.record)(shown, 300)
    assert jpeg is not None
    assert not is_cover(pixel(jpeg, 0.3, 0.3))


def test_copies_hold_nothing_that_the_original_says_beside_the_picture(
    session: Session, shown: Photo
) -> None:
    (original,) = session.folder.glob("originals/??/*")
    assert b"SERIAL4711" in original.read_bytes()
    given = privacy.redacted(session, ())
    for copy in (privacy.copies(session, given.record), privacy.thumbnails(session, given.record)):
        jpeg = copy(shown, 300)
        assert jpeg is not None
        assert not any(secret in jpeg for secret in _SECRETS)
        assert not Image.open(io.BytesIO(jpeg)).getexif()


def test_a_missing_original_is_none_and_the_dossier_goes_on(
    session: Session, shown: Photo, tmp_path: Path
) -> None:
    (original,) = session.folder.glob("originals/??/*")
    original.chmod(0o644)
    original.unlink()
    report = make_dossier(session, tmp_path / "a.pdf")
    assert any("missing" in note for note in report.notes)
    assert shown.name.split(".")[0] in report.notes[0]


def test_a_photo_whose_original_is_lost_is_no_evidence(session: Session, shown: Photo) -> None:
    area_id = AreaId(add_area(session, "Sill", (), found="rust").made)
    choose_photos(session, area_id, [shown.id], Role.BEFORE)
    (claim,) = claim_acts.area_claims(session, area_id).claims
    assert claim.photo_ids == (shown.id,)
    (original,) = session.folder.glob("originals/??/*")
    original.unlink()
    (claim,) = claim_acts.area_claims(session, area_id).claims
    assert claim.is_word_alone
    (told,) = preview_dossier(session).areas[0].claims
    assert told.alone


def test_a_changed_original_is_not_shown_as_the_one_that_came_in(
    session: Session, shown: Photo, tmp_path: Path
) -> None:
    (original,) = session.folder.glob("originals/??/*")
    original.chmod(0o644)
    data = bytearray(original.read_bytes())
    data[-40] ^= 1
    original.write_bytes(data)
    report = make_dossier(session, tmp_path / "a.pdf")
    assert report.photos == 0
    assert any("bytes were changed" in note for note in report.notes)
    assert shown.sha256 in "".join(everything_said(report.path)).replace(" ", "")


def test_covers_can_be_changed_undone_and_refused(session: Session, shown: Photo) -> None:
    covers.add_cover(session, shown, (0.1, 0.1, 0.2, 0.2), Private.PLATE)
    (box,) = covers.covers_on(session, shown)
    covers.change_cover(session, shown, replace(box, x=0.5))
    assert covers.covers_on(session, shown)[0].x == pytest.approx(0.5)
    undo(session)
    assert covers.covers_on(session, shown)[0].x == pytest.approx(0.1)
    covers.remove_cover(session, box.id)
    assert covers.covered_photos(session) == ()
    with pytest.raises(JournalError, match="beside the picture"):
        covers.add_cover(session, shown, (1.5, 0, 1, 1), Private.PLATE)


def test_listed_words_and_file_names_are_withheld_in_the_finished_file(
    session: Session, shown: Photo, tmp_path: Path
) -> None:
    add_area(session, "Sill", [], "rust", parse("2016-03-01"))
    choose_photos(session, AreaId(1), [shown.id], Role.BEFORE)
    set_caption(session, [shown.id], "In KVELDSUND, plate ab-12 cd")
    privacy.add_private_word(session, " Kveldsund ", Private.ADDRESSES)
    privacy.add_private_word(session, "AB 12-CD", Private.PLATE)
    with pytest.raises(JournalError, match="listed already"):
        privacy.add_private_word(session, "Kveldsund", Private.OTHER)
    report = make_dossier(session, tmp_path / "a.pdf", choices=usual(Cut.BUYER))
    said = "\n".join(everything_said(report.path)).casefold()
    assert "kveldsund" not in said
    assert "ab-12 cd" not in said
    assert "ab12cd" not in said
    assert report.notes == ()


def test_what_is_there_and_withheld_is_no_gap(session: Session) -> None:
    car = session.journal.car.get()
    change_car(
        session, replace(car, maker="Halden", model="Rook", year="1971", chassis_number="HR4")
    )
    lacking = {lack.heading for lack in preview_dossier(session, usual(Cut.BUYER)).lacks}
    assert not any("Identity" in heading for heading in lacking)


def test_choices_are_kept_and_undone(session: Session) -> None:
    mine = usual(Cut.BUYER).with_part(Part.MONEY)
    choose(session, replace(mine, paper="letter", photos=2, withheld=frozenset()))
    kept = choices_of(session, Cut.BUYER)
    assert kept.has(Part.MONEY)
    assert (kept.paper, kept.photos, kept.withheld) == ("letter", 2, frozenset())
    assert choices_of(session, Cut.VALUER) == usual(Cut.VALUER)
    undo(session)
    assert choices_of(session, Cut.BUYER) == usual(Cut.BUYER)
    redo(session)
    assert choices_of(session, Cut.BUYER) == kept


def test_a_standard_view_has_one_photo(session: Session, shown: Photo) -> None:
    set_standard_view(session, "front", shown.id)
    set_standard_view(session, "front", shown.id)
    assert [view.name for view in standard_views(session)] == ["front"]
    with pytest.raises(JournalError, match="no standard view"):
        set_standard_view(session, "boot", shown.id)
    set_standard_view(session, "front", None)
    assert standard_views(session) == ()


def test_an_owner_words_a_claim_and_never_its_grade(session: Session, shown: Photo) -> None:
    add_area(session, "Sill", [], "rust", parse("2016-03-01"))
    choose_photos(session, AreaId(1), [shown.id], Role.BEFORE)
    (before,) = claim_acts.area_claims(session, AreaId(1)).claims
    claim_acts.set_claim_words(session, AreaId(1), "found", "Rotten, that spring.")
    claim_acts.leave_out_claim(session, AreaId(1), "found")
    (after,) = claim_acts.area_claims(session, AreaId(1)).claims
    assert (after.said, after.left_out) == ("Rotten, that spring.", True)
    assert (after.pieces, after.words, after.when) == (before.pieces, before.words, before.when)
    claim_acts.leave_out_claim(session, AreaId(1), "found", left_out=False)
    claim_acts.set_claim_words(session, AreaId(1), "found", "")
    assert claim_acts.area_claims(session, AreaId(1)).claims == (before,)
    with pytest.raises(JournalError, match="has no claim “welded”; it has found"):
        claim_acts.set_claim_words(session, AreaId(1), "welded", "x")
    with pytest.raises(JournalError, match="has room for"):
        claim_acts.set_claim_words(session, AreaId(1), "found", "x" * 3000)


def test_a_changed_area_keeps_its_words_and_a_removed_one_takes_them(
    session: Session, shown: Photo
) -> None:
    from journal.actions.areas import area, remove_area

    add_area(session, "Sill", [], "rust", parse("2016-03-01"))
    claim_acts.set_claim_words(session, AreaId(1), "found", "Mine.")
    change_area(session, replace(area(session, AreaId(1)), done="cut out"))
    assert claim_acts.area_claims(session, AreaId(1)).claims[0].said == "Mine."
    remove_area(session, AreaId(1))
    undo(session)
    assert claim_acts.area_claims(session, AreaId(1)).claims[0].said == "Mine."
    assert shown.id
