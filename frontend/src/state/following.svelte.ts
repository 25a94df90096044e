/** What follows a drawing when it rests: what the checks say of it, and its cut lines. Never in its way. */

import { desk } from "./desk.svelte.ts";

/** ms after which the cut lines are asked for: the sheet is drawn by then. */
const DRAWN = 60;

/** Effects of the page; each new drawing begins its rest anew. */
export function follow(): void {
  $effect(() => {
    const next = desk.unread;
    return next ? soon(() => void desk.lookOver(next.style), next.rest) : undefined;
  });
  $effect(() => {
    const style = desk.uncut;
    return style ? soon(() => void desk.lookAtCut(style), DRAWN) : undefined;
  });
}

function soon(deed: () => void, rest: number): () => void {
  const timer = setTimeout(deed, rest);
  return () => clearTimeout(timer);
}
