import assert from "node:assert/strict";
import { test } from "node:test";
import { bare, runs } from "./fraction.ts";

test("fractions are cut out, the rest stays", () => {
  assert.deepEqual(runs('37 1/2"'), [{ text: "37" }, { over: "1", under: "2" }, { text: "″" }]);
  assert.deepEqual(runs('3/16"'), [{ over: "3", under: "16" }, { text: "″" }]);
  assert.deepEqual(runs('ease 9/16"')[0], { text: "ease " });
  assert.deepEqual(runs("61.8 cm"), [{ text: "61.8 cm" }]);
});

test("a bare length has no unit", () => {
  assert.deepEqual(['37 1/2"', "61.8 cm", "5 mm", '0"', "0.016 in", "1.5°"].map(bare), ["37 1/2", "61.8", "5", "0", "0.016", "1.5°"]);
});
