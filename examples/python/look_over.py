"""Measures before a draft, in a few lines: look over, estimate, compare, pad. Run it in any folder.

Client and dress form are invented; the arm length has a slip of the keyboard.
"""

from dataclasses import replace

from notchbook.body import MeasureSet, look_over
from notchbook.body.charts import nearest_size, padding_plan, shipped_chart
from notchbook.body.estimating import estimate
from notchbook.units import LengthStyle

style = LengthStyle("cm")
taken = {
    "height": 1680,
    "bust_girth": 952,
    "waist_girth": 782,
    "hip_girth": 1010,
    "arm_length": 480,
    "inside_leg": 785,
}
client = MeasureSet.from_mm("Client K-17", taken, population="women")

for doubt in look_over(client, style).doubts:
    print(f"{doubt.level}: {doubt.problem.text(style.text)}")
client = client.with_value("arm_length", 580)  # her notes say so; nothing is put in by itself
print("looked over:", look_over(client, style).level)

for key, guess in estimate(client, ["back_waist_length", "hip_depth"]).found.items():
    print(f"{key}: {guess.value:.0f} ± {guess.error:.0f} mm")

form_girths = {"bust_girth": 920, "waist_girth": 740, "hip_girth": 980}
form = replace(MeasureSet.from_mm("Form A", form_girths, population="women"), kind="form")
print("the form is a size", nearest_size(form, shipped_chart("women")).size)
for level in padding_plan(form, client).levels:
    print(f"{level.key}: {level.front_layers} layers in front, {level.back_layers} behind")
