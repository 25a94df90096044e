"""Faults planted in what joins pieces, so that the garment can be sewn in no order."""

from notchbook.pattern import EdgeUse, Operation, Pattern, Seam
from support.faults import Made, fault, harmless

SIDE = "skirt/side_seam"


def _banded(skirt: Pattern) -> Pattern:
    """The waist of front and back in one run, sewn to its own reflection as a stand-in for a band."""
    run = (
        EdgeUse("skirt.front/waist", "skirt.front/center_waist"),
        EdgeUse("skirt.back/waist", "skirt.back/side_waist"),
    )
    return skirt.with_seams(Seam("skirt/waist", run, run))


@fault("sewing-order", "sewing-order-gap")
def waist_over_two_pieces_that_nothing_joins(skirt: Pattern) -> Made:
    return _banded(skirt).with_seams(without=[SIDE])


@harmless("sewing-order")
def waist_over_two_pieces_with_a_side_seam(skirt: Pattern) -> Made:
    return _banded(skirt)


@fault("sewing-order", "sewing-order-circle")
def two_lines_that_wait_for_each_other(skirt: Pattern) -> Made:
    first = Operation("skirt/first", "finish", "Press.", after=("skirt/second",))
    second = Operation("skirt/second", "finish", "Press again.", after=("skirt/first",))
    return skirt.with_operations(first, second)
