"""The album's pages, read by a parser that had no part in making them."""

import posixpath
import re
from dataclasses import replace
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from journal.domain.albums import MARKER
from journal.domain.cuts import Cut, Part, usual
from journal.domain.photos import Photo
from journal.domain.privacy import redact
from journal.domain.private_words import Private
from journal.domain.progress import Silent
from journal.domain.when import parse
from journal.dossier.album.months import timeline
from journal.dossier.album.pages import all_pairs, site
from journal.dossier.album.plates import Plate, Plates
from journal.dossier.album.render import rendered
from journal.dossier.album.writing import leaks, write_album
from journal.dossier.glyphs import literal
from journal.files.assets import asset
from tests.domain.test_privacy import private_record
from tests.dossier import records
from tests.dossier.album.made import album, captioned, dossier_of, pages, read
from tests.dossier.test_withheld import GONE


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An album of a record that has everything."""
    out = tmp_path_factory.mktemp("albums") / "Rook"
    report = album(records.finished_record(), out)
    assert (report.photos, report.notes) == (3, ())
    return out


def test_every_page_is_well_formed_and_none_holds_what_its_policy_forbids(whole: Path) -> None:
    for file, page in pages(whole).items():
        assert page.faults == [], file
        policy = page.all("meta")[1]
        assert policy["http-equiv"] == "Content-Security-Policy"
        assert policy["content"].startswith("default-src 'none';")
        assert "unsafe" not in policy["content"]
        assert page.all("html") == [{"lang": "en"}]
        for tag, attributes in page.elements:
            assert "style" not in attributes, (file, tag)
            assert tag != "style", file
            assert not any(name.startswith("on") for name in attributes), (file, tag)
        assert [s["src"].endswith("look/album.js") for s in page.all("script")] == [True]
        ids = [a["id"] for _, a in page.elements if "id" in a]
        assert len(ids) == len(set(ids)), file


def test_every_link_and_picture_is_in_the_folder_and_pictures_say_their_size(whole: Path) -> None:
    """Nothing leads out of the folder, and nothing leads nowhere."""
    found = pages(whole)
    for file, page in found.items():
        for tag, attributes in page.elements:
            for name in ("href", "src"):
                if name not in attributes:
                    continue
                parts = urlsplit(attributes[name])
                assert (parts.scheme, parts.netloc, parts.query) == ("", "", ""), (file, tag)
                path = posixpath.normpath(posixpath.join(posixpath.dirname(file), parts.path))
                path = path if parts.path else file
                assert not path.startswith(".."), (file, path)
                assert (whole / unquote(path)).is_file(), (file, path)
                if parts.fragment:
                    ids = {a.get("id") for _, a in found[path].elements}
                    assert parts.fragment in ids, (file, attributes[name])
        for image in page.all("img"):
            assert "alt" in image, file
            if image["src"].endswith(".jpg"):
                with Image.open(
                    whole / posixpath.normpath(f"x/../{image['src'].lstrip('./')}")
                ) as i:
                    assert (int(image["width"]), int(image["height"])) == i.size


def test_one_walks_from_the_start_to_drawing_panel_area_and_photo(whole: Path) -> None:
    found = pages(whole)
    start = found["index.html"]
    assert "The Rook" in start.text
    panels = [a["href"] for a in start.all("a") if "panel-" in a["href"]]
    assert panels == ["pages/panel-1.html"]
    assert "Sill, left: finished, repair area 1" in start.text
    assert "pages/drawing.html" in [a["href"] for a in start.all("a")]
    assert "area-1.html" in [a["href"] for a in found["pages/panel-1.html"].all("a")]
    area = found["pages/area-1.html"]
    assert {"photo-1.html", "photo-2.html"} <= {a["href"] for a in area.all("a")}
    assert area.all("input")[0]["type"] == "range"
    photo = found["pages/photo-1.html"]
    shown = dossier_of(records.finished_record()).shown[0].photo
    assert shown.sha256 in photo.text
    assert shown.sha256 in found["pages/photos.html"].text
    assert [a for a in photo.all("a") if a.get("rel") == "next"]


def test_what_the_choices_leave_out_has_no_page(tmp_path: Path) -> None:
    choices = replace(usual(Cut.BUYER), parts=frozenset({Part.AREAS}))
    rec = replace(records.finished_record(), withheld=choices.withheld)
    dossier = replace(dossier_of(rec, choices), charts=())
    names = {page.file for page in site(dossier, rec, plates_of(dossier)).pages}
    assert not {"pages/drawing.html", "pages/costs.html", "pages/panel-1.html"} & names
    assert "pages/area-1.html" in names
    assert "120.00" not in "".join(
        text for _, text in rendered(site(dossier, rec, plates_of(dossier)))
    )


def test_a_repair_area_that_is_not_told_is_not_on_the_drawing() -> None:
    rec = records.finished_record()
    other = records.area(2, ("found", "2016-01-10"), panel_ids=(records.ROOF.id,))
    rec = replace(rec, areas=(*rec.areas, other))
    for chosen, panels in ((frozenset(), {1, 2}), (frozenset({rec.areas[0].id}), {1})):
        dossier = dossier_of(rec, replace(usual(Cut.OWN), areas=chosen))
        found = {page.file for page in site(dossier, rec, plates_of(dossier)).pages}
        assert {n for n in (1, 2) if f"pages/panel-{n}.html" in found} == panels


# Whatever anybody typed


def plates_of(dossier: object) -> Plates:
    shown = dossier.shown  # type: ignore[attr-defined]
    one = Plate("photos/photo-1.jpg", 8, 6, "photos/small-1.jpg", 8, 6)
    return Plates({row.number: one for row in shown}, {})


def texts(caption: str) -> dict[str, str]:
    rec = captioned(caption)
    dossier = dossier_of(rec)
    return dict(rendered(site(dossier, rec, plates_of(dossier))))


PLAIN = {file: read(text).shape() for file, text in texts("plain").items()}

UNKIND = (
    "<script>alert(1)</script>",
    "</title></head><body onload=alert(1)>",
    '"><img src=x onerror=alert(1)>',
    "' onmouseover='alert(1)",
    "{{ 7 * 7 }} {% raw %} {# no #}",
    "<!-- ]]> &lt;b&gt; &#60; &amp;amp;",
    "javascript:alert(1)",
    "\u202egpj.exe \u2066 \x00\x07 \ud800 \ufeff",
    "שלום עולم مرحبا 北京 🚗",
    "</svg><style>*{display:none}</style>",
)


def judge(caption: str) -> None:
    for file, text in texts(caption).items():
        text.encode()
        page = read(text)
        assert page.faults == [], file
        assert page.shape() == PLAIN[file], file
    page = read(texts(caption)["pages/photo-1.html"])
    for part in literal(caption).split("\n"):
        assert " ".join(part.split()) in page.text


@pytest.mark.parametrize("caption", UNKIND)
def test_markup_of_every_kind_is_text(caption: str) -> None:
    judge(caption)


@given(st.text(st.characters(), min_size=1, max_size=60).filter(lambda text: text.strip()))
@settings(max_examples=25, deadline=None)
def test_any_text_is_text(caption: str) -> None:
    """The pages have the same elements and attributes, whatever stands in captions and titles."""
    judge(f"x{caption}x")


def test_a_caption_of_twenty_thousand_characters_is_whole_on_its_photo_and_short_elsewhere() -> (
    None
):
    found = texts("word " * 4000)
    photo = read(found["pages/photo-1.html"])
    assert photo.text.count("word") >= 4000
    assert len(found["pages/photos.html"]) < 12_000
    assert all(len(image["alt"]) < 400 for image in photo.all("img"))


# What can't be shown


def test_a_missing_original_is_said_in_its_place_and_the_rest_goes_on(tmp_path: Path) -> None:
    def pictures(photo: Photo, longest: int) -> bytes | None:
        return None if photo.id == 1 else records.picture(photo, longest)

    report = album(records.finished_record(), tmp_path / "a", pictures)
    assert report.photos == 2
    assert [
        note.endswith("the original is missing or can’t be read.") for note in report.notes
    ] == [True]
    dossier = dossier_of(records.finished_record())
    number = next(row.number for row in dossier.shown if row.photo.id == 1)
    found = pages(tmp_path / "a")
    assert "Not shown: the original is missing" in found[f"pages/photo-{number}.html"].text
    assert all(page.faults == [] for page in found.values())


def test_a_record_of_nothing_is_an_album_that_says_so(tmp_path: Path) -> None:
    rec = records.record(milestones=(), drawing=replace(records.drawing(), shapes=(), views=()))
    report = album(rec, tmp_path / "a", choices=usual(Cut.BUYER))
    assert report.photos == 0
    found = pages(tmp_path / "a")
    assert "Nothing is recorded yet" in found["index.html"].text
    assert all(page.faults == [] for page in found.values())


def test_photos_of_two_shapes_stand_side_by_side(tmp_path: Path) -> None:
    def pictures(photo: Photo, _longest: int) -> bytes:
        return records.jpeg(320, 240 if photo.id == 1 else 320)

    album(records.finished_record(), tmp_path / "a", pictures)
    page = pages(tmp_path / "a")["pages/area-1.html"]
    assert page.all("input") == []
    assert [f["class"] for f in page.all("figure") if f["class"].startswith("pair")] == ["pair"]


# What is withheld


def test_nothing_withheld_is_in_any_file_or_its_name(tmp_path: Path) -> None:
    withheld = frozenset(Private)
    given = redact(private_record(), withheld, ())
    choices = replace(usual(Cut.OWN), withheld=withheld)
    report = album(given.record, tmp_path / "a", choices=choices, finder=given.finder)
    assert report.notes == ()
    for path in (tmp_path / "a").rglob("*"):
        said = str(path.relative_to(tmp_path)).casefold()
        if path.suffix in (".html", ".svg", ".json"):
            said += path.read_text("utf-8").casefold()
        assert [word for word in GONE if word in said] == [], path.name


def test_a_withheld_word_that_is_left_is_named_with_its_page() -> None:
    given = redact(private_record(), frozenset(Private), ())
    found = leaks({"pages/a.html": '<th>By <img alt="Lindqvist"></th>'}, given.finder)
    assert found == {Private.PEOPLE: ["pages/a.html"]}
    assert leaks({"a": '<th class="Lindqvist"><path d="M10482"/></th>'}, given.finder) == {}


def test_pictures_hold_nothing_but_pixels(whole: Path) -> None:
    for path in (whole / "photos").glob("*.jpg"):
        with Image.open(path) as image:
            assert not image.getexif()
            assert set(image.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}


# Timeline and look


@pytest.mark.parametrize(
    ("when", "year", "month"),
    [
        ("2016-03-12", "2016", "March"),
        ("2016-03", "2016", "March"),
        ("2016", "2016", "Month not known"),
        ("summer 2016", "2016", "Month not known"),
        ("2014/2017", "2014", "Month not known"),
        (None, "No date", "When is not known"),
    ],
)
def test_a_photo_stands_in_the_month_that_its_date_tells(
    when: str | None, year: str, month: str
) -> None:
    rec = records.finished_record()
    first = replace(rec.photos[0], when=parse(when) if when else None)
    rec = replace(rec, photos=(first, *rec.photos[1:]), milestones=())
    rec = replace(rec, areas=(replace(rec.areas[0], changes=()),))
    found = [
        (one.label, row.label)
        for one in timeline(dossier_of(rec), rec)
        for row in one.months
        if any(shown.photo.id == 1 for shown in row.photos)
    ]
    assert found == [(year, month)]


def test_each_area_with_a_before_and_an_after_has_a_pair() -> None:
    dossier = replace(dossier_of(records.finished_record()), pairs=())
    assert [(p.before.photo.id, p.after.photo.id) for p in all_pairs(dossier)] == [(1, 3)]


def contrast(one: str, other: str) -> float:
    """By WCAG 2.2, "contrast ratio" and "relative luminance"."""

    def luminance(colour: str) -> float:
        parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
        r, g, b = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
        return 0.2126 * r + 0.7152 * g + 0.0722 * b

    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("theme", [0, 1, 2], ids=["light", "dark", "paper"])
def test_every_text_and_mark_can_be_told_apart(theme: int) -> None:
    """WCAG 2.2, 1.4.3 and 1.4.11; check value of the formula: #767676 on white, 4.54."""
    assert contrast("#767676", "#ffffff") == pytest.approx(4.542, abs=0.001)
    css = asset("album/album.css").read_text("utf-8")
    themes = [
        dict(re.findall(r"--([a-z-]+): (#[0-9a-f]{6});", root)) for root in css.split(":root {")[1:]
    ]
    colours = themes[0] | themes[theme] if theme else themes[0]
    for ground in ("page", "surface"):
        for words in ("text", "quiet", "accent"):
            assert contrast(colours[words], colours[ground]) >= 4.5, (words, ground)
        assert contrast(colours["edge"], colours[ground]) >= 3, ground
    for words in ("text", "quiet"):
        assert contrast(colours[words], colours["caution"]) >= 4.5
    assert contrast(colours["on-accent"], colours["accent"]) >= 4.5
    assert contrast(colours["caution-edge"], colours["page"]) >= 3
    assert contrast("#8c3b1b", colours["sheet"]) >= 3, "the ring round a panel"


