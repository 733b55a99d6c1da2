"""The Library of Congress's conformance suite for BagIt: each bag judged as its folder says."""

from pathlib import Path

import pytest

from journal.domain.bags import BagRefusedError
from journal.domain.progress import Silent
from journal.dossier.bag_check import Bag, check_bag
from journal.dossier.bag_sources import opened

SUITE = Path(__file__).resolve().parents[3] / "shared" / "corpus" / "bagit"
BAGS = sorted(path for path in SUITE.glob("v*/*/*") if path.is_dir())


def bags(*kinds: str) -> list[object]:
    found = [path for path in BAGS if path.parent.name in kinds]
    names = [path.relative_to(SUITE).as_posix() for path in found]
    reason = "the BagIt conformance suite is not at ../shared/corpus/bagit"
    missing = pytest.param(None, marks=pytest.mark.skip(reason=reason), id="no suite")
    return [pytest.param(p, id=n) for p, n in zip(found, names, strict=True)] or [missing]


def judged(path: Path) -> Bag:
    with opened(path) as source:
        return check_bag(source, Silent())


@pytest.mark.parametrize("path", bags("valid"))
def test_every_valid_bag_is_accepted(path: Path) -> None:
    assert judged(path).faults == []


@pytest.mark.parametrize("path", bags("warning"))
def test_every_bag_that_deserves_a_warning_gets_one_and_no_more(path: Path) -> None:
    bag = judged(path)
    assert bag.faults == []
    assert bag.warnings


# Paths of Windows are refused on every system, and so are those of Linux: a bag travels.
@pytest.mark.parametrize("path", bags("invalid", "linux-only", "windows-only"))
def test_every_invalid_bag_is_refused_with_a_reason(path: Path) -> None:
    reasons = faults_of(path)
    assert reasons
    assert all(reason.endswith(".") for reason in reasons)


def faults_of(path: Path) -> list[str]:
    try:
        return [fault.what for fault in judged(path).faults]
    except BagRefusedError as error:
        return [str(error)]
