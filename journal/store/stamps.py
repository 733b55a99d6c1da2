"""Time stamps: what was asked for, and the replies that were brought back."""

import base64
from dataclasses import dataclass
from datetime import datetime

from journal.store.opened import Subject
from journal.store.rows import insert, update


@dataclass(frozen=True, slots=True)
class Stamp:
    """One request for a time stamp and its reply, b"" until it is there.

    ``sha256`` is of what is stamped, a bundle's list of lists; ``what`` is the bundle's name.
    ``requested`` and ``stamped`` are UTC.
    """

    id: int
    sha256: str
    what: str
    requested: datetime
    request: bytes
    reply: bytes
    stamped: datetime | None


class Stamps(Subject):
    """Every request and reply."""

    def ask(self, sha256: str, what: str, requested: datetime, request: bytes) -> int:
        """Record that a stamp was asked for."""
        return insert(
            self._db,
            "stamps",
            {
                "sha256": sha256,
                "what": what,
                "requested": requested.isoformat(timespec="seconds"),
                "request": base64.b64encode(request).decode(),
                "reply": "",
                "stamped": "",
            },
        )

    def answer(self, stamp_id: int, reply: bytes, stamped: datetime) -> None:
        """Record the reply to a request."""
        values = {
            "reply": base64.b64encode(reply).decode(),
            "stamped": stamped.isoformat(timespec="seconds"),
        }
        update(self._db, "stamps", stamp_id, values)

    def all(self) -> tuple[Stamp, ...]:
        """Every request, the oldest first."""
        return self._where("1", ())

    def of(self, sha256: str) -> tuple[Stamp, ...]:
        """The requests for one bundle, by the SHA-256 of its list of lists."""
        return self._where("sha256 = ?", (sha256,))

    def _where(self, condition: str, values: tuple[str, ...]) -> tuple[Stamp, ...]:
        found = self._db.execute(
            "SELECT id, sha256, what, requested, request, reply, stamped FROM stamps "
            f"WHERE {condition} ORDER BY id",
            values,
        )
        return tuple(
            Stamp(
                number,
                sha256,
                what,
                datetime.fromisoformat(requested),
                base64.b64decode(request),
                base64.b64decode(reply),
                datetime.fromisoformat(stamped) if stamped else None,
            )
            for number, sha256, what, requested, request, reply, stamped in found
        )
