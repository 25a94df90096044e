"""A center on the fold opened into a seam, or a straight center seam laid on the fold.

A zip, a vent or a slit at the center needs a seam there; without them the fold saves one. No line moves and
every name stays: only how the piece is cut changes. Opened and closed again it is as it was.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import (
    Edge,
    EdgeUse,
    Notch,
    Pattern,
    Piece,
    Seam,
    locate,
    part_name,
    require,
    spoken,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.pattern import frozen_map
from notchbook.pattern.resolve import expand
from notchbook.recipe import Change, EdgeName, StepContext, StepDefinition, StepParameters
from notchbook.units import TOLERANCES


class CenterSeamParameters(StepParameters):
    """The ``center``, and whether it becomes a seam or goes on the fold."""

    center: EdgeName
    """The center front or center back, from end to end."""
    becomes: Literal["seam", "fold"] = "seam"
    """A seam between left and right, or the fold."""


def run(pattern: Pattern, context: StepContext, parameters: CenterSeamParameters) -> Change:
    """Open the fold, or lay the center on it."""
    edges = [pattern.edges[name] for name in require(pattern, parameters.center)]
    if parameters.becomes == "seam":
        return _opened(pattern, context, parameters.center, edges)
    return _laid_on_fold(pattern, parameters.center, edges)


def _opened(pattern: Pattern, context: StepContext, center: str, edges: Sequence[Edge]) -> Change:
    """The fold as a seam between the wearer's right and left."""
    if any(edge.kind != "fold" for edge in edges):
        raise StepRefused("center-not-on-fold", edge=spoken(center))
    pieces = _pieces(pattern, edges)
    named = {edge.name for edge in edges}
    for piece in pieces:
        if any(edge.kind == "fold" and edge.name not in named for edge in piece.outline):
            raise StepRefused("center-part-of-fold", edge=spoken(center), piece=spoken(piece.name))
    first, last = edges[0], edges[-1]
    top = first.start if first.path.start.y >= last.path.end.y else last.end
    word = last_word(center)
    seam = Seam(
        part_name(context.slug, word),
        (EdgeUse(center, top, "right"),),
        (EdgeUse(center, top, "left"),),
        allowance_class="center_front" if word == "center_front" else "center_back",
    )
    opened = [_cut(piece, named, "seam") for piece in pieces]
    return Change(pattern.with_pieces(*opened).with_seams(seam))


def _laid_on_fold(pattern: Pattern, center: str, edges: Sequence[Edge]) -> Change:
    """The center seam on the fold: straight on each piece, sewn to nothing but its own reflection."""
    named = {edge.name for edge in edges}
    gone = _own_seams(pattern, center, named)
    for piece in _pieces(pattern, edges):
        if piece.cut != "pair":
            raise StepRefused("center-not-a-pair", edge=spoken(center), piece=spoken(piece.name))
        _require_straight(center, [edge for edge in piece.outline if edge.name in named])
    notches = [notch for notch in pattern.notches.values() if _lies_on(pattern, notch, named)]
    if any(notch.purpose == "zip stop" for notch in notches):
        raise StepRefused("center-holds-zip", edge=spoken(center))
    laid = [_cut(piece, named, "fold") for piece in _pieces(pattern, edges)]
    after = pattern.with_pieces(*laid).with_seams(without=gone)
    after = after.with_notches(without=[notch.name for notch in notches])
    kept = {
        name: allowance
        for name, allowance in after.allowances.items()
        if name not in named and not (name in pattern.groups and set(expand(pattern, name)[0]) <= named)
    }
    reason = "the center lies on the fold"
    removals = dict.fromkeys([*gone, *(notch.name for notch in notches)], reason)
    return Change(replace(after, allowances=frozen_map(kept)), removals=removals)


def _pieces(pattern: Pattern, edges: Sequence[Edge]) -> list[Piece]:
    """The pieces that the edges lie on, in order."""
    return [pattern.pieces[name] for name in dict.fromkeys(pattern.carriers[edge.name] for edge in edges)]


def _cut(piece: Piece, named: set[str], kind: Literal["seam", "fold"]) -> Piece:
    outline = tuple(replace(edge, kind=kind) if edge.name in named else edge for edge in piece.outline)
    return replace(piece, outline=outline, cut="fold" if kind == "fold" else "pair")


def _require_straight(center: str, edges: Sequence[Edge]) -> None:
    """One straight line without a corner, as a fold is; StepRefused ``center-not-straight``."""
    chord = Path.line(edges[0].path.start, edges[-1].path.end)
    places = [place for edge in edges for place in edge.path.flattened(TOLERANCES.sew_length)]
    off = max(chord.nearest(place).gap for place in places)
    if off > TOLERANCES.sew_length:
        raise StepRefused("center-not-straight", edge=spoken(center), off=off)


def _own_seams(pattern: Pattern, center: str, named: set[str]) -> list[str]:
    """The seams that join the center to its own reflection; refused where it is sewn to anything else."""
    gone: list[str] = []
    for seam in pattern.seams.values():
        uses = (*seam.first, *seam.second)
        used = {member for use in uses for member in expand(pattern, use.edge)[0]}
        if not used & named:
            continue
        if not used <= named or any(use.side == "both" for use in uses):
            raise StepRefused("center-sewn-elsewhere", edge=spoken(center), seam=spoken(seam.name))
        gone.append(seam.name)
    return gone


def _lies_on(pattern: Pattern, notch: Notch, named: set[str]) -> bool:
    return locate(pattern, notch.place).edge.name in named


STEP = StepDefinition(
    operation="center_seam",
    version=1,
    kind="style",
    title="Center seam or fold",
    sentence="{center} becomes a {becomes}",
    parameters=CenterSeamParameters,
    run=run,
)
