"""The README names every command, and its pictures are there."""

import re
from pathlib import Path

from journal.cli import COMMANDS

ROOT = Path(__file__).resolve().parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")


def test_every_command_is_in_the_readme() -> None:
    commands = README.split("## Commands")[1].split("## ")[0]
    named = set(re.findall(r"\b[a-z]+\b", commands))
    assert set(COMMANDS) <= named


def test_every_picture_of_the_readme_is_there() -> None:
    pictures = re.findall(r"!\[[^\]]*\]\(([^)]+)\)", README)
    assert len(pictures) >= 7
    for picture in pictures:
        assert (ROOT / picture).is_file(), picture
