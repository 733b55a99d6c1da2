"""A panel's story tells what was welded, let in and measured on it."""

from pathlib import Path

from journal.actions import drawings, panels
from journal.actions.load_bearing import area_bearings
from journal.domain.ids import AreaId
from tests.welding import welded


def test_a_panels_story_tells_its_metal_in_order_of_date(tmp_path: Path) -> None:
    with welded(tmp_path) as session:
        sill = drawings.find_panel(session, "Sill, left")
        events = panels.history(session, sill.id).events
    metal = [event for event in events if event.kind in ("seam", "patch")]
    days = [event.when.edtf for event in metal if event.when]
    assert days == sorted(days)
    assert days == ["2016-04-02", "2016-04-02", "2016-04-09", "2016-04-16", "2016-05-01"]
    assert any("tacked" in event.title for event in metal)
    near = [event for event in metal if "Belt, left, lower" in event.detail]
    assert near
    assert all("inspected by a person competent" in event.detail for event in near)


def test_readings_are_told_with_what_is_outside(tmp_path: Path) -> None:
    with welded(tmp_path) as session:
        door = drawings.find_panel(session, "Front door, left")
        events = panels.history(session, door.id).events
    read = [(e.title, e.detail) for e in events if e.kind == "reading"]
    assert ("Door, A low to B high read before the work", "1284 mm") in read
    outside = "1286.5 mm (outside what you set)"
    assert ("Door, A low to B high read after the work", outside) in read


def test_an_areas_bearings_go_with_the_mounting(tmp_path: Path) -> None:
    with welded(tmp_path) as session:
        (near,) = area_bearings(session, [AreaId(1)])
        assert 0 < near.mark.distance_mm <= 300
        assert area_bearings(session, []) == ()
