"""Start Restoration Journal from a checkout, setting it up the first time.

    python3 packaging/start.py               the window, with the journal of a made-up car
    python3 packaging/start.py --no-window   the same journal's main results, without a screen
    python3 packaging/start.py -- COMMAND    any command of restoration-journal

With no display the second happens by itself.
"""

import sys

if sys.version_info < (3, 11):  # noqa: UP036 - this is how an older Python learns of it
    found = ".".join(str(part) for part in sys.version_info[:2])
    sys.exit(f"Restoration Journal needs Python 3.11 or newer; this is {found}.")

import argparse
import shutil
import subprocess
from pathlib import Path

import setup_env

DEMO = setup_env.ROOT / "demo-journal" / "Halden Rook"
DOSSIER = DEMO.with_name("Halden Rook dossier.pdf")
BUNDLE = DEMO.with_name("Halden Rook bundle.zip")
PANEL = "Sill, left"


def main(arguments: list[str] | None = None) -> int:
    """Set up, then open the window or do the main job without one; gives the exit status."""
    options, command = split(sys.argv[1:] if arguments is None else arguments)
    if command:
        python = setup_env.prepare(dev=False, window=False)
        return run(python, *command)
    window = not options.no_window and setup_env.has_display()
    python = setup_env.prepare(dev=False, window=window)
    status = make_demo(python)
    if status:
        return status
    return run(python, str(DEMO)) if window else without_window(python)


def split(arguments: list[str]) -> tuple[argparse.Namespace, list[str]]:
    """The options of this script, and the command after "--"."""
    parser = argparse.ArgumentParser(
        prog="start.py",
        description="Start Restoration Journal, setting it up the first time.",
        epilog="Arguments after -- go to the command restoration-journal.",
    )
    parser.add_argument("--no-window", action="store_true", help="do the main job without a screen")
    place = arguments.index("--") if "--" in arguments else len(arguments)
    return parser.parse_args(arguments[:place]), arguments[place + 1 :]


def make_demo(python: Path) -> int:
    """Make the journal of the made-up car unless it is there; gives the exit status.

    It gets its name only once it is whole, so that a run cut short is started afresh.
    """
    if (DEMO / "journal.db").exists():
        return 0
    unfinished = DEMO.with_name(DEMO.name + " (unfinished)")
    shutil.rmtree(unfinished, ignore_errors=True)
    unfinished.parent.mkdir(exist_ok=True)
    status = run(python, "demo", str(unfinished))
    if status == 0:
        unfinished.rename(DEMO)
    return status


def without_window(python: Path) -> int:
    """The main results: a panel's story, the costs, the dossier, a bundle that is then checked."""
    print(f"The demo journal is in {DEMO}", flush=True)
    # A bundle never takes another one's place.
    BUNDLE.unlink(missing_ok=True)
    for heading, command in (
        (f"What was ever done to the panel “{PANEL}”", ["panel", str(DEMO), PANEL]),
        ("What it cost", ["costs", str(DEMO), "--by", "category"]),
        ("The dossier", ["dossier", str(DEMO), "--out", str(DOSSIER)]),
        ("The bundle for a buyer", ["bundle", str(DEMO), "--for", "buyer", "--out", str(BUNDLE)]),
        ("Whether anything in it was changed since", ["check", str(BUNDLE)]),
    ):
        print(f"\n{heading}\n{'-' * len(heading)}", flush=True)
        status = run(python, *command)
        if status:
            return status
    print(f"\nThe dossier is in {DOSSIER}\nThe bundle is in {BUNDLE}", flush=True)
    return 0


def run(python: Path, *command: str) -> int:
    """Run the program in its environment; gives its exit status."""
    try:
        return subprocess.run([str(python), "-m", "journal", *command]).returncode
    except KeyboardInterrupt:
        return 130


if __name__ == "__main__":
    sys.exit(main())
