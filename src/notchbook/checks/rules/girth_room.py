"""Does the body still fit into every girth that it was drafted for?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.promised import Room, room_of
from notchbook.checks.subject import Subject
from notchbook.pattern import Expectation, Finding, Severity, spoken


@check(
    id="girth-room",
    title="Every girth still has room for the body",
    rationale=(
        "A block has ease all round, and each style step moves lines: a seam is rounded over the bust, a "
        "dart closed into it, a side seam drawn in. None of them says what is left for the body. So every "
        "girth is measured again at its level, over all panels that stand there, darts sewn and pleats open "
        "below their stitching, and held against the body. It is told where woven cloth is smaller than the "
        "body, and where a step took a girth below the least ease that is usual for its kind of garment. "
        "What a step made wider is meant and passes; what the draft was asked for, its own notes tell."
    ),
    severity=Severity.LOOK,
    reads=("edges", "measures"),
    messages={
        "girth-under-body": "{what} is smaller than the body, and the cloth does not stretch.",
        "girth-under-least-ease": "{what} has less ease than is usual for this garment at the least.",
    },
    suggestion="Look at the steps that changed it since the draft; let out the side seam or a seam beside.",
)
def girth_room(subject: Subject) -> Iterator[Finding]:
    """Girths of the body's measures that came out smaller than the body or its least usual ease, mm."""
    for promise in subject.expectations:
        if promise.kind != "girth" or not promise.measure:
            continue
        room = room_of(subject.pattern, promise)
        if room is None:
            continue
        code, least = _least(promise, room, subject.limits.girth_room)
        if least is not None and room.length < least - subject.limits.girth_room:
            yield girth_room.finding(
                code,
                Spot(room.piece, promise.name, None, promise.names),
                Reading(room.length, least),
                what=spoken(promise.name).capitalize(),
            )


def _least(promise: Expectation, room: Room, tape: float) -> tuple[str, float | None]:
    """What a girth must measure at the least, mm, and the code of one that does not; None where nothing says.

    Cloth that stretches may be smaller than the body, by the largest reduction that is usual.
    """
    if not room.stretches and room.length < promise.body - tape:
        return "girth-under-body", promise.body
    usual = promise.usual_ease
    least = None if usual is None else min(promise.wanted, promise.body + usual[0])
    return "girth-under-least-ease", least
