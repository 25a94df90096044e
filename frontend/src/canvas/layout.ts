/** Where pieces lie on the sheet. View data only: each piece keeps its own frame and is moved as it is.
 *
 * Pieces of one block keep their level (their y), so that the hip lines of front and back are level; blocks lie
 * side by side, their heads level, for the frame of a sleeve knows nothing of that of its bodice. A piece that
 * lies above or below its neighbor in the same frame (a yoke and its skirt) shares its column. Derived pieces
 * lie in rows below, their heads level, in as many as let the whole be drawn largest; on an upright sheet the
 * blocks too may lie in several rows. Backs lie left of fronts, so that the side seams face each other; where
 * left and right differ, their centers face each other. A piece too small for its words has room for them below.
 */

import type { Box, Extent, Point } from "./view.ts";

export interface Laid {
  readonly name: string;
  /** The block that drafted most of its edges: pieces of one block share a frame. */
  readonly block: string;
  readonly derived: boolean;
  readonly box: Box;
  /** The room (px) of the words that stand below it at a scale (px for one mm); none where they stand in it. */
  readonly below?: (scale: number) => Extent;
}

/** mm between pieces. */
export const GAP = 60;
const ROW_GAP = 90;
/** mm that a column takes at the least, so that a strip has room for its words. */
const NARROW = 70;

/** Width to height of a sheet whose size is not known. */
const USUAL = 1.25;
const MOST_ROWS = 4;
/** By how much larger all must be drawn that blocks are taken out of their one row. */
const WORTH = 1.1;
/** So often the words are given room at the scale that comes of it: the room makes the scale smaller. */
const TIMES = 3;

/** The gores of a skirt, from the center back to the center front. */
const GORES = ["center_back", "middle_back", "side_back", "side", "side_front", "middle_front", "center_front"];

interface Column {
  /** `box` is the piece alone, `full` with the words below it. */
  pieces: { name: string; box: Box; full: Box; shift: number }[];
}

/** Columns that keep their places to each other: those of a block, or a single one of derived pieces. */
type Group = readonly Column[];

interface Layout {
  readonly places: Map<string, Point>;
  readonly box: Box;
}

/** For each piece how far its frame is moved on the sheet (mm), and the box around all with their words; `seen` is
 * the sheet that is seen (px), null where nobody knows. */
export function laidOut(pieces: readonly Laid[], seen: Extent | null = null): Layout {
  if (!pieces.length) return { places: new Map(), box: { left: 0, right: 0, top: 0, bottom: -ROW_GAP } };
  let best = largest(pieces, seen, Infinity);
  for (let time = 0; seen && time < TIMES; time++) best = largest(pieces, seen, scaleOf(best.box, seen));
  return best;
}

function scaleOf(box: Box, seen: Extent): number {
  return Math.min(seen.width / (box.right - box.left), seen.height / (box.top - box.bottom));
}

/** The rows that let all be drawn largest, with room for the words as they are at this scale. */
function largest(pieces: readonly Laid[], seen: Extent | null, scale: number): Layout {
  const blocks = byBlock(pieces.filter((piece) => !piece.derived), scale);
  const derived = byBlock(pieces.filter((piece) => piece.derived), scale).flat().map((column) => [column]);
  const aspect = seen ? seen.width / seen.height : USUAL;
  const cost = ({ box }: Layout, rows: number): number => extent(box, aspect) * (rows > 1 ? WORTH : 1);
  let best: { layout: Layout; cost: number } | null = null;
  for (let rows = 1; rows <= (seen ? Math.max(blocks.length, 1) : 1); rows++) {
    for (let more = 1; more <= (derived.length ? MOST_ROWS : 1); more++) {
      const layout = inRows([...split(blocks, rows), ...split(derived, more)]);
      const own = cost(layout, rows);
      if (!best || own < best.cost - 1) best = { layout, cost: own };
    }
  }
  return best?.layout ?? inRows([]);
}

