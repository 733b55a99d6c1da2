"""Imports point downwards only, and never in a circle."""

import tomllib
from pathlib import Path
from typing import Any

import grimp
import pytest
from importlinter.cli import EXIT_STATUS_SUCCESS, lint_imports

ROOT = Path(__file__).resolve().parent.parent
PACKAGES = {
    f"journal.{folder.name}" for folder in (ROOT / "journal").iterdir() if any(folder.glob("*.py"))
}


def contracts() -> list[dict[str, Any]]:
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    kept: list[dict[str, Any]] = settings["tool"]["importlinter"]["contracts"]
    return kept


def test_every_import_contract_is_kept(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.syspath_prepend(str(ROOT))
    status = lint_imports(config_filename=str(ROOT / "pyproject.toml"), no_cache=True)
    assert status == EXIT_STATUS_SUCCESS, capsys.readouterr().out


@pytest.mark.parametrize(
    ("name", "excused"),
    [
        ("Qt is in the window alone", {"journal.desktop"}),
        ("SQL is in the store alone", {"journal.store"}),
    ],
)
def test_a_contract_names_every_package_but_the_one_excused(name: str, excused: set[str]) -> None:
    """A contract guards what it names: a new package must be named too."""
    (contract,) = [one for one in contracts() if one["name"] == name]
    assert set(contract["source_modules"]) == PACKAGES - excused


def circles(imports: dict[str, set[str]]) -> set[str]:
    """What is left when all that import nothing of the rest, or are not imported, are taken away.

    That is the modules of the circles, and of the ways from one circle to another.
    """
    left = dict(imports)
    while True:
        wanted = set().union(*left.values())
        kept = {module for module, imported in left.items() if imported & left.keys()} & wanted
        if len(kept) == len(left):
            return kept
        left = {module: left[module] & kept for module in kept}


def test_no_module_imports_itself_by_a_detour() -> None:
    graph = grimp.build_graph("journal", exclude_type_checking_imports=True, cache_dir=None)
    imports = {
        module: set(graph.find_modules_directly_imported_by(module)) for module in graph.modules
    }
    assert len(imports) > 50
    assert circles(imports) == set()


def test_a_planted_circle_is_found() -> None:
    assert circles({"a": {"b"}, "b": {"c"}, "c": {"a"}, "d": {"a"}, "e": set()}) == {"a", "b", "c"}
    assert circles({"a": {"b"}, "b": set()}) == set()
