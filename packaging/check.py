"""Check everything a change must pass: style, layout, types, tests.

    python3 packaging/check.py              all of it
    python3 packaging/check.py --fast       without slow tests
    python3 packaging/check.py -- -k sill   words after -- go to pytest

Every kind is run even after one has failed; the exit status is that of the first that failed.
"""

import sys

if sys.version_info < (3, 11):  # noqa: UP036 - this is how an older Python learns of it
    found = ".".join(str(part) for part in sys.version_info[:2])
    sys.exit(f"Restoration Journal needs Python 3.11 or newer; this is {found}.")

import argparse
import os
import subprocess
from pathlib import Path

import setup_env


def main(arguments: list[str] | None = None) -> int:
    """Set up the tools, run every kind of check, and give the exit status."""
    arguments = sys.argv[1:] if arguments is None else arguments
    place = arguments.index("--") if "--" in arguments else len(arguments)
    parser = argparse.ArgumentParser(prog="check.py", description="Check the whole project.")
    parser.add_argument("--fast", action="store_true", help="leave out slow tests")
    options = parser.parse_args(arguments[:place])
    python = setup_env.prepare(dev=True, window=True)
    kinds = checks(fast=options.fast, words=arguments[place + 1 :])
    outcomes = {kind: run(python, command) for kind, command in kinds.items()}
    failed = [kind for kind, status in outcomes.items() if status]
    if failed:
        setup_env.say(f"Failed: {', '.join(failed)}.")
    return outcomes[failed[0]] if failed else 0


def checks(*, fast: bool, words: list[str]) -> dict[str, list[str]]:
    """Each kind of check with its command, the tests last: their closing line ends the run."""
    left_out = ["-m", "not slow"] if fast else []
    return {
        "style": ["ruff", "check", "."],
        "layout": ["ruff", "format", "--check", "."],
        "types": ["mypy"],
        "types of packaging": ["mypy", "packaging"],
        "tests, import contracts among them": ["pytest", "-n", "auto", *left_out, *words],
    }


def environment(has_display: bool, given: dict[str, str]) -> dict[str, str]:
    """What the checks are run with: Qt draws off screen where there is no screen."""
    return given if has_display else {"QT_QPA_PLATFORM": "offscreen", **given}


def run(python: Path, command: list[str]) -> int:
    """Run one check and give its exit status."""
    print(f"\n$ python -m {' '.join(command)}", flush=True)
    variables = environment(setup_env.has_display(), dict(os.environ))
    done = subprocess.run([str(python), "-m", *command], cwd=setup_env.ROOT, env=variables)
    return done.returncode


if __name__ == "__main__":
    sys.exit(main())
