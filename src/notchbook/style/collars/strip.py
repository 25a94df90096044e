"""A bias strip as a piece: its raw edges drawn, its folds marked, sewn to what it binds."""

import math
from dataclasses import dataclass

from notchbook.geometry import Path, Point
from notchbook.pattern import (
    Allowance,
    CutInstruction,
    Edge,
    EdgeKind,
    EdgeUse,
    Gives,
    Grain,
    InternalLine,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    part_name,
    piece_name,
)
from notchbook.style.collars.bound_run import BoundRun

_TRUE_BIAS = 45.0


@dataclass(frozen=True, slots=True)
class Strip:
    """A strip of a finished ``width`` mm, cut ``layers`` times as wide, ``length`` mm along its run;
    ``called`` is its title, empty where what it binds says enough."""

    slug: str
    run: BoundRun
    length: float
    width: float
    layers: int
    material: str
    called: str = ""

    @property
    def title(self) -> str:
        """What it is called, else what it binds, so that two bindings are told apart: ``Neck binding``."""
        words = self.run.uses[0].edge.split("/")[1].split("@")[0].replace("_", " ")
        return self.called or f"{words.capitalize()} binding"

    @property
    def name(self) -> str:
        """The name of the piece."""
        return piece_name(self.slug, "binding")

    def at(self, word: str) -> str:
        """The name of a part of it."""
        return part_name(self.name, word)

    @property
    def start(self) -> str:
        """The corner at which the bound edge begins."""
        return self.at("lower_center" if self.run.is_half else "lower_left")


def square_side(length: float, width: float) -> float:
    """The side of the square of cloth that gives a continuous bias strip so long and wide, mm: its area is
    that of the strip, seams not counted."""
    return math.sqrt(length * width)


def with_strip(pattern: Pattern, strip: Strip) -> Pattern:
    """The pattern with the strip cut, marked and sewn; what it binds has no allowance."""
    after = pattern.with_pieces(_piece(strip)).with_seams(*_seams(strip)).with_notches(*_quarters(strip))
    raw = Allowance("bound")
    bound = dict.fromkeys((use.edge for use in strip.run.uses), raw)
    after = after.with_allowances({**bound, strip.at("lower"): raw, strip.at("upper"): raw})
    if strip.run.closes in ("from_center", "open"):
        ends = ["end"] if strip.run.is_half else ["left_end", "right_end"]
        after = after.with_allowances(dict.fromkeys((strip.at(end) for end in ends), Allowance("plain")))
    return after if strip.material == "self" else after.with_materials({strip.material: strip.material})


def _piece(strip: Strip) -> Piece:
    height = strip.width * strip.layers
    corners = [Point(0, 0), Point(strip.length, 0), Point(strip.length, height), Point(0, height)]
    words = ["lower", "right_end", "upper", "left_end"]
    points = ["lower_left", "lower_right", "upper_right", "upper_left"]
    if strip.run.is_half:
        words = ["lower", "end", "upper", "center"]
        points = ["lower_center", "lower_end", "upper_end", "upper_center"]
    closed = strip.run.closes in ("ring", "half_ring")
    kinds: dict[str, EdgeKind] = {"lower": "seam", "upper": "plain", "center": "fold"}
    outline = tuple(
        Edge(
            strip.at(word),
            Path.line(corners[index], corners[(index + 1) % 4]),
            strip.at(points[index]),
            strip.at(points[(index + 1) % 4]),
            kinds.get(word, "seam" if closed else "plain"),
        )
        for index, word in enumerate(words)
    )
    return Piece(
        name=strip.name,
        title=strip.title,
        outline=outline,
        lines=tuple(_folds(strip)),
        grain=Grain(_TRUE_BIAS),
        cut="fold" if strip.run.is_half else "pair",
        instructions=(CutInstruction(strip.material),),
        rule=strip.slug,
    )


def _folds(strip: Strip) -> list[InternalLine]:
    """The folds of the strip: a finished width apart."""
    lines = []
    for number in range(1, strip.layers):
        height = number * strip.width
        word = "fold_line" if number == 1 else f"fold_line_{number}"
        path = Path.line(Point(0.0, height), Point(strip.length, height))
        lines.append(InternalLine(strip.at(word), path, "fold_line"))
    return lines


def _seams(strip: Strip) -> tuple[Seam, ...]:
    """The strip stretched onto its edge, and its ends joined where it closes to a ring."""
    run = strip.run
    ease = run.length - strip.length
    gives: Gives = "shorter" if ease > 0.0 else "longer"
    sewn = Seam(
        part_name(strip.slug, "bound"),
        (EdgeUse(strip.at("lower"), strip.start),),
        run.uses,
        ease,
        "bound",
        "BSc" if strip.layers > _SINGLE else "BSa",
        gives=gives,
    )
    if run.closes == "half_ring":
        use = strip.at("end"), strip.at("lower_end")
        ends = (EdgeUse(*use, "right"),), (EdgeUse(*use, "left"),)
    elif run.closes == "ring":
        ends = (
            (EdgeUse(strip.at("left_end"), strip.at("lower_left")),),
            (EdgeUse(strip.at("right_end"), strip.at("lower_right")),),
        )
    else:
        return (sewn,)
    return sewn, Seam(part_name(strip.slug, "binding_end"), *ends, allowance_class="facing_edge")


_SINGLE = 2
"""Widths of a strip that is laid over the edge in a single layer."""

_QUARTERS = {"quarter_notch": 0.25, "half_notch": 0.5, "three_quarter_notch": 0.75}


def _quarters(strip: Strip) -> list[Notch]:
    """Quarter marks on the edge that is bound and on the strip, so that it is stretched on evenly."""
    seam, run = part_name(strip.slug, "bound"), strip.run
    marks: list[Notch] = []
    for word, share in ({"half_notch": 0.5} if run.is_half else _QUARTERS).items():
        own = Place(strip.at("lower"), strip.start, share * strip.length)
        marks.append(Notch(strip.at(word), own, seam=seam, purpose="quarter"))
        mate = run.place(share * run.length)
        marks.append(Notch(part_name(seam, word), mate, seam=seam, purpose="quarter"))
    return marks
