"""What a welded metre cost, by repair area and in all."""

from collections.abc import Mapping

from journal.domain.ids import AreaId
from journal.domain.metre_costs import MetreCost, MetreCosts
from journal.ledger.pieces import Account


def metre_costs(account: Account, welded_mm: Mapping[AreaId, float]) -> MetreCosts:
    """Money and hours of the repair areas that have a welded seam, for each metre of it.

    ``welded_mm`` are millimetres welded by area; each area's are counted in whole millimetres.
    """
    rows = []
    for area in account.books.areas:
        millimetres = round(welded_mm.get(area.id, 0.0))
        if millimetres > 0:
            money = sum(account.area_money.get(area.id, ()))
            minutes = sum(account.area_minutes.get(area.id, ()))
            rows.append(MetreCost(area.id, area.name, millimetres, money, minutes))
    total = MetreCost(
        None,
        "all areas with a welded seam",
        sum(row.welded_mm for row in rows),
        sum(row.money for row in rows),
        sum(row.minutes for row in rows),
    )
    everything = sum(paid.money + (paid.difference or 0) for paid in account.paid)
    return MetreCosts(account.books.currency, tuple(rows), total, everything - total.money)
