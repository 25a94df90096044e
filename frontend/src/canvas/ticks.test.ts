import assert from "node:assert/strict";
import { test } from "node:test";
import { rulerStep, ticks } from "./ticks.ts";

test("marks are never nearer than 5 px, whatever the scale", () => {
  for (const unit of ["mm", "cm", "in"] as const) {
    for (const scale of [0.1, 0.3, 1, 3, 12, 40]) assert.ok(rulerStep(scale, unit).small * scale >= 5);
  }
});

test("zero stands at the origin and ten centimeters are 100 mm away", () => {
  const found = ticks({ scale: 1, x: 50, y: 0 }, "x", 1000, "cm").filter((tick) => tick.label);
  const zero = found.find((tick) => tick.label === "0");
  const ten = found.find((tick) => tick.label === "10");
  assert.ok(zero && ten);
  assert.equal(zero.at, 50);
  assert.ok(Math.abs(ten.at - zero.at - 100) < 1e-9);
});

test("an inch is 25.4 mm (international inch, 1959)", () => {
  const found = ticks({ scale: 4, x: 0, y: 0 }, "x", 500, "in").filter((tick) => tick.label);
  assert.deepEqual(found.slice(0, 3).map((tick) => tick.label), ["0", "1", "2"]);
  assert.ok(Math.abs((found[1]?.at ?? 0) - 101.6) < 1e-9);
});

test("the numbers of a ruler never run into each other", () => {
  for (const unit of ["mm", "cm", "in"] as const) {
    for (let scale = 0.15; scale < 40; scale *= 1.07) {
      const { small, large } = rulerStep(scale, unit);
      assert.ok(small * large * scale >= 28, `${unit} at ${scale}`);
    }
  }
});
