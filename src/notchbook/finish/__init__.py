"""From the sew line to the cut piece: allowance, corners, dart caps, notches, drill holes, grain, label.

:func:`finish` is a pure function of a pattern, a house table and the cloth. The sew line stays the
truth; a cut piece is made anew from it each time and never stored as the pattern.
"""

from notchbook.finish.cloth import Cloth
from notchbook.finish.cut_piece import (
    CutEdge,
    CutNotch,
    CutPiece,
    DartLines,
    DrillHole,
    FoldLine,
    GrainLine,
    LabelBox,
    Quantity,
)
from notchbook.finish.cut_ready import finish
from notchbook.finish.house_table import HouseTable, Supply
from notchbook.finish.read_table import read_house_table
from notchbook.finish.row import Row
from notchbook.finish.shipped_tables import muslin_table, production_table

__all__ = [
    "Cloth",
    "CutEdge",
    "CutNotch",
    "CutPiece",
    "DartLines",
    "DrillHole",
    "FoldLine",
    "GrainLine",
    "HouseTable",
    "LabelBox",
    "Quantity",
    "Row",
    "Supply",
    "finish",
    "muslin_table",
    "production_table",
    "read_house_table",
]
