/** The hairline from a finding to its note: level and upright, round the pieces where it can. */

import type { Point } from "./view.ts";

export interface Rect {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const CLEAR = 12;
const CROSSING_COST = 6;

/** The corners of the line (px) from `from` to `to`, which lies to the right; `pieces` are their boxes. */
export function hairline(from: Point, to: Point, pieces: readonly Rect[]): Point[] {
  const turn = Math.max(from.x, to.x - 14);
  const levels = [from.y, to.y, ...pieces.flatMap((box) => [box.top - CLEAR, box.bottom + CLEAR])];
  let best: Point[] = [from, to];
  let least = Infinity;
  for (const level of levels) {
    const line = [from, { x: from.x, y: level }, { x: turn, y: level }, { x: turn, y: to.y }, to];
    const cost = costOf(line, pieces);
    if (cost < least) {
      least = cost;
      best = line;
    }
  }
  return best.filter((point, i) => i === 0 || point.x !== best[i - 1]?.x || point.y !== best[i - 1]?.y);
}

/** The length of the line, and a multiple of what runs over pieces. */
export function costOf(line: readonly Point[], pieces: readonly Rect[]): number {
  let cost = 0;
  for (let index = 1; index < line.length; index += 1) {
    const [a, b] = [line[index - 1], line[index]];
    if (!a || !b) continue;
    cost += Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
    for (const box of pieces) cost += CROSSING_COST * within(a, b, box);
  }
  return cost;
}

/** How much of a level or upright line lies inside a box. */
export function within(a: Point, b: Point, box: Rect): number {
  const overlap = (p: number, q: number, low: number, high: number): number =>
    Math.max(0, Math.min(Math.max(p, q), high) - Math.max(Math.min(p, q), low));
  if (a.y === b.y) return a.y > box.top && a.y < box.bottom ? overlap(a.x, b.x, box.left, box.right) : 0;
  return a.x > box.left && a.x < box.right ? overlap(a.y, b.y, box.top, box.bottom) : 0;
}
