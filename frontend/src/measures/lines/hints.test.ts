import assert from "node:assert/strict";
import { test } from "node:test";
import type { EstimateLine, MeasureLine, MeasureValue } from "../../server/types.ts";
import { hintsOf } from "./hints.ts";

const empty = { values: [] } as unknown as MeasureLine;
const taken = { values: [{ side: "both" } as MeasureValue] } as unknown as MeasureLine;
const estimate = (text: string) => ({ text }) as EstimateLine;

test("an estimate is a hint that no one takes for a value, its ± beside it", () => {
  assert.deepEqual(hintsOf(empty, estimate("41.2 ± 2.0 cm")), ["≈ 41.2", "± 2.0"]);
  assert.deepEqual(hintsOf(empty, estimate('15 13/16 ± 1 3/16"')), ["≈ 15 13/16", "± 1 3/16"]);
  assert.deepEqual(hintsOf(empty, estimate("69.1 ± 5.3 kg")), ["≈ 69.1", "± 5.3"]);
  assert.deepEqual(hintsOf(empty, estimate("24.3 ± 7.4°")), ["≈ 24.3", "± 7.4"]);
});

test("what is taken needs no hint", () => {
  assert.deepEqual(hintsOf(taken, estimate("41.2 ± 2.0 cm")), ["", ""]);
  assert.deepEqual(hintsOf(empty, null), ["", ""]);
});
