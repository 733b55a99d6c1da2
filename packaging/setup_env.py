"""The program's own Python environment in the checkout: made once, and quick to find ready.

Standard library only. Whatever stands in the way is one plain sentence and exit status 2.
"""

import hashlib
import os
import shutil
import subprocess
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import NoReturn

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"

#: What the PySide6 wheel needs of a Debian system and doesn't bring along.
QT_PACKAGES = (
    "libegl1", "libgl1", "libxkbcommon0", "libdbus-1-3", "libfontconfig1", "libglib2.0-0",
    "libxcb-cursor0", "libxkbcommon-x11-0", "libxcb-icccm4", "libxcb-image0", "libxcb-keysyms1",
    "libxcb-randr0", "libxcb-render-util0", "libxcb-shape0", "libxcb-sync1", "libxcb-xfixes0",
    "libxcb-xinerama0", "libxcb-xkb1", "libx11-xcb1", "libsm6", "libice6",
)  # fmt: skip

# Loads what a window needs, the plug-in for X11 included, and says what the system lacks.
_LOAD_QT = """
import ctypes, pathlib, sys
try:
    import PySide6
    from PySide6 import QtCore, QtGui, QtWidgets
    plugins = pathlib.Path(PySide6.__file__).parent / "Qt" / "plugins" / "platforms"
    for plugin in plugins.glob("libqxcb.so"):
        ctypes.CDLL(str(plugin))
except (ImportError, OSError) as error:
    sys.exit(str(error))
"""


def prepare(*, dev: bool, window: bool) -> Path:
    """Make the environment ready, and give its Python.

    ``dev`` adds the tools of contributors; ``window`` sees to the system's libraries for Qt.
    """
    if not works(python_of(VENV)):
        _make_venv()
    python = python_of(VENV)
    stamp = digest((ROOT / "pyproject.toml").read_bytes(), version_of(VENV))
    kinds = ["dev"] if dev else ["program", "dev"]
    if not any(is_stamped(VENV, kind, stamp) for kind in kinds):
        _install(python, dev=dev)
        set_stamp(VENV, kinds[0], stamp)
    if window and sys.platform == "linux" and not is_stamped(VENV, "qt", stamp):
        _need_qt(python)
        set_stamp(VENV, "qt", stamp)
    return python


def python_of(venv: Path, platform: str = sys.platform) -> Path:
    """Where a virtual environment keeps its Python."""
    if platform == "win32":
        return venv / "Scripts" / "python.exe"
    return venv / "bin" / "python"


def works(python: Path) -> bool:
    """Tell whether a Python is there, runs, and has pip."""
    try:
        done = subprocess.run([str(python), "-c", "import pip"], stderr=subprocess.DEVNULL)
    except OSError:
        return False
    return done.returncode == 0


def version_of(venv: Path) -> str:
    """The version of Python that a virtual environment was made with, "" where it doesn't say."""
    try:
        lines = (venv / "pyvenv.cfg").read_text("utf-8").splitlines()
    except OSError:
        return ""
    values = dict(line.split("=", 1) for line in lines if "=" in line)
    return next((v.strip() for k, v in values.items() if k.strip().startswith("version")), "")


def digest(project: bytes, version: str) -> str:
    """What an installation depends on, as one word."""
    return hashlib.sha256(project + b"\0" + version.encode()).hexdigest()


def is_stamped(venv: Path, kind: str, stamp: str) -> bool:
    """Tell whether a step was finished for just this project file and Python."""
    try:
        return _stamp_file(venv, kind).read_text("utf-8") == stamp
    except OSError:
        return False


def set_stamp(venv: Path, kind: str, stamp: str) -> None:
    """Note that a step is finished."""
    _stamp_file(venv, kind).write_text(stamp, "utf-8")


def has_display(environment: Mapping[str, str] = os.environ, platform: str = sys.platform) -> bool:
    """Tell whether there is a screen to open a window on."""
    if platform in {"win32", "darwin"}:
        return True
    return bool(environment.get("DISPLAY") or environment.get("WAYLAND_DISPLAY"))


def say(text: str) -> None:
    """Tell the person what is going on, apart from what a command answers."""
    print(text, file=sys.stderr, flush=True)


def stop(text: str) -> NoReturn:
    """Say why it can't go on, and end."""
    say(text)
    sys.exit(2)


def _stamp_file(venv: Path, kind: str) -> Path:
    return venv / f"restoration-journal-{kind}.stamp"


def _make_venv() -> None:
    say(f"Making the environment in {VENV.name} ...")
    if not _has_ensurepip():
        _apt_or_stop(["python3-venv"], "Python's module for virtual environments")
    try:
        subprocess.run([sys.executable, "-m", "venv", "--clear", str(VENV)], check=True)
    except (OSError, subprocess.CalledProcessError) as error:
        stop(f"The environment in {VENV} can't be made: {error}")


def _has_ensurepip() -> bool:
    # In a process of its own: what apt installs meanwhile must be seen.
    done = subprocess.run(
        [sys.executable, "-c", "import ensurepip, venv"], stderr=subprocess.DEVNULL
    )
    return done.returncode == 0


def _install(python: Path, *, dev: bool) -> None:
    say("Installing what the program needs; the first time takes a minute or two ...")
    what = f"{ROOT}[dev]" if dev else str(ROOT)
    command = [str(python), "-m", "pip", "install", "--quiet", "--quiet"]
    command += ["--disable-pip-version-check", "--no-input", "--root-user-action", "ignore"]
    done = subprocess.run([*command, "--editable", what])
    if done.returncode:
        stop("What the program needs can't be installed; pip says why above. Is there a network?")


def _need_qt(python: Path) -> None:
    lacking = _qt_lacks(python)
    if lacking and shutil.which("apt-get"):
        _apt_or_stop(QT_PACKAGES, f"libraries for windows ({lacking})")
        lacking = _qt_lacks(python)
    if lacking:
        stop(f"This system lacks a library that windows need: {lacking}.")


def _qt_lacks(python: Path) -> str:
    done = subprocess.run([str(python), "-c", _LOAD_QT], capture_output=True, text=True)
    return done.stderr.strip().splitlines()[-1].rstrip(".") if done.returncode else ""


def _apt_or_stop(packages: Sequence[str], what: str) -> None:
    names = " ".join(packages)
    apt = shutil.which("apt-get")
    if apt is None or os.name != "posix" or os.geteuid() != 0:
        stop(f"This system lacks {what}: install them with  sudo apt-get install {names}")
    say(f"Installing {what} ...")
    quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    install = [apt, "install", "-qq", "-y", "--no-install-recommends", *packages]
    for command in (install, [apt, "update", "-qq"], install):
        done = subprocess.run(command, env=quiet, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
        if done.returncode == 0 and command is install:
            return
    reason = done.stderr.decode(errors="replace").strip().splitlines() or ["no reason given"]
    stop(f"apt-get can't install {names}: {reason[-1]}")
