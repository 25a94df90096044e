/** What was typed and not kept, at the style that is on the table now. */

import { desk } from "./desk.svelte.ts";
import { Unkept, type Place } from "./unkept.ts";
import { workroom } from "./workroom.svelte.ts";

export const unkept = new Unkept(localStorage);

/** The place of a step by its id, or of a new one of an operation. */
export function placeOf(step: string): Place {
  return { style: `${desk.style?.id} ${desk.style?.number}`, unit: workroom.unit, step };
}

/** Whether something waits there to be kept or dropped. */
export function isBegun(step: string): boolean {
  return Object.keys(unkept.of(placeOf(step))).length > 0;
}

export function newStep(operation: string): string {
  return `new ${operation}`;
}
