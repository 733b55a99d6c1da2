from journal.domain.cautions import CAUTIONS, NEVER_A_PASS


def test_every_caution_is_found_by_its_own_key() -> None:
    assert all(key == caution.key for key, caution in CAUTIONS.items())


def test_every_danger_the_record_touches_has_a_caution() -> None:
    touched = {
        "welding", "isocyanate", "fuel", "brakes", "stands", "structure", "anchorage", "lead",
        "asbestos", "airbags",
    }  # fmt: skip
    assert touched <= set(CAUTIONS)


def test_no_caution_calls_anything_safe() -> None:
    for caution in CAUTIONS.values():
        assert "is safe" not in caution.text
    assert "never passes" in NEVER_A_PASS


def test_load_bearing_work_is_sent_to_an_inspection() -> None:
    for key in ("structure", "anchorage"):
        assert "have it inspected" in CAUTIONS[key].text.lower()
