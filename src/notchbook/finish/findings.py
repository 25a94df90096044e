"""What finishing says when a piece cannot be cut quite as asked."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.errors import entry
from notchbook.errors.catalogue import fill, length_in_mm
from notchbook.finish.cloth import Cloth
from notchbook.finish.cut_outline import CutOutline
from notchbook.finish.cut_piece import CutNotch
from notchbook.finish.house_table import HouseTable
from notchbook.finish.strip import Strip
from notchbook.geometry import Point
from notchbook.pattern import Finding, Piece, Severity, spoken
from notchbook.units import TOLERANCES

CHECK = "finish"
"""The name under which finishing speaks."""


@dataclass(frozen=True, slots=True)
class HemRules:
    """What decides whether a hem lies flat, and under which name (``sources``: the edge of the half that
    an edge of a whole piece comes from) it is spoken of."""

    house: HouseTable
    cloth: Cloth
    sources: Mapping[str, str]


def findings_of(
    piece: Piece, outline: CutOutline, notches: tuple[CutNotch, ...], rules: HemRules
) -> tuple[Finding, ...]:
    """Curved hems that will not lie flat, tips cut off, edges swallowed, notches that are only marked.

    The two halves of one hem are one hem and spoken of once.
    """
    once = {rules.sources.get(strip.edge.name, strip.edge.name): strip for strip in reversed(outline.strips)}
    hems = [_hem_finding(piece, name, strip, rules) for name, strip in reversed(once.items())]
    corners = (
        _said("corner-blunted", piece, name, piece.points.get(name), corner=spoken(name))
        for name in outline.blunted
    )
    swallowed = (
        _said("edge-swallowed", piece, strip.edge.name, strip.edge.path.start, edge=spoken(strip.edge.name))
        for strip, part in zip(outline.strips, outline.parts, strict=True)
        if part is None
    )
    marked = (
        _said(
            "notch-marked",
            piece,
            notch.name,
            notch.sew_position,
            notch=spoken(notch.name),
            edge=spoken(notch.edge),
        )
        for notch in notches
        if notch.depth == 0.0
    )
    return (*(hem for hem in hems if hem is not None), *corners, *swallowed, *marked)


def hem_excess(strip: Strip) -> float:
    """(outer - inner) / inner of a hem: its raw edge beside its fold; negative where it is too short."""
    outer = strip.last - strip.first
    inner = strip.edge.length
    return (outer - inner) / inner


def _hem_finding(piece: Piece, name: str, strip: Strip, rules: HemRules) -> Finding | None:
    if strip.edge.kind != "hem" or strip.width <= TOLERANCES.sew_length:
        return None
    limit = rules.house.mark(f"hem_excess_{rules.cloth.surface}")
    excess = hem_excess(strip) * 100.0
    if abs(excess) <= limit:
        return None
    middle = strip.edge.path.point_at(strip.edge.length / 2.0)
    is_longer = excess > 0.0
    said = _said(
        "hem-excess",
        piece,
        name,
        middle,
        edge=spoken(name),
        excess=abs(excess),
        way="longer" if is_longer else "shorter",
        remedy="ease or shrink in the fullness" if is_longer else "stretch it or leave its side seams open",
        limit=limit,
        depth=strip.width,
    )
    return replace(said, severity=Severity.LOOK, measured=excess, wanted=limit, unit="percent")


def _said(code: str, piece: Piece, where: str, position: Point | None, **facts: object) -> Finding:
    """A note in the words of the catalogue."""
    words = entry(code)
    facts["piece"] = piece.title
    return Finding(
        check=CHECK,
        code=code,
        severity=Severity.NOTE,
        message=fill(words.message, facts, length_in_mm),
        piece=piece.name,
        where=where,
        position=position,
        suggestion=fill(words.next_step, facts, length_in_mm),
        names=(where,),
        facts=tuple(facts.items()),
    )
