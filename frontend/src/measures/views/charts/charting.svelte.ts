/** The chart in the view "size charts": opened, edited one edit after the other, undone. */

import { call, Refused } from "../../../server/call.ts";
import type { ChartAnswer, ChartEdit, Refusal } from "../../../server/types.ts";
import { workroom } from "../../../state/workroom.svelte.ts";
import { going } from "../going.svelte.ts";

/** What stands small below the values. */
export type Small = "nothing" | "steps" | "margins";

class Charting {
  chart = $state.raw<ChartAnswer | null>(null);
  /** The cell in focus. */
  at = $state.raw<{ readonly row: number; readonly column: number } | null>(null);
  small = $state<Small>("nothing");
  /** The last thing that was asked to be written: the next waits for it. */
  private last: Promise<unknown> = Promise.resolve();

  /** Whether the chart is hers and may be changed. */
  get own(): boolean {
    return this.chart?.id !== null;
  }

  /** A computed chart by its word, or one of hers by its id. */
  async open(which: string): Promise<void> {
    const path = /^\d+$/.test(which) ? `/charts/${which}` : `/computed-charts/${which}`;
    try {
      const chart = await call<ChartAnswer>(path, workroom.unit);
      if (which !== going.chart) return;
      if (chart.id !== this.chart?.id) this.at = null;
      this.chart = chart;
    } catch (error) {
      workroom.failed(error, null);
    }
  }

  /** A chart of her own: empty, or a copy of a computed one. */
  create(name: string, like: "women" | "men" | null): Promise<Refusal | null> {
    return workroom.write(async () => {
      this.chart = await call<ChartAnswer>("/charts", workroom.unit, { name, like });
      this.at = null;
      await workroom.lookAtShelf();
      going.chart = String(this.chart.id);
    });
  }

  keep(edit: ChartEdit): Promise<Refusal | null> {
    return this.write("edits", { edit });
  }

  undo(): Promise<Refusal | null> {
    return this.write("undo", {});
  }

  redo(): Promise<Refusal | null> {
    return this.write("redo", {});
  }

  /** Write after all that was asked before, on the version that is there then. */
  private write(what: string, sent: object): Promise<Refusal | null> {
    const id = this.chart?.id ?? null;
    const done = this.last.then(() => workroom.write(() => this.writeNow(id, what, sent)));
    this.last = done.catch(() => null);
    return done;
  }

  private async writeNow(id: number | null, what: string, sent: object): Promise<void> {
    const before = this.chart;
    if (!before || id === null || before.id !== id) return;
    try {
      this.chart = await call<ChartAnswer>(`/charts/${id}/${what}`, workroom.unit, { ...sent, expected_version: before.version });
    } catch (error) {
      if (error instanceof Refused && error.isConflict) await this.open(String(id));
      throw error;
    }
    if (this.chart.name !== before.name) await workroom.lookAtShelf();
  }
}

export const charting = new Charting();
