/** What was erased last, told until she goes on; the rooms then show something that is still there. */

import type { ErasedClient, PersonalData } from "../../../server/types.ts";
import { desk } from "../../../state/desk.svelte.ts";
import { measuring } from "../../../state/measuring.svelte.ts";
import { workroom } from "../../../state/workroom.svelte.ts";

class Erased {
  report = $state.raw<ErasedClient | null>(null);
  /** What it did not reach. */
  beyond = $state.raw<readonly string[]>([]);

  async done(data: PersonalData, report: ErasedClient): Promise<void> {
    await workroom.lookAtShelf();
    const { bodies, styles } = workroom.shelf;
    if (desk.style && !styles.some((one) => one.id === desk.style?.id)) {
      const first = styles[0]?.id;
      if (first) await desk.open(first);
      else desk.style = null;
    } else if (desk.style) await desk.again();
    this.report = report;
    this.beyond = data.not_reached;
    const next = bodies[0]?.id;
    if (next) await measuring.open(next);
    else measuring.body = null;
  }

  forget(): void {
    this.report = null;
  }
}

export const erased = new Erased();
