"""Can the garment be sewn in some order?"""

from collections.abc import Iterator

from notchbook.checks.check import Spot, check
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Severity, spoken


@check(
    id="sewing-order",
    title="It can be sewn",
    rationale=(
        "A seam that runs over two pieces needs them joined first: the waist goes into a band after the side "
        "seams, the sleeve into an armhole after the shoulder. Where no seam joins them the machinist stands "
        "with two loose ends, and where each of several seams waits for another none can be the first. On "
        "paper this shows when the muslin lies half sewn on the table."
    ),
    severity=Severity.LOOK,
    reads=("edges", "seams", "intakes"),
    messages={
        "sewing-order-gap": "{seam} runs from {first} to {second}, and no seam joins these two before it.",
        "sewing-order-circle": "Each of these waits for another, so that none can be sewn first: {seams}.",
    },
    suggestion="Sew the two pieces to each other first, or let the seam end where the piece ends.",
)
def sewing_order(subject: Subject) -> Iterator[Finding]:
    """Runs over pieces that nothing joins, and seams that wait for each other."""
    from notchbook.finish.sewing import sewing_order as ordered

    order = ordered(subject.pattern)
    for gap in order.gaps:
        pattern = subject.pattern
        piece = pattern.carriers.get(gap.ends_at)
        yield sewing_order.finding(
            "sewing-order-gap",
            Spot(piece, gap.ends_at, None, (gap.seam,)),
            seam=spoken(gap.seam),
            first=spoken(gap.ends_at),
            second=spoken(gap.goes_on_at),
        )
    if order.waiting:
        yield sewing_order.finding(
            "sewing-order-circle",
            Spot(None, None, None, order.waiting),
            seams=", ".join(spoken(key) for key in order.waiting),
        )
