import assert from "node:assert/strict";
import { test } from "node:test";
import { markAt, scalePlace } from "./scale.ts";

test("the sizes stand evenly, the first and last within the margins", () => {
  const places = [0, 1, 2, 3].map((at) => scalePlace(at, 4));
  assert.deepEqual(places.map((x) => Math.round(x - (places[0] ?? 0))), [0, 85, 171, 256]);
  assert.equal(places[0], 300 - (places[3] ?? 0));
  assert.equal(scalePlace(0, 1), 150);
});

test("a mark between two sizes stands between their ticks", () => {
  const mark = markAt(1.5, 4);
  assert.equal(mark.x, (scalePlace(1, 4) + scalePlace(2, 4)) / 2);
  assert.equal(mark.beyond, null);
});

test("a mark beyond the chart stays at its end and points on", () => {
  assert.equal(markAt(-3, 4).beyond, "below");
  assert.equal(markAt(3.01, 4).beyond, "above");
  assert.equal(markAt(9, 4).x, markAt(4, 4).x);
});
