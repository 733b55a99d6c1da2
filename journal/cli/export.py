"""restoration-journal export: the record as tables."""

from pathlib import Path

import click

from journal.actions.exporting import export_tables
from journal.actions.journals import open_journal
from journal.cli.options import journal_argument
from journal.cli.output import tell


@click.command("export")
@journal_argument
@click.option(
    "--out", type=click.Path(path_type=Path), required=True, help="The folder to write into."
)
def command(journal: Path, out: Path) -> None:
    """Write the record of JOURNAL as tables: CSV files, one XLSX workbook, one JSON document.

    Receipts, lines, work, areas, stages, entries, milestones and photos. Dates are EDTF, money has
    decimals, and texts that a spreadsheet would run as formulas are disarmed.
    """
    with open_journal(journal, read_only=True) as session:
        written = export_tables(session, out)
    tell(f"{len(written)} files are in {out}.")
