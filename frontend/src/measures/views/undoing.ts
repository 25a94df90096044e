/** Undo by keys in the views: where the sheet is not in sight, no measure changes behind her back. */

import { charting } from "./charts/charting.svelte.ts";
import { going } from "./going.svelte.ts";

/** Hears a key before the page does: under "size charts" it undoes the chart, elsewhere it stays in its field. */
export function keepUndoFrom(event: KeyboardEvent): void {
  if (going.view === "measure" || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
  event.stopPropagation();
  if (going.view !== "size charts" || !charting.own || isTyping(event.target)) return;
  event.preventDefault();
  void (event.shiftKey ? charting.redo() : charting.undo());
}

/** Whether the browser's own undo has something to undo: what was typed is not stored yet. */
function isTyping(place: EventTarget | null): boolean {
  if (!(place instanceof HTMLInputElement)) return place instanceof HTMLTextAreaElement;
  return place.dataset["cell"] === undefined || place.dataset["typed"] !== undefined;
}
