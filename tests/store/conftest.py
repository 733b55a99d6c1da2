from collections.abc import Iterator
from pathlib import Path

import pytest

from journal.store.folder import make
from journal.store.journal import Journal
from tests.store.values import CAR, DRAWING


@pytest.fixture
def journal(tmp_path: Path) -> Iterator[Journal]:
    with make(tmp_path / "Halden Rook", CAR, DRAWING) as made:
        yield made
