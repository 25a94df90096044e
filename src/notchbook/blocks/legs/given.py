"""What trousers are drafted from: one side of the body, eases added, mm."""

from dataclasses import dataclass
from typing import Literal

Cut = Literal["close", "wide", "culottes"]
"""How the legs are cut about the crotch: ``close`` for fitted and straight trousers and shorts; ``wide`` may
hang deeper; ``culottes`` have the long extensions of a divided skirt."""

CrotchParts = Literal["in_shape", "as_far"]
"""How far the parts of the crotch are followed: while both curves keep their shape, or as the levers go."""

CrotchLimits = Literal["usual", "wide"]
"""How far the levers of the crotch may be pulled."""

NarrowDarts = Literal["left_out", "sewn"]
"""What becomes of darts that are too narrow for their sewing."""

Wearer = Literal["women", "men"]
"""Whose customs of darts and slant hold; None for children and where it is not known."""


@dataclass(frozen=True, slots=True)
class LevelGirth:
    """A girth with its ease that the trousers must have at least, and how far below the top edge it lies,
    mm."""

    girth: float
    depth: float


@dataclass(frozen=True, slots=True)
class TrousersGiven:
    """One side of a pair of trousers. Girths are those of the whole body or leg with their ease, mm.

    ``waist`` is the girth of the top edge, wherever it lies (see ``lower_waist.lowered`` for an edge below
    the waist); ``hip_depth``, ``rise``, ``knee_depth`` and ``length`` run down from it along the side: to the
    hip level, to the crotch as the body has it (no ease), to the knee and to the hem.

    ``depth_ease`` is how far below the body's crotch the trousers' crotch level lies by default; the draft
    may pull it (see the levers), down to ``depth_most`` (or to the ease itself where that is more).
    ``crotch`` is the sewn length of the whole crotch seam that is wanted, from the top edge in front to that
    behind; ``front_crotch`` and ``back_crotch`` are its parts where both were measured, else None: the total
    counts, the parts are met as far as ``crotch_parts`` says. ``is_split_fixed`` says that they are those of
    the other leg, to which this one is sewn: then the levers go as far as they must.

    ``thigh`` is the least girth of the leg, at the crotch level and 50 mm below. ``knee`` and ``hem`` are the
    finished girths of the leg; without a ``knee`` the leg runs from the crotch level to the hem in one line,
    without a ``hem`` it falls straight. ``hem_follows`` says that nobody asked for the hem: it becomes wider
    with a knee that is made wider, so that the leg does not taper like a peg.

    ``inseam_stretch`` is how much shorter the back inseam is than the front one, on which it is stretched.
    ``between`` are girths between top edge and hip (belly, high hip). ``front_hip`` and ``front_waist`` are
    front arcs of the whole body with their share of ease, None when not measured. The counts of darts are
    settled before: 0 to 2 (``dart_counts.count_darts``). Where ``narrow_darts`` are left out, as many of them
    as are worth their sewing are drawn on this body; ``front_empty`` and ``back_empty`` more keep their names
    and take up nothing. A dart length of None is the usual one.
    """

    waist: float
    hip: float
    hip_depth: float
    rise: float
    depth_ease: float
    depth_most: float
    crotch: float
    thigh: float
    knee_depth: float
    length: float
    knee: float | None
    hem: float | None
    wearer: Wearer | None = None
    cut: Cut = "close"
    front_darts: int = 1
    back_darts: int = 2
    front_empty: int = 0
    back_empty: int = 0
    narrow_darts: NarrowDarts = "sewn"
    front_crotch: float | None = None
    back_crotch: float | None = None
    inseam_stretch: float = 5.0
    hem_follows: bool = False
    between: tuple[LevelGirth, ...] = ()
    front_hip: float | None = None
    front_waist: float | None = None
    front_dart_length: float | None = None
    back_dart_length: float | None = None
    crotch_limits: CrotchLimits = "usual"
    crotch_parts: CrotchParts = "as_far"
    is_split_fixed: bool = False
