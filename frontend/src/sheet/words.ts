/** Setting words on a piece: broken into lines that fit its room, or below it where they do not. */

import { GAP } from "../canvas/layout.ts";
import type { Extent } from "../canvas/view.ts";
import type { SheetPiece } from "../server/types.ts";

/** Widths of a letter, px, of the three sizes of a title (measured in the face of the page). */
export const LARGE = 10.4;
export const TEXT = 7.8;
export const SMALL = 6;

/** Width of a letter, px, of the words of lines and points. */
export const LETTERS = 5.6;

/** px from line to line below a piece. */
export const LEADING = 17;

export type TitlePiece = Pick<SheetPiece, "title" | "cut" | "title_width" | "title_height" | "low" | "high">;

/** How a title stands: what it is and how it is cut below each other, in one line, the title alone, its words under
 * each other, or all of them under the piece. */
export type TitleForm = "column" | "one" | "short" | "stacked" | "under";

/** A title at a scale, and its lines: of the cut in a column, else of the title. */
export function titled(piece: TitlePiece, scale: number): { form: TitleForm; lines: readonly string[] } {
  const high = (piece.high.y - piece.low.y) * scale;
  const room = piece.title_width * scale - 8;
  const deep = piece.title_height * scale;
  const cut = broken(piece.cut, Math.floor(room / SMALL), 3) ?? [];
  const fits = room > piece.title.length * TEXT;
  if (deep > 44 + 16 * cut.length && fits && cut.length) return { form: "column", lines: cut };
  if (high > 26 && room > piece.title.length * TEXT + piece.cut.length * SMALL + 12) return { form: "one", lines: [piece.title] };
  if (high > 26 && fits) return { form: "short", lines: [piece.title] };
  const stacked = broken(piece.title, Math.floor(room / TEXT), 3) ?? [];
  if (deep > 12 + 18 * stacked.length && stacked.length) return { form: "stacked", lines: stacked };
  return { form: "under", lines: beneath(piece, scale) };
}

/** The room (px) that a title takes below its piece at a scale. */
export function roomBelow(piece: TitlePiece, scale: number): Extent {
  if (!Number.isFinite(scale)) return { width: 0, height: 0 };
  const { form, lines } = titled(piece, scale);
  if (form !== "under") return { width: 0, height: 0 };
  return { width: Math.max(...lines.map((line) => line.length)) * TEXT + 4, height: LEADING * lines.length + 4 };
}

/** Lines as long as the piece with half of the gap at each side, or as its longest word. */
function beneath(piece: TitlePiece, scale: number): readonly string[] {
  const words = piece.title.split(" ");
  const wide = (piece.high.x - piece.low.x + GAP) * scale - 4;
  const longest = Math.max(Math.floor(wide / TEXT), ...words.map((word) => word.length));
  return broken(piece.title, longest, words.length) ?? words;
}

/** The lines of a text, each at most so many characters; null when a word is longer or there are too many lines. */
export function broken(text: string, longest: number, most: number): readonly string[] | null {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (word.length > longest) return null;
    if (last !== undefined && last.length + 1 + word.length <= longest) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines.length <= most ? lines : null;
}
