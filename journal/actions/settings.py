"""What the program remembers between starts; nothing that changes what a record means."""

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field, fields, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

from platformdirs import user_config_path

from journal.domain.errors import JournalError
from journal.files.durable import make_folder, write_atomically

if TYPE_CHECKING:
    from journal.domain.consumption import Assumptions

VERSION = 1
_RECENT = 8


@dataclass(frozen=True, slots=True)
class Settings:
    """A person's preferences on this computer.

    ``recent`` are journal folders, the latest first; ``person`` is who last recorded hours;
    ``welding`` holds the assumptions
    that the owner changed for estimates of wire and
    gas, by name; ``date_order`` is how dates of three numbers are meant on papers that leave it
    open.
    """

    theme: Literal["system", "light", "dark"] = "system"
    recent: tuple[str, ...] = ()
    person: str = ""
    welding: Mapping[str, float] = field(default_factory=dict)
    date_order: Literal["day first", "month first"] = "day first"


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
    if values.get("date_order") not in ("day first", "month first"):
        values.pop("date_order", None)
    welding = values.get("welding")
    values["welding"] = welding if isinstance(welding, dict) else {}
    return Settings(**values)


def assumptions(settings: Settings) -> "Assumptions":
    """What estimates of wire and gas rest on; what is unknown or beyond reason counts as unset."""
    from journal.domain.consumption import Assumptions, check_assumptions

    known = {f.name for f in fields(Assumptions)}
    try:
        found = {name: float(value) for name, value in settings.welding.items() if name in known}
        made = Assumptions(**found)
        check_assumptions(made)
    except (JournalError, TypeError, ValueError):
        return Assumptions()
    return made


def with_assumptions(settings: Settings, chosen: "Assumptions") -> Settings:
    """Settings with what estimates of wire and gas rest on from now on."""
    return replace(settings, welding=asdict(chosen))


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
