"""Faults planted in gathers: an edge that is drawn in and sewn to nothing."""

from dataclasses import replace

from notchbook.pattern import EdgeUse, Elastic, Intake, Pattern, Seam
from support.faults import Made, fault, harmless

HEM = "skirt.front/hem"


def gathered(skirt: Pattern, amount: float = 120.0) -> Pattern:
    """The skirt with its front hem gathered."""
    piece = skirt.pieces["skirt.front"]
    gather = Intake("skirt.front/hem_gather", HEM, kind="gather", edge=HEM, amount=amount)
    return skirt.with_pieces(replace(piece, intakes=(*piece.intakes, gather)))


@fault("gathers-held", "gathers-free", measured=120.0)
def a_gathered_hem_without_a_band(skirt: Pattern) -> Made:
    return gathered(skirt)


@harmless("gathers-held")
def a_gathered_hem_sewn_to_another_edge(skirt: Pattern) -> Made:
    first = (EdgeUse(HEM, "skirt.front/hem_center"),)
    second = (EdgeUse("skirt.back/hem", "skirt.back/hem_center"),)
    return gathered(skirt).with_seams(Seam("skirt/band", first, second))


@harmless("gathers-held")
def a_hem_that_an_elastic_draws_in(skirt: Pattern) -> Made:
    return gathered(skirt).with_elastics(Elastic("skirt/elastic", "Elastic", (HEM,), 1.0, 8.0, "limb"))


@harmless("gathers-held")
def gathers_of_nothing(skirt: Pattern) -> Made:
    return gathered(skirt, 0.0)
