"""Which edges beside traced runs are sewn to each other."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from notchbook.pattern import Pattern, Seam
from notchbook.pattern.resolve import expand
from notchbook.pattern.zip_openings import zip_opening
from notchbook.style.traced.faced_run import FacedRun
from notchbook.style.traced.sewn_corner import seam_at


@dataclass(frozen=True, slots=True)
class End:
    """One end of a run: the number of the run, and whether it is the end (else the start)."""

    run: int
    at_end: bool


_FLATTEST = 0.8
"""Sine of the flattest angle at which a parallel is followed to a seam. Own judgment."""

Mates = Mapping[End, tuple[End, Seam]]
"""For each end that is sewn to another: that end, and the seam of the pieces there."""


def edge_at(runs: tuple[FacedRun, ...], end: End) -> str:
    """The name of the edge beside the run at this end."""
    run = runs[end.run]
    return (run.after if end.at_end else run.before).edge.name


def mated_ends(pattern: Pattern, runs: tuple[FacedRun, ...]) -> Mates:
    """For each end of a run beside which a seam joins the piece to another run: that end, and the seam.

    Both ends lie at the same end of that seam.
    """
    ends = [End(index, at_end) for index in range(len(runs)) for at_end in (False, True)]
    found: dict[End, tuple[End, Seam]] = {}
    for index, one in enumerate(ends):
        for other in ends[index + 1 :]:
            if one in found or other in found:
                continue
            seam = seam_at(pattern, _place(runs, one), _place(runs, other))
            if seam is not None:
                found[one], found[other] = (other, seam), (one, seam)
    return found


def closed_ends(pattern: Pattern, runs: tuple[FacedRun, ...], mates: Mates) -> Mates:
    """The mated ends without those beside a zip: what is turned in stays open there, as the garment does."""
    opened = {end for end in mates if _is_at_zip(pattern, *_place(runs, end))}
    return {end: mate for end, mate in mates.items() if not {end, mate[0]} & opened}


def _is_at_zip(pattern: Pattern, edge: str, corner: str) -> bool:
    return zip_opening(pattern, pattern.edges[edge], corner) > 0.0


def keeps_last(pattern: Pattern, runs: Sequence[FacedRun]) -> bool:
    """Whether the grain is kept at the last end of laid runs: at the center, where one end lies on the fold,
    or it or the edge traced there is sewn left to right; else where the walk begins."""
    first, last = runs[0], runs[-1]
    ends = (
        (first.before.edge, first.faced[0].members[0]),
        (last.after.edge, last.faced[-1].members[-1]),
    )
    centers = [
        beside.kind == "fold" or any(left_to_right(pattern, edge.name) for edge in (beside, traced))
        for beside, traced in ends
    ]
    return not first.forward if centers[0] == centers[1] else centers[1]


def meeting(runs: tuple[FacedRun, ...], mates: Mates, end: End) -> float | None:
    """How far along the seam there two traced pieces reach, mm: to where parallels of both would meet it.

    None where no seam joins this end to another.
    """
    if end not in mates:
        return None
    return (_reach(runs[end.run], end.at_end) + _reach(runs[mates[end][0].run], mates[end][0].at_end)) / 2.0


def _reach(run: FacedRun, at_end: bool) -> float:
    """Where the parallel of the traced edge crosses the seam, by the angle between the two."""
    faced, beside = (run.faced[-1], run.after) if at_end else (run.faced[0], run.before)
    edge = faced.path if at_end else faced.path.reversed()
    across = abs(edge.tangent_at(edge.length).cross(beside.path.tangent_at(0.0)))
    return faced.depth / max(across, _FLATTEST)


def _place(runs: tuple[FacedRun, ...], end: End) -> tuple[str, str]:
    """The edge beside the run at this end, and the point where they meet."""
    run = runs[end.run]
    return (run.after.edge.name, run.end) if end.at_end else (run.before.edge.name, run.start)


def left_to_right(pattern: Pattern, edge: str) -> Seam | None:
    """The seam in which the edge is sewn to its own reflection; None where there is none."""
    for seam in pattern.seams.values():
        if any(
            use.side != "both" and edge in expand(pattern, use.edge)[0] for use in (*seam.first, *seam.second)
        ):
            return seam
    return None
