/** Which drawn thing is nearest to the pointer. */

import type { Point } from "./view.ts";

export interface Candidate {
  readonly name: string;
  readonly points: readonly Point[];
}

/** The name of the nearest chain of points within `reach`, or null; the first of two at the same distance. */
export function nearestName(candidates: Iterable<Candidate>, at: Point, reach: number): string | null {
  let best: string | null = null;
  let least = reach;
  for (const { name, points } of candidates) {
    const found = distance(points, at);
    if (found < least || (found === least && best === null)) {
      best = name;
      least = found;
    }
  }
  return best;
}

/** How far a place is from a chain of points. */
export function distance(points: readonly Point[], at: Point): number {
  let least = Infinity;
  for (let index = 0; index < points.length; index += 1) {
    const start = points[index];
    const end = points[index + 1] ?? start;
    if (start && end) least = Math.min(least, toSegment(start, end, at));
  }
  return least;
}

function toSegment(start: Point, end: Point, at: Point): number {
  const along = { x: end.x - start.x, y: end.y - start.y };
  const square = along.x * along.x + along.y * along.y;
  const raw = square ? ((at.x - start.x) * along.x + (at.y - start.y) * along.y) / square : 0;
  const share = Math.min(1, Math.max(0, raw));
  return Math.hypot(start.x + share * along.x - at.x, start.y + share * along.y - at.y);
}
