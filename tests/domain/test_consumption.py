"""Guidance on welding, and the wire and gas that it takes."""

import math
from dataclasses import fields, replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain import guidance
from journal.domain.consumption import (
    ABOUT,
    Assumptions,
    Consumption,
    Welded,
    check_assumptions,
    estimate,
)
from journal.domain.errors import JournalError
from journal.domain.seams import Joint

METRE = Welded(Joint.BUTT, 1000.0, thickness_mm=1.0)


# Guidance


@pytest.mark.parametrize(("mm", "amperes"), [(0.125 * 25.4, 125), (0.8, 31), (1.0, 39), (1.2, 47)])
def test_the_current_is_an_ampere_for_each_thousandth_of_an_inch(mm: float, amperes: int) -> None:
    # Welder owner's manual OM-228 042, section 12-2; its example is 0.125 in, 125 A.
    assert round(guidance.mig_current(mm)) == amperes


def test_the_feed_of_a_thin_wire() -> None:
    # Same manuals: 3.5 in/min for an ampere with .023 in wire, which makes 138 in, or 3.5 m, a
    # minute at the current for 1.0 mm.
    assert guidance.wire_feed(0.6, guidance.mig_current(1.0)) == pytest.approx(
        138 * 0.0254, abs=0.01
    )
    assert guidance.wire_feed(0.8, 100) == pytest.approx(200 * 0.0254)
    assert guidance.wire_feed(0.9, 100) == pytest.approx(160 * 0.0254)


@pytest.mark.parametrize(("mm", "least", "most"), [(0.6, 30, 90), (0.8, 40, 145), (0.9, 50, 180)])
def test_each_wire_has_its_currents(mm: float, least: float, most: float) -> None:
    found = guidance.wire(mm)
    assert (found.least_amperes, found.most_amperes) == (least, most)
    assert "OM-194 199" in found.source


def test_an_unknown_wire_is_refused() -> None:
    with pytest.raises(
        JournalError, match=r"no wire of 1\.2 mm in the table; it has 0\.6, 0\.8, 0\.9"
    ):
        guidance.wire(1.2)


def test_spacings_are_those_of_their_sources() -> None:
    # A service manual of 2003, p. 3-106: 8 mm holes, 13 mm from the edge, 40 mm apart; stitches of
    # 25 mm with 25 mm between. A maker's repair manual of 2011: new spots 30 mm apart.
    assert (guidance.PLUG_HOLE_MM, guidance.PLUG_EDGE_MM, guidance.PLUG_SPACING_MM) == (8, 13, 40)
    assert (guidance.STITCH_MM, guidance.STITCH_GAP_MM) == (25, 25)
    assert guidance.SPOT_SPACING_MM == 30
    assert "3-106" in guidance.guidance("plugs").source
    assert "3-106" in guidance.guidance("stitches").source


def test_guidance_says_what_its_numbers_say_and_whose_it_is() -> None:
    plugs = guidance.guidance("plugs").text
    assert all(number in plugs for number in ("8 mm", "13 mm", "40 mm"))
    assert all(piece.source for piece in guidance.GUIDANCE)
    assert len({piece.key for piece in guidance.GUIDANCE}) == len(guidance.GUIDANCE)
    with pytest.raises(JournalError, match="no guidance called “magic”"):
        guidance.guidance("magic")


# Wire and gas


def test_a_metre_of_butt_seam_by_hand() -> None:
    # Arch 2/3 · 4 · 0.8 and gap 0.8 · 1 make 2.933 mm²; 2,933 mm³, of which the wire is 1/0.9;
    # 0.2827 mm² of wire; 3.5 in/min for each of 39.37 A; 10 l/min and a quarter more.
    found = estimate([METRE])
    metal = (2 / 3 * 4 * 0.8 + 0.8) * 1000 / 0.9
    assert found.wire_g == pytest.approx(metal * 7.85e-3)
    assert found.wire_m == pytest.approx(metal / (math.pi * 0.09) / 1000)
    assert found.arc_minutes == pytest.approx(
        found.wire_m / (3.5 * 25.4 * 39.3701 / 1000), rel=1e-4
    )
    assert found.gas_l == pytest.approx(found.arc_minutes * 12.5)


