"""Edits: one transaction, an append-only log, undo and redo."""

import hashlib
import json
import sqlite3
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from journal.domain.car import MilestoneKind
from journal.domain.errors import JournalError, UndoRefusedError
from journal.domain.ids import EditId, PhotoId
from journal.domain.photos import Basis, Role
from journal.domain.receipts import Share
from journal.domain.when import When
from journal.store import edits
from journal.store.folder import make
from journal.store.journal import Journal
from journal.store.tables import RECORDED
from tests.store.values import (
    CAR,
    DAY,
    DRAWING,
    ROOF,
    SILL,
    WING,
    content,
    keep,
    new_photo,
    receipt,
    work,
)


def dump(journal: Journal) -> dict[str, list[tuple[object, ...]]]:
    return {
        table: journal.db.execute(f"SELECT * FROM {table} ORDER BY id").fetchall()
        for table in RECORDED
    }


def test_a_write_outside_an_edit_is_refused_by_the_database(journal: Journal) -> None:
    for statement in (
        "UPDATE car SET title = 'x'",
        "DELETE FROM panels",
        "INSERT INTO milestones VALUES (1, 'acquired', '2016', '2016', '2016', '')",
    ):
        with pytest.raises(sqlite3.IntegrityError, match="inside an edit"):
            journal.db.execute(statement)


def test_the_log_is_never_rewritten(journal: Journal) -> None:
    for statement in (
        "UPDATE edits SET label = 'x'",
        "DELETE FROM edits",
        "UPDATE changes SET after = NULL",
        "DELETE FROM changes",
        "INSERT INTO changes (edit_id, tbl, row, op) VALUES (1, 'car', 1, 'update')",
    ):
        with pytest.raises(sqlite3.IntegrityError):
            journal.db.execute(statement)


def test_an_edit_that_fails_leaves_nothing(journal: Journal) -> None:
    before = dump(journal)
    with pytest.raises(JournalError), journal.edit("Half done"):
        journal.areas.remove(journal.areas.add("Sill", [SILL], "holes") + 1)
    assert dump(journal) == before
    assert journal.undo_label() is None
    with journal.edit("Whole"):
        journal.areas.add("Sill", [SILL], "holes")


def test_an_edit_that_changes_nothing_is_not_logged(journal: Journal) -> None:
    with journal.edit("Same again") as edit:
        journal.car.change(CAR)
    assert edit.empty
    assert edit.changes().edit_id is None
    assert [row.label for row in edits.rows(journal.db, 10)] == ["New journal"]


def test_changes_name_what_to_read_again(journal: Journal) -> None:
    with journal.edit("Mark the sill") as edit:
        made = journal.areas.add("Sill", [SILL], "holes")
    changes = edit.changes(made)
    assert changes.kinds == {"areas"}
    assert changes.made == made
    assert changes.label == "Mark the sill"


def test_undo_and_redo_walk_the_acts_by_name(journal: Journal) -> None:
    with journal.edit("First"):
        journal.areas.add("One", [SILL], "")
    with journal.edit("Second"):
        journal.areas.add("Two", [WING], "")
    assert journal.undo_label() == "Second"
    assert journal.undo().label == "Undo: Second"
    assert journal.undo_label() == "First"
    journal.undo()
    assert journal.undo_label() is None
    assert journal.redo_label() == "First"
    journal.redo()
    assert journal.redo_label() == "Second"
    journal.redo()
    assert journal.redo_label() is None
    assert [area.name for area in journal.areas.all()] == ["One", "Two"]
    journal.undo()
    with journal.edit("Third"):
        journal.areas.add("Three", [ROOF], "")
    assert journal.redo_label() is None
    with pytest.raises(JournalError, match="nothing to redo"):
        journal.redo()


def test_the_new_journal_itself_is_not_undone(journal: Journal) -> None:
    with pytest.raises(JournalError, match="nothing to undo"):
        journal.undo()


def test_edits_of_one_act_are_undone_together(journal: Journal) -> None:
    with journal.edit("Add photos") as first:
        journal.areas.add("One", [SILL], "")
    with journal.edit("Add photos", act=first.act):
        journal.areas.add("Two", [WING], "")
    journal.undo()
    assert journal.areas.all() == ()
    journal.redo()
    assert len(journal.areas.all()) == 2


def test_an_act_of_many_edits_is_named_by_what_they_came_to(journal: Journal) -> None:
    with journal.edit("Add 50 photos") as first:
        journal.areas.add("One", [SILL], "")
    for label in ("Add 50 photos", "Add 1 photo", "Date 3 photos by neighbours"):
        with journal.edit(label, act=first.act):
            journal.areas.add(label, [WING], "")
    assert journal.undo_label() == "Add 101 photos"


def test_what_was_done_while_an_act_went_on_is_undone_before_it(journal: Journal) -> None:
    (one,) = keep(journal, 1)
    adding = edits.rows(journal.db, 1)[0].act
    with journal.edit("Pin 1 photo"):
        journal.pins.put(PhotoId(one), SILL, None, None, None)
    (more,) = _keep_as_part_of(journal, adding, 2)
    journal.undo()
    assert journal.pins.all() == ()
    assert len(journal.photos.all()) == 2
    journal.undo()
    assert journal.photos.all() == ()
    journal.redo()
    journal.redo()
    assert [pin.photo_id for pin in journal.pins.all()] == [one]
    assert more in [photo.id for photo in journal.photos.all()]


