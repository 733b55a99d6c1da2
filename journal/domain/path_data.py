"""The words of SVG path data, as far as shapes are written in them: absolute M, L, C and Z."""

import math
import re
from collections.abc import Iterator

from journal.domain.errors import JournalError

_TOKEN = re.compile(
    r"[\s,]*(?:(?P<command>[A-Za-z])|(?P<number>[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?))"
)

#: How many points each command takes.
_POINTS = {"M": 1, "L": 1, "C": 3}


def read_commands(text: str) -> Iterator[tuple[str, list[tuple[float, float]]]]:
    """Each command with its points; repeated points repeat the command.

    Raises:
        JournalError: the text is malformed, or holds another command.
    """
    tokens = list(_tokens(text))
    at = 0
    command = ""
    while at < len(tokens):
        if isinstance(tokens[at], str):
            command = _known(str(tokens[at]))
            at += 1
            if command == "Z":
                yield "Z", []
                continue
        elif command not in _POINTS:
            raise JournalError("The path data has numbers where a command should stand.")
        wanted = 2 * _POINTS[command]
        values = tokens[at : at + wanted]
        numbers = [v for v in values if isinstance(v, float)]
        if len(numbers) != wanted:
            raise JournalError(f"The path data gives command {command} too few numbers.")
        yield command, list(zip(numbers[::2], numbers[1::2], strict=True))
        at += wanted
        # Further points after a move are lines, as SVG has it.
        command = "L" if command == "M" else command


def _known(command: str) -> str:
    if command == "z":
        return "Z"
    if command not in "MLCZ":
        raise JournalError(
            f"The path data uses command {command}; only absolute M, L, C and Z can be read."
        )
    return command


def _tokens(text: str) -> Iterator[str | float]:
    at = 0
    end = len(text.rstrip())
    while at < end:
        found = _TOKEN.match(text, at)
        if found is None:
            at += len(text[at:]) - len(text[at:].lstrip(", \t\r\n"))
            raise JournalError(f"The path data has something unreadable at character {at + 1}.")
        at = found.end()
        if found["command"]:
            yield found["command"]
            continue
        number = float(found["number"])
        if not math.isfinite(number):
            raise JournalError("The path data holds a number that is too large.")
        yield number
