import assert from "node:assert/strict";
import { test } from "node:test";
import { hairline, within } from "./route.ts";

const pieces = [
  { left: 100, top: 100, right: 300, bottom: 500 },
  { left: 350, top: 100, right: 550, bottom: 500 },
];

function crossed(from: { x: number; y: number }, to: { x: number; y: number }): number {
  const line = hairline(from, to, pieces);
  let sum = 0;
  for (let i = 1; i < line.length; i += 1) {
    const [a, b] = [line[i - 1], line[i]];
    if (a && b) for (const box of pieces) sum += within(a, b, box);
  }
  return sum;
}

test("from the side of one piece the line goes round the other", () => {
  assert.equal(crossed({ x: 320, y: 300 }, { x: 700, y: 150 }), 0);
});

test("from inside a piece it leaves by the shortest way and crosses no other", () => {
  assert.ok(crossed({ x: 200, y: 130 }, { x: 700, y: 150 }) <= 30.001);
});

test("with nothing in the way it is level first", () => {
  assert.deepEqual(hairline({ x: 10, y: 50 }, { x: 100, y: 50 }, []), [{ x: 10, y: 50 }, { x: 86, y: 50 }, { x: 100, y: 50 }]);
});
