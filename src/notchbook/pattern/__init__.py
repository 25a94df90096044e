"""Pieces, edges, seams, intakes, marks and findings; walking, splitting and joining them.

This layer knows the form of a pattern but no garment: blocks and steps make patterns, checks judge
them, ``finish`` makes cut pieces of them.
"""

from notchbook.pattern.contradiction import Contradiction
from notchbook.pattern.cure import Cure
from notchbook.pattern.cut import Allowance, CornerStyle, Notch, NotchKind
from notchbook.pattern.data import pattern_from_data, pattern_to_data
from notchbook.pattern.elastic import Elastic, GoesRound
from notchbook.pattern.elastic_lengths import lost_edges, ring_length, without_elastics_on
from notchbook.pattern.expectation import Expectation, ExpectationKind
from notchbook.pattern.finding import Finding, Measured, Severity, worded
from notchbook.pattern.inner_darts import inner_dart_width, is_open_inside, mouth_of
from notchbook.pattern.names import Side, child_name, part_name, piece_name, split_side, spoken, with_side
from notchbook.pattern.operation import STAGES, Operation, Stage
from notchbook.pattern.pattern import (
    STRETCH_FABRIC,
    STRETCH_LINING,
    Fate,
    Group,
    Pattern,
    frozen_map,
    title_of,
)
from notchbook.pattern.piece import (
    CutAs,
    CutInstruction,
    Edge,
    EdgeKind,
    Grain,
    InnerDart,
    Intake,
    InternalLine,
    LineKind,
    Mark,
    MarkKind,
    Piece,
)
from notchbook.pattern.place import Place
from notchbook.pattern.resolve import Ambiguous, Found, Lost, Resolution, require, require_one, resolve
from notchbook.pattern.seam import EdgeUse, Gives, Seam
from notchbook.pattern.sewn import (
    Located,
    closed_motions,
    closed_path,
    closing_motion,
    directed,
    locate,
    run_length,
    run_of,
    sewn_length,
)
from notchbook.pattern.walking import Station, Walk, seam_misfit, walk_seam

__all__ = [
    "STAGES",
    "STRETCH_FABRIC",
    "STRETCH_LINING",
    "Allowance",
    "Ambiguous",
    "Contradiction",
    "CornerStyle",
    "Cure",
    "CutAs",
    "CutInstruction",
    "Edge",
    "EdgeKind",
    "EdgeUse",
    "Elastic",
    "Expectation",
    "ExpectationKind",
    "Fate",
    "Finding",
    "Found",
    "Gives",
    "GoesRound",
    "Grain",
    "Group",
    "InnerDart",
    "Intake",
    "InternalLine",
    "LineKind",
    "Located",
    "Lost",
    "Mark",
    "MarkKind",
    "Measured",
    "Notch",
    "NotchKind",
    "Operation",
    "Pattern",
    "Piece",
    "Place",
    "Resolution",
    "Seam",
    "Severity",
    "Side",
    "Stage",
    "Station",
    "Walk",
    "child_name",
    "closed_motions",
    "closed_path",
    "closing_motion",
    "directed",
    "frozen_map",
    "inner_dart_width",
    "is_open_inside",
    "locate",
    "lost_edges",
    "mouth_of",
    "part_name",
    "pattern_from_data",
    "pattern_to_data",
    "piece_name",
    "require",
    "require_one",
    "resolve",
    "ring_length",
    "run_length",
    "run_of",
    "seam_misfit",
    "sewn_length",
    "split_side",
    "spoken",
    "title_of",
    "walk_seam",
    "with_side",
    "without_elastics_on",
    "worded",
]
