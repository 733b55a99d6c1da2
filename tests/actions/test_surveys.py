from dataclasses import replace
from datetime import date

import pytest

from journal.actions import areas, drawings, find, metalwork, panels, shaping, surveys
from journal.actions.checking import check
from journal.actions.history import undo
from journal.actions.session import Session
from journal.domain.anchors import AnchorKind, AnchorPoint
from journal.domain.errors import JournalError
from journal.domain.findings import Cause, Finding, Severity, Survey, Three
from journal.domain.ids import AnchorId, CauseId, FindingId, SurveyId
from journal.domain.when import When

DAY = When.on(date(2018, 3, 10))
INSIDE = Cause(CauseId(0), SurveyId(0), "It's worse inside", 0.6)


def started(session: Session, ceiling: int | None = 900_000) -> SurveyId:
    made = surveys.start_survey(session, Survey(SurveyId(0), "Before buying", DAY, ceiling, 24_000))
    return SurveyId(made.made or 0)


def sill(survey_id: SurveyId, text: str = "holes along the flange") -> Finding:
    return Finding(
        FindingId(0), survey_id, text, Severity.PERFORATED,
        Three(80_00, 150_00, 400_00), Three(600, 1200, 3000),
    )  # fmt: skip


def found(session: Session, survey_id: SurveyId, panel: str = "") -> FindingId:
    made = sill(survey_id)
    if panel:
        made = replace(made, panel_id=drawings.find_panel(session, panel).id)
    return FindingId(surveys.add_finding(session, made, INSIDE).made or 0)


def test_findings_are_numbered_and_share_causes_by_name(session: Session) -> None:
    survey_id = started(session)
    for _ in range(3):
        found(session, survey_id)
    sheet = surveys.sheet(session, survey_id)
    assert [one.rank for one in sheet.findings] == [1, 2, 3]
    assert [cause.name for cause in sheet.causes] == ["It's worse inside"]
    surveys.change_finding(session, sheet.findings[0], replace(sheet.causes[0], strength=0.9))
    assert surveys.sheet(session, survey_id).causes[0].strength == 0.9


def test_a_cause_that_nothing_has_left_goes(session: Session) -> None:
    survey_id = started(session)
    number = found(session, survey_id)
    known = surveys.finding(session, number)
    surveys.change_finding(session, replace(known, cause_id=None))
    assert surveys.sheet(session, survey_id).causes == ()


@pytest.mark.parametrize(
    ("wrong", "words"),
    [
        ({"money": Three(300, 200, 400)}, "must grow from best over likely to worst"),
        ({"minutes": Three(60, 120, 90)}, "not 1 h, 2 h, 1 h 30 min"),
        ({"money": Three(-1, 0, 5)}, "can't be less than nothing"),
        ({"money": Three(0, 0, 10**14)}, "is the most"),
        ({"minutes": Three(0, 0, 10**9)}, "is the most"),
        ({"text": "  "}, "needs some words"),
        ({"x": float("nan")}, "no place on the drawing"),
    ],
)
def test_figures_that_cannot_be_are_refused(
    session: Session, wrong: dict[str, object], words: str
) -> None:
    made = sill(started(session))
    with pytest.raises(JournalError, match=words):
        surveys.add_finding(session, replace(made, **wrong))  # type: ignore[arg-type]
    assert surveys.sheet(session, made.survey_id).findings == ()


def test_a_strength_outside_nothing_to_all_is_refused(session: Session) -> None:
    made = sill(started(session))
    for strength in (-0.1, 1.1, float("nan")):
        with pytest.raises(JournalError, match="from 0"):
            surveys.add_finding(session, made, replace(INSIDE, strength=strength))


def test_a_closed_survey_stays_as_it_was_on_that_day(session: Session) -> None:
    survey_id = started(session)
    with pytest.raises(JournalError, match="nothing to keep"):
        surveys.close_survey(session, survey_id)
    number = found(session, survey_id)
    surveys.close_survey(session, survey_id)
    kept = surveys.sheet(session, survey_id)
    assert kept.survey.closed
    for act in (
        lambda: found(session, survey_id),
        lambda: surveys.change_finding(session, replace(kept.findings[0], text="none")),
        lambda: surveys.remove_finding(session, number),
        lambda: surveys.change_survey(session, replace(kept.survey, name="Other")),
        lambda: surveys.close_survey(session, survey_id),
    ):
        with pytest.raises(JournalError, match="was closed and is kept as it was"):
            act()
    assert surveys.sheet(session, survey_id) == kept


def test_going_on_from_a_survey_gives_the_same_figures(session: Session) -> None:
    survey_id = started(session)
    found(session, survey_id)
    found(session, survey_id)
    surveys.close_survey(session, survey_id)
    made = surveys.go_on_from(session, survey_id, "After the strip", When.on(date(2018, 9, 22)))
    copy = SurveyId(made.made or 0)
    old, new = (surveys.estimate(session, number) for number in (survey_id, copy))
    assert old.money.drawn == new.money.drawn
    assert surveys.sheet(session, copy).survey.closed is None
    dearer = replace(surveys.sheet(session, copy).findings[0], money=Three(0, 0, 900_00))
    surveys.change_finding(session, dearer)
    (row,) = surveys.compare(session, survey_id, copy)
    assert row.counts == (2, 2)
    assert row.money[1] != row.money[0]


