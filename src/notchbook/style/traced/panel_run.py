"""Traced edges of one panel, and of several panels laid together along the seams between them."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Transform
from notchbook.pattern import Pattern, Piece, closed_motions, spoken
from notchbook.pattern.names import last_word
from notchbook.pattern.resolve import expand
from notchbook.pattern.sewn import drawn_in
from notchbook.style.lines.truing import LOST_AT_MOUTH, trued, with_round_corners
from notchbook.style.traced.beside import Laid, outline_beyond, seam_on_seam
from notchbook.style.traced.faced_run import Faced, FacedRun, PanelSeam
from notchbook.style.traced.sewn_corner import seam_at

_LOST = 0.01
"""mm that the traced edges may lose where they are drawn as one line across a seam. Own judgment."""


@dataclass(frozen=True, slots=True)
class Asked:
    """An edge as it was asked for: its name, the end where its walk begins, its depth in mm; whether the
    traced piece is sewn to it."""

    edge: str
    starts_at: str
    depth: float
    faces: bool = True


@dataclass(frozen=True, slots=True)
class PartAsked:
    """What of an edge that was asked for lies on one piece: its edges there, counter-clockwise."""

    whole: Asked
    members: tuple[str, ...]


def panel_run(pattern: Pattern, parts: Sequence[PartAsked], depth: float, *, forward: bool) -> FacedRun:
    """The traced edges of one piece in counter-clockwise order, its darts closed.

    What lies beside them is laid edge to edge down to ``depth``, mm. StepRefused ``facing-on-fold``,
    ``facing-drawn-in``, ``facing-edge-broken``.
    """
    owner = pattern.piece_of(parts[0].members[0])
    for part in parts:
        if any(owner.edge(name).kind == "fold" for name in part.members):
            raise StepRefused("facing-on-fold", edge=spoken(part.whole.edge))
        if any(drawn_in(pattern, name) > 0.0 for name in part.members):
            raise StepRefused("facing-drawn-in", edge=spoken(part.whole.edge))
    names = [name for part in parts for name in part.members]
    motions = closed_motions(owner, names[0], names[-1])
    if set(names) != motions.keys():
        raise StepRefused("facing-edge-broken", edge=spoken(parts[0].whole.edge), piece=spoken(owner.name))
    faced = tuple(
        Faced(
            part.whole.edge,
            part.whole.starts_at,
            tuple(owner.edge(name) for name in part.members),
            _closed(owner, part.members, motions),
            part.whole.depth,
            faces=part.whole.faces,
        )
        for part in parts
    )
    still = Transform.identity()
    return FacedRun(
        last_word(owner.name),
        owner.title,
        faced,
        outline_beyond(pattern, owner, names[0], still, depth, ahead=False),
        outline_beyond(pattern, owner, names[-1], motions[names[-1]], depth, ahead=True),
        forward,
        tuple(Laid(owner, motion) for motion in dict.fromkeys(motions.values())),
    )


def _closed(owner: Piece, names: Sequence[str], motions: dict[str, Transform]) -> Path:
    """One line along the edges; where a dart was closed it is drawn fair, as long as before."""
    stretches: list[Path] = []
    last: Transform | None = None
    for name in names:
        path = owner.edge(name).path.transformed(motions[name])
        if last is not None and motions[name] == last:
            stretches[-1] = stretches[-1].joined(path)
        else:
            stretches.append(path.with_start(stretches[-1].end) if stretches else path)
        last = motions[name]
    return with_round_corners(stretches, LOST_AT_MOUTH) if len(stretches) > 1 else stretches[0]


def over_panels(pattern: Pattern, runs: Sequence[FacedRun], depth: float) -> FacedRun:
    """The runs of panels, counter-clockwise, as one: laid edge to edge from the traced edges down to
    ``depth``, mm, the first still.

    The ease of the seams between them is left out, and the traced edges run on into each other.
    StepRefused ``facing-panels-apart`` where no seam joins one panel to the next.
    """
    whole = runs[0]
    for run in runs[1:]:
        ends = (whole.after.edge.name, whole.end), (run.before.edge.name, run.start)
        seam = seam_at(pattern, *ends)
        if seam is None:
            raise StepRefused("facing-panels-apart", first=spoken(ends[0][0]), second=spoken(ends[1][0]))
        placed = run.moved(seam_on_seam(whole.after.path, run.before.path, depth))
        whole = _run_on(whole, placed, seam.name)
    word, title = _in_common(pattern, [run.panels[0].piece for run in runs])
    return replace(whole, word=word, title=title)


def _run_on(whole: FacedRun, placed: FacedRun, seam: str) -> FacedRun:
    """Two laid runs as one; an edge that lies on both is one edge of them."""
    last, first = whole.faced[-1], placed.faced[0]
    paths = trued((last.path, first.path.with_start(last.path.end)), _LOST)
    met: tuple[Faced, ...] = (replace(last, path=paths[0]), replace(first, path=paths[1]))
    if last.name == first.name:
        joint = paths[0].length
        joined = replace(
            last,
            members=(*last.members, *first.members),
            path=paths[0].joined(paths[1]),
            joints=(*last.joints, joint, *(joint + along for along in first.joints)),
        )
        met = (joined,)
    return replace(
        whole,
        faced=(*whole.faced[:-1], *met, *placed.faced[1:]),
        after=placed.after,
        panels=(*whole.panels, *placed.panels),
        seams=(*whole.seams, PanelSeam(seam, whole.after.path, placed.before.path)),
    )


def _in_common(pattern: Pattern, pieces: Sequence[Piece]) -> tuple[str, str]:
    """What panels of one piece are called together: by the name that they had as one, and by the words that
    all their titles have."""
    names = {piece.name for piece in pieces}
    wholes = [name for name in pattern.groups if names <= set(expand(pattern, name)[0])]
    word = last_word(min(wholes, key=lambda name: len(expand(pattern, name)[0]), default=pieces[0].name))
    shared = [
        one for one in pieces[0].title.split() if all(one in piece.title.split() for piece in pieces[1:])
    ]
    title = " ".join(shared) or pieces[0].title
    return word, title[:1].upper() + title[1:]
