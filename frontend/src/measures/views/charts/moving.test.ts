import assert from "node:assert/strict";
import { test } from "node:test";
import { cellAfter } from "./moving.ts";

const from = { row: 1, column: 1 };
const untyped = { start: 0, end: 4, length: 4, typed: false };

test("Enter and the arrows lead to the neighbors", () => {
  const to = (key: string, shift = false) => cellAfter(key, shift, from, 3, 3, untyped);
  assert.deepEqual(to("Enter"), { row: 2, column: 1 });
  assert.deepEqual(to("Enter", true), { row: 0, column: 1 });
  assert.deepEqual(to("ArrowLeft"), { row: 1, column: 0 });
  assert.deepEqual(to("ArrowRight"), { row: 1, column: 2 });
  assert.equal(to("a"), null);
  assert.equal(to("ArrowRight", true), null, "Shift selects");
});

test("within what was typed the arrows move the caret, at its ends they lead on", () => {
  const at = (place: number) => ({ start: place, end: place, length: 4, typed: true });
  assert.equal(cellAfter("ArrowLeft", false, from, 3, 3, at(2)), null);
  assert.equal(cellAfter("ArrowRight", false, from, 3, 3, at(2)), null);
  assert.deepEqual(cellAfter("ArrowRight", false, from, 3, 3, at(4)), { row: 1, column: 2 });
  assert.deepEqual(cellAfter("ArrowLeft", false, from, 3, 3, at(0)), { row: 1, column: 0 });
  assert.deepEqual(cellAfter("ArrowDown", false, from, 3, 3, at(2)), { row: 2, column: 1 });
});

test("at the edge of the grid there is nowhere to go", () => {
  assert.equal(cellAfter("ArrowUp", false, { row: 0, column: 0 }, 3, 3, untyped), null);
  assert.equal(cellAfter("Enter", false, { row: 2, column: 0 }, 3, 3, untyped), null);
});
