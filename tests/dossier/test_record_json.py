"""The record as JSON, and its published schema."""

from dataclasses import replace

from jsonschema import Draft202012Validator

from journal.domain.private_words import Private
from journal.dossier.bundle.record_json import as_plain, schema, schema_json
from journal.files.assets import asset
from tests.dossier.showcase import showcase


def test_the_published_schema_is_that_of_the_record() -> None:
    """Write it anew: python -m journal.dossier.bundle.record_json > assets/schema/…"""
    assert asset("schema/record.schema.json").read_bytes() == schema_json()


def test_the_schema_is_one_by_its_own_standard_and_leaves_nothing_open() -> None:
    whole = schema()
    Draft202012Validator.check_schema(whole)

    def look(part: object) -> None:
        assert part != {}
        for inner in part.values() if isinstance(part, dict) else ():
            look(inner)
        for inner in part if isinstance(part, list) else ():
            look(inner)

    look(whole["$defs"])
    assert all(described["description"] for described in whole["$defs"].values())


def test_a_long_record_is_as_the_schema_says_and_another_is_not() -> None:
    validator = Draft202012Validator(schema())
    record = replace(showcase(), withheld=frozenset({Private.PRICES, Private.PEOPLE}))
    document = {"format": 1, "made": "2026-05-01", "program": "x", "record": as_plain(record)}
    validator.validate(document)
    assert document["record"]["withheld"] == ["people", "prices"]
    assert document["record"]["drawing"]["shapes"][0]["shape"].startswith("M")
    for spoilt in ({**document, "format": 2}, {**document, "more": 1}):
        assert not validator.is_valid(spoilt)
