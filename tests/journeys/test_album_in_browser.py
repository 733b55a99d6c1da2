"""The album opened from disk in Chromium and walked through: nothing complains, nothing is fetched.

Runs where Debian's packages chromium and chromium-driver, or the like, are installed.
"""

import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from journal.domain.photos import Photo
from tests.dossier import records
from tests.dossier.album.made import album
from tests.journeys.webdriver import END, ENTER, LEFT, RIGHT, Browser, browser, chromium

PROGRAMS = chromium()
pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(PROGRAMS is None, reason="needs chromium and chromedriver"),
]

COLOURS = {1: "#803010", 2: "#808080", 3: "#106040"}


def pictures(photo: Photo, longest: int) -> bytes:
    return records.jpeg(longest, longest * 3 // 4, COLOURS[photo.id])


@pytest.fixture(scope="module")
def out(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An album in a folder whose name every address has to write in other signs."""
    folder = tmp_path_factory.mktemp("albums") / "Rook & co, 100 % é #1"
    album(records.finished_record(), folder, pictures)
    return folder


@pytest.fixture(scope="module")
def led(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Browser]:
    assert PROGRAMS is not None
    with browser(tmp_path_factory.mktemp("browser"), PROGRAMS) as made:
        made.requests()
        yield made


def test_a_walk_from_the_start_to_a_photo(led: Browser, out: Path) -> None:
    """Start, drawing, panel, area, handle moved, photo, next photo: all inside the folder."""
    led.screen(1280, 900)
    led.open((out / "index.html").as_uri())
    led.requests()
    led.click("nav a[href$='drawing.html']")
    led.click(".view a")
    assert led.address.endswith("/pages/panel-1.html")
    led.click(".card a")
    assert led.address.endswith("/pages/area-1.html")
    cut = "return document.querySelector('.both').style.getPropertyValue('--cut')"
    assert led.run(cut) == "50%"
    led.keys(".slide", LEFT * 3)
    assert led.run(cut) == "47%"
    led.keys(".slide", END)
    assert led.run(cut) == "100%"
    led.click(".pair figcaption a")
    assert led.run("return document.querySelector('.large img').naturalWidth") > 0
    photo = led.address
    led.press(RIGHT)
    assert led.address != photo
    assert led.address.endswith(".html")
    asked = led.requests()
    assert len(asked) > 10
    root = out.as_uri() + "/"
    assert [address for address in asked if not address.startswith(root)] == []
    assert led.log() == []


def test_the_drawing_is_led_by_keyboard_and_read_aloud(led: Browser, out: Path) -> None:
    led.open((out / "pages" / "drawing.html").as_uri())
    nodes = led.tell("Accessibility.getFullAXTree")["nodes"]
    links = [n["name"]["value"] for n in nodes if n.get("role", {}).get("value") == "link"]
    assert "Sill, left: finished, repair area 1" in links
    led.run("document.querySelector('.view a').focus()")
    led.press(ENTER)
    assert led.address.endswith("/pages/panel-1.html")


def test_no_page_is_wider_than_a_small_phone(led: Browser, out: Path) -> None:
    """320 CSS pixels: WCAG 2.2, 1.4.10."""
    led.screen(320, 640)
    for path in sorted(out.rglob("*.html")):
        led.open(path.as_uri())
        assert led.run("return document.documentElement.scrollWidth") <= 320, path.name
    assert led.log() == []


def test_without_scripts_a_pair_stands_side_by_side(led: Browser, out: Path) -> None:
    led.screen(1280, 900)
    led.tell("Emulation.setScriptExecutionDisabled", value=True)
    try:
        led.open((out / "pages" / "area-1.html").as_uri())
        boxes = [led.box(".one"), led.box(".one.over")]
        assert boxes[0]["x"] + boxes[0]["width"] <= boxes[1]["x"]
        assert boxes[0]["y"] == boxes[1]["y"]
    finally:
        led.tell("Emulation.setScriptExecutionDisabled", value=False)


def test_the_policy_lets_nothing_out(led: Browser, out: Path) -> None:
    """What the other tests find silent does speak up when something asks for an address outside."""
    led.open((out / "index.html").as_uri())
    led.log()
    led.requests()
    led.run(
        "const image = new Image(); image.src = 'http://127.0.0.1:9/x.png';"
        "document.body.append(image); fetch('http://127.0.0.1:9/y').catch(() => 0);"
        "const style = document.createElement('style'); document.body.append(style);"
        "document.body.setAttribute('style', 'color: red');"
    )
    said, blocked = "", []
    until = time.monotonic() + 10
    while not blocked or "connect-src" not in said:
        assert time.monotonic() < until, said
        said += " ".join(row["message"] for row in led.log())
        blocked += led.requests(blocked=True)
    assert blocked == ["http://127.0.0.1:9/x.png"], "and the other isn't begun"
    assert "img-src" in said
    assert "style" in said


def test_it_prints_with_both_photos_of_a_pair(led: Browser, out: Path) -> None:
    import pypdfium2

    led.open((out / "pages" / "area-1.html").as_uri())
    with pypdfium2.PdfDocument(led.printed()) as pdf:
        words = "".join(page.get_textpage().get_text_bounded() for page in pdf)
        images = sum(obj.type == 3 for page in pdf for obj in page.get_objects())
    assert "Area 1" in words
    assert "Timeline" not in words
    assert images >= 5
