/** Where the words of an inner line or of a marked point stand clear of what is drawn on their piece. */

import { crosses } from "./labels.ts";
import type { Rect } from "./route.ts";
import type { Point } from "./view.ts";

export type Chain = readonly Point[];

/** Shares of a line at which its words are tried after their own place, from the middle outward. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88];
const LETTERS_HIGH = 10;
/** px between a marked point and its words. */
const ASIDE = 8;

/** mm; a line that leans by less over all its length is upright, and its words are read from below. */
const UPRIGHT = 0.01;

/** Words along a line: where (mm), and by how many degrees they are turned on the screen. */
export interface AlongPlace extends Point {
  readonly turn: number;
}

/** Words beside a point: px from it to where they start or end. */
export interface AsidePlace extends Point {
  readonly anchor: "start" | "end";
}

/** A place for words of this width (px) along a line from `start` to `end`, their base `base` px below it.
 *
 * `first` is the share of the line that is tried first; null where every place lies on one of the `drawn` chains (mm).
 */
export function along(
  start: Point,
  end: Point,
  first: number,
  words: { readonly wide: number; readonly base: number },
  scale: number,
  drawn: readonly Chain[],
): AlongPlace | null {
  const across = Math.abs(end.x - start.x) < UPRIGHT ? 0 : end.x - start.x;
  const slope = across ? Math.atan((end.y - start.y) / across) : Math.PI / 2;
  const least = words.wide / 2 / (Math.hypot(end.x - start.x, end.y - start.y) * scale);
  const box = { left: -words.wide / 2, top: words.base - LETTERS_HIGH, right: words.wide / 2, bottom: words.base + 2 };
  const shares = [first, ...SHARES].filter((share) => share >= least && share <= 1 - least);
  for (const share of shares) {
    const at = { x: start.x + share * (end.x - start.x), y: start.y + share * (end.y - start.y) };
    if (isFree(box, at, -slope, scale, drawn)) return { ...at, turn: (-slope * 180) / Math.PI };
  }
  return null;
}

/** How far a chain rises above the line between its ends, in its own unit; 0 where it sags. */
export function bulge(chain: Chain): number {
  const [start, end] = [chain[0], chain.at(-1)];
  if (!start || !end || start.x === end.x) return 0;
  const slope = (end.y - start.y) / (end.x - start.x);
  const rise = Math.max(...chain.map((point) => point.y - start.y - slope * (point.x - start.x)));
  return rise * Math.cos(Math.atan(slope));
}

/** A place for words of this width (px) beside a marked point: right or left, below or above it; null without one. */
export function aside(at: Point, wide: number, scale: number, drawn: readonly Chain[]): AsidePlace | null {
  for (const y of [14, -6]) {
    for (const anchor of ["start", "end"] as const) {
      const left = anchor === "start" ? ASIDE : -ASIDE - wide;
      const box = { left, top: y - LETTERS_HIGH, right: left + wide, bottom: y + 2 };
      if (isFree(box, at, 0, scale, drawn)) return { x: anchor === "start" ? ASIDE : -ASIDE, y, anchor };
    }
  }
  return null;
}

/** Whether no chain runs through a box of the screen (px about `at`, turned clockwise by `turn`, radians). */
function isFree(box: Rect, at: Point, turn: number, scale: number, drawn: readonly Chain[]): boolean {
  const [cos, sin] = [Math.cos(turn) * scale, Math.sin(turn) * scale];
  const seen = (p: Point): Point => ({
    x: (p.x - at.x) * cos - (p.y - at.y) * sin,
    y: -(p.x - at.x) * sin - (p.y - at.y) * cos,
  });
  return !drawn.some((chain) => crosses(chain.map(seen), box));
}
