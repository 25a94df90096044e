/** Editing a body from the table: a measure, what is missing, to which waist it was taken. */

import { call, Refused } from "../server/call.ts";
import type { BodyAnswer, BodyEdit, Refusal } from "../server/types.ts";
import { desk } from "./desk.svelte.ts";
import { measuring } from "./measuring.svelte.ts";
import { workroom } from "./workroom.svelte.ts";

/** Store edits in the body that the style is drafted for, and draw the style anew. */
export function keepBody(edit: BodyEdit): Promise<Refusal | null> {
  return workroom.write(async () => {
    const style = desk.style;
    if (!style) return;
    try {
      await send(style.body.id, style.body.version, edit);
    } catch (error) {
      if (error instanceof Refused && error.isConflict) await desk.again();
      throw error;
    }
    await desk.again();
    desk.forget();
  });
}

/** Store edits in any body, one after the other, each on the body as the one before left it. */
export function editBody(id: number, edits: readonly BodyEdit[]): Promise<Refusal | null> {
  return workroom.write(async () => {
    let { version } = await call<BodyAnswer>(`/bodies/${id}`, workroom.unit);
    for (const edit of edits) ({ version } = await send(id, version, edit));
  });
}

async function send(id: number, version: number, edit: BodyEdit): Promise<BodyAnswer> {
  const body = await call<BodyAnswer>(`/bodies/${id}/edits`, workroom.unit, { expected_version: version, edit });
  measuring.learn(body);
  return body;
}
