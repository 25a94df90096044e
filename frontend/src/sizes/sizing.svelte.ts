/** A style checked in every size of a chart: which chart, how far it is, what came of it. Nothing is stored. */

import { call } from "../server/call.ts";
import type { Refusal, SizesAnswer } from "../server/types.ts";
import { workroom } from "../state/workroom.svelte.ts";

/** ms between two looks at how far it is. */
const EVERY = 300;
const KEPT = "chart of the sizes";

class Sizing {
  /** Whether the table of sizes lies over the sheet. */
  open = $state(false);
  /** "women", "men", or the number of one of her charts. */
  chart = $state(localStorage.getItem(KEPT) ?? "women");
  answer = $state.raw<SizesAnswer | null>(null);
  refusal = $state.raw<Refusal | null>(null);
  private style = $state<number | null>(null);

  get running(): boolean {
    return this.answer?.state === "running";
  }

  /** The check of this style; none while another was checked. */
  of(style: number): SizesAnswer | null {
    return this.style === style ? this.answer : null;
  }

  choose(chart: string): void {
    this.chart = chart;
    localStorage.setItem(KEPT, chart);
  }

  /** Check every size; a check that still runs is stopped. */
  async check(style: number): Promise<void> {
    this.stop();
    const asked = this.chart === "women" || this.chart === "men" ? { computed: this.chart } : { chart: Number(this.chart) };
    if (this.style !== style) this.answer = null; // what was found in another style is not shown at this one
    this.style = style;
    await this.told(`/styles/${style}/sizes`, asked);
    const begun = this.answer?.id;
    while (this.answer?.state === "running" && this.answer.id === begun) {
      await new Promise((wake) => setTimeout(wake, EVERY));
      if (this.answer.id === begun) await this.told(`/size-checks/${begun}`);
    }
  }

  stop(): void {
    if (this.answer?.state === "running") void this.told(`/size-checks/${this.answer.id}/stop`, {});
  }

  /** Read it again, in the unit of now. */
  async again(): Promise<void> {
    if (this.answer && !this.running) await this.told(`/size-checks/${this.answer.id}`);
  }

  private async told(path: string, sent?: unknown): Promise<void> {
    try {
      this.answer = await call<SizesAnswer>(path, workroom.unit, sent);
      this.refusal = null;
    } catch (error) {
      this.answer = null;
      this.refusal = workroom.failed(error, null);
    }
  }
}

export const sizing = new Sizing();
