import assert from "node:assert/strict";
import { test } from "node:test";
import { withAnswer, withRows } from "./answers.ts";

test("a line has one answer, and its parts come one by one", () => {
  const target = withAnswer([], 3, { target: "hip_girth" });
  const both = withAnswer(target, 3, { unit: "in" });
  assert.deepEqual(both, [{ number: 3, target: "hip_girth", unit: "in", left_out: false }]);
});

test("what is left out keeps its unit for when it is taken in again", () => {
  const lines = withAnswer(withAnswer([], 2, { unit: "cm" }), 2, { left_out: true });
  assert.deepEqual(lines, [{ number: 2, target: "", unit: "cm", left_out: true }]);
});

test("other lines stay as they were", () => {
  const lines = withAnswer(withAnswer([], 1, { unit: "cm" }), 2, { unit: "in" });
  assert.deepEqual(lines.map((line) => [line.number, line.unit]), [[1, "cm"], [2, "in"]]);
});

test("one answer counts for all bodies that look alike, and leaves the others", () => {
  const rows = withRows(withRows([], [4], { choice: "add" }), [4, 6], { unit: "in" });
  assert.deepEqual(rows, [{ number: 4, choice: "add", unit: "in" }, { number: 6, unit: "in" }]);
});
