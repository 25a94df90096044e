/** What was typed into the form of a step and not kept yet: it outlives the form and the page. */

import type { Values } from "../server/form.ts";

/** The part of the browser's storage that is used. */
export type Shelf = Pick<Storage, "getItem" | "setItem" | "removeItem">;

/** A form: the style, the unit in which it was typed, and the step (a new one by its operation). */
export interface Place {
  readonly style: string;
  readonly unit: string;
  readonly step: string;
}

const KEY = "typed, not kept";

/** Typed values by their place. What cannot be read or written is as if nothing had been typed. */
export class Unkept {
  private readonly shelf: Shelf;

  constructor(shelf: Shelf) {
    this.shelf = shelf;
  }

  of(place: Place): Values {
    return this.all()[nameOf(place)] ?? {};
  }

  /** Remember what is typed; nothing typed forgets the place. */
  put(place: Place, typed: Values): void {
    const { [nameOf(place)]: _, ...others } = this.all();
    const all = Object.keys(typed).length > 0 ? { ...others, [nameOf(place)]: typed } : others;
    try {
      if (Object.keys(all).length > 0) this.shelf.setItem(KEY, JSON.stringify(all));
      else this.shelf.removeItem(KEY);
    } catch {
      // A full or forbidden storage costs only what the page would have lost anyhow.
    }
  }

  private all(): Record<string, Values> {
    try {
      const kept: unknown = JSON.parse(this.shelf.getItem(KEY) ?? "{}");
      return typeof kept === "object" && kept !== null && !Array.isArray(kept) ? (kept as Record<string, Values>) : {};
    } catch {
      return {};
    }
  }
}

function nameOf(place: Place): string {
  return `${place.style} | ${place.unit} | ${place.step}`;
}
