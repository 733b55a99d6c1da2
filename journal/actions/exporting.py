"""Taking the record out as tables that any spreadsheet opens."""

from pathlib import Path

from journal.actions.session import Session
from journal.domain.errors import JournalError
from journal.files.durable import make_folder, write_atomically
from journal.store.folder import refuse_inside
from journal.store.record import record


def export_tables(session: Session, folder: Path) -> tuple[Path, ...]:
    """Write the record into a folder as CSV files, one XLSX workbook and one JSON document.

    Files of the same names are replaced; each appears whole or not at all.

    Raises:
        JournalError: the folder can't be written to, or lies inside the journal.
    """
    # Sheets bring a workbook library along, wanted for this act alone.
    from journal.ledger.sheets import as_csv, as_json, as_xlsx, sheets

    refuse_inside(session.folder, folder)
    tables = sheets(record(session.journal))
    files = {f"{sheet.name}.csv": as_csv(sheet) for sheet in tables}
    files |= {"journal.xlsx": as_xlsx(tables), "journal.json": as_json(tables)}
    try:
        make_folder(folder)
        for name, data in files.items():
            write_atomically(folder / name, data)
    except OSError as error:
        raise JournalError(
            f"The tables can't be written to “{folder}”: {error.strerror or error}."
        ) from error
    return tuple(folder / name for name in files)
