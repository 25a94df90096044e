"""Measures of bodies, dress forms and size charts: what they are, where they come from, whether they agree.

Lengths are mm inside, angles degrees, weight kg, never negative. Left and right are the wearer's.
``docs/body-library.md`` shows how it is used.

What is where:

- here: :class:`Measure` (a value and how far it can be trusted), :class:`MeasureSet` (those of one body, form
  or size), the table of all measures (``measures.toml``) and of the places on the body (``landmarks.toml``)
- ``files``: one body or many read from JSON or CSV, and written
- ``importing``: tables from elsewhere, with a preview of what they would mean
- ``doubts``: what is to be asked before a set is used; ``doubts.slips``: what was probably meant
- ``population``: the bodies of a survey, and what they let expect of a measure (loads numpy)
- ``estimating``: measures that nobody took, each with its ± (loads numpy)
- ``charts``: size charts; ``charts.comparing``: the nearest size, two sets side by side; ``charts.padding``:
  a dress form padded for a client; ``charts.doubts``: what is to be asked about a chart
- ``figure``: the drawn figure with the way of the tape

Importing this package loads no numerics: they come with the first set that is held against a population.
"""

from notchbook.body.circumstances import Circumstances
from notchbook.body.doubts.consistency import check_consistent, refuse_inconsistent
from notchbook.body.doubts.doubt import Doubt, DoubtLevel, Repair, Suspect
from notchbook.body.doubts.likely_slip import LikelySlip, likely_slips
from notchbook.body.doubts.look_over import look_over
from notchbook.body.doubts.looked_over import LookedOver, Unseen
from notchbook.body.doubts.standing import Standing
from notchbook.body.files.raw_value import RawValue, read_value
from notchbook.body.files.read_bodies import BodyRow, read_bodies
from notchbook.body.files.read_measures import read_measures
from notchbook.body.files.set_data import set_from_data, set_to_data
from notchbook.body.files.write_measures import write_measures
from notchbook.body.landmark_table import Landmark, landmark_table, level_table
from notchbook.body.measure import STATUSES, Measure, Status
from notchbook.body.measure_set import (
    KINDS,
    POPULATIONS,
    RISE_METHODS,
    TAKEN_AS,
    WAIST_LEVELS,
    MeasureSet,
    PopulationName,
    RiseMethod,
    SetKind,
    TakenAs,
    WaistLevel,
)
from notchbook.body.measure_table import (
    MeasureEntry,
    MeasureKind,
    measure_entry,
    measure_table,
    notation_names,
)
from notchbook.body.sides import SIDES, Side, plain_key, sided_key, split_key

__all__ = [
    "KINDS",
    "POPULATIONS",
    "RISE_METHODS",
    "SIDES",
    "STATUSES",
    "TAKEN_AS",
    "WAIST_LEVELS",
    "BodyRow",
    "Circumstances",
    "Doubt",
    "DoubtLevel",
    "Landmark",
    "LikelySlip",
    "LookedOver",
    "Measure",
    "MeasureEntry",
    "MeasureKind",
    "MeasureSet",
    "PopulationName",
    "RawValue",
    "Repair",
    "RiseMethod",
    "SetKind",
    "Side",
    "Standing",
    "Status",
    "Suspect",
    "TakenAs",
    "Unseen",
    "WaistLevel",
    "check_consistent",
    "landmark_table",
    "level_table",
    "likely_slips",
    "look_over",
    "measure_entry",
    "measure_table",
    "notation_names",
    "plain_key",
    "read_bodies",
    "read_measures",
    "read_value",
    "refuse_inconsistent",
    "set_from_data",
    "set_to_data",
    "sided_key",
    "split_key",
    "write_measures",
]
