"""Makes the golden recipe of version 0.1; run once, at the release.

    python tests/golden/make_recipe_0_1.py

The form and the style are invented. They are opened in the tests for ever, so they are never made anew: the
program refuses to replace them.
"""

import json
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from notchbook.body import set_to_data
from notchbook.pattern import pattern_to_data
from notchbook.recipe import canonical_json, recipe_to_json
from support.yoke_skirt import FORM_A, run, yoke_recipe

PLACE = Path(__file__).parent


def main() -> None:
    """Write recipe, measures and pattern beside this program."""
    recipe = yoke_recipe()
    texts = {
        "recipe": recipe_to_json(recipe),
        "measures": canonical_json(set_to_data(FORM_A)),
        "pattern": json.dumps(pattern_to_data(run(recipe).pattern), indent=1) + "\n",
    }
    for what, text in texts.items():
        path = PLACE / f"yoke_skirt-0.1.{what}.json"
        if path.exists():
            raise SystemExit(f"{path.name} is there and is kept for ever")
        path.write_text(text, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
