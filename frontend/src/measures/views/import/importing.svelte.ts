/** An import at work: the text, her answers about it, the preview, and how far storing is. Nothing is stored before she says so. */

import { call } from "../../../server/call.ts";
import type { AskedTable, ChartAnswer, JobAnswer, LineSaid, PreviewAnswer, Refusal, RowSaid, Unit } from "../../../server/types.ts";
import { workroom } from "../../../state/workroom.svelte.ts";
import { Asking } from "../asking.svelte.ts";
import { going } from "../going.svelte.ts";
import { withAnswer, withRows } from "./answers.ts";

/** ms between two looks at how far it is. */
const EVERY = 250;

class Importing {
  /** What stands in the box and was not looked at yet; it stays while she looks elsewhere. */
  draft = $state("");
  text = $state.raw("");
  source = $state("");
  /** What the table is stored as; empty: as it says itself. */
  kind = $state<PreviewAnswer["kind"] | null>(null);
  /** The unit of bare numbers where the table names none. */
  unit = $state.raw<Unit | null>(null);
  population = $state<"women" | "men" | null>(null);
  lines = $state.raw<readonly LineSaid[]>([]);
  /** What she said of single bodies. */
  rows = $state.raw<readonly RowSaid[]>([]);
  job = $state.raw<JobAnswer | null>(null);
  /** Why it was not stored. */
  refusal = $state.raw<Refusal | null>(null);
  /** Storing was asked for and has not begun: a second stroke must not ask again. */
  private asking = false;
  readonly preview = new Asking<PreviewAnswer>();

  get shown(): PreviewAnswer | null {
    return this.preview.answer;
  }

  get running(): boolean {
    return this.job?.state === "running";
  }

  /** Look at another table; what was said of the last one is forgotten. */
  read(text: string, source: string): void {
    this.text = text;
    this.draft = "";
    this.source = source;
    this.lines = [];
    this.rows = [];
    this.kind = this.unit = null;
    this.job = this.refusal = null;
    this.look();
  }

  forget(): void {
    this.read("", "");
  }

  /** What was said of a column or row: the preview follows. */
  say(number: number, said: Partial<LineSaid>): void {
    this.lines = withAnswer(this.lines, number, said);
    this.look();
  }

  /** What was said of these bodies: the unit of their numbers, or whether they are stored. */
  sayOf(numbers: readonly number[], said: Partial<RowSaid>): void {
    this.rows = withRows(this.rows, numbers, said);
    this.look();
  }

  look(): void {
    this.refusal = null;
    if (this.text.trim()) void this.preview.ask("/imports/preview", this.asked());
    else this.preview.forget();
  }

  /** Store it: bodies and forms one by one, told as they go in. */
  async keep(onlyGood: boolean): Promise<void> {
    await this.once(async () => {
      this.refusal = await workroom.write(async () => {
        this.job = await call<JobAnswer>("/imports", workroom.unit, { ...this.asked(), only_good: onlyGood });
      });
      // Apart from the asking: to look once more must never store once more.
      if (this.running) await workroom.write(() => this.follow());
    });
  }

  /** Store it as one size chart, and open that. */
  async keepChart(name: string): Promise<void> {
    await this.once(async () => {
      this.refusal = await workroom.write(async () => {
        const chart = await call<ChartAnswer>("/imports/chart", workroom.unit, { ...this.asked(), name });
        await workroom.lookAtShelf();
        this.forget();
        if (chart.id !== null) going.toChart(chart.id);
      });
    });
  }

  stop(): void {
    const { job } = this;
    if (job) void workroom.write(async () => void (await call<JobAnswer>(`/imports/${job.id}/stop`, workroom.unit, {})));
  }

  private async once(deed: () => Promise<void>): Promise<void> {
    if (this.asking) return;
    this.asking = true;
    try {
      await deed();
    } finally {
      this.asking = false;
    }
  }

  private async follow(): Promise<void> {
    while (this.job?.state === "running") {
      await new Promise((wake) => setTimeout(wake, EVERY));
      this.job = await call<JobAnswer>(`/imports/${this.job.id}`, workroom.unit);
    }
    await workroom.lookAtShelf();
  }

  private asked(): AskedTable {
    return { text: this.text, source: this.source, unit: this.unit, lines: [...this.lines], rows: [...this.rows], again: null, kind: this.kind, population: this.population };
  }
}

export const importing = new Importing();
