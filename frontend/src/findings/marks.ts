/** Findings as pencil marks: their numbers, their kinds, and where they stand. */

import type { FindingNote } from "../server/types.ts";

export interface Mark {
  readonly number: number;
  readonly note: FindingNote;
  readonly kind: "wrong" | "look" | "said";
}

const KINDS = { stop: "wrong", look: "look", note: "said" } as const;

/** The findings numbered from 1, in the server's order. */
export function numbered(notes: readonly FindingNote[]): Mark[] {
  return notes.map((note, index) => ({ number: index + 1, note, kind: KINDS[note.severity] }));
}

/** What a kind is called, for those who do not see its color. */
export const KIND_WORDS = { wrong: "wrong", look: "look again", said: "for the record" } as const;
