"""Arguments and options that several commands share."""

from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

F = TypeVar("F", bound=Callable[..., Any])


def journal_argument(function: F) -> F:
    """The journal's folder, first among the arguments."""
    return click.argument("journal", type=click.Path(readable=False, path_type=Path))(function)


def json_option(function: F) -> F:
    """Answer as one JSON document."""
    return click.option(
        "--json", "as_json", is_flag=True, help="Answer as one JSON document on standard output."
    )(function)
