"""A puff sleeve: spread at its cap, at its hem or at both, the cap higher, both drawn in again.

The cap is gathered between its balance notches alone, to the length of the armhole there; below them it is
set in flat as before. The hem is gathered to a band or by an elastic.
"""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.pattern import Allowance, Elastic, Pattern, part_name, require, sewn_length
from notchbook.pattern.operation import Operation
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.style._ranged_amount import told_outside
from notchbook.style.fullness.figures import GATHERS, Fullness
from notchbook.style.sleeves.figures import ELASTIC_WIDTH, PUFF_HEIGHT
from notchbook.style.sleeves.found import FoundSleeve, sleeve_found
from notchbook.style.sleeves.gathers import Gathered, gathered_cap, gathered_hem
from notchbook.style.sleeves.hems import hem_class, hem_to, to_band
from notchbook.style.sleeves.opened import OpenedSleeve, opened_sleeve
from notchbook.style.sleeves.parameters import MOST_RATIO, MOST_SLASHES
from notchbook.style.sleeves.slashes import cap_places, to_hem
from notchbook.style.sleeves.told import gathers_told, height_told

Opens = Literal["cap", "hem", "both"]
HemFinish = Literal["band", "elastic", "plain"]


class PuffParameters(StepParameters):
    """The ``sleeve``, where it is spread, how full, how much higher its cap is, and what holds its hem."""

    sleeve: Word = "sleeve"
    """The sleeve that is spread."""
    opens: Opens = "both"
    """Spread at the cap, at the hem, or at both alike."""
    fullness: Fullness = "light"
    """How full: light one and a half times, standard twice, full two and a half times."""
    ratio: Annotated[float, Field(gt=1.0, le=MOST_RATIO)] | None = None
    """Length of the cloth over what it is gathered to; empty: as ``fullness`` says."""
    cap_height: AmountText = PUFF_HEIGHT.amount
    """By how much the cap is drawn higher, so that the gathers stand; nothing where only the hem opens."""
    hem: HemFinish = "band"
    """What the hem is gathered to: a band, an elastic pushed through it, or nothing: it hangs free."""
    hem_length: AmountText | None = None
    """How long the hem is when gathered; empty: the arm there with its ease, else as it was."""
    slashes: Annotated[int, Field(ge=2, le=MOST_SLASHES)] = 4
    """At how many slashes each half is spread."""


def run(pattern: Pattern, context: StepContext, parameters: PuffParameters) -> Change:
    """Spread the sleeve, raise its cap, draw cap and hem in."""
    sleeve = sleeve_found(pattern, parameters.sleeve)
    at_cap, at_hem = parameters.opens != "hem", parameters.opens != "cap"
    opened = _opened(pattern, context, parameters, sleeve)
    splits, removals, asked = dict[str, tuple[str, ...]](), dict[str, str](), opened.wider
    notes = list(height_told(STEP.operation, opened))
    if at_cap:
        notes += told_outside(STEP.operation, sleeve.piece.name, "cap_height", opened.raised, PUFF_HEIGHT)
    after = opened.pattern
    takes: list[tuple[str, Gathered]] = []
    if at_cap:
        takes.append(("cap", gathered_cap(pattern, context.slug, opened)))
        after = takes[-1][1].pattern
    if at_hem and parameters.hem != "plain":
        to = hem_to(pattern, context, sleeve, parameters.hem_length)
        now = OpenedSleeve(sleeve, after, opened.met, opened.raised)
        takes.append(("hem", gathered_hem(pattern, context.slug, now, to)))
        after = takes[-1][1].pattern
        if parameters.hem == "band":
            after = to_band(after, sleeve.name("hem"))
    elif at_hem:
        hem = sleeve.name("hem")
        asked[hem] = sewn_length(after, hem) - sewn_length(pattern, hem)
    for words, taken in takes:
        splits.update(taken.splits)
        removals.update(taken.removals)
        asked.update(taken.asked)
        notes.extend(gathers_told(STEP.operation, opened, taken, words))
    after = _finished(after, context.slug, parameters, sleeve)
    waves = {} if parameters.opens == "cap" else {sleeve.name("hem"): 2}
    return Change(after, splits=splits, removals=removals, asked=asked, waves=waves, notes=tuple(notes))


def _opened(
    pattern: Pattern, context: StepContext, parameters: PuffParameters, sleeve: FoundSleeve
) -> OpenedSleeve:
    """The sleeve spread: each slash takes its share of what the ratio adds."""
    ratio = parameters.ratio or GATHERS[parameters.fullness].value
    count = parameters.slashes
    places = cap_places(sleeve, count)
    hem = sewn_length(pattern, sleeve.name("hem")) * (ratio - 1.0) / (2.0 * count)
    opened: list[tuple[float, float]] = []
    for place in places:
        reach = abs(sleeve.notches[0 if place.is_front else 1] - sleeve.crown)
        cap = (ratio - 1.0) * reach / count
        at_hem = cap if parameters.opens == "both" else hem
        opened.append(
            (0.0 if parameters.opens == "hem" else cap, 0.0 if parameters.opens == "cap" else at_hem)
        )
    raised = 0.0 if parameters.opens == "hem" else context.not_negative(parameters.cap_height, "cap_height")
    drawn = set[str]()
    if parameters.opens != "cap" and parameters.hem != "plain":
        drawn |= set(require(pattern, sleeve.name("hem")))
    lines = to_hem(pattern, sleeve, places, opened)
    return opened_sleeve(pattern, sleeve, lines, raised, frozenset(drawn))


def _finished(pattern: Pattern, slug: str, parameters: PuffParameters, sleeve: FoundSleeve) -> Pattern:
    """The hem as deep as it bends; the elastic of the hem with its casing."""
    hem = sleeve.name("hem")
    if parameters.opens == "cap" or parameters.hem == "plain":
        return pattern.with_allowances({hem: Allowance(hem_class(pattern.edges[hem].path))})
    if parameters.hem == "band":
        return pattern
    text = "Turn the hem over the elastic, closed to a ring, and stitch it down without catching it."
    seam = part_name(sleeve.slug, "sleeve_seam")
    elastic = Elastic(part_name(slug, "elastic"), "Sleeve elastic", (hem,), 1.0, ELASTIC_WIDTH.value, "limb")
    after = pattern.with_elastics(elastic).with_allowances({hem: Allowance("elastic_edge")})
    return after.with_operations(Operation(part_name(slug, "casing_hemmed"), "hems", text, (hem,), (seam,)))


STEP = StepDefinition(
    operation="puff_sleeve",
    version=1,
    kind="style",
    title="Puff sleeve",
    sentence="{sleeve} spread at {opens}, {fullness}, {ratio} times, cap {cap_height} higher, hem to {hem}",
    parameters=PuffParameters,
    run=run,
)
