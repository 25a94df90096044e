"""Leggings as pieces: each leg one piece with the inseam alone, or a front and a back."""

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.stretch.shapes import LeggingsLeg, LegPanel
from notchbook.blocks.stretch_pieces.outline import Drawing, Run, at_height, named_piece
from notchbook.geometry import Path, Point
from notchbook.pattern import Piece
from notchbook.units import TOLERANCES

LEVELS = ("hip_line", "crotch_line", "thigh_line", "knee_line", "calf_line")
"""The level lines of a leg, from above."""


def leg_pieces(names: PanelNames, leg: LeggingsLeg, *, has_side_seam: bool) -> dict[str, Piece]:
    """The pieces by their words: ``leg``, or ``front`` and ``back``; cut as pairs."""
    if has_side_seam:
        return {which: _panel_piece(names, which, leg) for which in ("front", "back")}
    return {"leg": _whole_leg(names, leg)}


def _whole_leg(names: PanelNames, leg: LeggingsLeg) -> Piece:
    """Front toward +x, back toward -x, the side line on x = 0, which is the grain."""
    front, back = leg.front, leg.back
    drawing = Drawing(
        "Leg",
        (
            Run("hem", back.hem.joined(front.hem.reversed()), "hem_back", "hem"),
            Run("front_inseam", front.inseam.reversed(), "hem_front"),
            Run("front_crotch_seam", front.crotch.reversed(), "crotch_point_front"),
            Run("waist", front.waist.reversed().joined(back.waist), "waist_center_front", "plain"),
            Run("back_crotch_seam", back.crotch, "waist_center_back"),
            Run("back_inseam", back.inseam, "crotch_point_back"),
        ),
        levels=tuple(
            (word, Path.line(_inner(back, height), _inner(front, height))) for word, height in _heights(leg)
        ),
        marks=(("waist_side", front.waist.start),),
        cut="pair",
    )
    return named_piece(names.piece("leg"), drawing)


def _panel_piece(names: PanelNames, which: str, leg: LeggingsLeg) -> Piece:
    """A front or back of one leg, between its inseam and its side seam."""
    panel = leg.front if which == "front" else leg.back
    runs = (
        Run("hem", panel.hem.reversed(), "hem_side", "hem"),
        Run("inseam", panel.inseam.reversed(), "hem_inseam"),
        Run("crotch_seam", panel.crotch.reversed(), "crotch_point"),
        Run("waist", panel.waist.reversed(), "waist_center", "plain"),
        Run("side_seam", panel.side, "waist_side"),
    )
    drawing = Drawing(
        names.title(which),
        runs if which == "front" else _turned(runs),
        levels=tuple(
            (word, Path.line(at_height(panel.side, height), _inner(panel, height)))
            for word, height in _heights(leg)
        ),
        cut="pair",
    )
    return named_piece(names.piece(which), drawing)


def _turned(runs: tuple[Run, ...]) -> tuple[Run, ...]:
    """The same runs the other way round: a panel toward -x runs clockwise like this."""
    starts = {run.word: after.start for run, after in zip(runs, (*runs[1:], runs[0]), strict=True)}
    return tuple(Run(run.word, run.path.reversed(), starts[run.word], run.kind) for run in reversed(runs))


def _heights(leg: LeggingsLeg) -> list[tuple[str, float]]:
    heights = (leg.hip_level, _crotch_level(leg), thigh_level(leg), leg.knee_level, leg.calf_level)
    lowest = leg.front.hem.start.y
    return [
        (word, height)
        for word, height in zip(LEVELS, heights, strict=True)
        if height is not None and height > lowest + TOLERANCES.closure
    ]


def _crotch_level(leg: LeggingsLeg) -> float:
    """Where the inseam begins."""
    return leg.front.inseam.start.y


def thigh_level(leg: LeggingsLeg) -> float:
    """Where the inseam has come to the thigh, a little below the crotch."""
    return leg.front.inseam.segments[0].end.y


def _inner(panel: LegPanel, height: float) -> Point:
    """Where a level meets the crotch seam or the inseam."""
    crotch = panel.inseam.start.y
    return at_height(panel.crotch if height > crotch + TOLERANCES.join else panel.inseam, height)
