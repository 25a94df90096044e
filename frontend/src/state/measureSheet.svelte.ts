/** The paper sheet of the Measures room: its words, which lines are on it, and the line in focus. */

import { untrack } from "svelte";
import { SvelteSet } from "svelte/reactivity";
import { ALL, firstSheet, linesOf, shortSheet, TAKEN, weighed, withRise, type ShortSheet } from "../measures/lines/sheets.ts";
import { call } from "../server/call.ts";
import type { BlockSheet, MeasureLine, MeasureWords, Vocabulary } from "../server/types.ts";
import { desk } from "./desk.svelte.ts";
import { measuring } from "./measuring.svelte.ts";
import { workroom } from "./workroom.svelte.ts";

/** The id of the short sheet of the style on the table. */
const STYLE = "style";

class MeasureSheet {
  /** The keys at which something typed was refused and waits. */
  readonly refused = new SvelteSet<string>();
  /** The key of the measure in focus. */
  focus = $state<string | null>(null);
  /** Which lines are shown: a short sheet by its id, what is taken, or all. */
  chosen = $state<string>(TAKEN);
  /** The short sheet that "taken" goes with, when she has chosen one. */
  private shortId = $state<string | null>(null);
  /** Whether a short sheet shows what changes little too. */
  more = $state(false);
  private vocabulary = $state.raw<Vocabulary | null>(null);
  private readonly words = $derived(new Map(this.vocabulary?.measures.map((one) => [one.key, one])));
  readonly shorts = $derived.by((): readonly ShortSheet[] => {
    const method = measuring.body?.rise_method ?? null;
    return [...styleSheet(this.vocabulary?.blocks ?? []), ...this.blockSheets()].map((short) => withRise(short, method));
  });

  /** Whether the words are there: before that nobody knows which measures are taken twice. */
  get known(): boolean {
    return this.vocabulary !== null;
  }

  get short(): ShortSheet | null {
    return this.shorts.find((one) => one.id === this.shortId) ?? this.shorts[0] ?? null;
  }

  /** What asks for the measures, as the server is asked for it: a style, a block, or nothing. */
  get asking(): string {
    if (this.short?.id === STYLE && desk.style) return `?style=${desk.style.id}`;
    return this.short ? `?block=${this.short.id}` : "";
  }

  get lines(): readonly MeasureLine[] {
    return measuring.body ? linesOf(measuring.body.lines, this.chosen, this.short, this.more) : [];
  }

  /** The lines that wait behind a button, as they change little. */
  get waiting(): readonly MeasureLine[] {
    if (!measuring.body) return [];
    return linesOf(measuring.body.lines, this.chosen, this.short).filter((line) => !this.lines.includes(line));
  }

  wordsOf(key: string): MeasureWords | null {
    return this.words.get(key) ?? null;
  }

  async read(): Promise<void> {
    this.vocabulary = await call<Vocabulary>("/vocabulary", workroom.unit);
  }

  choose(sheet: string): void {
    this.more = false;
    this.chosen = sheet;
    if (sheet !== TAKEN && sheet !== ALL) this.shortId = sheet;
  }

  /** The sheet that the body in the room begins with. */
  begin(): void {
    untrack(() => {
      if (measuring.body) this.choose(firstSheet(measuring.body.lines, this.short));
    });
  }

  /** Begin a body in its first field. */
  beginAtFirst(): void {
    this.begin();
    const first = this.lines[0];
    if (first) this.goTo(first.key);
  }

  /** Go to the first field of a measure, on the whole sheet when it stands on no other. */
  goTo(key: string): void {
    if (!this.lines.some((line) => line.key === key)) this.choose(ALL);
    // The field may only just have come to be.
    setTimeout(() => document.querySelector<HTMLInputElement>(`[data-measure="${key}"] input[data-run]`)?.focus());
  }

  private blockSheets(): ShortSheet[] {
    const blocks = this.vocabulary?.blocks ?? [];
    return blocks.map((block) => shortSheet(block, blocks));
  }
}

function styleSheet(blocks: readonly BlockSheet[]): ShortSheet[] {
  const style = desk.style;
  if (!style) return [];
  const own = blocks.filter((block) => style.steps.some((step) => step.operation === block.block));
  return [{ id: STYLE, said: `${style.number} ${style.name}`, needed: style.measures_needed, asked: style.measures_read, ...weighed(own) }];
}

export const measureSheet = new MeasureSheet();
