"""restoration-journal panel: everything ever done to a panel."""

from pathlib import Path
from typing import Any

import click

from journal.actions.drawings import find_panel
from journal.actions.journals import open_journal
from journal.actions.panels import Event, PanelHistory, history
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, plain, put
from journal.domain.when import spoken


@click.command("panel")
@journal_argument
@click.argument("name")
@json_option
def command(journal: Path, name: str, as_json: bool) -> None:
    """Read everything ever done to the panel NAME ("Sill, left"), in order of date.

    With --json: a list of objects with date (EDTF), earliest and latest (ISO 8601), kind (photos,
    stage, receipt, work or entry), title, detail and id (of the photo, repair area, receipt, work
    or entry).
    """
    with open_journal(journal, read_only=True) as session:
        story = history(session, find_panel(session, name).id)
    if as_json:
        answer([_row(event) for event in story.events])
        return
    put(_heading(story))
    for event in story.events:
        date = spoken(event.when) if event.when else "undated"
        detail = f": {event.detail}" if event.detail else ""
        put(f"  {date:<26} {event.title}{detail}")
    if not story.events:
        put("  Nothing is recorded of it yet.")


def _heading(story: PanelHistory) -> str:
    stages = ", ".join(f"{a.name}: {a.stage or 'no stage'}" for a in story.areas)
    return f"{story.panel.label} ({story.panel.system.value})" + (f" · {stages}" if stages else "")


def _row(event: Event) -> dict[str, Any]:
    when = event.when
    return plain(
        {
            "date": when.edtf if when else None,
            "earliest": when.earliest.isoformat() if when else None,
            "latest": when.latest.isoformat() if when else None,
            "kind": event.kind,
            "title": event.title,
            "detail": event.detail,
            "id": event.id,
        }
    )
