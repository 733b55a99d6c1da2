"""The drawn pictures: that they are what their files say, and that one can see what they show."""

import hashlib
from datetime import datetime, timedelta
from pathlib import Path

import numpy as np
import numpy.typing as npt
import pytest
from PIL import Image, ImageOps

from journal.demo.cameras import CAMERAS, WRONG_CLOCK, encode, offset_on
from journal.demo.papers import paper
from journal.demo.pictures import draw
from journal.demo.plan import Planned, plan
from journal.demo.scenario import SCENARIO
from journal.demo.story import AreaShot
from journal.demo.write import DemoPicture, chosen, write_pictures
from journal.domain.errors import Cancelled
from journal.domain.progress import Silent

EXIF = 0x8769
Levels = npt.NDArray[np.float64]


def planned(area: str, look: str) -> Planned:
    return next(
        p
        for p in plan()
        if p.subject.area
        and p.subject.area.key == area
        and isinstance(p.subject.shot, AreaShot)
        and p.subject.shot.look == look
    )


def levels(area: str, look: str) -> Levels:
    """A small version of the picture's middle, where the trouble is."""
    picture = draw(planned(area, look))
    width, height = picture.size
    reach = min(width, height) // 5
    middle = (width // 2 - reach, height // 2 - reach, width // 2 + reach, height // 2 + reach)
    return np.asarray(picture.crop(middle).resize((32, 32))).astype(np.float64)


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> tuple[DemoPicture, ...]:
    return write_pictures(tmp_path_factory.mktemp("pictures"), Silent(), 34)


def test_the_plan_is_the_same_every_time_and_no_file_is_named_twice() -> None:
    plan.cache_clear()
    first = plan()
    plan.cache_clear()
    assert plan() == first
    assert len({p.path.lower() for p in first}) == len(first)


def test_pictures_come_in_the_order_they_were_taken() -> None:
    times = [p.true for p in plan() if p.true]
    assert times == sorted(times)
    assert len(set(times)) == len(times)


def test_several_cameras_one_of_them_with_a_wrong_clock() -> None:
    used = {p.camera.key for p in plan()}
    assert used == set(CAMERAS)
    wrong = [p for p in plan() if p.true and p.shown and p.true != p.shown]
    assert len(wrong) >= 10
    assert {p.camera.key for p in wrong} == {"P4"}
    assert {p.true - p.shown for p in wrong if p.true and p.shown} == {WRONG_CLOCK}
    assert all(p.shown and p.shown.year < 2013 for p in wrong)


def test_a_burst_lies_within_a_second() -> None:
    bursts = [p for p in plan() if p.subject.frame]
    assert len(bursts) >= 5
    before = {p.path: q for q, p in zip(plan(), plan()[1:], strict=False)}
    for frame in bursts:
        first = before[frame.path]
        assert first.true
        assert frame.true
        assert timedelta(0) < frame.true - first.true < timedelta(seconds=1)


def test_some_pictures_say_nothing_and_some_only_by_their_name() -> None:
    silent = [p for p in plan() if p.camera.writes == "nothing"]
    assert sum(p.path.startswith("scans/scan0") for p in silent) >= 3
    named = [p for p in silent if p.camera.key == "sent"]
    assert len(named) >= 10
    for picture in named:
        assert picture.true
        assert Path(picture.path).stem.startswith(picture.true.strftime("IMG_%Y%m%d_%H%M%S"))


def test_every_file_opens_and_says_what_it_should(written: tuple[DemoPicture, ...]) -> None:
    for picture in written:
        with Image.open(picture.path) as file:
            file.load()
            exif = file.getexif()
            detail = exif.get_ifd(EXIF)
            upright = ImageOps.exif_transpose(file).size
        camera = CAMERAS[picture.camera]
        assert sorted(upright) == sorted(camera.size)
        if camera.writes == "nothing":
            assert not exif
            continue
        assert picture.shown_time
        stamp = picture.shown_time.strftime("%Y:%m:%d %H:%M:%S")
        if camera.writes == "digitised":
            assert detail[0x9004] == stamp
            assert 0x9003 not in detail
            continue
        assert (exif[0x010F], exif[0x0110]) == (camera.make, camera.model)
        assert detail[0x9003] == stamp
        assert (0x9011 in detail) == camera.offset
        if camera.offset:
            assert detail[0x9011] == offset_on(picture.shown_time.date())
        if camera.subseconds:
            assert int(detail[0x9291]) == picture.shown_time.microsecond // 1000
        assert 0x8825 not in exif


def test_a_camera_held_upright_says_so() -> None:
    upright = next(p for p in plan() if p.portrait)
    picture = draw(upright)
    assert picture.height > picture.width
    from io import BytesIO

    with Image.open(BytesIO(encode(picture, upright.camera, upright.shown, "day"))) as file:
        assert file.width > file.height
        assert file.getexif()[0x0112] == 6
        shown = np.asarray(ImageOps.exif_transpose(file)).astype(int)
    assert np.abs(shown - np.asarray(picture).astype(int)).mean() < 6


def test_summer_and_winter_have_their_offsets() -> None:
    days = ("2019-03-30", "2019-03-31", "2019-10-26", "2019-10-27")
    offsets = [offset_on(datetime.fromisoformat(day).date()) for day in days]
    assert offsets == ["+01:00", "+02:00", "+02:00", "+01:00"]


def test_the_same_picture_is_drawn_to_the_same_bytes() -> None:
    def digest(one: Planned) -> str:
        content = encode(draw(one), one.camera, one.shown, one.subject.shot.light)
        return hashlib.sha256(content).hexdigest()

    for number in (0, 60, 150, len(plan()) - 1):
        one = plan()[number]
        assert digest(one) == digest(one)


def test_a_few_pictures_are_spread_over_the_years() -> None:
    few = chosen(20)
    assert len(few) == 20
    years = {p.true.year for p in few if p.true}
    assert years >= {2018, 2019, 2020, 2021}
    assert chosen(None) == chosen(10_000) == plan()


def test_rust_is_brown_primer_grey_and_paint_green() -> None:
    red, green, blue = (levels("sill-left", "holed")[..., c] for c in range(3))
    brown = (red > green + 10) & (green >= blue - 4)
    assert brown.mean() > 0.1
    zinc = levels("rear-valance", "zinc").reshape(-1, 3).mean(axis=0)
    assert zinc.max() - zinc.min() < 34
    paint = levels("sill-left", "painted").reshape(-1, 3).mean(axis=0)
    assert paint[1] > paint[0] + 20
    assert paint[1] > paint[2] + 5


def test_an_opening_is_darker_than_the_metal_that_fills_it() -> None:
    assert levels("floor-front-right", "cut").mean() < levels("floor-front-right", "dressed").mean()


def test_before_and_after_differ_at_the_trouble_more_than_beside_it() -> None:
    before, after = (draw(planned("wing-right", look)) for look in ("rusty", "painted"))
    small = [np.asarray(p.resize((80, 60))).astype(float) for p in (before, after)]
    colour = [s / s.sum(axis=2, keepdims=True) for s in small]
    change = np.abs(colour[0] - colour[1]).sum(axis=2)
    assert change[20:40, 28:52].mean() > 1.5 * change[:8].mean()


def test_cancelling_keeps_what_was_written(tmp_path: Path) -> None:
    class Impatient:
        asked = 0

        def report(self, done: int, total: int, label: str) -> None:
            assert 0 <= done <= total == 12

        def checkpoint(self) -> None:
            self.asked += 1
            if self.asked == 3:
                raise Cancelled

    with pytest.raises(Cancelled):
        write_pictures(tmp_path, Impatient(), 12)
    files = [path for path in tmp_path.rglob("*") if path.is_file()]
    assert 2 <= len(files) < 12
    for path in files:
        with Image.open(path) as file:
            file.load()


def test_every_paper_that_is_held_can_be_looked_at() -> None:
    import pypdfium2

    kinds = set()
    for receipt in SCENARIO.receipts:
        drawn = paper(receipt)
        assert (drawn is not None) == bool(receipt.form)
        if drawn is None:
            continue
        name, content = drawn
        kinds.add(Path(name).suffix)
        if name.endswith(".pdf"):
            document = pypdfium2.PdfDocument(content)
            assert len(document) == 1
            document.close()
            continue
        from io import BytesIO

        with Image.open(BytesIO(content)) as file:
            file.load()
            assert min(file.size) > 400
    assert kinds == {".pdf", ".png", ".jpg"}