def test_a_lap_fills_the_corner_and_a_joggled_lap_the_gap() -> None:
    def grams(joint: Joint) -> float:
        return estimate([replace(METRE, joint=joint)]).wire_g

    assert grams(Joint.JOGGLED) == grams(Joint.BUTT)
    assert grams(Joint.LAP) == pytest.approx((2 / 3 * 3.2 + 0.5) * 1000 / 0.9 * 7.85e-3)


def test_a_plug_row_goes_by_the_number_of_its_plugs() -> None:
    row = Welded(Joint.PLUGS, 400, welds=11, thickness_mm=1.0)
    assert estimate([row]).wire_g == pytest.approx(11 * math.pi * 16 * 1.4 / 0.9 * 7.85e-3)
    assert estimate([replace(row, length_mm=4000)]) == estimate([row])


def test_spot_welds_take_neither_wire_nor_gas() -> None:
    assert estimate([Welded(Joint.SPOTS, 500, welds=20)]) == Consumption()


def test_nothing_welded_takes_nothing() -> None:
    assert estimate([]) == Consumption()
    assert estimate([replace(METRE, length_mm=0)]) == Consumption()


def test_the_assumed_sheet_stands_in_where_no_patch_says() -> None:
    thin = Assumptions(sheet_mm=0.8)
    assert estimate([replace(METRE, thickness_mm=None)], thin) == estimate(
        [replace(METRE, thickness_mm=0.8)], thin
    )


def test_the_current_stays_within_what_the_wire_is_for() -> None:
    # 0.5 mm would ask for 20 A, below what 0.6 mm wire runs at: 30 A it is.
    found = estimate([replace(METRE, thickness_mm=0.5)])
    assert found.wire_m / found.arc_minutes == pytest.approx(guidance.wire_feed(0.6, 30))


lengths = st.floats(0, 50_000)
joints = st.sampled_from([Joint.BUTT, Joint.LAP, Joint.JOGGLED])


@given(joints, lengths, lengths)
def test_two_seams_take_what_each_takes(joint: Joint, one: float, other: float) -> None:
    both = estimate([Welded(joint, one), Welded(joint, other)])
    whole = estimate([Welded(joint, one + other)])
    assert both.wire_g == pytest.approx(whole.wire_g)
    assert both.gas_l == pytest.approx(whole.gas_l)


@pytest.mark.parametrize(
    ("field", "value"),
    [("bead_width_mm", 5.0), ("bead_height_mm", 1.0), ("butt_gap_mm", 1.0), ("gas_flow", 12.0)],
)
def test_what_the_owner_changes_changes_the_estimate(field: str, value: float) -> None:
    changed = replace(Assumptions(), **{field: value})
    assert estimate([METRE], changed).gas_l > estimate([METRE]).gas_l


def test_every_assumption_says_what_it_is_and_where_it_comes_from() -> None:
    assert list(ABOUT) == [field.name for field in fields(Assumptions)]
    for name, about in ABOUT.items():
        assert about.label
        assert about.basis
        assert about.least <= getattr(Assumptions(), name) <= about.most
    assert "3-106" in ABOUT["plug_hole_mm"].basis
    assert ABOUT["gas_flow"].basis == "rule of thumb, common practice, no source"


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        (Assumptions(gas_flow=0), "Gas while the arc burns must be from 1 to 40 l/min, not 0."),
        (Assumptions(wire_share=1.2), "ends in the weld must be from 0.3 to 1, not 1.2."),
        (Assumptions(bead_width_mm=math.nan), "Width of the bead must be"),
        (Assumptions(sheet_mm=-1), "Sheet thickness"),
        (Assumptions(wire_mm=0.7), "no wire of 0.7 mm"),
    ],
)
def test_assumptions_beyond_reason_are_refused(wrong: Assumptions, said: str) -> None:
    with pytest.raises(JournalError, match=said):
        check_assumptions(wrong)
    with pytest.raises(JournalError, match=said):
        estimate([METRE], wrong)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        (replace(METRE, length_mm=-1), "can't be less than nothing"),
        (replace(METRE, length_mm=math.nan), "can't be less than nothing"),
        (Welded(Joint.PLUGS, 10, welds=-1), "can't be less than nothing"),
        (replace(METRE, thickness_mm=99), "can't be meant"),
    ],
)
def test_seams_beyond_reason_are_refused(wrong: Welded, said: str) -> None:
    with pytest.raises(JournalError, match=said):
        estimate([wrong])
