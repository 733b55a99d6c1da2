"""What the program remembers between starts; nothing that changes what a record means."""

import json
from dataclasses import asdict, dataclass, fields, replace
from pathlib import Path
from typing import Any, Literal

from platformdirs import user_config_path

from journal.files.durable import make_folder, write_atomically

VERSION = 1
_RECENT = 8


@dataclass(frozen=True, slots=True)
class Settings:
    """A person's preferences on this computer.

    ``recent`` are journal folders, the latest first; ``person`` is who last recorded hours.
    """

    theme: Literal["system", "light", "dark"] = "system"
    recent: tuple[str, ...] = ()
    person: str = ""


def settings_path() -> Path:
    """Where the settings are kept."""
    return user_config_path("restoration-journal", appauthor=False) / "settings.json"


def load_settings() -> Settings:
    """The settings as saved; a file that can't be read counts as none."""
    try:
        found = json.loads(settings_path().read_text(encoding="utf-8"))
        return _settings(found)
    except (OSError, ValueError, TypeError):
        return Settings()


def _settings(found: dict[str, Any]) -> Settings:
    known = {f.name for f in fields(Settings)}
    values = {name: value for name, value in found.items() if name in known}
    values["recent"] = tuple(str(folder) for folder in values.get("recent", ()))
    if values.get("theme") not in ("system", "light", "dark"):
        values.pop("theme", None)
    return Settings(**values)


def save_settings(settings: Settings) -> None:
    """Save the settings; where they can't be, the program goes on without."""
    path = settings_path()
    try:
        make_folder(path.parent)
        values = {"version": VERSION, **asdict(settings)}
        write_atomically(path, json.dumps(values, ensure_ascii=False, indent=1).encode())
    except OSError:
        return


def with_recent(settings: Settings, folder: Path) -> Settings:
    """Settings with a journal put first among the recent ones."""
    name = str(folder.absolute())
    rest = [other for other in settings.recent if other != name]
    return replace(settings, recent=(name, *rest)[:_RECENT])
