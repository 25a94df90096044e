"""The elastics of suit and leggings: which edges they draw in, how much, and how wide they are."""

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.stretch_pieces.cuts import cut
from notchbook.pattern import Elastic, GoesRound


def suit_elastics(names: PanelNames, *, has_sleeve: bool) -> tuple[Elastic, ...]:
    """One round each leg, one round the neck, and round each armhole that no sleeve is set into."""
    found = [
        _elastic(names, "leg", "leg_opening", "limb", "leg"),
        _elastic(names, "neck", "neck", "body", "edge"),
    ]
    if not has_sleeve:
        found.append(_elastic(names, "armhole", "armhole", "limb", "edge"))
    return tuple(found)


def waist_elastic(names: PanelNames, edges: tuple[str, ...], waist: float) -> Elastic:
    """The one in the casing of leggings: it follows the body's ``waist``, mm, and not the pattern."""
    return Elastic(
        name=names.whole("waist_elastic"),
        title="waist elastic",
        edges=edges,
        share=cut("elastic.waist"),
        width=cut("elastic_width.casing"),
        goes_round="body",
        girth=waist,
    )


def _elastic(names: PanelNames, word: str, edge: str, goes_round: GoesRound, share: str) -> Elastic:
    return Elastic(
        name=names.whole(f"{word}_elastic"),
        title=f"{word} elastic",
        edges=tuple(names.at(which, edge) for which in ("front", "back")),
        share=cut(f"elastic.{share}"),
        width=cut("elastic_width.edge"),
        goes_round=goes_round,
    )
