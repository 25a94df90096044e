"""Does every opening let through what must pass it?"""

from collections.abc import Iterator, Mapping

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.openings import Opening
from notchbook.checks.openings import openings as found_openings
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Severity

_CODES = {
    "neck": "opening-under-head",
    "waist": "opening-under-hips",
    "sleeve": "opening-under-hand",
    "leg": "opening-under-heel",
}

_PASSES = {"neck": "head_girth", "waist": "hip_girth", "sleeve": "hand_girth", "leg": "heel_girth"}
"""What must pass each opening (common practice): the head a neck, the hips a waist that is stepped into, the
hand a sleeve, heel and instep a leg."""


@check(
    id="openings",
    title="Each opening lets the body through",
    rationale=(
        "A garment that nobody can get into is found out at the first fitting, with the cloth cut. A neck "
        "that nothing opens must go over the head, a waist over the hips or the bust, a sleeve hem over the "
        "hand, a leg hem over heel and instep. A zip or a vent opens it farther: it counts twice its length. "
        "Only what was measured is judged, on styles and not on blocks, and cloth that stretches is left to "
        "the block that was drafted for it."
    ),
    severity=Severity.LOOK,
    reads=("edges", "seams", "measures"),
    messages={
        "opening-under-head": "The neck does not go over the head.",
        "opening-under-hips": "The waist does not go over the hips.",
        "opening-under-bust": "The waist does not go over the bust.",
        "opening-under-hand": "The sleeve does not go over the hand.",
        "opening-under-heel": "The leg does not go over heel and instep.",
    },
    suggestion="Make the opening larger, or put a zip, a vent or another closure there.",
)
def openings(subject: Subject) -> Iterator[Finding]:
    """Openings of a style that are smaller than what must pass them, mm."""
    if subject.is_block or subject.body is None:
        return
    for opening in found_openings(subject.pattern):
        code, passes = _passing(opening, subject.body)
        if passes is None:
            continue
        least = passes + subject.limits.opening_spare
        if opening.widest < least:
            carrier = subject.pattern.carriers[opening.edges[0]]
            position = subject.pattern.edges[opening.edges[0]].path.start
            yield openings.finding(
                code,
                Spot(carrier, opening.edges[0], position, opening.edges),
                Reading(opening.widest, least),
            )


def _passing(opening: Opening, body: Mapping[str, float]) -> tuple[str, float | None]:
    """The code, and the girth that must pass; None where it was not measured. What has an armhole is put on
    over the head too, and then the bust passes the waist."""
    girth = _girth(body, _PASSES[opening.kind])
    if opening.kind == "waist" and opening.over_bust:
        bust = _girth(body, "bust_girth")
        if bust is not None and (girth is None or bust < girth):
            return "opening-under-bust", bust
    return _CODES[opening.kind], girth


def _girth(body: Mapping[str, float], key: str) -> float | None:
    """The girth on the larger of the wearer's sides."""
    found = [body[name] for name in (key, f"{key}@left", f"{key}@right") if name in body]
    return max(found, default=None)
