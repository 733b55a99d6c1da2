"""Where the files that come with the program lie: drawings, icons, templates, fonts."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent.parent


def asset(name: str) -> Path:
    """The file or folder ``name`` among the program's own, whether installed or in a checkout.

    ``name`` is relative, with forward slashes. FileNotFoundError where there is none of it.
    """
    for folder in (_PACKAGE / "_assets", _PACKAGE.parent / "assets"):
        path = folder / name
        if path.exists():
            return path
    raise FileNotFoundError(f"The program's own file {name} is missing; install it afresh.")
