import assert from "node:assert/strict";
import { test } from "node:test";
import { along, aside, bulge } from "./freeWords.ts";

const words = { wide: 60, base: -5 };
const [start, end] = [{ x: 0, y: 0 }, { x: 300, y: 0 }];
const upright = (x: number) => [{ x, y: -100 }, { x, y: 100 }];

test("words keep their own place where nothing is drawn", () => {
  assert.deepEqual(along(start, end, 0.6, words, 1, []), { x: 180, y: 0, turn: -0 });
});

test("words go aside from a line that runs through their place", () => {
  const place = along(start, end, 0.5, words, 1, [upright(150)]);
  assert.ok(place && Math.abs(place.x - 150) > words.wide / 2);
});

test("words on a slope are held against lines on that slope", () => {
  const high = { x: 300, y: 300 };
  const near = [{ x: -10, y: 0 }, { x: 290, y: 300 }]; // 7 px above the line, along it: through all places
  assert.equal(along(start, high, 0.5, words, 1, [near]), null);
  const far = [{ x: -60, y: 0 }, { x: 240, y: 300 }];
  assert.equal(along(start, high, 0.5, words, 1, [far])?.turn, -45);
});

test("words without room are left out", () => {
  assert.equal(along(start, { x: 50, y: 0 }, 0.5, words, 1, []), null);
});

test("words of a point go to the side where no line runs", () => {
  assert.deepEqual(aside(start, 50, 1, []), { x: 8, y: 14, anchor: "start" });
  assert.deepEqual(aside(start, 50, 1, [upright(20)]), { x: -8, y: 14, anchor: "end" });
  assert.deepEqual(aside(start, 50, 1, [[{ x: -90, y: -9 }, { x: 90, y: -9 }]]), { x: 8, y: -6, anchor: "start" });
  assert.equal(aside(start, 50, 1, [upright(20), upright(-20)]), null);
});

test("a chain rises above its chord, or not", () => {
  assert.equal(bulge([start, { x: 150, y: 12 }, end]), 12);
  assert.equal(bulge([start, { x: 150, y: -12 }, end]), 0);
});

test("words of an upright line are read from below, whichever way it was drawn", () => {
  const [low, high] = [{ x: 0, y: 0 }, { x: 1e-13, y: 400 }];
  for (const [start, end] of [[low, high], [high, low]] as const) {
    const found = along(start, end, 0.5, { wide: 60, base: -5 }, 1, []);
    assert.equal(found?.turn, -90);
  }
});
