"""An opening for a zip in a seam: its allowance, the notch where it stops, and how it is stitched, on both
edges of the seam."""

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
from notchbook.style.closures.divided import Divided, divided, owner_on
from notchbook.style.closures.figures import ZIP_STEP_BELOW
from notchbook.style.closures.sewn_mates import mates_of
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
    mates = list(mates_of(pattern, parameters.edge, parameters.from_point))
    stops = [Place(*end, length) for end in [(parameters.edge, parameters.from_point), *mates]]
    after = pattern.with_notches(*(_notch(pattern, context, one) for one in stops))
    stitched = stops if row.on_both else stops[:1]
    after = with_zip_stitches(after, context.slug, stitched, row)
    cuts = _steps(after, context.slug, stops) if parameters.step else []
    after = after.with_pieces(*(cut.piece for cut in cuts))
    after = after.with_notches(*(_step_notch(context.slug, cut) for cut in cuts))
    edges = [cut.near for cut in cuts] or [one.edge for one in stops]
    after = after.with_allowances({edge: Allowance(row.allowance_class) for edge in edges})
    after = after.with_operations(zip_operation(context.slug, parameters.setting, parameters.laps, stops))
    return Change(after, splits={cut.edge: cut.parts for cut in cuts})


def _notch(pattern: Pattern, context: StepContext, stop: Place) -> Notch:
    owner = owner_on(context.slug, locate(pattern, stop).piece)
    return Notch(part_name(owner, "zip_notch"), stop, purpose="zip stop")


def _steps(pattern: Pattern, slug: str, stops: list[Place]) -> list[Divided]:
    """Each edge divided below the stop, where its allowance steps back."""
    words = ("zip", "seam", "zip_end")
    below = ZIP_STEP_BELOW.value
    return [divided(pattern, (one.edge, one.from_point), one.amount + below, words, slug) for one in stops]


def _step_notch(slug: str, cut: Divided) -> Notch:
    """A notch where the width of the allowance changes."""
    name = part_name(owner_on(slug, cut.piece.name), "zip_end_notch")
    return Notch(name, Place(cut.far, cut.point, 0.0), purpose="allowance steps")


STEP = StepDefinition(
    operation="zip_opening",
    version=1,
    kind="cut",
    title="Zip opening",
    sentence="{length} at {edge} from {from_point}, {setting}",
    parameters=ZipParameters,
    run=run,
)
