"""An opening for a zip in a seam: its allowance, the notch where it stops, and how it is stitched, on both
edges of the seam."""

from collections.abc import Iterator, Sequence
from typing import Literal

from notchbook.pattern import Allowance, Notch, Pattern, Place, locate, part_name
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.closures.divided import Divided, all_divided, beside, owner_on, words_at
from notchbook.style.closures.figures import ZIP_STEP_BELOW
from notchbook.style.closures.sewn_mates import opened_ends
from notchbook.style.closures.zip_settings import ZIP_SETTINGS, ZipSetting, with_zip_stitches, zip_operation


class ZipParameters(StepParameters):
    """The ``edge`` with the zip, the end from which it opens, the ``length`` of the opening, and how it is
    set in."""

    edge: EdgeName
    """The seam with the zip; of a lapped one the edge that laps over."""
    from_point: PointName
    """The end from which it opens."""
    length: AmountText = "18 cm"
    """How long the opening is."""
    setting: ZipSetting = "plain"
    """Centered, lapped or invisible; plain leaves it open and gives the allowance of a zip."""
    laps: Literal["left", "right"] = "left"
    """The wearer's side that laps over where a lapped zip stands in a center seam."""
    step: bool = False
    """Whether the allowance steps back to that of the seam below the zip."""


def run(pattern: Pattern, context: StepContext, parameters: ZipParameters) -> Change:
    """Write down the allowance, the notch at the stop and the stitches; no outline changes."""
    length = context.positive(parameters.length, "length")
    row = ZIP_SETTINGS[parameters.setting]
    ends = opened_ends(pattern, parameters.edge, parameters.from_point)
    stops = [Place(*end, length) for end in ends]
    after = pattern.with_notches(*_notches(pattern, context.slug, stops))
    after = with_zip_stitches(after, context.slug, stops, row)
    words = ("zip", "seam", "zip_end")
    below = length + ZIP_STEP_BELOW.value
    stepped = [(*end, below) for end in ends] if parameters.step else []
    after, cuts = all_divided(after, stepped, words, context.slug)
    after = after.with_notches(*_step_notches(cuts))
    edges = [cut.near for cut in cuts] or [one.edge for one in stops]
    after = after.with_allowances({edge: Allowance(row.allowance_class) for edge in edges})
    after = after.with_operations(zip_operation(context.slug, parameters.setting, parameters.laps, stops))
    return Change(after, splits={cut.edge: cut.parts for cut in cuts})


def _notches(pattern: Pattern, slug: str, stops: Sequence[Place]) -> Iterator[Notch]:
    ends = [(one.edge, one.from_point) for one in stops]
    for index, stop in enumerate(stops):
        owner = owner_on(slug, locate(pattern, stop).piece)
        yield Notch(part_name(owner, words_at(pattern, ends, index, "zip_notch")), stop, purpose="zip stop")


def _step_notches(cuts: Sequence[Divided]) -> Iterator[Notch]:
    """Where the width of the allowance changes."""
    for cut in cuts:
        yield Notch(beside(cut.point, "notch"), Place(cut.far, cut.point, 0.0), purpose="allowance steps")


STEP = StepDefinition(
    operation="zip_opening",
    version=1,
    kind="cut",
    title="Zip opening",
    sentence="{length} at {edge} from {from_point}, {setting}",
    parameters=ZipParameters,
    run=run,
)
