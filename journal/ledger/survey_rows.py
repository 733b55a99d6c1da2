"""Surveys and findings as rows of tables; money in whole units with decimals, time in minutes."""

from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import Any

from journal.domain.ids import AreaId
from journal.domain.money import minor_units
from journal.domain.record import Record

SURVEYS = ("id", "name", "date", "ceiling", "currency", "ceiling minutes", "seed", "closed", "note")
FINDINGS = (
    "survey id", "number", "panel", "view", "x", "y", "text", "severity", "best", "likely", "worst",
    "currency", "best minutes", "likely minutes", "worst minutes", "area", "cause", "strength",
    "note",
)  # fmt: skip


def survey_rows(record: Record) -> Iterator[tuple[Any, ...]]:
    """One row a survey."""
    currency = record.car.currency
    for sheet in record.surveys:
        one = sheet.survey
        ceiling = None if one.ceiling is None else _money(one.ceiling, currency)
        yield (
            one.id, one.name, one.when.edtf, ceiling, currency, one.ceiling_minutes, one.seed,
            one.closed, one.note,
        )  # fmt: skip


def finding_rows(
    record: Record, areas: Mapping[AreaId, str], labels: Mapping[Any, str]
) -> Iterator[tuple[Any, ...]]:
    """One row a finding, survey by survey."""
    currency = record.car.currency
    views = {view.id: view.name for view in record.drawing.views}
    for sheet in record.surveys:
        for one in sheet.findings:
            cause, money, time = sheet.cause_of(one), one.money, one.minutes
            yield (
                sheet.survey.id, one.rank, labels.get(one.panel_id),
                None if one.view_id is None else views.get(one.view_id), _number(one.x),
                _number(one.y), one.text, one.severity.value, _money(money.best, currency),
                _money(money.likely, currency), _money(money.worst, currency), currency,
                time.best, time.likely, time.worst,
                None if one.area_id is None else areas.get(one.area_id),
                cause.name if cause else None, _number(cause.strength) if cause else None, one.note,
            )  # fmt: skip


def _money(minor: int, currency: str) -> Decimal:
    return Decimal(minor).scaleb(-minor_units(currency))


def _number(value: float | None) -> Decimal | None:
    return None if value is None else Decimal(str(round(value, 3)))
