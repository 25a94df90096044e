/** What all rooms share: the unit, the book's shelf, what is being said at the top. */

import { call, Refused, Unreachable } from "../server/call.ts";
import { arranged } from "../steps/arranged.ts";
import type { Refusal, Shelf, StepOffer, Unit } from "../server/types.ts";

export type Room = "measures" | "table";

export interface Banner {
  readonly words: string;
  readonly next: string;
  readonly again: (() => void) | null;
}

const ANEW = "Open the address that the terminal shows in another tab, then come back to this one.";

class Workroom {
  unit = $state<Unit>(keptUnit());
  room = $state<Room>(location.hash === "#measures" ? "measures" : "table");
  shelf = $state.raw<Shelf>({ styles: [], bodies: [], charts: [], notice: null });
  offers = $state.raw<readonly StepOffer[]>([]);
  banner = $state.raw<Banner | null>(null);
  writing = $state(0);

  /** "on disk", "writing", or "not written" while something she typed could not be stored. */
  get saved(): "on disk" | "writing" | "not written" {
    if (this.banner?.again) return "not written";
    return this.writing ? "writing" : "on disk";
  }

  go(room: Room): void {
    this.room = room;
    history.replaceState(null, "", `#${room}`);
  }

  keepUnit(unit: Unit): void {
    this.unit = unit;
    localStorage.setItem("unit", unit);
  }

  /** The shelf; the forms of the steps may come later than what lies on the table. */
  async look(): Promise<void> {
    void this.readSteps(this.unit);
    await this.lookAtShelf();
  }

  private async readSteps(unit: Unit): Promise<void> {
    try {
      const offers = await call<readonly StepOffer[]>("/steps", unit);
      if (unit === this.unit) this.offers = offers.map(arranged);
    } catch (error) {
      this.failed(error, () => void this.readSteps(this.unit));
    }
  }

  async lookAtShelf(): Promise<void> {
    this.shelf = await call<Shelf>("/shelf", this.unit);
  }

  /** Do something that writes; what fails is said at the top or handed back as a refusal. */
  async write(job: () => Promise<void>): Promise<Refusal | null> {
    this.writing += 1;
    try {
      await job();
      this.banner = null;
      return null;
    } catch (error) {
      return this.failed(error, () => void this.write(job));
    } finally {
      this.writing -= 1;
    }
  }

  /** What to say of an error; `again` tries the same once more. */
  failed(error: unknown, again: (() => void) | null): Refusal | null {
    if (error instanceof Refused) {
      if (error.status !== 401) return error.refusal;
      const kept = again ? "What you typed is kept here. " : "";
      this.banner = { words: "The workroom was started anew; this page has its old key.", next: `${kept}${ANEW}`, again };
      return null;
    }
    if (!(error instanceof Unreachable)) throw error;
    // What can be tried again is not hidden by a mere look that fails after it.
    if (!again && this.banner?.again) return null;
    const kept = again ? "your last edit is kept here." : "what you see may be old.";
    this.banner = { words: `The workroom does not answer; ${kept}`, next: "Start it again with: notchbook open", again };
    return null;
  }
}

function keptUnit(): Unit {
  const kept = localStorage.getItem("unit");
  return kept === "in" || kept === "mm" ? kept : "cm";
}

export const workroom = new Workroom();
