/** One question to the server whose answer a view shows; of several only the newest counts. */

import { call } from "../../server/call.ts";
import type { Refusal } from "../../server/types.ts";
import { workroom } from "../../state/workroom.svelte.ts";

export class Asking<Answer> {
  answer = $state.raw<Answer | null>(null);
  refusal = $state.raw<Refusal | null>(null);
  busy = $state(false);
  private newest = 0;

  /** Ask; the old answer stays until the new one is there. A refusal takes its place. */
  async ask(path: string, sent?: unknown): Promise<void> {
    const own = ++this.newest;
    this.busy = true;
    try {
      const answer = await call<Answer>(path, workroom.unit, sent);
      if (own !== this.newest) return;
      this.answer = answer;
      this.refusal = null;
    } catch (error) {
      if (own !== this.newest) return;
      this.refusal = workroom.failed(error, null);
      this.answer = null;
    } finally {
      if (own === this.newest) this.busy = false;
    }
  }

  /** Forget the answer, and what is still asked. */
  forget(): void {
    this.newest += 1;
    this.answer = this.refusal = null;
    this.busy = false;
  }
}
