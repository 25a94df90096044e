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
    FoldLines,
    GrainLine,
    LabelBox,
    Quantity,
)
from notchbook.finish.cut_ready import finish
from notchbook.finish.elastic_cuts import ElasticCut, elastic_cuts
from notchbook.finish.house_table import HouseTable, Supply
from notchbook.finish.label_places import label_places
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
    "ElasticCut",
    "FoldLine",
    "FoldLines",
    "GrainLine",
    "HouseTable",
    "LabelBox",
    "Quantity",
    "Row",
    "Supply",
    "elastic_cuts",
    "finish",
    "label_places",
    "muslin_table",
    "production_table",
    "read_house_table",
]
