/** The pieces of a style ready to be drawn: where each lies, and what of it can be found by the pointer. */

import { laidOut, type Laid } from "../canvas/layout.ts";
import type { Candidate } from "../canvas/nearest.ts";
import { pathPoints } from "../canvas/path.ts";
import type { Box, Extent, Point } from "../canvas/view.ts";
import type { At, SheetEdge, SheetPiece, StyleAnswer } from "../server/types.ts";
import { roomBelow } from "./words.ts";

export interface PlacedEdge {
  readonly edge: SheetEdge;
  readonly piece: SheetPiece;
  readonly middle: Point;
  /** Toward the outside on the screen, length 1, y down. */
  readonly outward: Point;
}

export interface Drawing {
  readonly places: ReadonlyMap<string, Point>;
  readonly box: Box;
  readonly edges: ReadonlyMap<string, PlacedEdge>;
  readonly candidates: readonly Candidate[];
}

/** Lay out what is drawn, for the sheet that is seen; `before` is laid out with it, so that a preview lies over what
 * it changes. */
export function drawing(style: StyleAnswer, before: StyleAnswer | null, seen: Extent | null = null): Drawing {
  const boxes = new Map<string, Omit<Laid, "name">>();
  for (const piece of [...style.pieces, ...(before?.pieces ?? [])]) {
    const known = boxes.get(piece.name);
    const box = known ? around(known.box, boxOf(piece)) : boxOf(piece);
    const below = known?.below ?? ((scale: number): Extent => roomBelow(piece, scale));
    boxes.set(piece.name, { derived: piece.derived, block: known?.block ?? blockOf(piece), box, below });
  }
  const heirs = heirsOf(before?.pieces ?? [], style.pieces);
  const laid = [...boxes].filter(([name]) => !heirs.has(name)).map(([name, rest]) => ({ name, ...rest }));
  const { places, box } = laidOut(laid, seen);
  for (const [name, heir] of heirs) places.set(name, places.get(heir) ?? { x: 0, y: 0 });
  const edges = new Map<string, PlacedEdge>();
  const candidates: Candidate[] = [];
  for (const piece of style.pieces) {
    const at = places.get(piece.name) ?? { x: 0, y: 0 };
    for (const edge of piece.edges) {
      const outward = { x: edge.outward.x, y: -edge.outward.y };
      edges.set(edge.name, { edge, piece, middle: moved(edge.middle, at), outward });
      candidates.push({ name: edge.name, points: pathPoints(edge.path).map((point) => moved(point, at)) });
    }
  }
  return { places, box, edges, candidates };
}

/** The block in whose frame a piece lies: that which drafted most of its edges, for edges keep their names. */
export function blockOf(piece: SheetPiece): string {
  const times = new Map<string, number>();
  for (const edge of piece.edges) {
    const block = edge.name.split(/[./]/)[0] ?? "";
    times.set(block, (times.get(block) ?? 0) + 1);
  }
  return [...times].sort((a, b) => b[1] - a[1])[0]?.[0] ?? "";
}

/** For each piece that is gone the piece that carries its edges now: it is shown there. */
function heirsOf(before: readonly SheetPiece[], now: readonly SheetPiece[]): Map<string, string> {
  const heirs = new Map<string, string>();
  const living = new Set(now.map((piece) => piece.name));
  for (const gone of before.filter((piece) => !living.has(piece.name))) {
    const names = gone.edges.map((edge) => edge.name);
    const carries = (piece: SheetPiece): number =>
      piece.edges.filter((edge) => names.some((name) => edge.name === name || edge.name.startsWith(`${name}/`))).length;
    const heir = [...now].sort((a, b) => carries(b) - carries(a))[0];
    if (heir && carries(heir)) heirs.set(gone.name, heir.name);
  }
  return heirs;
}

/** Where the edge or the piece of these names stands on the sheet: the middle of the edge, the title of the piece. */
export function placeOf(picture: Drawing, style: StyleAnswer, names: { edge?: string; piece?: string }): Point | null {
  if (names.edge) return picture.edges.get(names.edge)?.middle ?? null;
  const piece = style.pieces.find((one) => one.name === names.piece);
  const at = picture.places.get(names.piece ?? "");
  return piece && at ? moved(piece.title_at, at) : null;
}

export function moved(place: At, by: Point): Point {
  return { x: place.x + by.x, y: place.y + by.y };
}

export function boxOf(piece: SheetPiece): Box {
  return { left: piece.low.x, bottom: piece.low.y, right: piece.high.x, top: piece.high.y };
}

function around(a: Box, b: Box): Box {
  return {
    left: Math.min(a.left, b.left),
    right: Math.max(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
    top: Math.max(a.top, b.top),
  };
}
