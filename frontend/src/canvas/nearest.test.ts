import assert from "node:assert/strict";
import { test } from "node:test";
import { distance, nearestName } from "./nearest.ts";
import { pathPoints } from "./path.ts";

test("lines keep their corners, curves end where they end", () => {
  const points = pathPoints("M0.000 0.000L10.000 0.000C10.000 5.000 5.000 10.000 0.000 10.000Z");
  assert.deepEqual(points[0], { x: 0, y: 0 });
  assert.deepEqual(points[1], { x: 10, y: 0 });
  assert.deepEqual(points.at(-1), { x: 0, y: 10 });
  assert.equal(points.length, 18);
});

test("a quarter circle by the usual handles stays within 0.03 % of its radius", () => {
  // The handle length 0.5523 is the common approximation of a quarter circle by one cubic.
  const points = pathPoints("M100 0C100 55.228 55.228 100 0 100");
  for (const point of points) assert.ok(Math.abs(Math.hypot(point.x, point.y) - 100) < 0.03);
});

test("the nearest chain wins, and none beyond the reach", () => {
  const level = { name: "level", points: pathPoints("M0 0L100 0") };
  const upright = { name: "upright", points: pathPoints("M0 0L0 100") };
  assert.equal(nearestName([level, upright], { x: 50, y: 3 }, 6), "level");
  assert.equal(nearestName([level, upright], { x: 2, y: 50 }, 6), "upright");
  assert.equal(nearestName([level, upright], { x: 50, y: 50 }, 6), null);
});

test("beyond its end a line is as far as its end", () => {
  assert.equal(distance(pathPoints("M0 0L10 0"), { x: 13, y: 4 }), 5);
  assert.equal(distance([{ x: 1, y: 1 }], { x: 1, y: 3 }), 2);
});
