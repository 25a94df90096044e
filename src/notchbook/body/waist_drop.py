"""The drop of the waist below the natural one, as a value of a set beside its measures."""

from typing import Final

from notchbook.body.measure_table import MeasureEntry, measure_entry
from notchbook.body.sides import plain_key

DROP_KEY: Final = "waist_drop"
"""Stands for the drop where a key of a measure stands otherwise: it is no measure of the table."""

MOST_USUAL_DROP: Final = 100.0
"""mm. From the natural waist to the navel it is 46 (SD 17) on women, 35 (SD 19) on men (computed from
ANSUR II): three standard deviations reach 97 and 92."""

MOST_DROP: Final = 200.0
"""mm. On adults the crotch lies about 265 mm below the natural waist, so what is tied lower by more than
this holds no garment up (own judgment)."""

_DROP_ENTRY: Final = MeasureEntry(
    key=DROP_KEY,
    number=0,
    label="Waist drop",
    definition="From the natural waist down to the waist that was tied, or to the navel.",
    level="waist",
    landmarks=("natural waist",),
    how="Straight down from the tape at the natural waist, at the side.",
    repeat=5.0,
    kind="length",
    sided=False,
    usual=(0.0, MOST_USUAL_DROP),
    usual_from="ANSUR II",
    usual_grade="computed, widened",
    possible=(0.0, MOST_DROP),
)


def value_entry(text_key: str) -> MeasureEntry:
    """The entry of the measure with this key (with a side or without), or that of the drop."""
    return _DROP_ENTRY if text_key == DROP_KEY else measure_entry(plain_key(text_key))
