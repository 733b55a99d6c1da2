"""Surveys of the car: their findings, and the causes that findings share."""

from collections.abc import Sequence
from typing import Any

from journal.domain.errors import JournalError
from journal.domain.findings import Cause, Finding, Severity, Survey, SurveySheet, Three
from journal.domain.ids import AreaId, CauseId, FindingId, PanelId, SurveyId, ViewId
from journal.store.opened import Subject
from journal.store.rows import dated, delete, insert, kept_text, update, when_columns

_FINDING = (
    "id, survey_id, text, severity, best, likely, worst, best_minutes, likely_minutes, "
    "worst_minutes, panel_id, view_id, x, y, area_id, cause_id, note, rank"
)


class Surveys(Subject):
    """Every survey of the car."""

    def add(self, survey: Survey) -> SurveyId:
        """Record a survey."""
        return SurveyId(insert(self._db, "surveys", _survey_values(survey)))

    def change(self, survey: Survey) -> None:
        """Record what is said of a survey anew."""
        update(self._db, "surveys", survey.id, _survey_values(survey))

    def remove(self, survey_id: SurveyId) -> None:
        """Take a survey out, with its findings and causes."""
        db = self._db
        for table in ("findings", "causes"):
            found = db.execute(f"SELECT id FROM {table} WHERE survey_id = ?", (survey_id,))
            for (row,) in found.fetchall():
                delete(db, table, row)
        delete(db, "surveys", survey_id)

    def all(self) -> tuple[Survey, ...]:
        """Every survey, in order of date."""
        found = self._db.execute(
            "SELECT id, name, ceiling, ceiling_minutes, seed, note, closed, edtf, earliest, latest "
            "FROM surveys ORDER BY earliest, latest, id"
        )
        return tuple(
            Survey(SurveyId(i), name, dated(*when), ceiling, minutes, seed, note, closed)
            for i, name, ceiling, minutes, seed, note, closed, *when in found
        )

    def get(self, survey_id: SurveyId) -> Survey:
        """One survey.

        Raises:
            JournalError: there is none of that number.
        """
        for survey in self.all():
            if survey.id == survey_id:
                return survey
        raise JournalError(f"There is no survey number {survey_id}.")

    def sheet(self, survey_id: SurveyId) -> SurveySheet:
        """One survey with its causes and findings.

        Raises:
            JournalError: there is none of that number.
        """
        causes = self._causes("survey_id = ?", survey_id)
        return SurveySheet(self.get(survey_id), causes, self._findings("survey_id = ?", survey_id))

    def sheets(self) -> tuple[SurveySheet, ...]:
        """Every survey with its causes and findings, in order of date."""
        return tuple(self.sheet(survey.id) for survey in self.all())

    # Causes

    def put_cause(self, cause: Cause) -> CauseId:
        """Record what findings of a survey share: anew by its number or its name, else one more."""
        name = kept_text(cause.name.strip())
        known = self._causes("survey_id = ?", cause.survey_id)
        same = next((c.id for c in known if c.id == cause.id or c.name == name), None)
        if same is None:
            return CauseId(insert(self._db, "causes", _cause_values(cause)))
        update(self._db, "causes", same, _cause_values(cause))
        return same

    def remove_cause(self, cause_id: CauseId) -> None:
        """Take a cause out; its findings stay, with nothing in common."""
        for (row,) in self._db.execute(
            "SELECT id FROM findings WHERE cause_id = ?", (cause_id,)
        ).fetchall():
            update(self._db, "findings", row, {"cause_id": None})
        delete(self._db, "causes", cause_id)

    def _causes(self, condition: str, *values: int) -> tuple[Cause, ...]:
        found = self._db.execute(
            f"SELECT id, survey_id, name, strength FROM causes WHERE {condition} ORDER BY id",
            values,
        )
        return tuple(Cause(CauseId(i), SurveyId(s), name, r) for i, s, name, r in found)

    # Findings

    def add_finding(self, finding: Finding) -> FindingId:
        """Record a finding under the next number of its survey."""
        (last,) = self._db.execute(
            "SELECT coalesce(max(rank), 0) FROM findings WHERE survey_id = ?", (finding.survey_id,)
        ).fetchone()
        values = {**_finding_values(finding), "rank": finding.rank or last + 1}
        return FindingId(insert(self._db, "findings", values))

    def change_finding(self, finding: Finding) -> None:
        """Record a finding anew; it keeps its number."""
        update(self._db, "findings", finding.id, _finding_values(finding))

    def remove_finding(self, finding_id: FindingId) -> None:
        """Take a finding out."""
        delete(self._db, "findings", finding_id)

    def finding(self, finding_id: FindingId) -> Finding:
        """One finding.

        Raises:
            JournalError: there is none of that number.
        """
        found = self._findings("id = ?", finding_id)
        if not found:
            raise JournalError(f"There is no finding number {finding_id}.")
        return found[0]

    def on_panel(self, panel_id: PanelId) -> tuple[Finding, ...]:
        """The findings on a panel, of every survey."""
        return self._findings("panel_id = ?", panel_id)

    def off_view(self, view_id: ViewId) -> None:
        """Let findings keep their panel where the view they had a spot on goes."""
        for (row,) in self._db.execute(
            "SELECT id FROM findings WHERE view_id = ?", (view_id,)
        ).fetchall():
            update(self._db, "findings", row, {"view_id": None, "x": None, "y": None})

    def _findings(self, condition: str, *values: int) -> tuple[Finding, ...]:
        found = self._db.execute(
            f"SELECT {_FINDING} FROM findings WHERE {condition} ORDER BY survey_id, rank, id",
            values,
        )
        return tuple(_finding(row) for row in found)


def _finding(row: Sequence[Any]) -> Finding:
    i, survey, text, severity, *rest = row
    *figures, panel, view, x, y, area, cause, note, rank = rest
    return Finding(
        id=FindingId(i),
        survey_id=SurveyId(survey),
        text=text,
        severity=Severity(severity),
        money=Three(*figures[:3]),
        minutes=Three(*figures[3:]),
        panel_id=None if panel is None else PanelId(panel),
        view_id=None if view is None else ViewId(view),
        x=x,
        y=y,
        area_id=None if area is None else AreaId(area),
        cause_id=None if cause is None else CauseId(cause),
        note=note,
        rank=rank,
    )


def _survey_values(survey: Survey) -> dict[str, Any]:
    return {
        "name": survey.name,
        **when_columns(survey.when),
        "ceiling": survey.ceiling,
        "ceiling_minutes": survey.ceiling_minutes,
        "seed": survey.seed,
        "note": survey.note,
        "closed": survey.closed,
    }


def _cause_values(cause: Cause) -> dict[str, Any]:
    strength = round(cause.strength, 3)
    return {"survey_id": cause.survey_id, "name": cause.name.strip(), "strength": strength}


def _finding_values(finding: Finding) -> dict[str, Any]:
    money, minutes = finding.money, finding.minutes
    return {
        "survey_id": finding.survey_id,
        "panel_id": finding.panel_id,
        "view_id": finding.view_id,
        "x": None if finding.x is None else round(finding.x, 2),
        "y": None if finding.y is None else round(finding.y, 2),
        "text": finding.text,
        "severity": finding.severity.value,
        "area_id": finding.area_id,
        "cause_id": finding.cause_id,
        "best": money.best,
        "likely": money.likely,
        "worst": money.worst,
        "best_minutes": minutes.best,
        "likely_minutes": minutes.likely,
        "worst_minutes": minutes.worst,
        "note": finding.note,
    }
