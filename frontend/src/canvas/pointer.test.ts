import assert from "node:assert/strict";
import { test } from "node:test";
import { AT_REST, pointed, type PointerAction, type PointerHappening, type PointerState } from "./pointer.ts";

type Row = [PointerHappening, number, number, number];

function run(...rows: Row[]): { state: PointerState; actions: PointerAction[] } {
  let state = AT_REST;
  const actions: PointerAction[] = [];
  for (const [happening, id, x, y] of rows) {
    const [next, action] = pointed(state, happening, id, { x, y });
    state = next;
    if (action.kind !== "none") actions.push(action);
  }
  return { state, actions };
}

test("a press that hardly strays is a click", () => {
  const { actions, state } = run(["down", 1, 10, 10], ["move", 1, 12, 11], ["up", 1, 12, 11]);
  assert.deepEqual(actions, [{ kind: "click", at: { x: 12, y: 11 } }]);
  assert.equal(state, AT_REST);
});

test("a drag pans by exactly the way of the pointer and is no click", () => {
  const { actions } = run(["down", 1, 0, 0], ["move", 1, 3, 0], ["move", 1, 10, 5], ["move", 1, 30, 9], ["up", 1, 30, 9]);
  const total = actions.reduce((sum, a) => (a.kind === "pan" ? { x: sum.x + a.dx, y: sum.y + a.dy } : sum), { x: 0, y: 0 });
  assert.deepEqual(total, { x: 30, y: 9 });
  assert.ok(actions.every((action) => action.kind === "pan"));
});

test("two fingers pinch about their middle", () => {
  const { actions } = run(["down", 1, 0, 0], ["down", 2, 100, 0], ["move", 2, 200, 0], ["up", 2, 200, 0], ["up", 1, 0, 0]);
  assert.deepEqual(actions, [{ kind: "pinch", factor: 2, at: { x: 100, y: 0 }, dx: 50, dy: 0 }]);
});

test("a pointer that was taken away clicks nothing; one that was never down does nothing", () => {
  assert.deepEqual(run(["down", 1, 0, 0], ["cancel", 1, 0, 0]).actions, []);
  assert.deepEqual(run(["move", 5, 3, 3], ["up", 5, 3, 3]).actions, []);
});
