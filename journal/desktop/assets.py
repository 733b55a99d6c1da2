"""Where the files that come with the program are."""

from functools import cache
from pathlib import Path


@cache
def assets() -> Path:
    """The folder of assets: inside the installed package, or beside it in a checkout."""
    package = Path(__file__).resolve().parents[1]
    installed = package / "_assets"
    return installed if installed.is_dir() else package.parent / "assets"
