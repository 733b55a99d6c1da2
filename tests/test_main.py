"""One command: the window where nothing else is asked for."""

import subprocess
import sys
from pathlib import Path

import pytest

import journal
from journal.__main__ import asks_for_window, has_display, main


def test_nothing_asked_for_is_the_window(tmp_path: Path) -> None:
    assert asks_for_window([])


def test_the_folder_of_a_journal_is_the_window(tmp_path: Path) -> None:
    assert not asks_for_window([str(tmp_path)])
    (tmp_path / "journal.db").touch()
    assert asks_for_window([str(tmp_path)])
    assert not asks_for_window(["costs", str(tmp_path)])


def test_any_option_or_command_is_no_window() -> None:
    for words in (["--help"], ["--version"], ["costs"], [""], ["\0"]):
        assert not asks_for_window(words)


def test_without_a_display_it_says_so_and_how_to_go_on(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(sys, "platform", "linux")
    assert not has_display()
    with pytest.raises(SystemExit, match="no display"):
        main([])


@pytest.mark.parametrize("platform", ["win32", "darwin"])
def test_other_desktops_always_have_a_display(
    platform: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "platform", platform)
    assert has_display()


def test_it_runs_as_a_module() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "journal", "--version"], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert journal.__version__ in done.stdout
