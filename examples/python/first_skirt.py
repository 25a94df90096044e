"""A skirt in a few lines: from measures to a style file and paper. Run it in any folder.

The form is invented.
"""

from pathlib import Path

import notchbook

form = notchbook.MeasureSet.from_mm("Form A", {"waist_girth": 705, "hip_girth": 970, "hip_depth": 205})
run = notchbook.draft("skirt", form, {"length": "62 cm", "hip_ease": "5 cm"})

for girth in notchbook.ease_table(run):
    print(f"{girth.name}: body {girth.body:.1f} + ease {girth.ease:.1f} = {girth.pattern:.1f} mm")

front = run.pattern.pieces["skirt.front"]
print(f"front side seam: {front.edge('skirt.front/side_seam').path.length:.1f} mm")
print(notchbook.examine(run).summary())

notchbook.write_style(run, Path("skirt.json"))
notchbook.write_draft(notchbook.job_of(run, date="2026-03-31"), Path("skirt.pdf"), paper="a4")