def test_the_look_asks_for_nothing_from_elsewhere() -> None:
    for name in ("album.css", "album.js"):
        text = asset(f"album/{name}").read_text("utf-8")
        assert "http" not in text
        assert "@import" not in text
        assert all(
            not target.startswith(("/", ".")) for target in re.findall(r'url\("([^"]*)', text)
        )
    assert "innerHTML" not in asset("album/album.js").read_text("utf-8")
    assert MARKER == "album.json"


def test_a_pair_laid_over_each_other_is_shown_as_it_lies(tmp_path: Path) -> None:
    """The after photo lies a tenth of the width further right: nine tenths are on both."""
    rec = records.finished_record()
    dossier = dossier_of(rec)
    shift = (1.0, 0.0, 0.1, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0)
    pair = replace(dossier.pairs[0], matrix=shift, how="Laid by 4 points.")
    laid = replace(dossier, pairs=(pair,))
    write_album(laid, rec, records.picture, tmp_path / "a", Silent())
    for page in ("index.html", "pages/area-1.html"):
        found = pages(tmp_path / "a")[page]
        images = [i for i in found.all("img") if "/pair-0-" in i["src"]]
        assert [(i["width"], i["height"]) for i in images] == [("288", "240")] * 2
        assert "Laid by 4 points." in found.text
        assert "were not laid over" not in found.text
