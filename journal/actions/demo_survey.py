"""The demo's survey, recorded and closed by the acts a person uses."""

from collections.abc import Callable, Mapping

from journal.actions import drawings, surveys
from journal.actions.session import Session
from journal.domain.drawing import Panel
from journal.domain.findings import Cause, Finding, Survey, Three
from journal.domain.ids import AreaId, CauseId, FindingId, SurveyId, ViewId
from journal.domain.shapes import Point
from journal.domain.when import parse_edtf


def record_survey(
    session: Session,
    area_ids: Mapping[str, AreaId],
    spot_of: Callable[[Panel], tuple[ViewId, Point]],
) -> None:
    """Walk round the Halden Rook before the start; ``spot_of`` gives a mark's place on a panel."""
    from journal.demo import survey as told

    begun = Survey(
        SurveyId(0), told.NAME, parse_edtf(told.DAY), told.CEILING * 100,
        told.CEILING_HOURS * 60, told.SEED, told.NOTE,
    )  # fmt: skip
    survey_id = SurveyId(surveys.start_survey(session, begun).made or 0)
    for one in told.FINDINGS:
        panel = drawings.find_panel(session, one.panel) if one.panel else None
        view_id, at = spot_of(panel) if panel else (None, None)
        found = Finding(
            id=FindingId(0),
            survey_id=survey_id,
            text=one.text,
            severity=one.severity,
            money=Three(*(100 * euros for euros in one.euros)),
            minutes=Three(*(60 * hours for hours in one.hours)),
            panel_id=panel.id if panel else None,
            view_id=view_id,
            x=at.x if at else None,
            y=at.y if at else None,
            area_id=area_ids[one.area] if one.area else None,
            note=one.note,
        )
        cause = Cause(CauseId(0), survey_id, one.cause, told.CAUSES.get(one.cause, 0))
        surveys.add_finding(session, found, cause if one.cause else None)
    surveys.close_survey(session, survey_id)
