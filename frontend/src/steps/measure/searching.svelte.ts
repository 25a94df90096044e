/** Asking for something that is searched for: how far the search is, and stopping it, while its answer is waited for. */

import { call } from "../../server/call.ts";
import type { WishSearchAnswer } from "../../server/types.ts";
import { workroom } from "../../state/workroom.svelte.ts";
import { progressWords } from "./progressWords.ts";

/** ms between two looks at how far it is. */
const EVERY = 300;

export class Searching {
  running = $state(false);
  stopping = $state(false);
  /** Of the search that was begun last. */
  private word = "";
  private progress = $state.raw<WishSearchAnswer | null>(null);

  /** How far it is, in words. */
  get words(): string {
    return progressWords(this.progress, this.stopping);
  }

  /** The answer; a search that was stopped is refused. */
  async ask<Found>(path: string, sent: unknown): Promise<Found> {
    const word = String(Math.random()).slice(2);
    this.word = word;
    this.running = true;
    this.stopping = false;
    this.progress = null;
    const asked = call<Found>(`${path}?search=${word}`, workroom.unit, sent).finally(() => {
      if (this.word === word) this.running = this.stopping = false;
    });
    void this.follow(word);
    return asked;
  }

  stop(): void {
    this.stopping = this.running;
  }

  /** Ask how far it is until it has ended; what is not answered is asked again. */
  private async follow(word: string): Promise<void> {
    for (;;) {
      await new Promise((wake) => setTimeout(wake, EVERY));
      if (!this.running || this.word !== word) return;
      const at = `/wish-searches/${word}`;
      const asked = this.stopping ? call<WishSearchAnswer>(`${at}/stop`, workroom.unit, {}) : call<WishSearchAnswer>(at, workroom.unit);
      await asked.then((found) => (this.progress = found.running ? found : this.progress)).catch(() => undefined);
    }
  }
}
