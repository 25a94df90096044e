import assert from "node:assert/strict";
import { test } from "node:test";
import { centered, fitted, panned, toScreen, toSheet, unfit, zoomed, LARGEST_SCALE } from "./view.ts";

const view = { scale: 2, x: 100, y: 500 };
const none = { left: 0, top: 0, right: 0, bottom: 0 };

test("screen and sheet are each other's inverse, y up on the sheet", () => {
  const place = { x: 12.5, y: 40 };
  assert.deepEqual(toScreen(view, place), { x: 125, y: 420 });
  assert.deepEqual(toSheet(view, toScreen(view, place)), place);
});

test("zooming keeps what lies under the pointer", () => {
  const at = { x: 333, y: 77 };
  const before = toSheet(view, at);
  for (const factor of [0.5, 1.2, 7]) {
    const after = toSheet(zoomed(view, factor, at), at);
    assert.ok(Math.abs(after.x - before.x) < 1e-9 && Math.abs(after.y - before.y) < 1e-9);
  }
});

test("zooming stops at the largest scale and still keeps the place", () => {
  const at = { x: 10, y: 10 };
  const near = zoomed(view, 1e9, at);
  assert.equal(near.scale, LARGEST_SCALE);
  assert.ok(Math.abs(toSheet(near, at).x - toSheet(view, at).x) < 1e-9);
});

test("a fitted box lies within the insets and touches one pair of them", () => {
  const insets = { left: 30, top: 20, right: 200, bottom: 10 };
  const box = { left: -240, bottom: -400, right: 300, top: 210 };
  const found = fitted(box, 1000, 700, insets);
  const low = toScreen(found, { x: box.left, y: box.bottom });
  const high = toScreen(found, { x: box.right, y: box.top });
  assert.ok(low.x >= 29.999 && high.x <= 800.001 && high.y >= 19.999 && low.y <= 690.001);
  assert.ok(Math.abs(high.y - 20) < 1e-6 || Math.abs(low.x - 30) < 1e-6);
});

test("a view no longer suits what has outgrown it, nor what has become small in it", () => {
  const box = (size: number) => ({ left: 0, bottom: -size, right: size, top: 0 });
  const insets = { left: 50, top: 50, right: 50, bottom: 50 };
  const seen = fitted(box(600), 1000, 700, insets);
  assert.deepEqual([350, 600, 5500, 60].map((size) => unfit(seen, box(size), 1000, 700, insets)), [false, false, true, true]);
});

test("panning moves by screen pixels; centering puts a place in the middle", () => {
  assert.deepEqual(panned(view, 3, -4), { scale: 2, x: 103, y: 496 });
  const found = centered(view, { x: 7, y: 9 }, 800, 600, none, 5);
  assert.deepEqual(toScreen(found, { x: 7, y: 9 }), { x: 400, y: 300 });
  assert.equal(found.scale, 5);
});