def _keep_as_part_of(journal: Journal, act: EditId, number: int) -> list[PhotoId]:
    path = journal.staging / f"{number}.part"
    path.write_bytes(content(number))
    journal.settle([(path, new_photo(number))])
    with journal.edit("Add 1 photo", act):
        return journal.photos.add([new_photo(number)])


def test_undo_is_refused_when_the_row_changed_since(journal: Journal) -> None:
    with journal.edit("Mark the sill"):
        area = journal.areas.add("Sill", [SILL], "holes")
    with journal.edit("Say more") as later:
        journal.areas.change(replace(journal.areas.get(area), found="more holes"))
    before = dump(journal)
    with pytest.raises(UndoRefusedError, match="changed since"), journal.edit("By hand"):
        edits.revert(journal.db, [later.id - 1])
    assert dump(journal) == before


def test_undo_is_refused_when_something_newer_depends_on_it(journal: Journal) -> None:
    with journal.edit("Mark the sill") as first:
        area = journal.areas.add("Sill", [SILL], "holes")
    with journal.edit("Hours"):
        journal.work.add(work(area))
    before = dump(journal)
    with pytest.raises(UndoRefusedError, match="depends on it"):
        journal._revert("Undo: Mark the sill", "undo", first.act, [first.id])
    assert dump(journal) == before


def test_the_chain_is_the_running_sha256_that_anybody_can_recompute(journal: Journal) -> None:
    keep(journal, 1, 2)
    previous = ""
    for head in journal.db.execute("SELECT id, act, label, made, kind, target, digest FROM edits"):
        total = hashlib.sha256(previous.encode())
        total.update(json.dumps(head[:-1], ensure_ascii=False).encode())
        for row in journal.db.execute(
            "SELECT tbl, row, op, before, after FROM changes WHERE edit_id = ? ORDER BY id",
            head[:1],
        ):
            total.update(json.dumps(row, ensure_ascii=False).encode())
        assert head[-1] == total.hexdigest()
        previous = head[-1]


ACTS: dict[str, Callable[[Journal, int], object]] = {
    "milestone": lambda j, n: j.car.add_milestone(
        MilestoneKind.PAINTED, When.on(date(2017, 1, 1 + n)), ""
    ),
    "caption": lambda j, n: j.photos.set_caption(1 + n % 3, f'caption {n} ‘’ " \\ €'),
    "date": lambda j, n: j.photos.set_when(1 + n % 3, DAY, Basis.OWNER, None),
    "turn": lambda j, n: j.photos.set_turn(1 + n % 3, 90 * n),
    "remove": lambda j, n: j.photos.set_removed(1 + n % 3, removed=bool(n % 2)),
    "pin": lambda j, n: j.pins.put(1 + n % 3, SILL, None, (n / 3, n / 7), None),
    "unpin": lambda j, n: j.pins.take(1 + n % 3, None),
    "area": lambda j, n: j.areas.add(f"Area {n}", [SILL, WING][: 1 + n % 2], "x"),
    "change area": lambda j, n: j.areas.change(
        replace(j.areas.get(1), panel_ids=[(SILL,), (WING, ROOF), ()][n % 3], cautions=("welding",))
    ),
    "stage": lambda j, n: j.areas.add_stage_change(1, "welded", DAY, f"note {n}"),
    "choose": lambda j, n: j.areas.choose_photo(1, 1 + n % 3, list(Role)[n % 3]),
    "receipt": lambda j, n: j.receipts.add(receipt(Share(1, 2))),
    "change receipt": lambda j, n: j.receipts.change(
        replace(j.receipts.get(1), lines=j.receipts.get(1).lines[n % 2 :], note=f"{n}")
    ),
    "work": lambda j, n: j.work.add(work(1)),
    "remove area": lambda j, n: j.areas.remove(1),
}


@pytest.fixture(scope="module")
def busy(tmp_path_factory: pytest.TempPathFactory) -> Journal:
    journal = make(tmp_path_factory.mktemp("busy") / "Rook", CAR, DRAWING)
    keep(journal, 1, 2, 3)
    with journal.edit("Begin"):
        area = journal.areas.add("Sill", [SILL], "holes")
        journal.receipts.add(receipt(Share(area, 1)))
    return journal


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(acts=st.lists(st.tuples(st.sampled_from(sorted(ACTS)), st.integers(0, 9)), max_size=6))
def test_undoing_every_act_brings_back_the_same_rows(
    busy: Journal, acts: list[tuple[str, int]]
) -> None:
    states = [dump(busy)]
    for name, number in acts:
        try:
            with busy.edit(name) as edit:
                ACTS[name](busy, number)
        except JournalError:  # the area or receipt is gone by now
            continue
        if not edit.empty:
            states.append(dump(busy))
    for state in reversed(states[:-1]):
        busy.undo()
        assert dump(busy) == state
    for state in states[1:]:
        busy.redo()
        assert dump(busy) == state
    for _ in states[1:]:
        busy.undo()
    assert dump(busy) == states[0]
    assert list(edits.walk_chain(busy.db)) == []
    assert list(edits.differences(busy.db)) == []


def test_edits_from_two_threads_wait_for_each_other(journal: Journal, tmp_path: Path) -> None:
    import threading

    def mark(number: int) -> None:
        for turn in range(5):
            with journal.edit(f"{number}.{turn}"):
                journal.areas.add(f"{number}.{turn}", [SILL], "")

    threads = [threading.Thread(target=mark, args=(number,)) for number in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(journal.areas.all()) == 20
    assert list(edits.walk_chain(journal.db)) == []
