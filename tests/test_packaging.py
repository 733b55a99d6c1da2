"""Starting from a checkout, and what desktops and shops of programs read of it."""

import importlib.util
import re
import shutil
import subprocess
import sys
import tomllib
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from configparser import ConfigParser
from pathlib import Path
from types import ModuleType

import pytest

import journal

ROOT = Path(__file__).resolve().parent.parent
PACKAGING = ROOT / "packaging"
ID = "org.restoration_journal.RestorationJournal"
DESKTOP = PACKAGING / f"{ID}.desktop"
METAINFO = PACKAGING / f"{ID}.metainfo.xml"


def script(name: str) -> ModuleType:
    spec = importlib.util.spec_from_file_location(name, PACKAGING / f"{name}.py")
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    sys.modules[name] = module
    spec.loader.exec_module(module)
    return module


@pytest.fixture
def setup_env() -> Iterator[ModuleType]:
    yield script("setup_env")
    sys.modules.pop("setup_env", None)


@pytest.fixture
def start(setup_env: ModuleType) -> Iterator[ModuleType]:
    yield script("start")
    sys.modules.pop("start", None)


@pytest.fixture
def check(setup_env: ModuleType) -> Iterator[ModuleType]:
    yield script("check")
    sys.modules.pop("check", None)


def tool(name: str) -> str:
    found = shutil.which(name)
    if found is None:
        pytest.skip(f"{name} is not installed here")
    return found


def test_the_desktop_entry_is_valid() -> None:
    done = subprocess.run(
        [tool("desktop-file-validate"), DESKTOP], capture_output=True, text=True, check=False
    )
    assert (done.returncode, done.stdout + done.stderr) == (0, "")


def test_the_metainfo_is_valid() -> None:
    command = [tool("appstreamcli"), "validate", "--no-net", METAINFO]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout


def test_the_desktop_entry_starts_the_command_that_is_installed() -> None:
    entry = ConfigParser(interpolation=None)
    entry.optionxform = str  # type: ignore[assignment,method-assign]
    entry.read(DESKTOP, "utf-8")
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    assert entry["Desktop Entry"]["Exec"] in project["scripts"]
    assert entry["Desktop Entry"]["Icon"] == ID


def test_the_metainfo_names_the_desktop_entry_the_licence_and_the_version() -> None:
    tree = ET.parse(METAINFO)
    assert tree.findtext("id") == ID
    assert tree.findtext("launchable") == DESKTOP.name
    assert tree.findtext("project_license") == "MIT"
    releases = [release.get("version") for release in tree.iter("release")]
    assert releases[0] == journal.__version__


def test_the_changelog_opens_with_the_safety_of_records() -> None:
    headings = re.findall(r"^## (.+)$", (PACKAGING / "CHANGELOG.md").read_text("utf-8"), re.M)
    assert headings[0] == "Safety of your records"


@pytest.mark.parametrize("name", ["start", "check", "setup_env"])
def test_scripts_need_nothing_but_python(name: str) -> None:
    code = (
        f"import sys; sys.path.insert(0, {str(PACKAGING)!r}); import {name};"
        "print([m for m in sys.modules if m.split('.')[0] not in sys.stdlib_module_names"
        " and m not in ('__main__', 'start', 'check', 'setup_env')])"
    )
    # -I and -S: no installed package can be seen.
    done = subprocess.run(
        [sys.executable, "-I", "-S", "-c", code], capture_output=True, text=True, check=False
    )
    assert (done.stdout.strip(), done.stderr) == ("[]", "")


