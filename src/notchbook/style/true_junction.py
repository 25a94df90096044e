"""True the edges beside a seam: laid together along the seam, they are drawn smooth across it.

Each keeps its length within a pencil line's tenth, so that what is sewn to it still agrees; the seam ends on
the new line.
"""

from typing import Literal

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import Edge, Pattern, Piece, Seam, run_of, spoken
from notchbook.pattern.seam import EdgeUse
from notchbook.pattern.sewn import Directed
from notchbook.recipe import Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import SeamName
from notchbook.style.edges.mate_walks import seams_put_out
from notchbook.style.edges.redrawn import redrawn
from notchbook.style.lines.true_across import Beside, true_across
from notchbook.style.truing.found import found_seam


class TrueJunctionParameters(StepParameters):
    """The ``seam`` and the ``end`` at which the edges beside it meet."""

    seam: SeamName
    """The seam along which the pieces are laid together."""
    end: Literal["start", "end"] = "end"
    """The end of the seam at which the edges beside it are trued."""


def run(pattern: Pattern, context: StepContext, parameters: TrueJunctionParameters) -> Change:
    """Draw both neighbors smooth across the seam; nothing where no corner can be seen."""
    seam = found_seam(pattern, parameters.seam)
    steps = tuple(_last(pattern, uses, parameters.end) for uses in (seam.first, seam.second))
    besides = tuple(_beside(pattern, seam, step, parameters.end) for step in steps)
    if besides[0].neighbor.name == besides[1].neighbor.name:
        raise StepRefused(
            "true-junction-one-edge", seam=spoken(seam.name), edge=spoken(besides[0].neighbor.name)
        )
    after = pattern
    for step, drawn in zip(steps, true_across(*besides), strict=True):
        piece: Piece = after.piece_of(step.edge.name)
        paths: dict[str, Path] = {
            step.edge.name: drawn.face if step.forward else drawn.face.reversed(),
            drawn.neighbor.name: drawn.neighbor.path,
        }
        after = after.with_pieces(redrawn(piece, paths))
    return Change(after, notes=seams_put_out(pattern, after, "true-junction"))


def _last(pattern: Pattern, uses: tuple[EdgeUse, ...], end: str) -> Directed:
    run = run_of(pattern, uses)
    if not run:
        raise StepRefused("true-junction-one-side")
    return run[-1] if end == "end" else run[0]


def _beside(pattern: Pattern, seam: Seam, step: Directed, end: str) -> Beside:
    neighbor = _neighbor(pattern, step, at_end=step.forward == (end == "end"))
    if neighbor.kind in ("fold", "leg"):
        raise StepRefused("truing-at-fold", edge=spoken(seam.name), beside=spoken(neighbor.name))
    return Beside(step.path, neighbor, at_bottom=end == "end")


def _neighbor(pattern: Pattern, step: Directed, *, at_end: bool) -> Edge:
    piece = pattern.piece_of(step.edge.name)
    index = piece.edge_index(step.edge.name)
    return piece.outline[(index + 1) % len(piece.outline)] if at_end else piece.outline[index - 1]


STEP = StepDefinition(
    operation="true_junction",
    version=1,
    kind="style",
    title="True across a seam",
    sentence="at the {end} of {seam}",
    parameters=TrueJunctionParameters,
    run=run,
)
