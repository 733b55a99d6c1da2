from collections.abc import Iterator
from pathlib import Path

import pytest

from journal.actions.journals import new_journal
from journal.actions.session import Session
from journal.domain.car import Car


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    with new_journal(tmp_path / "Halden Rook", Car("Halden Rook")) as made:
        yield made
