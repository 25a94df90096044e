"""What older recipes of the bodice, the torso and the dress are led up by."""

from typing import Any


def with_shoulder_as_measured(parameters: dict[str, Any]) -> dict[str, Any]:
    """Until version 2 the shoulder of a loose bodice was as long as measured where nothing else was asked:
    that is written down, and its lines stay."""
    is_left_open = parameters.get("shoulder_longer") is None
    if parameters.get("silhouette") != "loose" or not is_left_open:
        return parameters
    return {**parameters, "shoulder_longer": "0 mm"}
