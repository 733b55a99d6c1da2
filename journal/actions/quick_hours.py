"""Hours recorded from one line of words."""

from datetime import date

from journal.actions.areas import areas
from journal.actions.drawings import panels
from journal.actions.hours import people, refuse_impossible
from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.hours import spoken_hours
from journal.domain.quick_work import WorkLine, read_work_line


def understand_hours(session: Session, text: str, me: str, today: date) -> WorkLine:
    """What a line like "3h weld sill left with Nils yesterday" says, before it is recorded.

    Raises:
        JournalError: there is no time worked in it, or nobody who worked.
    """
    labels = {panel.id: panel.label for panel in panels(session)}
    words = {
        area.id: " ".join([area.name, *(labels.get(panel, "") for panel in area.panel_ids)])
        for area in areas(session)
    }
    return read_work_line(text, today, me, people(session), words)


def record_hours(session: Session, line: WorkLine) -> Changes:
    """Record what a line says, one record a person, as one edit."""
    records = line.work()
    for work in records:
        refuse_impossible(work)
    who = " and ".join(line.people)
    with session.journal.edit(f"Record {spoken_hours(line.minutes)} by {who}") as edit:
        made = [session.journal.work.add(work) for work in records]
    return edit.changes(made[0])
