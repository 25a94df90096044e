"""Armhole and sleeve agree: the underarm is lowered for a full arm, the sleeve widened for a thin one."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Literal

from notchbook.blocks.stretch.armholes import Armholes
from notchbook.blocks.stretch.cap import Cap, cap_length, draw_cap
from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import StretchSleeveGiven
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry import Path
from notchbook.geometry.solve import solve_rising


@dataclass(frozen=True, slots=True)
class ArmRoom:
    """The cap in use, the sleeve that it was drawn for, by how much the underarm was lowered and the sleeve
    widened for it, mm."""

    cap: Cap
    sleeve: StretchSleeveGiven
    lowered: float
    wider: float


def settle_arm_room(given: StretchSleeveGiven, armholes_at: Callable[[float], Armholes]) -> ArmRoom:
    """The cap, neither flatter nor higher than a hand would draw it.

    ``armholes_at`` draws the armholes with the underarm lowered by so many mm. DraftRefused
    ``stretch-arm-too-full`` with the most that can be had, ``stretch-arm-too-thin``.
    """
    room = _room(given, armholes_at)
    if Path((room.cap.front, *Path.of(room.cap.back).reversed().segments)).self_crossings():
        raise DraftRefused(
            "stretch-arm-too-thin",
            biceps=given.biceps,
            armhole=armholes_at(room.lowered).girth,
            most=figure("cap.most_widening"),
        )
    return room


def _room(given: StretchSleeveGiven, armholes_at: Callable[[float], Armholes]) -> ArmRoom:
    armholes = armholes_at(0.0)
    if _over(given, armholes, given.biceps, "least") < 0.0:
        return _lowered(given, armholes_at)
    if _over(given, armholes, given.biceps, "most") > 0.0:
        return _widened(given, armholes)
    return _drawn(given, armholes, 0.0, 0.0)


def _drawn(given: StretchSleeveGiven, armholes: Armholes, lowered: float, wider: float) -> ArmRoom:
    sleeve = sleeve_from_neck(given, armholes)
    return ArmRoom(draw_cap(sleeve, armholes, given.biceps + wider), sleeve, lowered, wider)


def sleeve_from_neck(given: StretchSleeveGiven, armholes: Armholes) -> StretchSleeveGiven:
    """The sleeve in these armholes: so much shorter as its shoulder drops over the arm, and longer as it lies
    farther in, that from the neck it ends where it was asked to."""
    return replace(given, length=given.length + armholes.shoulder.shorter)


def _over(
    given: StretchSleeveGiven, armholes: Armholes, biceps: float, limit: Literal["least", "most"]
) -> float:
    """By how much the armhole is longer than a cap of the least or most height, mm."""
    girth = armholes.girth
    height = figure(f"cap.{limit}_share") * girth
    sleeve = sleeve_from_neck(given, armholes)
    return girth - cap_length(sleeve, armholes.front.length / girth, biceps, height)


def _lowered(given: StretchSleeveGiven, armholes_at: Callable[[float], Armholes]) -> ArmRoom:
    most = figure("cap.most_lowering")
    try:
        lowered = solve_rising(
            lambda mm: _over(given, armholes_at(mm), given.biceps, "least"), 0.0, 10.0, 0.0, most
        )
    except GeometryError as error:
        girth = armholes_at(most).girth
        raise DraftRefused("stretch-arm-too-full", biceps=given.biceps, armhole=girth, most=most) from error
    return _drawn(given, armholes_at(lowered), lowered, 0.0)


def _widened(given: StretchSleeveGiven, armholes: Armholes) -> ArmRoom:
    most = figure("cap.most_widening")
    try:
        wider = solve_rising(
            lambda mm: _over(given, armholes, given.biceps + mm, "most"), 0.0, 10.0, 0.0, most
        )
    except GeometryError as error:
        raise DraftRefused(
            "stretch-arm-too-thin", biceps=given.biceps, armhole=armholes.girth, most=most
        ) from error
    return _drawn(given, armholes, 0.0, wider)
