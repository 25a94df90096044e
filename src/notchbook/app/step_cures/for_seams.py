"""What might cure a seam whose sides differ, notches that do not meet, and edges that do not run on."""

from notchbook.app.step_cures.proposed import Proposed
from notchbook.pattern import Finding, Pattern, spoken
from notchbook.pattern.names import last_word
from notchbook.pattern.seam import EdgeUse
from notchbook.units import Amount

_ENDS = (("end", "its end"), ("start", "its beginning"))


def for_misfit(pattern: Pattern, finding: Finding) -> tuple[Proposed, ...]:
    """True the side that is not the master, at either end; then the master itself; or declare the ease."""
    seam = None if finding.where is None else pattern.seams.get(finding.where)
    if seam is None or finding.measured is None or finding.wanted is None:
        return ()
    misfit = finding.measured - finding.wanted
    ways = (("first", seam.second, misfit < 0.0), ("second", seam.first, misfit > 0.0))
    trued = tuple(
        Proposed(
            "true_seam",
            {"seam": seam.name, "master": master, "end": end},
            f"make {_said(uses)} {'longer' if grows else 'shorter'} at {words}",
            abs(misfit),
        )
        for master, uses, grows in ways
        for end, words in _ENDS
    )
    ease = round(seam.ease + misfit, 1)
    longer, other = (seam.second, seam.first) if ease > 0.0 else (seam.first, seam.second)
    order = f"declare that {_said(longer)} is eased into {_said(other)}"
    if ease == 0.0:
        order = f"take the declared ease of {spoken(seam.name)} away"
    declared = Proposed(
        "declare_ease",
        {"seam": seam.name, "ease": Amount.plain(ease).text},
        order,
        abs(ease) or None,
    )
    return (*trued, declared)


def for_notch(pattern: Pattern, finding: Finding) -> tuple[Proposed, ...]:
    """Move the notch to its mate, or the mate to it."""
    notch = None if finding.where is None else pattern.notches.get(finding.where)
    if notch is None or notch.seam is None:
        return ()
    mates = [
        other.name
        for other in pattern.notches.values()
        if other.serves(notch.seam) and last_word(other.name) == last_word(notch.name) and other is not notch
    ]
    return tuple(
        Proposed("true_notch", {"notch": name}, f"move {spoken(name)} to its mate", _apart(finding))
        for name in (notch.name, *mates)
    )


def for_junction(pattern: Pattern, finding: Finding) -> tuple[Proposed, ...]:
    """Draw the edges beside the seam smooth across it, at the end at which they meet in a corner."""
    if finding.where not in pattern.seams:
        return ()
    return tuple(
        Proposed(
            "true_junction",
            {"seam": finding.where, "end": end},
            f"true the edges across {spoken(finding.where or '')} at {words}",
        )
        for end, words in _ENDS
    )


def _apart(finding: Finding) -> float | None:
    if finding.measured is None or finding.wanted is None:
        return None
    return abs(finding.measured - finding.wanted)


def _said(uses: tuple[EdgeUse, ...]) -> str:
    return spoken(uses[0].edge) if len(uses) == 1 else f"the run from {spoken(uses[0].edge)}"
