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
  private readonly drawings = new Latest();
  private timer: ReturnType<typeof setTimeout> | undefined;

  async open(id: number): Promise<void> {
    this.body = await call<BodyAnswer>(`/bodies/${id}`, workroom.unit);
  }

  async again(): Promise<void> {
    if (this.body) await this.open(this.body.id);
  }

  /** A new body with a name. */
  create(name: string): Promise<Refusal | null> {
    return workroom.write(async () => {
      this.body = await call<BodyAnswer>("/bodies", workroom.unit, { name });
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
    const body = this.body;
    const asked = body && body.id === id ? sent(body) : null;
    if (!body || !asked) return;
    try {
      this.body = await call<BodyAnswer>(`/bodies/${body.id}/${what}`, workroom.unit, asked);
    } catch (error) {
      if (error instanceof Refused && error.isConflict) await this.again();
      throw error;
    }
    if (desk.style?.body.id === body.id) this.drawAnew();
    if (this.body.name !== body.name) await workroom.lookAtShelf();
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
