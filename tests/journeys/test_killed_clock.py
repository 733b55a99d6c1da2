"""The program killed while somebody is clocked on, and while it clocks on and off."""

import random
import subprocess
import sys
import time
from pathlib import Path

from journal.actions import clockings, hours
from journal.actions.checking import check
from journal.actions.journals import new_journal, open_journal
from journal.domain.car import Car
from journal.domain.work import WorkBasis

SCRIPT = Path(__file__).with_name("clocking_in_a_process.py")
ROUNDS = 2


def _told_until_killed(journal: Path, chance: random.Random) -> list[str]:
    """What a process told before it was killed somewhere in or after its next few acts."""
    process = subprocess.Popen(
        [sys.executable, str(SCRIPT), str(journal)], stdout=subprocess.PIPE, text=True
    )
    assert process.stdout
    lines = [process.stdout.readline() for _ in range(chance.randrange(1, 6))]
    time.sleep(chance.uniform(0, 0.03))
    process.kill()
    lines += process.stdout.readlines()
    process.wait()
    process.stdout.close()
    return [line.strip() for line in lines if line.endswith("\n")]


def test_a_clock_survives_the_program_and_is_never_half_stopped(tmp_path: Path) -> None:
    chance = random.Random(5)
    journal = tmp_path / "Halden Rook"
    new_journal(journal, Car("Halden Rook")).close()
    for _ in range(ROUNDS):
        last, number = _told_until_killed(journal, chance)[-1].split()
        with open_journal(journal) as session:
            assert not session.read_only, session.notice
            runs = {run.id: run for run in session.journal.clockings.all()}
            told = runs[int(number)]  # type: ignore[index]
            # What was told holds, or the next act was done but not told any more.
            if last == "off":
                assert told.stopped is not None
            for run in runs.values():
                assert (run.stopped is None) == (run.work_id is None)
            recorded = {work.id for work in hours.work(session)}
            assert {run.work_id for run in runs.values() if run.stopped} == recorded
            assert all(work.basis is WorkBasis.CLOCKED for work in hours.work(session))
            assert len(clockings.running(session)) <= 1
            if last == "on" and told.stopped is None:
                (running,) = clockings.running(session)
                assert running == told
        assert check(journal).faults == ()
    with open_journal(journal) as session:
        if not clockings.running(session):
            clockings.clock_on(session, "Runa")
        before = len(hours.work(session))
        clockings.clock_off(session, clockings.running(session)[0])
        assert len(hours.work(session)) > before
