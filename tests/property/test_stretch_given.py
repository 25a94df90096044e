"""Stretch blocks from any numbers: what is asked comes out, or the draft is refused with its code."""

from dataclasses import fields, replace
from typing import TypeVar

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.blocks.stretch import (
    BodysuitGiven,
    LeggingsGiven,
    StretchSleeveGiven,
    TorsoGiven,
    draft_bodysuit,
    draft_leggings,
    draft_torso,
)
from notchbook.blocks.upper import Lever
from notchbook.errors import DraftRefused
from support.stretch_shapes import (
    LEGGINGS,
    SUIT,
    TOLERANCE,
    leg_area,
    length,
    panel_area,
    sleeve_area,
)

CODES = ("stretch-", "bodysuit-", "leggings-")

PLAUSIBLE = st.floats(0.92, 1.08)
"""Every number on its own: bodies that no tape would give, yet not far from one."""

ANYTHING = st.floats(0.3, 2.6)

Kind = TypeVar("Kind", TorsoGiven, BodysuitGiven, LeggingsGiven, StretchSleeveGiven)


@st.composite
def shaken(draw: st.DrawFn, usual: Kind, factor: st.SearchStrategy[float]) -> Kind:
    """The same with every number times a factor of its own."""
    changed: dict[str, object] = {}
    for field in fields(usual):
        value = getattr(usual, field.name)
        if isinstance(value, float):
            changed[field.name] = value * draw(factor)
        elif isinstance(value, StretchSleeveGiven):
            changed[field.name] = draw(shaken(value, factor))
        elif isinstance(value, TorsoGiven):
            torso: TorsoGiven = draw(shaken(value, factor))
            changed[field.name] = torso
    return replace(usual, **changed)  # type: ignore[arg-type]  # fields by name


def pulled(levers: tuple[Lever, ...], name: str) -> Lever:
    return next(one for one in levers if one.name == name)


@settings(max_examples=25)
@given(shaken(SUIT, PLAUSIBLE))
def test_a_bodysuit_closes(given_: BodysuitGiven) -> None:
    try:
        half = draft_bodysuit(given_)
    except DraftRefused as refused:
        assert refused.code.startswith(CODES)
        return
    sleeve = half.sleeve
    assert sleeve is not None
    assert length(sleeve.cap_front) == pytest.approx(length(half.front.armhole), abs=TOLERANCE)
    assert length(sleeve.cap_back) == pytest.approx(length(half.back.armhole), abs=TOLERANCE)
    if not pulled(half.levers, "leg_height").at_limit:
        opening = length(half.front.leg) + length(half.back.leg)
        assert opening == pytest.approx(given_.leg_opening, abs=TOLERANCE)
    necks = length(half.front.neck) + length(half.back.neck)
    assert necks == pytest.approx(given_.torso.neck / 2, abs=TOLERANCE)


@settings(max_examples=25)
@given(shaken(LEGGINGS, PLAUSIBLE))
def test_leggings_close(given_: LeggingsGiven) -> None:
    try:
        leg = draft_leggings(given_)
    except DraftRefused as refused:
        assert refused.code.startswith(CODES)
        return
    whole = length(leg.front.crotch) + length(leg.back.crotch)
    assert whole == pytest.approx(given_.crotch_front + given_.crotch_back, abs=TOLERANCE)
    waist = 2 * (length(leg.front.waist) + length(leg.back.waist))
    wider = pulled(leg.levers, "waist_left_wide").pulled
    assert waist == pytest.approx(given_.waist + wider, abs=TOLERANCE)


@settings(max_examples=80)
@given(shaken(SUIT, ANYTHING))
def test_implausible_uppers_are_refused_or_lie_flat(given_: BodysuitGiven) -> None:
    try:
        half = draft_torso(given_.torso)
        suit = draft_bodysuit(given_)
    except DraftRefused as refused:
        assert refused.code.startswith(CODES)
        assert refused.text()
        return
    assert half.sleeve is not None
    assert sleeve_area(half.sleeve).is_valid
    assert all(panel_area(panel).is_valid for panel in (half.front, half.back, suit.front, suit.back))


@settings(max_examples=80)
@given(shaken(LEGGINGS, ANYTHING))
def test_implausible_leggings_are_refused_or_lie_flat(given_: LeggingsGiven) -> None:
    try:
        leg = draft_leggings(given_)
    except DraftRefused as refused:
        assert refused.code.startswith(CODES)
        assert refused.text()
        return
    assert leg_area(leg.front, leg.back).is_valid
