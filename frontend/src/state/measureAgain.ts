/** Going from wherever a measure was spoken of to its field in the Measures room. */

import { tick } from "svelte";
import { going } from "../measures/views/going.svelte.ts";
import { measureSheet } from "./measureSheet.svelte.ts";
import { measuring } from "./measuring.svelte.ts";
import { workroom } from "./workroom.svelte.ts";

/** Open the body in the Measures room with a measure in focus; `sheet` is a short sheet to show, if any. */
export async function measureAgain(body: number, key: string, sheet?: string): Promise<void> {
  going.view = "measure";
  // The body first: an empty room would open that of the style on the table.
  // No line stands on the sheet before its words are read.
  await Promise.all([measuring.open(body), sheet || !measureSheet.known ? measureSheet.read() : null]);
  workroom.go("measures");
  await tick(); // another body begins with its own sheet
  if (sheet) measureSheet.choose(sheet);
  measureSheet.goTo(key);
}
