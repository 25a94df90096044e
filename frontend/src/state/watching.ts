/** Hearing of changes that were made elsewhere (another tab, the command line): a look every few seconds. */

import { workroom } from "./workroom.svelte.ts";
import { desk } from "./desk.svelte.ts";
import { measuring } from "./measuring.svelte.ts";

const EVERY = 3000;

/** Look for changes while the page is seen; the way to stop. */
export function watch(): () => void {
  const timer = setInterval(() => void look(), EVERY);
  const seen = (): void => void look();
  window.addEventListener("focus", seen);
  return () => {
    clearInterval(timer);
    window.removeEventListener("focus", seen);
  };
}

async function look(): Promise<void> {
  if (document.hidden || workroom.writing) return;
  try {
    await workroom.lookAtShelf();
    if (!workroom.banner?.again) workroom.banner = null;
    const { styles, bodies } = workroom.shelf;
    const style = styles.find((entry) => entry.id === desk.style?.id);
    const drawn = bodies.find((entry) => entry.id === desk.style?.body.id);
    const moved = style && desk.style && style.version > desk.style.version;
    if (moved || (drawn && desk.style && drawn.version > desk.style.body.version)) await desk.again();
    const body = bodies.find((entry) => entry.id === measuring.body?.id);
    if (body && measuring.body && body.version > measuring.body.version) await measuring.again();
  } catch (error) {
    workroom.failed(error, null);
  }
}
