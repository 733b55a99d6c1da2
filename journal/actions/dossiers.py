"""The dossier: the document for a buyer, a valuer or the own shelf."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

from journal import __version__
from journal.actions import privacy
from journal.actions.claims import lost_photos
from journal.actions.session import Session
from journal.domain.charts import ChartKind
from journal.domain.costs import PRINTED_BY
from journal.domain.cuts import Choices, Cut, Part, check_choices, usual
from journal.domain.gaps import Gap, Reader
from journal.domain.privacy import Redacted, said_of
from journal.domain.private_words import Private
from journal.domain.progress import Context, Silent
from journal.domain.record import Record
from journal.domain.when import spoken
from journal.dossier.compose import Beside, compose
from journal.dossier.document import ChartShown, Dossier, DossierReport, Grid
from journal.dossier.gaps import gaps
from journal.dossier.story import in_order_of_time
from journal.dossier.tables import foreseen
from journal.ledger.books import Books
from journal.ledger.costs import cost_summary, cost_table
from journal.store.folder import refuse_own_place
from journal.store.record import record


def preview_dossier(session: Session, choices: Choices | None = None) -> Dossier:
    """What the dossier would say today, without setting a page."""
    return composed(session, choices or usual(Cut.OWN))[0]


def make_dossier(
    session: Session,
    out: Path,
    context: Context | None = None,
    choices: Choices | None = None,
) -> DossierReport:
    """Typeset the dossier as a PDF at ``out``, which appears whole or not at all.

    Without ``choices`` it holds everything.

    Raises:
        JournalError: ``out`` can't be written, or is a place of the journal's own files.
        Cancelled: the person asked to stop; what was at ``out`` stays.
    """
    # The typesetter is large and wanted for this act alone.
    from journal.dossier.typeset import write_pdf

    chosen = choices or usual(Cut.OWN)
    check_choices(chosen)
    refuse_own_place(session.folder, out)
    dossier, given = composed(session, chosen)
    copies = privacy.copies(session, given.record)
    report = write_pdf(dossier, copies, out, context or Silent(), given.finder)
    return replace(report, withheld=dossier.withheld)


def composed(session: Session, choices: Choices) -> tuple[Dossier, Redacted]:
    """What the dossier would say today, and the record that it says it of."""
    whole = record(session.journal)
    given = privacy.redacted(session, choices.withheld, whole)
    kept = given.record
    books = _books(kept)
    tables = tuple(cost_table(by, books) for by in PRINTED_BY)
    lacking = tuple(_lacking(session, whole, choices, given)) if choices.has(Part.GAPS) else ()
    beside = Beside(
        withheld=said_of(given, _covered(given)),
        charts=tuple(_charts(session, choices, given)),
        estimate=_foreseen(session, choices, given),
        lost=lost_photos(session, whole),
    )
    made = compose(
        kept, cost_summary(books), tables, lacking, date.today(), __version__, choices, beside
    )
    return made, given


def _lacking(session: Session, whole: Record, choices: Choices, given: Redacted) -> Iterator[Gap]:
    """The gaps of the record, told without what is withheld.

    They are looked for with the sums and the car's numbers in it: what is there and withheld is no
    gap, and a total that its lines don't make is one also where neither is named.
    """
    reader = {Cut.BUYER: Reader.BUYER, Cut.VALUER: Reader.VALUER}.get(choices.cut)
    kinds = choices.withheld - {Private.PRICES}
    named = given if kinds == choices.withheld else privacy.redacted(session, kinds, whole)
    car = replace(named.record.car, chassis_number=whole.car.chassis_number)
    text = given.text
    for gap in gaps(replace(named.record, car=car), reader):
        yield replace(gap, title=text(gap.title), detail=text(gap.detail), claim=text(gap.claim))


def _charts(session: Session, choices: Choices, given: Redacted) -> Iterator[ChartShown]:
    """Charts of money and hours; one whose words hold what is withheld is left out."""
    kinds = [ChartKind.SPEND, ChartKind.PROVEN] if _has_money(choices) else []
    if choices.has(Part.HOURS) and choices.cut is not Cut.BUYER:
        kinds.append(ChartKind.HOURS)
    if not kinds:
        return
    from journal.actions.charts import chart_svg, ledger_chart

    for kind in kinds:
        chart = ledger_chart(session, kind)
        said = [chart.subtitle, chart.remark, chart.words, *(part.label for part in chart.parts)]
        said += [text for bar in chart.bars for text in (bar.label, bar.said)]
        if not chart.is_empty and not any(given.finder.has(text) for text in said):
            yield ChartShown(chart.title, chart_svg(chart), chart.words)


def _has_money(choices: Choices) -> bool:
    return choices.has(Part.MONEY) and Private.PRICES not in choices.withheld


def _foreseen(session: Session, choices: Choices, given: Redacted) -> Grid | None:
    """The latest survey against the books, a closed one before one that is open."""
    found = session.journal.surveys.all() if choices.has(Part.ESTIMATE) else ()
    if not found:
        return None
    from journal.actions.surveys import outcome

    survey = max(found, key=lambda one: (one.closed is not None, one.when))
    held = outcome(session, survey.id)
    named = tuple(replace(row, name=given.text(row.name)) for row in held.areas)
    title = given.text(f"Expected by the survey “{survey.name}”, {spoken(survey.when)}")
    order = {area.id: n for n, area in enumerate(in_order_of_time(given.record), 1)}
    kept = {a: n for a, n in order.items() if not choices.areas or a in choices.areas}
    has_money = Private.PRICES not in choices.withheld
    currency = given.record.car.currency
    return foreseen(replace(held, areas=named), title, currency, kept, has_money=has_money)


def _covered(given: Redacted) -> int:
    return len({box.photo_id for box in given.record.boxes})


def _books(whole: Record) -> Books:
    return Books(
        currency=whole.car.currency,
        receipts=whole.receipts,
        work=whole.work,
        areas=whole.areas,
        milestones=whole.milestones,
    )
