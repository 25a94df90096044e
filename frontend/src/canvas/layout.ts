/** Where pieces lie on the sheet. View data only: each piece keeps its own frame and is moved as it is.
 *
 * Pieces of one block keep their level (their y), so that the hip lines of front and back are level; blocks lie
 * side by side, their heads level, for the frame of a sleeve knows nothing of that of its bodice. A piece that
 * lies above or below its neighbor in the same frame (a yoke and its skirt) shares its column. Derived pieces
 * lie in rows below, their heads level, in as many as let the whole be drawn largest. Backs lie left of fronts, so that the side seams face each other;
 * where left and right differ, their centers face each other.
 */

import type { Box, Point } from "./view.ts";

export interface Laid {
  readonly name: string;
  /** The block that drafted most of its edges: pieces of one block share a frame. */
  readonly block: string;
  readonly derived: boolean;
  readonly box: Box;
}

/** mm between pieces. */
export const GAP = 60;
const ROW_GAP = 90;
/** mm that a column takes at the least, so that a strip has room for its words. */
const NARROW = 70;

/** Width to height of the sheet that is seen beside the findings, about. */
const SEEN = 1.25;
const MOST_ROWS = 4;

/** The gores of a skirt, from the center back to the center front. */
const GORES = ["center_back", "middle_back", "side_back", "side", "side_front", "middle_front", "center_front"];

interface Column {
  pieces: { name: string; box: Box; shift: number }[];
}

/** For each piece how far its frame is moved on the sheet (mm), and the box around all. */
export function laidOut(pieces: readonly Laid[]): { places: Map<string, Point>; box: Box } {
  const places = new Map<string, Point>();
  const first = row(byBlock(pieces.filter((piece) => !piece.derived)), 0, places);
  const derived = byBlock(pieces.filter((piece) => piece.derived)).flat();
  if (!pieces.length) return { places, box: { ...first, bottom: -ROW_GAP } };
  if (!derived.length) return { places, box: first };
  const tried = Array.from({ length: MOST_ROWS }, (_, n) => inRows(derived, n + 1, first));
  const best = tried.reduce((a, b) => (extent(b.box) < extent(a.box) - 1 ? b : a));
  for (const [name, place] of best.places) places.set(name, place);
  return { places, box: best.box };
}

/** How large a box is for the eye: the height of the sheet that holds it. */
function extent(box: Box): number {
  return Math.max((box.right - box.left) / SEEN, box.top - box.bottom);
}

/** Columns in about so many rows under the first one. */
function inRows(columns: readonly Column[], most: number, first: Box): { places: Map<string, Point>; box: Box } {
  const widths = columns.map((column) => widthOf(column) + GAP);
  const longest = Math.max(...widths, widths.reduce((sum, width) => sum + width, 0) / most);
  const rows: Column[][] = [[]];
  let filled = 0;
  columns.forEach((column, index) => {
    const width = widths[index] ?? 0;
    if (filled > 0 && filled + width > longest + GAP) {
      rows.push([]);
      filled = 0;
    }
    rows.at(-1)?.push(column);
    filled += width;
  });
  const places = new Map<string, Point>();
  const box = rows.reduce((above, own) => joined(above, row([own], above.bottom - ROW_GAP, places)), first);
  return { places, box };
}

function widthOf(column: Column): number {
  const { left, right } = span(column);
  return Math.max(right - left, NARROW);
}

function span({ pieces }: Column): { left: number; right: number } {
  return { left: Math.min(...pieces.map((one) => one.box.left)), right: Math.max(...pieces.map((one) => one.box.right)) };
}

function row(blocks: readonly (readonly Column[])[], ceiling: number, places: Map<string, Point>): Box {
  if (!blocks.length) return { left: 0, right: 0, top: ceiling, bottom: ceiling };
  let x = 0;
  let bottom = ceiling;
  for (const columns of blocks) {
    const drop = ceiling - Math.max(...columns.flatMap((column) => column.pieces.map((one) => one.box.top + one.shift)));
    for (const column of columns) {
      const { left } = span(column);
      for (const one of column.pieces) {
        places.set(one.name, { x: x - left, y: one.shift + drop });
        bottom = Math.min(bottom, one.box.bottom + one.shift + drop);
      }
      x += widthOf(column) + GAP;
    }
  }
  return { left: 0, right: x - GAP, top: ceiling, bottom };
}

/** The columns of each block, in the order in which the blocks come; derived pieces are of one kind. */
function byBlock(pieces: readonly Laid[]): Column[][] {
  if (!pieces.length) return [];
  const derived = pieces[0]?.derived;
  const blocks = derived ? [""] : [...new Set(pieces.map((piece) => piece.block))];
  return blocks.map((block) => {
    const own = pieces.filter((piece) => derived || piece.block === block);
    const columns = inColumns(own.sort((a, b) => rank(a.name) - rank(b.name) || across(a) - across(b)));
    if (derived) columns.forEach(raise);
    return columns;
  });
}

/** Derived pieces come from several frames: their heads are level, not their frames. */
function raise(column: Column): void {
  const top = Math.max(...column.pieces.map((one) => one.box.top + one.shift));
  for (const one of column.pieces) one.shift -= top;
}

function inColumns(pieces: readonly Laid[]): Column[] {
  const columns: Column[] = [];
  for (const { name, box } of pieces) {
    const last = columns.at(-1);
    const lowest = last?.pieces.at(-1);
    if (last && lowest && isBelow(box, lowest.box)) {
      last.pieces.push({ name, box, shift: Math.min(0, lowest.box.bottom + lowest.shift - GAP / 2 - box.top) });
    } else columns.push({ pieces: [{ name, box, shift: 0 }] });
  }
  return columns;
}

/** Whether a piece lies below another in the same frame: over the same width, its middle under the other's foot. */
function isBelow(box: Box, upper: Box): boolean {
  const shared = Math.min(box.right, upper.right) - Math.max(box.left, upper.left);
  const narrow = Math.min(box.right - box.left, upper.right - upper.left);
  return shared > 0.5 * narrow && (box.top + box.bottom) / 2 < upper.bottom;
}

/** Backs lie left of fronts; gores lie as they are sewn, from the center back round the side to the center front. */
function rank(name: string): number {
  const word = name.split("@")[0]?.split(".")[1] ?? "";
  const gore = GORES.indexOf(word);
  if (gore >= 0) return gore / GORES.length;
  return name.includes("back") ? 0 : 1;
}

/** Left and right of one piece lie as they meet at their center, face up: of backs the left one lies left, of
 * fronts the right one. */
function across(piece: Laid): number {
  if (!piece.name.includes("@")) return 0;
  return piece.name.endsWith(piece.name.includes("back") ? "@left" : "@right") ? -1 : 1;
}

function joined(a: Box, b: Box): Box {
  return {
    left: Math.min(a.left, b.left),
    right: Math.max(a.right, b.right),
    top: Math.max(a.top, b.top),
    bottom: Math.min(a.bottom, b.bottom),
  };
}