def test_the_estimate_says_the_chance_of_staying_under_the_ceilings(session: Session) -> None:
    survey_id = started(session, ceiling=200_00)
    found(session, survey_id)
    estimate = surveys.estimate(session, survey_id)
    assert estimate.money.drawn.under is not None
    assert 0.5 < estimate.money.drawn.under < 1
    assert estimate.minutes.drawn.under == 1
    assert estimate.under_both == estimate.money.drawn.under


def test_a_finding_near_a_mounting_is_marked_load_bearing(session: Session) -> None:
    view = drawings.views(session)[0]
    anchor = AnchorPoint(AnchorId(0), view.id, 500, 500, AnchorKind.SEAT_BELT, "Belt, left", 300)
    metalwork.add_anchor(session, anchor)
    spot = replace(sill(started(session)), view_id=view.id, x=600.0, y=500.0)
    (mark,) = surveys.finding_marks(surveys.anchors(session), spot)
    assert mark.title == "Load-bearing: have it inspected"
    assert not surveys.finding_marks(surveys.anchors(session), replace(spot, x=900.0))


def test_a_repair_area_is_made_of_a_finding(session: Session) -> None:
    survey_id = started(session)
    panel = drawings.find_panel(session, "sill, left")
    surveys.add_finding(
        session, replace(sill(survey_id), panel_id=panel.id), new_area="Sill, left, rear end"
    )
    (made,) = areas.areas(session)
    assert (made.panel_ids, made.found, made.stage) == (
        (panel.id,), "holes along the flange", "found"
    )  # fmt: skip
    assert surveys.sheet(session, survey_id).findings[0].area_id == made.id
    areas.remove_area(session, made.id)
    assert surveys.sheet(session, survey_id).findings[0].area_id is None
    with pytest.raises(JournalError, match="lies on a panel"):
        surveys.add_finding(session, sill(survey_id), new_area="Nowhere")


def test_a_panel_with_a_finding_is_not_removed_and_takes_it_along_when_joined(
    session: Session,
) -> None:
    survey_id = started(session)
    number = found(session, survey_id, "sill, left")
    panel = surveys.finding(session, number).panel_id
    assert panel is not None
    with pytest.raises(JournalError, match="1 finding hang"):
        shaping.remove_panel(session, panel)
    assert [event.kind for event in panels.history(session, panel).events] == ["finding"]
    (hit,) = (one for one in find.find(session, "flange") if one.kind == "finding")
    assert (hit.id, hit.title) == (number, "holes along the flange")


def test_a_survey_goes_with_its_findings_and_comes_back_by_undo(session: Session) -> None:
    survey_id = started(session)
    found(session, survey_id)
    before = surveys.sheet(session, survey_id)
    surveys.remove_survey(session, survey_id)
    assert surveys.surveys(session) == ()
    undo(session)
    assert surveys.sheet(session, survey_id) == before
    assert surveys.find_survey(session, "buying").id == survey_id
    assert surveys.find_survey(session, "").id == survey_id


@pytest.mark.parametrize("word", ["a\udcffb", "nul\0byte", "x" * 100_000, "two\nlines\r\n\tand"])
def test_any_words_are_kept_and_can_be_undone(session: Session, word: str) -> None:
    survey_id = started(session)
    cause = replace(INSIDE, name=f"it: {word}")
    for _ in range(2):
        surveys.add_finding(session, replace(sill(survey_id, f"it: {word}"), note=word), cause)
    sheet = surveys.sheet(session, survey_id)
    assert len(sheet.causes) == 1
    assert surveys.estimate_of(sheet).has_causes
    surveys.close_survey(session, survey_id)
    surveys.go_on_from(session, survey_id, f"on: {word}", DAY)
    for _ in range(5):
        undo(session)
    assert surveys.surveys(session) == ()
    assert check(session).faults == ()


@pytest.mark.parametrize(
    "wrong", [{"name": " "}, {"ceiling": 0}, {"ceiling": 2**63}, {"ceiling_minutes": 2**63}]
)
def test_a_survey_that_cannot_be_is_refused(session: Session, wrong: dict[str, object]) -> None:
    survey = Survey(SurveyId(0), "Before", DAY)
    with pytest.raises(JournalError):
        surveys.start_survey(session, replace(survey, **wrong))  # type: ignore[arg-type]


def test_a_panel_of_a_closed_survey_goes_only_by_joining(session: Session) -> None:
    survey_id = started(session)
    number = found(session, survey_id, "Front door, left")
    door = drawings.find_panel(session, "Front door, left").id
    with pytest.raises(JournalError, match=r"^1 finding hangs on .*: move them first, or join it"):
        shaping.remove_panel(session, door)
    surveys.close_survey(session, survey_id)
    with pytest.raises(JournalError, match="what “Before buying” found there is kept as it was"):
        shaping.remove_panel(session, door)
    neighbour = drawings.find_panel(session, "B-post, left").id
    shaping.join_panels(session, neighbour, door)
    assert surveys.finding(session, number).panel_id == neighbour
    assert surveys.find_survey(session, "Before buying").closed
