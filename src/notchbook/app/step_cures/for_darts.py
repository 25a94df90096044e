"""What might cure a dart whose legs differ, or across which the edge does not run on."""

from notchbook.app.step_cures.proposed import Proposed
from notchbook.pattern import Finding, Pattern, spoken


def for_dart(pattern: Pattern, finding: Finding) -> tuple[Proposed, ...]:
    """True the dart: the shorter leg to the longer, the edge across it with the dart closed."""
    piece = pattern.pieces.get(finding.piece or "")
    dart = next((one.name for one in piece.darts if one.name == finding.where), None) if piece else None
    if dart is None:
        return ()
    differ = None
    if finding.unit == "mm" and finding.measured is not None and finding.wanted is not None:
        differ = abs(finding.measured - finding.wanted)
    order = f"true {spoken(dart)}" + ("" if differ is None else ", its shorter leg longer")
    return (Proposed("true_dart", {"dart": dart}, order, differ),)
