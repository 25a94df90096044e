/** The body in the Measures room. */

import { call, Refused } from "../server/call.ts";
import { Latest } from "../server/latest.ts";
import type { BodyAnswer, BodyEdit, Refusal } from "../server/types.ts";
import { desk } from "./desk.svelte.ts";
import { workroom } from "./workroom.svelte.ts";

/** ms of rest after which a style that is not seen is drawn anew. */
const REST = 400;

class Measuring {
  body = $state.raw<BodyAnswer | null>(null);
  /** The last thing that was asked to be written: the next waits for it, since each builds on the other. */
  private last: Promise<unknown> = Promise.resolve();
  /** Whether the pattern is drawn beside the sheet. */
  patternSeen = false;
  /** Each body as it was told last: what waits to be written goes to the body at which it was typed. */
  private readonly told = new Map<number, BodyAnswer>();
  /** The body that was asked for last. */
  private wanted = 0;
  private readonly drawings = new Latest();
  private timer: ReturnType<typeof setTimeout> | undefined;

  async open(id: number): Promise<void> {
    this.wanted = id;
    this.learn(await call<BodyAnswer>(`/bodies/${id}`, workroom.unit));
  }

  async again(): Promise<void> {
    if (this.body) await this.open(this.body.id);
  }

  /** A new body with a name. */
  create(name: string): Promise<Refusal | null> {
    return workroom.write(async () => {
      const created = await call<BodyAnswer>("/bodies", workroom.unit, { name });
      this.wanted = created.id;
      this.learn(created);
      await workroom.lookAtShelf();
    });
  }

  keep(edit: BodyEdit): Promise<Refusal | null> {
    return this.keepAs(() => edit);
  }

  /** Store an edit that is made when its turn comes, from the body as it is then; null: nothing to store. */
  keepAs(make: (body: BodyAnswer) => BodyEdit | null): Promise<Refusal | null> {
    return this.write("edits", (body) => {
      const edit = make(body);
      return edit && { expected_version: body.version, edit };
    });
  }

  undo(): Promise<Refusal | null> {
    return this.write("undo", ({ version }) => ({ expected_version: version }));
  }

  redo(): Promise<Refusal | null> {
    return this.write("redo", ({ version }) => ({ expected_version: version }));
  }

  /** Write after all that was asked before: whoever types fast does not wait, and no number gets lost. */
  private write(what: string, sent: (body: BodyAnswer) => object | null): Promise<Refusal | null> {
    const body = this.body;
    const done = this.last.then(() => workroom.write(() => this.writeNow(body?.id, what, sent)));
    this.last = done.catch(() => null);
    return done;
  }

  private async writeNow(id: number | undefined, what: string, sent: (body: BodyAnswer) => object | null): Promise<void> {
    const body = id === undefined ? undefined : this.told.get(id);
    const asked = body && sent(body);
    if (!body || !asked) return;
    let written: BodyAnswer;
    try {
      written = await call<BodyAnswer>(`/bodies/${body.id}/${what}`, workroom.unit, asked);
    } catch (error) {
      if (error instanceof Refused && error.isConflict) this.learn(await call<BodyAnswer>(`/bodies/${body.id}`, workroom.unit));
      throw error;
    }
    this.learn(written);
    if (desk.style?.body.id === body.id) this.drawAnew();
    if (written.name !== body.name) await workroom.lookAtShelf();
  }

  /** Remember what was told of a body; it comes into the room only when it is the one that is wanted there. */
  learn(told: BodyAnswer): void {
    this.told.set(told.id, told);
    if (told.id === this.wanted) this.body = told;
  }

  /** The style on the table follows: at once where it is seen, else when she rests; typing goes on meanwhile. */
  private drawAnew(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.drawings.ask(draw), this.patternSeen ? 0 : REST);
  }
}

async function draw(): Promise<void> {
  try {
    await desk.again();
    desk.forget();
  } catch (error) {
    workroom.failed(error, null);
  }
}

export const measuring = new Measuring();
