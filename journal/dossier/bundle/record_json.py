"""The record as one JSON document, and the JSON Schema (draft 2020-12) that describes it.

Both follow from the record's own types, so that neither can say what the other doesn't. The schema
is published with the program as ``assets/schema/record.schema.json`` and goes into every bundle;
``python -m journal.dossier.bundle.record_json`` prints it.
"""

import dataclasses
import json
import types
import typing
from collections.abc import Mapping
from datetime import date, datetime
from decimal import Decimal
from enum import Enum
from typing import Any

from journal.domain.record import Record
from journal.domain.shapes import Shape, Stroke, stroke_to_path_data, to_path_data
from journal.domain.when import When

#: One more whenever a reader of the former version would misread the document.
FORMAT = 1

_PLAIN: Mapping[Any, Mapping[str, Any]] = {
    str: {"type": "string"},
    int: {"type": "integer"},
    float: {"type": "number"},
    bool: {"type": "boolean"},
    type(None): {"type": "null"},
    Decimal: {"type": "string", "description": "An exact decimal number.", "pattern": "^-?\\d"},
    datetime: {"type": "string", "description": "ISO 8601, local time without a zone."},
    date: {"type": "string", "format": "date"},
    Shape: {"type": "string", "description": "An outline in millimetres, as SVG path data."},
    Stroke: {"type": "string", "description": "An open line in millimetres, as SVG path data."},
}


def record_json(record: Record, made: str, program: str) -> bytes:
    """The whole record as JSON. Money is in minor units of its currency, lengths in millimetres."""
    document = {
        "format": FORMAT,
        "made": made,
        "program": program,
        "record": as_plain(record),
    }
    return (json.dumps(document, ensure_ascii=False, indent=1) + "\n").encode()


def as_plain(value: Any) -> Any:
    """A value of the domain as JSON has it."""
    if isinstance(value, Shape):
        return to_path_data(value)
    if isinstance(value, Stroke):
        return stroke_to_path_data(value)
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, datetime | date):
        return value.isoformat()
    if isinstance(value, Decimal):
        return str(value)
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return {f.name: as_plain(getattr(value, f.name)) for f in dataclasses.fields(value)}
    if isinstance(value, Mapping):
        return {str(key): as_plain(part) for key, part in value.items()}
    if isinstance(value, frozenset | set):
        return sorted(as_plain(part) for part in value)
    if isinstance(value, tuple | list):
        return [as_plain(part) for part in value]
    return value


def schema() -> dict[str, Any]:
    """The schema of the document that ``record_json`` writes."""
    described: dict[str, Any] = {}
    record = _of(Record, described)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "The record of one car's restoration",
        "description": (
            "Money is in minor units (cents) of its currency, lengths are in millimetres, dates "
            "are EDTF (ISO 8601-2) with the earliest and latest moment they stand for. Things name "
            "each other by number (id). What was withheld is named in withheld; sums then mean "
            "nothing where prices are among it."
        ),
        "type": "object",
        "properties": {
            "format": {"const": FORMAT},
            "made": {"type": "string", "description": "When it was written, ISO 8601."},
            "program": {"type": "string", "description": "What wrote it."},
            "record": record,
        },
        "required": ["format", "made", "program", "record"],
        "additionalProperties": False,
        "$defs": dict(sorted(described.items())),
    }


def schema_json() -> bytes:
    """The schema as it is published."""
    return (json.dumps(schema(), ensure_ascii=False, indent=1) + "\n").encode()


def _of(kind: Any, described: dict[str, Any]) -> dict[str, Any]:
    """The schema of one type; what has fields is described once, by name."""
    kind = getattr(kind, "__supertype__", kind)
    if kind in _PLAIN:
        return dict(_PLAIN[kind])
    origin, parts = typing.get_origin(kind), typing.get_args(kind)
    if origin in (typing.Union, types.UnionType):
        return {"anyOf": [_of(part, described) for part in parts]}
    if origin is typing.Literal:
        return {"enum": list(parts)}
    if origin is tuple and parts[1:] != (...,):
        items = [_of(part, described) for part in parts]
        return {"type": "array", "prefixItems": items, "items": False, "minItems": len(items)}
    if origin in (tuple, list, frozenset):
        return {"type": "array", "items": _of(parts[0], described)}
    if origin in (dict, Mapping):
        return {"type": "object", "additionalProperties": _of(parts[1], described)}
    if isinstance(kind, type) and issubclass(kind, Enum):
        return {"enum": [member.value for member in kind]}
    if isinstance(kind, type) and issubclass(kind, tuple):
        hints = typing.get_type_hints(kind)
        items = [{**_of(hint, described), "title": name} for name, hint in hints.items()]
        return {"type": "array", "prefixItems": items, "items": False, "minItems": len(items)}
    return _of_fields(kind, described)


def _of_fields(kind: Any, described: dict[str, Any]) -> dict[str, Any]:
    if not dataclasses.is_dataclass(kind):
        # Anything goes: a bundle with less of a description is better than none.
        return {}
    name = kind.__name__ if isinstance(kind, type) else str(kind)
    if name not in described:
        # Named before its fields are looked at: types may hold one another.
        described[name] = {}
        hints = typing.get_type_hints(kind)
        names = [field.name for field in dataclasses.fields(kind)]
        described[name] = {
            "type": "object",
            "description": " ".join((kind.__doc__ or "").replace("``", "").split()),
            "properties": {field: _of(hints[field], described) for field in names},
            "required": names,
            "additionalProperties": False,
        }
        if kind is When:
            described[name]["properties"]["edtf"]["description"] = "The date as EDTF."
    return {"$ref": f"#/$defs/{name}"}


if __name__ == "__main__":
    import sys

    sys.stdout.write(schema_json().decode())
