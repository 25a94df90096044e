/** The body in the Measures room. */

import { call, Refused } from "../server/call.ts";
import type { BodyAnswer, BodyEdit, Refusal } from "../server/types.ts";
import { desk } from "./desk.svelte.ts";
import { workroom } from "./workroom.svelte.ts";

class Measuring {
  body = $state.raw<BodyAnswer | null>(null);

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
    return this.write("edits", (version) => ({ expected_version: version, edit }));
  }

  undo(): Promise<Refusal | null> {
    return this.write("undo", (version) => ({ expected_version: version }));
  }

  redo(): Promise<Refusal | null> {
    return this.write("redo", (version) => ({ expected_version: version }));
  }

  private write(what: string, sent: (version: number) => unknown): Promise<Refusal | null> {
    return workroom.write(async () => {
      const body = this.body;
      if (!body) return;
      try {
        this.body = await call<BodyAnswer>(`/bodies/${body.id}/${what}`, workroom.unit, sent(body.version));
      } catch (error) {
        if (error instanceof Refused && error.isConflict) await this.again();
        throw error;
      }
      if (desk.style?.body.id === body.id) await desk.again();
      desk.forget();
      if (this.body.name !== body.name) await workroom.lookAtShelf();
    });
  }
}

export const measuring = new Measuring();
