"""The reductions as the stretch blocks state them."""

from collections.abc import Iterator

from notchbook.blocks.stretch_fabric.classes import stretch_classes
from notchbook.blocks.stretch_fabric.reductions import ReductionRow, Use, reduction_rows
from notchbook.recipe import UsualEase


def usual_eases_of(*uses: Use) -> tuple[UsualEase, ...]:
    """Each use's reductions by class of cloth, hundredths of the body; a loose garment's ease in mm."""
    return tuple(row for use in uses for row in _of_use(use))


def _of_use(use: Use) -> Iterator[UsualEase]:
    for (of, direction), row in reduction_rows().items():
        if of != use:
            continue
        if row.ease is not None:
            yield _ease(use, row, row.ease)
        elif row.most > 0.0:
            yield from _by_class(use, direction, row)


def _ease(use: Use, row: ReductionRow, ease: float) -> UsualEase:
    return UsualEase(
        silhouette=use,
        parameter="bust_ease",
        of="girths of the trunk",
        drafted=ease,
        least=row.least,
        most=row.most,
        source=row.source,
        grade=row.grade,
    )


def _by_class(use: Use, direction: str, row: ReductionRow) -> Iterator[UsualEase]:
    parameter, of = ("hip_ease", "girths") if direction == "width" else ("along", "lengths")
    for name, cloth in stretch_classes().items():
        yield UsualEase(
            silhouette=use,
            parameter=parameter,
            of=f"{of}, {name.replace('_', ' ')} cloth ({100.0 * cloth.stretch:.0f} %)",
            drafted=round(-100.0 * row.at(cloth.stretch), 1),
            least=-100.0 * row.most,
            most=0.0 - 100.0 * row.least,
            source=row.source,
            grade=row.grade,
            unit="percent",
        )
