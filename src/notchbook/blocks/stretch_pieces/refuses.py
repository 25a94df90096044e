"""The codes with which the stretch blocks refuse a body or a cloth."""

UPPER_REFUSES = (
    "stretch-not-tested",
    "stretch-ease-too-small",
    "stretch-neck-unreachable",
    "stretch-neck-wide",
    "stretch-shoulder-against-bust",
    "stretch-shoulder-below-underarm",
    "stretch-strap-narrow",
    "stretch-side-short",
    "stretch-length-negative",
    "stretch-arm-too-full",
    "stretch-arm-too-thin",
    "stretch-cap-not-reached",
    "stretch-sleeve-short",
)
"""Those of a torso."""

BODYSUIT_REFUSES = (
    *UPPER_REFUSES,
    "stretch-strap-with-sleeve",
    "cloth-hardly-stretches",
    "bodysuit-crotch-short",
    "bodysuit-crotch-wide",
    "bodysuit-leg-no-room",
)
"""Those of a bodysuit."""

LEGGINGS_REFUSES = (
    "stretch-not-tested",
    "stretch-ease-too-small",
    "cloth-hardly-stretches",
    "leggings-crotch-long",
    "leggings-crotch-short",
    "leggings-hem-above-crotch",
    "leggings-hip-below-crotch",
    "leggings-thigh-against-hip",
    "leggings-waist-unreachable",
)
"""Those of leggings."""
