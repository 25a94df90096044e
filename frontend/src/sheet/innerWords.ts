/** Where the words of the inner lines and of the marked points of a piece stand: clear of what is drawn on it, and of
 * each other. */

import { along, aside, bulge, type AlongPlace, type AsidePlace, type Chain } from "../canvas/freeWords.ts";
import type { Rect } from "../canvas/route.ts";
import type { Point } from "../canvas/view.ts";
import { pathPoints } from "../canvas/path.ts";
import type { SheetLine, SheetPiece } from "../server/types.ts";
import { LETTERS, SMALL, TEXT } from "./words.ts";

/** px free at both ends of the words of a line. */
const FREE = 8;
/** px for a mm; below it there is no room for words between the lines. */
const LEGIBLE = 0.5;
/** px from the middle of a marked point to the ends of its cross. */
const ARM = 5;
/** px from the base of words up to their heads and down to their tails. */
const HEADS = 10;
const TAILS = 2;

export interface LineWords extends AlongPlace {
  readonly words: string;
  readonly base: number;
}

export interface PointWords extends AsidePlace {
  readonly words: string;
}

/** The words by the names of the lines and points that they belong to; what has no room has none. */
export interface InnerWords {
  readonly lines: ReadonlyMap<string, LineWords>;
  readonly points: ReadonlyMap<string, PointWords>;
}

export type WordPiece = Pick<SheetPiece, "outline" | "lines" | "points" | "grain_low" | "grain_high" | "title" | "cut" | "title_at" | "title_width">;

/** The words of a piece at a scale: those of the points first, for they have fewer places. */
export function innerWords(piece: WordPiece, scale: number): InnerWords {
  const [lines, points] = [new Map<string, LineWords>(), new Map<string, PointWords>()];
  if (scale < LEGIBLE) return { lines, points };
  const marked = piece.points.filter((point) => point.mark);
  const drawn = piece.lines.map((line) => ({ name: line.name, chain: pathPoints(line.path) }));
  const crosses = marked.map((point) => ({ name: point.name, chain: boxed(point.place, { left: -ARM, top: -ARM, right: ARM, bottom: ARM }, 0, scale) }));
  const fixed: Chain[] = [pathPoints(piece.outline), titleChain(piece, scale)];
  const grain: Chain = [piece.grain_low, piece.grain_high];

  /** A place that is clear of all, else one that is clear of all but the grain line, else none. */
  function cleared<Place>(own: string, find: (chains: Chain[]) => Place | null): Place | null {
    const others = [...drawn, ...crosses].filter((one) => one.name !== own).map((one) => one.chain);
    return find([...fixed, ...others, grain]) ?? find([...fixed, ...others]);
  }

  for (const point of marked.filter((one) => !one.button)) {
    const words = point.said.split(", ").at(-1) ?? "";
    const wide = words.length * LETTERS;
    const place = cleared(point.name, (chains) => aside(point.place, wide, scale, chains));
    if (!place) continue;
    points.set(point.name, { ...place, words });
    const left = place.anchor === "start" ? place.x : place.x - wide;
    fixed.push(boxed(point.place, { left, top: place.y - HEADS, right: left + wide, bottom: place.y + TAILS }, 0, scale));
  }
  for (const [words, line] of namedLines(piece.lines)) {
    const place = cleared(line.name, (chains) => placeAlong(line, words, lies(piece), scale, chains));
    if (!place) continue;
    lines.set(line.name, { ...place, words });
    const half = (words.length * LETTERS) / 2;
    fixed.push(boxed(place, { left: -half, top: place.base - HEADS, right: half, bottom: place.base + TAILS }, place.turn, scale));
  }
  return { lines, points };
}

/** Whether the grain lies across the sheet rather than upright. */
function lies({ grain_low: low, grain_high: high }: WordPiece): boolean {
  return Math.abs(low.y - high.y) < Math.abs(low.x - high.x);
}

/** A line that darts cut into parts is named once, on its longest part. */
function namedLines(lines: readonly SheetLine[]): ReadonlyMap<string, SheetLine> {
  const longest = new Map<string, SheetLine>();
  for (const line of lines.filter((one) => one.kind !== "dart_leg" && one.kind !== "buttonhole")) {
    const whole = line.word.replace(/ \(.*\)$/, "");
    const known = longest.get(whole);
    if (!known || line.length > known.length) longest.set(whole, line);
  }
  return longest;
}

/** The title as it stands at most in one line, as a chain through its letters. */
function titleChain(piece: WordPiece, scale: number): Chain {
  const wide = Math.min(piece.title_width, (piece.title.length * TEXT + piece.cut.length * SMALL + 12) / scale);
  return [-4, 4].map((rise) => ({ x: piece.title_at.x + (rise > 0 ? wide : -wide) / 2, y: piece.title_at.y + rise / scale }));
}

/** Where a line's words stand, along it: where the server puts them if that is clear; null without room. */
function placeAlong(line: SheetLine, words: string, flat: boolean, scale: number, chains: readonly Chain[]): (AlongPlace & { base: number }) | null {
  const ends = pathPoints(line.path);
  const [start, end] = [ends[0], ends.at(-1)];
  if (!start || !end) return null;
  const wide = words.length * LETTERS + 2 * FREE;
  // Beside an upright line there is seldom room for words that lie: they stand along it, read from below.
  const share = line.upright ? (line.words_at.y - start.y) / (end.y - start.y) : (line.words_at.x - start.x) / (end.x - start.x);
  const level = flat ? 13 : -5 - bulge(ends) * scale; // a curved level rises above its chord
  for (const base of line.upright ? [-5, 13] : [level]) {
    const place = along(start, end, share, { wide, base }, scale, chains);
    if (place) return { ...place, base };
  }
  return null;
}

/** A box of the screen (px about `at`, turned clockwise by degrees) as a chain on the sheet, round it and through it. */
function boxed(at: Point, { left, top, right, bottom }: Rect, turn: number, scale: number): Chain {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const corners: [number, number][] = [[left, top], [right, top], [right, bottom], [left, bottom], [left, top], [right, bottom]];
  return corners.map(([x, y]) => ({ x: at.x + (x * cos - y * sin) / scale, y: at.y - (x * sin + y * cos) / scale }));
}
