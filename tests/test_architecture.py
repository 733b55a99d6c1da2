"""What the layers promise and imports can't show, read off the source itself."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

from tests import source_rules
from tests.source_rules import ROOT, sources

PROGRAM = sources("journal")


def label(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def layer(path: Path) -> str:
    parts = path.relative_to(ROOT / "journal").parts
    return parts[0] if len(parts) > 1 else ""


def parsed(path: Path) -> ast.Module:
    return ast.parse(path.read_text("utf-8"))


@pytest.mark.parametrize("path", [p for p in PROGRAM if layer(p) != "store"], ids=label)
def test_sql_is_in_the_store_alone(path: Path) -> None:
    assert list(source_rules.sql(parsed(path))) == []


@pytest.mark.parametrize(
    "path", [p for p in PROGRAM if layer(p) not in {"store", "files"}], ids=label
)
def test_only_files_and_store_write_to_disk(path: Path) -> None:
    assert list(source_rules.writing(parsed(path))) == []


@pytest.mark.parametrize("path", PROGRAM, ids=label)
def test_no_network_no_pickle_no_star_import_no_change_of_folder(path: Path) -> None:
    assert list(source_rules.never(parsed(path))) == []


@pytest.mark.parametrize("path", PROGRAM + sources("packaging", "tests"), ids=label)
def test_files_and_functions_stay_short(path: Path) -> None:
    assert list(source_rules.too_long(path.read_text("utf-8"), parsed(path))) == []


@pytest.mark.parametrize("path", PROGRAM + sources("packaging"), ids=label)
def test_every_module_says_what_it_is_about(path: Path) -> None:
    assert ast.get_docstring(parsed(path))


@pytest.mark.parametrize("path", PROGRAM + sources("packaging", "tests"), ids=label)
def test_nothing_is_left_to_do(path: Path) -> None:
    assert list(source_rules.left_to_do(path.read_text("utf-8"))) == []


@pytest.mark.parametrize(
    "planted",
    [
        "x = 'SELECT id FROM photos WHERE x'",
        "x = '''\n  update areas set name = ?'''",
        "x = f'INSERT INTO t VALUES ({n})'",
        "db.execute(q)",
        "session.db.conn.executemany(q, rows)",
        "x = 'PRAGMA user_version'",
    ],
)
def test_planted_sql_is_found(planted: str) -> None:
    assert list(source_rules.sql(ast.parse(planted)))


@pytest.mark.parametrize(
    "planted",
    [
        "open(p, 'w')",
        "open(p, mode='ab')",
        "p.open('r+b')",
        "p.open(mode='x')",
        "p.write_text('a')",
        "p.replace(other)",
        "os.replace(a, b)",
        "os.open(p, flags)",
        "import shutil",
        "from shutil import rmtree",
        "import tempfile",
        "p.unlink(missing_ok=True)",
        "p.mkdir()",
    ],
)
def test_planted_writing_is_found(planted: str) -> None:
    assert list(source_rules.writing(ast.parse(planted)))


@pytest.mark.parametrize(
    "harmless",
    [
        "open(p)",
        "open(p, 'rb')",
        "p.open('rb')",
        "p.open()",
        "'a'.replace('b', 'c')",
        "replace(area, name='x')",
        "moment.replace(microsecond=0)",
        "os.fspath(p)",
        "os.open(os.devnull, os.O_WRONLY)",
        "self.selection.replace(photos)",
        "Image.open(path)",
        "journal.open(where)",
    ],
)
def test_reading_is_no_writing(harmless: str) -> None:
    assert list(source_rules.writing(ast.parse(harmless))) == []


@pytest.mark.parametrize(
    "planted",
    [
        "import pickle",
        "def f():\n    import urllib.request",
        "from urllib import request",
        "from urllib.request import urlopen",
        "import socket",
        "from http.client import HTTPConnection",
        "from PySide6 import QtNetwork",
        "from PySide6.QtNetwork import QTcpSocket",
        "from journal.domain.when import *",
        "os.chdir(p)",
        "QApplication.processEvents()",
    ],
)
def test_what_is_done_nowhere_is_found_when_planted(planted: str) -> None:
    assert list(source_rules.never(ast.parse(planted)))


def test_planted_length_and_unfinished_work_are_found() -> None:
    long_function = "def f():\n" + "    x = 1\n" * 50
    assert list(source_rules.too_long(long_function, ast.parse(long_function)))
    long_file = "x = 1\n" * 401
    assert list(source_rules.too_long(long_file, ast.parse(long_file)))
    assert list(source_rules.left_to_do("x = 1  # TO" + "DO: more"))


def run(code: str) -> str:
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=False, cwd=ROOT
    )
    assert done.returncode == 0, done.stderr
    return done.stdout.strip()


def test_actions_and_commands_work_where_qt_is_not_installed() -> None:
    code = """
import importlib, pkgutil, sys
sys.modules["PySide6"] = None
import journal.actions, journal.cli
for package in (journal.actions, journal.cli):
    for module in pkgutil.walk_packages(package.__path__, package.__name__ + "."):
        importlib.import_module(module.name)
print(sorted(name for name in sys.modules if "PySide6" in name or "shiboken" in name))
"""
    assert run(code) == "['PySide6']"


def test_qt_keeps_its_references_to_none_and_true() -> None:
    """A faulty PySide6 loses one at every call, and the program aborts after some thousands."""
    code = """
import sys
from PySide6.QtCore import QObject, QTimer, Signal

class Speaker(QObject):
    spoke = Signal(object)

speaker, timer = Speaker(), QTimer()
speaker.spoke.connect(lambda word: None)
before = sys.getrefcount(None), sys.getrefcount(True)
for _ in range(1000):
    timer.stop()
    speaker.setObjectName("x")
    speaker.spoke.emit(1)
after = sys.getrefcount(None), sys.getrefcount(True)
print(max(abs(now - then) for now, then in zip(after, before)))
"""
    assert int(run(code)) < 100
