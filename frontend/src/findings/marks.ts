/** Findings as pencil marks: their numbers, their kinds, and where they stand. */

import type { FindingNote } from "../server/types.ts";

export interface Mark {
  readonly number: number;
  readonly note: FindingNote;
  readonly kind: "wrong" | "look" | "said";
  /** Further findings of the same code that have no place either: one mark stands for all of them. */
  readonly alike: readonly FindingNote[];
}

/** From so many on, findings alike become one mark. */
const MANY = 3;

/** What is wrong comes first, then what to look at again; what is said for the record is last. */
const GRAVEST = ["stop", "look", "note"] as const;

const KINDS = { stop: "wrong", look: "look", note: "said" } as const;

/** The findings numbered from 1, the gravest first, else in the server's order; many alike without a place are one. */
export function numbered(notes: readonly FindingNote[]): Mark[] {
  const heads: { note: FindingNote; alike: FindingNote[] }[] = [];
  for (const note of GRAVEST.flatMap((grade) => notes.filter((one) => one.severity === grade))) {
    const fellows = notes.filter((other) => isAlike(other, note));
    const head = fellows.length >= MANY ? heads.find((one) => isAlike(one.note, note)) : undefined;
    if (head) head.alike.push(note);
    else heads.push({ note, alike: [] });
  }
  return heads.map(({ note, alike }, index) => ({ number: index + 1, note, alike, kind: KINDS[note.severity] }));
}

function isAlike(a: FindingNote, b: FindingNote): boolean {
  return a === b || (a.code === b.code && !a.place && !b.place && !a.contradiction && !b.contradiction);
}

/** What a kind is called, for those who do not see its color. */
export const KIND_WORDS = { wrong: "wrong", look: "look again", said: "for the record" } as const;

/** How many marks more there are: what is to be checked, and what is only said for the record. */
export function moreWords(rest: readonly Mark[]): string {
  const notes = rest.filter((mark) => mark.kind === "said").length;
  const open = rest.length - notes;
  const said = notes === 1 ? "1 note" : `${notes} notes`;
  if (!open) return notes === 1 ? "1 more note" : `${notes} more notes`;
  return notes ? `${open} more to check, ${said}` : `${open} more to check`;
}
