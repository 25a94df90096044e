"""The stretch torso: a top of knit cloth without darts; with its sleeve it is a T-shirt.

Widths and lengths follow the stretch of the cloth as it was tested and what the top is for. The reductions
and their sources are in ``stretch_fabric``, the numbers in ``stretch``, the pieces in ``stretch_pieces``.
"""

from functools import cache

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.stretch import draft_torso
from notchbook.blocks.stretch_fabric.cloth import Cloth, cloth_of
from notchbook.blocks.stretch_fabric.usual_eases import usual_eases_of
from notchbook.blocks.stretch_pieces.cuts import cut
from notchbook.blocks.stretch_pieces.joining import upper_cut_data, upper_seams
from notchbook.blocks.stretch_pieces.parameters import StretchTorsoParameters
from notchbook.blocks.stretch_pieces.promises import Drafted, torso_promises
from notchbook.blocks.stretch_pieces.reading import StretchReader
from notchbook.blocks.stretch_pieces.refuses import UPPER_REFUSES
from notchbook.blocks.stretch_pieces.short_sleeve import with_underarm_seam
from notchbook.blocks.stretch_pieces.stride_notes import stride_notes
from notchbook.blocks.stretch_pieces.two_sides import draft_to_meet
from notchbook.blocks.stretch_pieces.upper_measures import NEEDS, TorsoRead, torso_read, upper_needs
from notchbook.blocks.stretch_pieces.upper_notes import upper_notes
from notchbook.blocks.stretch_pieces.upper_passages import upper_passages
from notchbook.blocks.stretch_pieces.upper_pieces import sleeve_piece, torso_piece
from notchbook.body import MeasureSet, Side
from notchbook.pattern import STRETCH_FABRIC, Pattern
from notchbook.recipe import Change, MeasureNeeds, StepContext, StepDefinition, UsualEase


def needs_for(parameters: StretchTorsoParameters, _: MeasureSet) -> MeasureNeeds:
    """What the block needs of a body with these parameters."""
    return upper_needs(parameters)


def usual_eases() -> tuple[UsualEase, ...]:
    """The reductions of a T-shirt and of a fitted top."""
    return usual_eases_of("t_shirt", "fitted")


def run(pattern: Pattern, context: StepContext, parameters: StretchTorsoParameters) -> Change:
    """Draft the block into the pattern."""
    cloth = cloth_of(parameters)
    draw = cache(draft_torso)
    read = _read(context, parameters, cloth, context.side)
    given = with_underarm_seam(read.given, parameters, draw)
    other: Side = "left" if context.side == "right" else "right"
    half = draft_to_meet(context, given, lambda: _read(context, parameters, cloth, other).given, draw)
    names = PanelNames(context.slug)
    pieces = {
        which: torso_piece(names, which, panel, half.levels.of(which, half.front_length))
        for which, panel in (("front", half.front), ("back", half.back))
    }
    if half.sleeve is not None:
        pieces["sleeve"] = sleeve_piece(names, half.sleeve)
    drafted = Drafted(names, given, read.taken, half, pieces)
    after = (
        pattern.with_materials({"self": STRETCH_FABRIC})
        .with_pieces(*pieces.values())
        .with_seams(*upper_seams(names, half))
    )
    classes = {"neck": "neckline", "hem": "hem_top"} | ({} if half.sleeve else {"armhole": "armhole"})
    return Change(
        pattern=upper_cut_data(after, names, half, classes),
        expectations=torso_promises(drafted),
        notes=(
            *upper_notes(drafted, cloth, upper_passages(drafted, context, parameters), read),
            *stride_notes(drafted, cloth),
        ),
    )


def _read(context: StepContext, parameters: StretchTorsoParameters, cloth: Cloth, side: Side) -> TorsoRead:
    reader = StretchReader(context, side, parameters.fit, cloth)
    return torso_read(reader, parameters, _length(context, reader, parameters), None)


def _length(context: StepContext, reader: StretchReader, parameters: StretchTorsoParameters) -> float:
    """From the waist to the hem, mm; the hem's center belongs to both sides."""
    if parameters.own_length is not None:
        return context.positive(parameters.own_length, "own_length", "both")
    if parameters.length == "waist":
        return 0.0
    return cut(f"hem.{parameters.length}") * reader.shared("hip_depth", "trunk")


STEP = StepDefinition(
    operation="stretch_torso",
    version=4,
    kind="block",
    title="Draft stretch torso",
    sentence="{fit}, {length} length, sleeve {sleeve}, cloth {across} across",
    parameters=StretchTorsoParameters,
    run=run,
    needs=NEEDS,
    needs_for=needs_for,
    eases=usual_eases,
    upcasters={1: dict, 2: dict, 3: dict},
    refuses=UPPER_REFUSES,
)
