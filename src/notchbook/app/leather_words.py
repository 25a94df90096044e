"""What the papers say of a garment of leather."""

from notchbook.pattern import Pattern
from notchbook.units import LengthStyle


def leather_notes(pattern: Pattern, style: LengthStyle) -> tuple[str, ...]:
    """How its panels are cut, marked, skived and held; nothing for a garment of cloth."""
    making = pattern.making
    if making is None:
        return ()
    cut = (
        "Cut each panel singly, face up, left and right apart, round the flaws; the hide stretches across."
        if making.is_hide
        else "Cut face up, and mark on the wrong side."
    )
    skived = (
        f"Skive seam edges over {style.text(making.skived_seam)}, hems over {style.text(making.skived_hem)}."
    )
    return (
        f"{making.cloth.capitalize()}. {cut}",
        "Mark with chalk or a silver pen on the wrong side: no drill holes, no pins. Notches are slits of "
        f"{style.text(making.notch)} in the allowance.",
        f"{skived} Hold with clips, glue seams open and hems up."
        if making.is_hide
        else "Hold with clips, glue seams open and hems up.",
    )
