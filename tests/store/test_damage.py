"""A journal whose database is damaged, held by another program, or was never finished."""

import random
import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing, suppress
from pathlib import Path

import pytest

from journal.domain.errors import JournalError
from journal.domain.ids import PhotoId
from journal.domain.progress import Silent
from journal.store import folder as store
from journal.store import migrations
from journal.store.checking import check
from journal.store.connection import create
from journal.store.edits import rows
from journal.store.journal import Journal
from journal.store.record import record
from tests.store.values import CAR, DRAWING, SILL, keep, receipt

_PAGE = 4096


def caption(journal: Journal) -> None:
    with journal.edit("Caption 1 photo"):
        journal.photos.set_caption(PhotoId(1), "words")


ACTS: tuple[Callable[[Journal], object], ...] = (
    record,
    caption,
    Journal.undo,
    lambda journal: journal.photos.all(),
    lambda journal: journal.search.find("sill", 9),
    lambda journal: rows(journal.db, 99),
)


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("damage") / "Rook"
    with store.make(folder, CAR, DRAWING) as journal:
        keep(journal, *range(40))
        with journal.edit("Fill"):
            for _ in range(40):
                journal.areas.add("Sill", [SILL], "holed " * 40)
                journal.receipts.add(receipt())
    return folder


@pytest.fixture
def filled(written: Path, tmp_path: Path) -> Path:
    return Path(shutil.copytree(written, tmp_path / "Rook"))


@pytest.mark.parametrize("seed", range(24))
def test_a_damaged_page_is_told_in_words_whatever_is_done(filled: Path, seed: int) -> None:
    chance = random.Random(seed)
    path = filled / "journal.db"
    whole = bytearray(path.read_bytes())
    start = chance.randrange(1, len(whole) // _PAGE) * _PAGE
    whole[start : start + _PAGE] = chance.choice([bytes(_PAGE), chance.randbytes(_PAGE)])
    path.write_bytes(whole)
    with suppress(JournalError), store.open_folder(filled) as journal:
        for act in ACTS:
            with suppress(JournalError):
                act(journal)
        with suppress(JournalError):
            assert check(journal, Silent()).faults


def test_a_held_database_is_not_called_damaged(
    filled: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    connect = sqlite3.connect
    monkeypatch.setattr(
        sqlite3, "connect", lambda *args, **named: connect(*args, **{**named, "timeout": 0})
    )
    with closing(sqlite3.connect(filled / "journal.db")) as other:
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(JournalError, match="another program holds"):
            store.open_folder(filled)
    with store.open_folder(filled) as journal, closing(connect(filled / "journal.db")) as other:
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(JournalError, match="another program holds"):
            journal.photos.count()
        with pytest.raises(JournalError, match="another program holds"):
            caption(journal)


@pytest.mark.parametrize("with_tables", [True, False])
def test_a_journal_that_was_never_finished_is_named(tmp_path: Path, with_tables: bool) -> None:
    with closing(create(tmp_path / "journal.db")) as db:
        if with_tables:
            migrations.migrate(db)
    with pytest.raises(JournalError, match="never finished"):
        store.open_folder(tmp_path)


def test_a_journal_that_cannot_be_made_leaves_nothing_in_the_way(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_db: sqlite3.Connection) -> None:
        raise sqlite3.OperationalError("database or disk is full")

    folder = tmp_path / "Rook"
    with monkeypatch.context() as patch:
        patch.setattr(migrations, "migrate", full)
        with pytest.raises(JournalError, match="no space left"):
            store.make(folder, CAR, DRAWING)
    with store.make(folder, CAR, DRAWING) as journal:
        assert journal.car.get() == CAR


def test_a_migration_on_a_full_disk_is_told_and_lets_go_of_the_lock(
    filled: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_db: sqlite3.Connection, _folder: Path) -> Path:
        raise sqlite3.OperationalError("database or disk is full")

    with monkeypatch.context() as patch:
        patch.setattr(migrations, "SCHEMA_VERSION", migrations.SCHEMA_VERSION + 1)
        patch.setattr(migrations, "back_up_before_migration", full)
        with pytest.raises(JournalError, match="no space left"):
            store.open_folder(filled)
    with store.open_folder(filled) as journal:
        assert not journal.read_only
