"""Clocks on and off in a journal again and again, telling of each the moment it is done.

Run by test_killed_clock: python clocking_in_a_process.py JOURNAL
"""

import sys
from datetime import timedelta
from pathlib import Path

from journal.actions import clockings
from journal.actions.journals import open_journal


def tell(*words: object) -> None:
    """Say it at once: the next moment may be the last."""
    sys.stdout.write(" ".join(map(str, words)) + "\n")
    sys.stdout.flush()


with open_journal(Path(sys.argv[1])) as session:
    assert not session.read_only, session.notice
    while True:
        running = clockings.running(session)
        if running:
            tell("off", clockings.clock_off(session, running[0]).made)
        else:
            started = clockings.now() - timedelta(hours=2)
            tell("on", clockings.clock_on(session, "Runa", started=started).made)
