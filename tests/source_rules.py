"""Rules on source text that imports can't show; each yields its faults as "line: what"."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent

MOST_LINES_OF_A_FILE = 400
MOST_LINES_OF_A_FUNCTION = 50

_SQL = re.compile(
    r"\s*(SELECT\s.+\sFROM\s|SELECT\s+\w+\(|INSERT\s+(OR\s+\w+\s+)?INTO\s|UPDATE\s+\w+\s+SET\s"
    r"|DELETE\s+FROM\s|CREATE\s+(UNIQUE\s+)?(TABLE|INDEX|TRIGGER|VIEW|VIRTUAL)\s|DROP\s+TABLE\s"
    r"|ALTER\s+TABLE\s|PRAGMA\s+\w|ATTACH\s+DATABASE|WITH\s+RECURSIVE\s)",
    re.IGNORECASE | re.DOTALL,
)
_EXECUTES = {"execute", "executemany", "executescript"}

_WRITING_METHODS = {
    "write_text", "write_bytes", "unlink", "rename", "mkdir", "rmdir", "touch", "symlink_to",
    "hardlink_to", "chmod", "lchmod",
}  # fmt: skip
_WRITING_OS = {
    "rename", "renames", "replace", "remove", "removedirs", "unlink", "rmdir", "mkdir", "makedirs",
    "truncate", "link", "symlink", "chmod", "chown", "utime", "open", "mkfifo", "mknod",
}  # fmt: skip
_WRITING_MODULES = {"shutil", "tempfile"}
_NETWORK = {
    "socket", "ssl", "http", "ftplib", "smtplib", "poplib", "imaplib", "socketserver", "xmlrpc",
    "telnetlib", "requests", "httpx", "urllib3", "aiohttp", "asyncio", "websockets",
}  # fmt: skip
_QT_NETWORK = {"QtNetwork", "QtWebSockets", "QtWebEngineWidgets", "QtWebEngineCore"}
_NEVER_IMPORTED = {"pickle", "marshal", "shelve", "dill", "cloudpickle"}
_NEVER_CALLED = {"chdir", "fchdir", "processEvents"}
_LEFT_TO_DO = re.compile(r"\b(TOD[O]|FIXM[E]|HAC[K])\b")


def sources(*folders: str) -> list[Path]:
    """Every Python file below the folders of the checkout."""
    found = [path for folder in folders for path in (ROOT / folder).rglob("*.py")]
    return sorted(path for path in found if "__pycache__" not in path.parts)


def sql(tree: ast.Module) -> Iterator[str]:
    """SQL-looking texts, and calls that run SQL."""
    docstrings = set(_docstrings(tree))
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            if node not in docstrings and _SQL.match(node.value):
                yield f"{node.lineno}: SQL {node.value.strip()[:40]!r}"
        elif (name := _called(node)) in _EXECUTES:
            yield f"{node.lineno}: {name}()"


def writing(tree: ast.Module) -> Iterator[str]:
    """Calls that write to disk, and modules whose business it is."""
    for module, line in _imported(tree):
        if module.split(".")[0] in _WRITING_MODULES:
            yield f"{line}: import {module}"
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and (what := _writes(node)):
            yield f"{node.lineno}: {what}"


def _writes(call: ast.Call) -> str:
    function = call.func
    if isinstance(function, ast.Name):
        return "open() to write" if function.id == "open" and _mode_writes(call, 1) else ""
    if not isinstance(function, ast.Attribute):
        return ""
    if isinstance(function.value, ast.Name) and function.value.id == "os":
        into_nothing = "devnull" in ast.dump(call)
        return f"os.{function.attr}()" if function.attr in _WRITING_OS and not into_nothing else ""
    if function.attr == "open":
        return ".open() to write" if _mode_writes(call, 0) else ""
    if function.attr == "replace":
        # str.replace takes two; what takes one moves a file, or is what the grid has selected.
        moves = len(call.args) == 1 and not call.keywords
        return ".replace() of a file" if moves and _named(function.value) != "selection" else ""
    return f".{function.attr}()" if function.attr in _WRITING_METHODS else ""


def _named(node: ast.expr) -> str:
    if isinstance(node, ast.Attribute):
        return node.attr
    return node.id if isinstance(node, ast.Name) else ""


def _mode_writes(call: ast.Call, place: int) -> bool:
    modes = [word.value for word in call.keywords if word.arg == "mode"]
    modes += call.args[place : place + 1]
    return any(
        isinstance(mode, ast.Constant)
        and isinstance(mode.value, str)
        and re.fullmatch(r"[rwxabt+]{1,4}", mode.value)
        and set(mode.value) & set("wxa+")
        for mode in modes
    )


def never(tree: ast.Module) -> Iterator[str]:
    """What the program does nowhere: networks, pickles, star imports, changing folder."""
    for module, line in _imported(tree):
        first = module.split(".")[0]
        if first in _NEVER_IMPORTED | _NETWORK or module.startswith("urllib.request"):
            yield f"{line}: import {module}"
        if _QT_NETWORK & set(module.split(".")):
            yield f"{line}: import {module}"
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and any(name.name == "*" for name in node.names):
            yield f"{node.lineno}: from {node.module} import *"
        name = _called(node)
        if name in _NEVER_CALLED:
            yield f"{node.lineno}: {name}()"


def too_long(text: str, tree: ast.Module) -> Iterator[str]:
    """Files and functions past the hard limits."""
    lines = len(text.splitlines())
    if lines > MOST_LINES_OF_A_FILE:
        yield f"1: the file has {lines} lines"
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            length = (node.end_lineno or node.lineno) - node.lineno + 1
            if length > MOST_LINES_OF_A_FUNCTION:
                yield f"{node.lineno}: {node.name}() has {length} lines"


def left_to_do(text: str) -> Iterator[str]:
    """Words that say a thing is not done."""
    for number, line in enumerate(text.splitlines(), 1):
        if _LEFT_TO_DO.search(line):
            yield f"{number}: {line.strip()[:60]}"


def _imported(tree: ast.Module) -> Iterator[tuple[str, int]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from ((name.name, node.lineno) for name in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            yield from ((f"{node.module}.{name.name}", node.lineno) for name in node.names)


def _called(node: ast.AST) -> str:
    if not isinstance(node, ast.Call):
        return ""
    if isinstance(node.func, ast.Attribute):
        return node.func.attr
    return node.func.id if isinstance(node.func, ast.Name) else ""


def _docstrings(tree: ast.Module) -> Iterator[ast.AST]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef):
            first = node.body[0] if node.body else None
            if isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant):
                yield first.value
