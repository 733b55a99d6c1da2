"""restoration-journal chart: a chart of what it cost, or of the hours."""

from dataclasses import asdict
from pathlib import Path

import click

from journal.actions.charts import ledger_chart, save_chart
from journal.actions.journals import open_journal
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, table, tell
from journal.domain.charts import Chart, ChartKind
from journal.domain.errors import JournalError
from journal.domain.price_index import InMoneyOf
from journal.domain.series import STEPS, Step


@click.command("chart")
@journal_argument
@click.argument("kind", type=click.Choice([kind.value for kind in ChartKind]))
@click.option("--each", type=click.Choice(STEPS), help="How long a bar over time is.")
@click.option(
    "--in-money-of",
    "period",
    help="A year, month or quarter (2024, 2024-07, 2024-Q3) by the price index in use.",
)
@click.option("--locale", default="en", help="How money and months are written: en, de_DE, nl.")
@click.option(
    "--out",
    type=click.Path(dir_okay=False, path_type=Path),
    help="Draw it into this file, FILE.svg or FILE.png.",
)
@json_option
def command(
    journal: Path,
    kind: str,
    each: Step | None,
    period: str | None,
    locale: str,
    out: Path | None,
    as_json: bool,
) -> None:
    """Read or draw a chart: what was spent, the hours, what a welded metre cost, what is proven.

    KIND is spend, hours, metre or proven. Without --out the bars are listed. With --json: an
    object with kind, title, subtitle, currency ("" where values are minutes), parts (key, label),
    bars (key, label, values in the order of the parts: whole minor units or minutes), remark and
    words, which say the whole chart; with --out also file.
    """
    wish = None if period is None else InMoneyOf(period)
    with open_journal(journal, read_only=True) as session:
        shown = ledger_chart(session, ChartKind(kind), step=each, wish=wish, locale=_known(locale))
        file = None if out is None else save_chart(session, shown, out)
    if as_json:
        answer(_plain(shown) | ({} if file is None else {"file": str(file)}))
    elif file is not None:
        tell(f"The chart is in {file}.")
    else:
        _show(shown)


def _plain(shown: Chart) -> dict[str, object]:
    return {
        "kind": shown.kind.value,
        "title": shown.title,
        "subtitle": shown.subtitle,
        "currency": shown.currency,
        "parts": [asdict(part) for part in shown.parts],
        "bars": [
            {"key": bar.key, "label": bar.label, "values": list(bar.values)} for bar in shown.bars
        ],
        "remark": shown.remark,
        "words": shown.words,
    }


def _show(shown: Chart) -> None:
    table(
        (shown.title, ""), ((bar.label, bar.said) for bar in shown.bars if any(bar.values)),
        right=frozenset({1}),
    )  # fmt: skip
    if shown.remark:
        tell(shown.remark)


def _known(locale: str) -> str:
    from babel import Locale, UnknownLocaleError

    try:
        Locale.parse(locale)
    except (UnknownLocaleError, ValueError, TypeError) as error:
        raise JournalError(
            f"“{locale[:20]}” is no locale; write for instance en or de_DE."
        ) from error
    return locale
