"""Two blocks that exist in tests alone, one drafted with the other: a tray and the lid that goes into it.

Invented for the tests. The tray is a rectangle, as wide as half the bust; the lid is drafted with a tray,
asks for its cloth, and is refused while the tray is lower than the upper arm is round. What it asks for then
is less than is missing, so that the cure must be sought in several rounds.
"""

from typing import Any, Literal

from notchbook.body import MeasureSet
from notchbook.errors import DraftRefused, InputError
from notchbook.geometry import Path, Point
from notchbook.pattern import (
    Contradiction,
    Cure,
    Edge,
    EdgeUse,
    Expectation,
    Finding,
    Measured,
    Pattern,
    Piece,
    Seam,
    Severity,
    worded,
)
from notchbook.recipe import (
    AmountText,
    Change,
    MeasureNeeds,
    SometimesNeeded,
    StepContext,
    StepDefinition,
    StepParameters,
    UsualEase,
    Word,
)

TRAY_HEIGHT = 200.0
LID_EASE = 12.0
REFUSAL = "skirt-above-hip"
"""Any code whose words need two lengths: the words of the house are no matter of these tests."""

ASKS = "setting-malformed"


class TrayParameters(StepParameters):
    """A tray."""

    bust_ease: AmountText = "60 mm"
    """Ease of the whole bust."""
    lowered: AmountText = "0 mm"
    """How much higher the tray is than usual."""
    shaping: Literal["auto", "dart", "none"] = "auto"
    """Whether it is shaped; auto for a woman."""


class LidParameters(StepParameters):
    """A lid."""

    tray: Word = "tray"
    """The tray that it goes into."""
    cloth: Literal["knit", "woven"] | None = None
    """What it is made of."""
    play: AmountText | None = None
    """Room between lid and tray; of the cloth when not given."""


def tray_needs(parameters: TrayParameters, measures: MeasureSet) -> MeasureNeeds:
    """A shaped tray needs a waist too."""
    is_shaped = parameters.shaping == "dart" or (
        parameters.shaping == "auto" and measures.population == "women"
    )
    needed = ("bust_girth", "waist_girth") if is_shaped else ("bust_girth",)
    return MeasureNeeds(needed, ("height",), ("hip_girth",))


def rectangle(name: str, width: float, height: float) -> Piece:
    """A piece with the edges bottom, right, top and left; a corner is named after the edge that it begins."""
    corners = [Point(0.0, 0.0), Point(width, 0.0), Point(width, height), Point(0.0, height)]
    words = ("bottom", "right", "top", "left")
    edges = tuple(
        Edge(
            f"{name}/{word}",
            Path.polyline((corners[place], corners[(place + 1) % 4])),
            f"{name}/from_{word}",
            f"{name}/from_{words[(place + 1) % 4]}",
        )
        for place, word in enumerate(words)
    )
    return Piece(name, name.rpartition(".")[2], edges)


def run_tray(pattern: Pattern, context: StepContext, parameters: TrayParameters) -> Change:
    """Draft the tray; a waist larger than the bust is told as a contradiction."""
    body, ease = context.measure("bust_girth"), context.mm(parameters.bust_ease)
    height = TRAY_HEIGHT + context.mm(parameters.lowered)
    name = f"{context.slug}.front"
    promised = Expectation(
        f"{context.slug}/bust_girth",
        "bust_girth",
        (f"{name}/bottom",),
        2,
        body,
        ease,
        "bust",
        usual_ease=(40.0, 80.0),
    )
    tall = Expectation(
        f"{context.slug}/height",
        "",
        (),
        1,
        TRAY_HEIGHT,
        height - TRAY_HEIGHT,
        "height",
        kind="length",
        chains=((f"{name}/from_bottom", f"{name}/from_left"),),
        reach="down",
    )
    drafted = pattern.with_pieces(rectangle(name, (body + ease) / 2.0, height))
    return Change(drafted, expectations=(tall, promised), notes=_doubt(context))


def _doubt(context: StepContext) -> tuple[Finding, ...]:
    waist = context.find("waist_girth", "both")
    if waist is None or waist <= context.measure("bust_girth", "both"):
        return ()
    told = Contradiction(
        "bust_girth",
        "waist_girth",
        "waist_girth",
        700.0,
        waist - 700.0,
        "bust_girth",
        "measure-to-which-waist",
    )
    amounts = Measured(waist, 700.0)
    return (worded("tray", "hip-ease-raised", Severity.LOOK, amounts, contradiction=told),)


def run_lid(pattern: Pattern, context: StepContext, parameters: LidParameters) -> Change:
    """Draft the lid into its tray, eased by the play."""
    if parameters.cloth is None and parameters.play is None:
        choices, said = ("knit", "woven"), ("knit: 0 mm", "woven: 5 mm")
        raise InputError(ASKS, text="lid", setting="cloth", choices=choices, said=said)
    side = pattern.pieces[f"{parameters.tray}.front"].edge(f"{parameters.tray}.front/right")
    arm = context.measure("upper_arm_girth")
    missing = arm - side.path.length
    if missing > 0.0:
        cure = Cure(parameters.tray, "lowered", max(0.6 * missing, 0.5), "lower the tray", added=True)
        never = Cure(parameters.tray, "shaping", "none", "leave the tray unshaped")
        raise DraftRefused(REFUSAL, length=side.path.length, hip_depth=arm, cures=(cure, never))
    name = f"{context.slug}.lid"
    piece = rectangle(name, 100.0, side.path.length + LID_EASE)
    seam = Seam(
        f"{context.slug}/rim",
        (EdgeUse(side.name, side.start),),
        (EdgeUse(f"{name}/right", f"{name}/from_right"),),
        ease=LID_EASE,
    )
    promised = Expectation(
        f"{context.slug}/rim_length",
        "upper_arm_girth",
        (f"{name}/right",),
        1,
        arm,
        piece.edge(f"{name}/right").path.length - arm,
        "rim",
        kind="length",
    )
    return Change(pattern.with_pieces(piece).with_seams(seam), expectations=(promised,))


TRAY: StepDefinition[Any] = StepDefinition(
    operation="tray",
    version=1,
    kind="block",
    title="Draft tray",
    sentence="bust ease {bust_ease}",
    parameters=TrayParameters,
    run=run_tray,
    needs=MeasureNeeds(
        ("bust_girth",), ("height",), ("hip_girth",), (SometimesNeeded("with shaping", ("waist_girth",)),)
    ),
    needs_for=tray_needs,
    eases=lambda: (
        UsualEase("", "bust_ease", "bust", 60.0, 40.0, 80.0, "invented for a test", "own judgment"),
    ),
    refuses=("skirt-above-hip",),
)

LID: StepDefinition[Any] = StepDefinition(
    operation="lid",
    version=1,
    kind="block",
    title="Draft lid",
    sentence="{cloth}",
    parameters=LidParameters,
    run=run_lid,
    needs=MeasureNeeds(("upper_arm_girth",)),
    drafted_with=("tray",),
)


def tray_body(**more: float) -> MeasureSet:
    """An invented woman; the upper arm goes into a tray as it comes."""
    values = {"bust_girth": 900.0, "waist_girth": 700.0, "upper_arm_girth": 190.0, **more}
    return MeasureSet.from_mm("Invented", values, population="women")
