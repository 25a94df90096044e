import assert from "node:assert/strict";
import { test } from "node:test";
import { beside, crosses, overlaps } from "./labels.ts";

const room = { left: 0, top: 0, right: 800, bottom: 600 };

test("words stand on the outward side of their place", () => {
  const box = beside({ x: 300, y: 300 }, { x: 1, y: 0 }, { width: 100, height: 20 }, [], room);
  assert.ok(box.left > 300);
});

test("words that would lie on others go aside", () => {
  const first = beside({ x: 300, y: 300 }, { x: 1, y: 0 }, { width: 100, height: 20 }, [], room);
  const second = beside({ x: 304, y: 302 }, { x: 1, y: 0 }, { width: 100, height: 20 }, [first], room);
  assert.ok(!overlaps(first, second));
});

test("words stay within the room", () => {
  const box = beside({ x: 795, y: 5 }, { x: 1, y: 0 }, { width: 100, height: 20 }, [], room);
  assert.ok(box.right <= 800 && box.top >= 0);
});

test("where a line runs close outside, the words stand inside", () => {
  const line = [{ x: 340, y: 0 }, { x: 340, y: 600 }];
  const box = beside({ x: 300, y: 300 }, { x: 1, y: 0 }, { width: 100, height: 20 }, [], room, [line]);
  assert.ok(box.right < 300);
});

test("a line crosses a box, touches none beside it", () => {
  const box = { left: 0, top: 0, right: 10, bottom: 10 };
  assert.equal(crosses([{ x: -5, y: 5 }, { x: 15, y: 6 }], box), true);
  assert.equal(crosses([{ x: -5, y: 12 }, { x: 15, y: 12 }], box), false);
  assert.equal(crosses([{ x: 4, y: 4 }, { x: 5, y: 5 }], box), true);
});
