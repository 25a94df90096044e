/** Editing the body's measure from the strip of the table. */

import { call, Refused } from "../server/call.ts";
import type { BodyAnswer, BodyEdit, Refusal } from "../server/types.ts";
import { desk } from "./desk.svelte.ts";
import { measuring } from "./measuring.svelte.ts";
import { workroom } from "./workroom.svelte.ts";

/** Store the measure in the body that the style is drafted for, and draw the style anew. */
export function keepBody(edit: BodyEdit): Promise<Refusal | null> {
  return workroom.write(async () => {
    const style = desk.style;
    if (!style) return;
    const sent = { expected_version: style.body.version, edit };
    try {
      const body = await call<BodyAnswer>(`/bodies/${style.body.id}/edits`, workroom.unit, sent);
      if (measuring.body?.id === body.id) measuring.body = body;
    } catch (error) {
      if (error instanceof Refused && error.isConflict) await desk.again();
      throw error;
    }
    await desk.again();
    desk.forget();
  });
}
