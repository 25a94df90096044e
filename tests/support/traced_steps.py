"""Parameters of facings, linings and pockets on the blocks of the invented bodies."""

from typing import Any

from support.edge_steps import BACK, FRONT

NECK: list[dict[str, Any]] = [
    {"edge": f"{FRONT}/neck", "starts_at": f"{FRONT}/neck_pit"},
    {"edge": f"{BACK}/neck", "starts_at": f"{BACK}/side_neck_point"},
]
ARMHOLE: list[dict[str, Any]] = [
    {"edge": f"{FRONT}/armhole", "starts_at": f"{FRONT}/underarm"},
    {"edge": f"{BACK}/armhole", "starts_at": f"{BACK}/shoulder_point"},
]
PARTS: list[dict[str, Any]] = [
    {
        "neck": f"{piece}/neck",
        "center": f"{piece}/{center}",
        "shoulder": f"{piece}/shoulder",
        "armhole": f"{piece}/armhole",
    }
    for piece, center in ((FRONT, "neck_pit"), (BACK, "nape"))
]
LINING: dict[str, Any] = {
    "pieces": [FRONT, BACK],
    "facings": ["facing.front/edge", "facing.back/edge"],
    "centers": [f"{BACK}/center_back"],
    "armholes": [{"edge": f"{piece}/armhole", "underarm": f"{piece}/underarm"} for piece in (FRONT, BACK)],
}
POCKET: dict[str, Any] = {
    "edges": [
        {"edge": f"skirt.{side}/side_seam", "upper_end": f"skirt.{side}/waist_side"}
        for side in ("front", "back")
    ]
}
