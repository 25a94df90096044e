"""A seam that is sewn down to a place only: below, its edge opens or is sewn to something else."""

from dataclasses import replace

from notchbook.pattern import EdgeUse, Pattern, Seam, directed


def only_above(pattern: Pattern, seam: Seam, cut: tuple[str, str], above: tuple[str, str]) -> Seam:
    """The seam without the lower part of one of its edges.

    ``cut`` is the edge that was divided and its end at the hem, ``above`` what stays of it and its new end.
    ``pattern`` is that before the edge was divided.
    """
    edge, hem_end = cut

    def uses(run: tuple[EdgeUse, ...]) -> tuple[EdgeUse, ...]:
        found: list[EdgeUse] = []
        for use in run:
            walked = directed(pattern, use.edge, use.starts_at)
            if edge not in [step.edge.name for step in walked]:
                found.append(use)
                continue
            for step in walked:
                is_cut = step.edge.name == edge
                name = above[0] if is_cut else step.edge.name
                start = above[1] if is_cut and step.start == hem_end else step.start
                found.append(EdgeUse(name, start, use.side))
        return tuple(found)

    return replace(seam, first=uses(seam.first), second=uses(seam.second))