@pytest.mark.parametrize("name", ["start", "check"])
def test_an_older_python_is_told_so_in_one_sentence(name: str) -> None:
    code = (
        "import runpy, sys; sys.version_info = (3, 9, 2);"
        f"runpy.run_path({str(PACKAGING / name)!r} + '.py', run_name='__main__')"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert done.stderr == "Restoration Journal needs Python 3.11 or newer; this is 3.9.\n"


def test_words_after_the_dashes_go_to_the_command(start: ModuleType) -> None:
    options, command = start.split(["--", "find", "J", "--json", "--", "sill"])
    assert not options.no_window
    assert command == ["find", "J", "--json", "--", "sill"]
    options, command = start.split(["--no-window"])
    assert options.no_window
    assert command == []


def test_an_unknown_option_is_refused(
    start: ModuleType, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit):
        start.split(["--nowindow"])
    assert "--nowindow" in capsys.readouterr().err


@pytest.fixture
def ran(
    start: ModuleType, setup_env: ModuleType, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> list[list[str]]:
    """The commands the script runs, with a program that makes an empty demo journal."""
    commands: list[list[str]] = []

    def run(python: Path, *command: str) -> int:
        commands.append(list(command))
        if command[0] == "demo":
            Path(command[1]).mkdir()
            (Path(command[1]) / "journal.db").touch()
        return 0

    monkeypatch.setattr(start, "run", run)
    monkeypatch.setattr(setup_env, "prepare", lambda **kinds: Path("python"))
    monkeypatch.setattr(start, "DEMO", tmp_path / "demo-journal" / "Halden Rook")
    monkeypatch.setattr(start, "DOSSIER", tmp_path / "demo-journal" / "dossier.pdf")
    monkeypatch.setattr(start, "BUNDLE", tmp_path / "demo-journal" / "bundle.zip")
    return commands


def test_without_a_window_it_does_the_main_job(
    start: ModuleType, ran: list[list[str]], capsys: pytest.CaptureFixture[str]
) -> None:
    assert start.main(["--no-window"]) == 0
    jobs = [command[0] for command in ran]
    assert jobs == ["demo", "panel", "costs", "dossier", "bundle", "check"]
    assert all(command[1] == str(start.DEMO) for command in ran[1:-1])
    assert ran[-2][-1] == ran[-1][1] == str(start.BUNDLE)
    told = capsys.readouterr().out
    assert all(str(path) in told for path in (start.DEMO, start.DOSSIER, start.BUNDLE))


def test_a_bundle_made_before_gives_way(start: ModuleType, ran: list[list[str]]) -> None:
    start.BUNDLE.parent.mkdir()
    start.BUNDLE.touch()
    assert start.main(["--no-window"]) == 0
    assert not start.BUNDLE.exists(), "the program makes none in another one's place"


def test_the_demo_journal_is_made_once(start: ModuleType, ran: list[list[str]]) -> None:
    start.main(["--no-window"])
    start.main(["--no-window"])
    assert [command[0] for command in ran].count("demo") == 1


def test_a_demo_cut_short_is_started_afresh(start: ModuleType, ran: list[list[str]]) -> None:
    unfinished = start.DEMO.with_name("Halden Rook (unfinished)")
    unfinished.mkdir(parents=True)
    (unfinished / "half.jpg").touch()
    assert start.main(["--no-window"]) == 0
    assert (start.DEMO / "journal.db").exists()
    assert not (start.DEMO / "half.jpg").exists()
    assert not unfinished.exists()


def test_with_a_display_the_demo_opens_in_the_window(
    start: ModuleType, ran: list[list[str]], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("DISPLAY", ":0")
    assert start.main([]) == 0
    assert ran[-1] == [str(start.DEMO)]


def test_a_command_makes_no_demo(start: ModuleType, ran: list[list[str]]) -> None:
    assert start.main(["--", "costs", "J"]) == 0
    assert ran == [["costs", "J"]]


def test_the_first_failure_ends_the_run(
    start: ModuleType, ran: list[list[str]], monkeypatch: pytest.MonkeyPatch
) -> None:
    plain = start.run
    monkeypatch.setattr(start, "run", lambda py, *c: 2 if c[0] == "panel" else plain(py, *c))
    assert start.main(["--no-window"]) == 2
    assert [command[0] for command in ran] == ["demo"]


@pytest.mark.parametrize(
    ("environment", "platform", "expected"),
    [
        ({}, "linux", False),
        ({"DISPLAY": ""}, "linux", False),
        ({"DISPLAY": ":1"}, "linux", True),
        ({"WAYLAND_DISPLAY": "wayland-0"}, "linux", True),
        ({}, "win32", True),
        ({}, "darwin", True),
    ],
)
def test_whether_there_is_a_screen(
    setup_env: ModuleType, environment: dict[str, str], platform: str, expected: bool
) -> None:
    assert setup_env.has_display(environment, platform) is expected


def test_the_environment_is_set_up_again_when_project_or_python_change(
    setup_env: ModuleType, tmp_path: Path
) -> None:
    stamp = setup_env.digest(b"project", "3.11.2")
    assert not setup_env.is_stamped(tmp_path, "dev", stamp)
    setup_env.set_stamp(tmp_path, "dev", stamp)
    assert setup_env.is_stamped(tmp_path, "dev", stamp)
    assert not setup_env.is_stamped(tmp_path, "program", stamp)
    assert not setup_env.is_stamped(tmp_path, "dev", setup_env.digest(b"project!", "3.11.2"))
    assert not setup_env.is_stamped(tmp_path, "dev", setup_env.digest(b"project", "3.11.3"))


def test_the_version_of_an_environment_is_read_off_its_own_file(
    setup_env: ModuleType, tmp_path: Path
) -> None:
    assert setup_env.version_of(tmp_path) == ""
    (tmp_path / "pyvenv.cfg").write_text("home = /usr/bin\nversion = 3.11.2\nprompt = a=b\n")
    assert setup_env.version_of(tmp_path) == "3.11.2"


def test_a_python_that_is_not_there_does_not_work(setup_env: ModuleType, tmp_path: Path) -> None:
    assert not setup_env.works(tmp_path / "python")
    (tmp_path / "python").write_text("not a program")
    assert not setup_env.works(tmp_path / "python")
    assert setup_env.works(Path(sys.executable))


def test_without_the_rights_to_install_one_line_names_what_is_lacking(
    setup_env: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(setup_env.shutil, "which", lambda name: None)
    with pytest.raises(SystemExit) as caught:
        setup_env._apt_or_stop(["libegl1", "libgl1"], "libraries for windows")
    assert caught.value.code == 2
    told = capsys.readouterr().err
    assert told.count("\n") == 1
    assert "sudo apt-get install libegl1 libgl1" in told


def test_every_kind_of_check_runs_and_the_first_failure_gives_the_status(
    check: ModuleType,
    setup_env: ModuleType,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    ran: list[list[str]] = []

    def run(python: Path, command: list[str]) -> int:
        ran.append(command)
        return {"mypy": 3, "pytest": 1}.get(command[0], 0)

    monkeypatch.setattr(check, "run", run)
    monkeypatch.setattr(setup_env, "prepare", lambda **kinds: Path("python"))
    assert check.main(["--", "-k", "sill"]) == 3
    assert len(ran) == len(check.checks(fast=False, words=[]))
    assert ran[-1] == ["pytest", "-n", "auto", "-k", "sill"]
    assert "types" in capsys.readouterr().err


def test_the_fast_check_leaves_slow_tests_out(check: ModuleType) -> None:
    kinds = list(check.checks(fast=True, words=[]).values())
    assert kinds[-1][-2:] == ["-m", "not slow"]


def test_checks_draw_off_screen_where_there_is_no_screen(check: ModuleType) -> None:
    assert check.environment(False, {"A": "b"})["QT_QPA_PLATFORM"] == "offscreen"
    assert check.environment(False, {"QT_QPA_PLATFORM": "vnc"})["QT_QPA_PLATFORM"] == "vnc"
    assert check.environment(True, {"A": "b"}) == {"A": "b"}


def test_the_window_names_its_desktop_entry(qapp: object) -> None:
    from PySide6.QtGui import QGuiApplication

    from journal.desktop.app import make_app

    make_app([])
    assert QGuiApplication.desktopFileName() == ID