/** How large a box is for the eye: the height of the sheet that holds it. */
function extent(box: Box, aspect: number): number {
  return Math.max((box.right - box.left) / aspect, box.top - box.bottom);
}

/** Groups in about so many rows. */
function split(groups: readonly Group[], most: number): Group[][] {
  if (!groups.length) return [];
  const widths = groups.map((group) => group.reduce((sum, column) => sum + widthOf(column) + GAP, 0));
  const longest = Math.max(...widths, widths.reduce((sum, width) => sum + width, 0) / most);
  const rows: Group[][] = [[]];
  let filled = 0;
  groups.forEach((group, index) => {
    const width = widths[index] ?? 0;
    if (filled > 0 && filled + width > longest + GAP) {
      rows.push([]);
      filled = 0;
    }
    rows.at(-1)?.push(group);
    filled += width;
  });
  return rows;
}

/** Rows below each other. */
function inRows(rows: readonly (readonly Group[])[]): Layout {
  const places = new Map<string, Point>();
  const boxes: Box[] = [];
  for (const groups of rows) {
    const above = boxes.at(-1);
    boxes.push(row(groups, above ? above.bottom - ROW_GAP : 0, places));
  }
  return { places, box: boxes.reduce(joined, boxes[0] ?? { left: 0, right: 0, top: 0, bottom: 0 }) };
}

function widthOf(column: Column): number {
  const { left, right } = span(column);
  return Math.max(right - left, NARROW);
}

function span({ pieces }: Column): { left: number; right: number } {
  return { left: Math.min(...pieces.map((one) => one.full.left)), right: Math.max(...pieces.map((one) => one.full.right)) };
}

function row(groups: readonly Group[], ceiling: number, places: Map<string, Point>): Box {
  let x = 0;
  let bottom = ceiling;
  for (const columns of groups) {
    const drop = ceiling - Math.max(...columns.flatMap((column) => column.pieces.map((one) => one.box.top + one.shift)));
    for (const column of columns) {
      const { left } = span(column);
      for (const one of column.pieces) {
        places.set(one.name, { x: x - left, y: one.shift + drop });
        bottom = Math.min(bottom, one.full.bottom + one.shift + drop);
      }
      x += widthOf(column) + GAP;
    }
  }
  return { left: 0, right: x - GAP, top: ceiling, bottom };
}

/** The columns of each block, in the order in which the blocks come; derived pieces are of one kind. */
function byBlock(pieces: readonly Laid[], scale: number): Column[][] {
  if (!pieces.length) return [];
  const derived = pieces[0]?.derived;
  const blocks = derived ? [""] : [...new Set(pieces.map((piece) => piece.block))];
  return blocks.map((block) => {
    const own = pieces.filter((piece) => derived || piece.block === block);
    return inColumns(own.sort((a, b) => rank(a.name) - rank(b.name) || across(a) - across(b)), scale);
  });
}

function inColumns(pieces: readonly Laid[], scale: number): Column[] {
  const columns: Column[] = [];
  for (const piece of pieces) {
    const { name, box } = piece;
    const full = withWords(piece, scale);
    const last = columns.at(-1);
    const lowest = last?.pieces.at(-1);
    if (last && lowest && isBelow(box, lowest.box)) {
      last.pieces.push({ name, box, full, shift: Math.min(0, lowest.full.bottom + lowest.shift - GAP / 2 - box.top) });
    } else columns.push({ pieces: [{ name, box, full, shift: 0 }] });
  }
  return columns;
}

/** The box of a piece with the words below it. They may reach into half of the gaps around. */
function withWords({ box, below }: Laid, scale: number): Box {
  const words = below?.(scale);
  if (!words?.height) return box;
  const wider = Math.max(0, (words.width / scale - GAP - (box.right - box.left)) / 2);
  const deeper = Math.max(0, words.height / scale - ROW_GAP / 2);
  return { left: box.left - wider, right: box.right + wider, top: box.top, bottom: box.bottom - deeper };
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
