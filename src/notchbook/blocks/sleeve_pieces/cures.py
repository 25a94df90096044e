"""What would let a sleeve fit that does not: a lower armhole, another width, a looser bodice."""

from notchbook.blocks.sleeve_pieces.eases import sleeve_rows
from notchbook.errors import DraftRefused
from notchbook.pattern import Cure

_LOOSER = ("semi_fitted", "loose")
"""The silhouettes of a bodice that leave more room for the arm, the nearest first."""


def lower_the_armhole(bodice: str, lower_by: float) -> Cure:
    """The armhole of a bodice lowered by so many mm."""
    return Cure(bodice, "armhole_lowered", lower_by, "lower the armhole", added=True)


def cures_of(refused: DraftRefused, slug: str, bodice: str, upper_arm_ease: float) -> tuple[Cure, ...]:
    """What the step offers beside a refusal of its numbers; each is tried before it is offered.

    ``upper_arm_ease`` is what the sleeve was given, mm. It is never cut below the least that an arm needs.
    """
    lower, narrower, wider = (_amount(refused, name) for name in ("lower_by", "narrower_by", "wider_by"))
    if refused.code == "sleeve-arm-too-thin" and wider is not None:
        return (Cure(slug, "upper_arm_ease", wider, "widen the sleeve", added=True),)
    if refused.code not in ("sleeve-arm-too-full", "sleeve-arm-beyond-armhole", "sleeve-armhole-uneven"):
        return ()
    found = [] if lower is None else [lower_the_armhole(bodice, lower)]
    if narrower is not None and upper_arm_ease - narrower >= sleeve_rows()["ease.least_upper_arm"].value:
        less = f"{int(upper_arm_ease - narrower)} mm"
        found.append(Cure(slug, "upper_arm_ease", less, f"give the upper arm {less} of ease"))
    if lower is None:
        found += [Cure(bodice, "silhouette", looser, f"draft the bodice {looser}") for looser in _LOOSER]
    return tuple(found)


def _amount(refused: DraftRefused, name: str) -> float | None:
    amount = refused.facts.get(name)
    return amount if isinstance(amount, float) else None
