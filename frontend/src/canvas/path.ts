/** Reading the server's path text (M, L, C; mm, y up) into a chain of points, for the screen only. */

import type { Point } from "./view.ts";

const PARTS = /([MLC])([^MLCZ]*)/g;
const STEPS = 16;

/** The points of a path; curves become 16 chords, fine enough for finding what is under the pointer. */
export function pathPoints(text: string): Point[] {
  const points: Point[] = [];
  for (const [, letter, rest] of text.matchAll(PARTS)) {
    const numbers = (rest ?? "").trim().split(/\s+/).map(Number);
    const pairs = numbers.flatMap((x, i) => (i % 2 ? [] : [{ x, y: numbers[i + 1] ?? 0 }]));
    const start = points.at(-1);
    const [first, second, end] = pairs;
    if (letter === "C" && start && first && second && end) points.push(...chords(start, first, second, end));
    else if (first) points.push(first);
  }
  return points;
}

function chords(a: Point, b: Point, c: Point, d: Point): Point[] {
  return Array.from({ length: STEPS }, (_, index) => {
    const t = (index + 1) / STEPS;
    const s = 1 - t;
    const mix = (p: number, q: number, r: number, e: number): number =>
      s * s * s * p + 3 * s * s * t * q + 3 * s * t * t * r + t * t * t * e;
    return { x: mix(a.x, b.x, c.x, d.x), y: mix(a.y, b.y, c.y, d.y) };
  });
}
