/** What is said of the body after each change: what is to be looked at again, estimates, what to take next. */

import { call } from "../server/call.ts";
import { Latest } from "../server/latest.ts";
import type { BodyAnswer, DoubtAnswer, EstimateLine, EstimatesAnswer, ExpectedAnswer, LookedOverAnswer, MeasureLine, NextAnswer, StaleLine } from "../server/types.ts";
import { measureSheet } from "./measureSheet.svelte.ts";
import { measuring } from "./measuring.svelte.ts";
import { workroom } from "./workroom.svelte.ts";

/** ms of rest after which it is asked what to take next: that draws the style many times over. */
const REST = 600;

class SecondLook {
  looked = $state.raw<LookedOverAnswer | null>(null);
  estimates = $state.raw<EstimatesAnswer | null>(null);
  next = $state.raw<NextAnswer | null>(null);
  private of = 0;
  private readonly looks = new Latest();
  private readonly outlooks = new Latest();

  /** Ask at once what may be wrong and what is missing, and after a rest what to take next; the way to stop. */
  at(body: BodyAnswer): () => void {
    if (this.of !== body.id) this.looked = this.estimates = this.next = null;
    this.of = body.id;
    this.ask(this.looks, async () => {
      const looked = await call<LookedOverAnswer>(`/bodies/${body.id}/looked-over`, workroom.unit);
      if (inRoom(body)) this.looked = looked;
      const estimates = await call<EstimatesAnswer>(`/bodies/${body.id}/estimates`, workroom.unit);
      if (inRoom(body)) this.estimates = estimates;
    });
    const timer = setTimeout(() => this.lookAhead(body), REST);
    return () => clearTimeout(timer);
  }

  /** The doubts that are told at a measure, the gravest first. */
  doubtsAt(key: string): readonly DoubtAnswer[] {
    return this.looked?.doubts.filter((doubt) => doubt.at === key) ?? [];
  }

  /** The doubts that are told over all lines: about the whole set, or at a line that is not on the sheet. */
  besides(lines: readonly MeasureLine[]): readonly DoubtAnswer[] {
    const shown = new Set(lines.map((line) => line.key));
    return this.looked?.doubts.filter((doubt) => !shown.has(doubt.at)) ?? [];
  }

  /** The doubts that are told at another measure and touch this one too. */
  touching(key: string): readonly DoubtAnswer[] {
    return this.looked?.doubts.filter((doubt) => doubt.at && doubt.at !== key && doubt.keys.includes(key)) ?? [];
  }

  estimateOf(key: string): EstimateLine | null {
    return this.estimates?.lines.find((one) => one.key === key) ?? null;
  }

  expectedOf(key: string): ExpectedAnswer | null {
    return this.looked?.expected.find((one) => one.key === key) ?? null;
  }

  /** The stored estimates of a measure that no longer follow. */
  staleOf(key: string): readonly StaleLine[] {
    return this.estimates?.stale.filter((one) => one.key.split("@")[0] === key) ?? [];
  }

  private lookAhead(body: BodyAnswer): void {
    const asked = measureSheet.asking;
    this.ask(this.outlooks, async () => {
      const next = await call<NextAnswer>(`/bodies/${body.id}/next${asked}`, workroom.unit);
      if (inRoom(body)) this.next = next;
    });
  }

  private ask(questions: Latest, job: () => Promise<void>): void {
    questions.ask(async () => {
      try {
        await job();
      } catch (error) {
        workroom.failed(error, null);
      }
    });
  }
}

/** Whether it is still the body in the room, whose answers are worth showing. */
function inRoom(body: BodyAnswer): boolean {
  return measuring.body?.id === body.id;
}

export const secondLook = new SecondLook();
