/** The pictures of the blocks and of the styles of the rack: each drawn once, the first first. */

import { SvelteMap, SvelteSet } from "svelte/reactivity";
import { call } from "../server/call.ts";
import type { PicturePiece } from "../server/types.ts";
import { Turns } from "./turns.ts";
import { workroom } from "./workroom.svelte.ts";

/** Questions under way: a few, so that the server has the next one while answers travel; few, so that the first comes first. */
const AT_A_TIME = 4;

class Pictures {
  private readonly blocks = new SvelteMap<string, readonly PicturePiece[]>();
  private readonly flats = new SvelteSet<string>();
  private readonly turns = new Turns(AT_A_TIME);
  /** What waits for its turn or is being drawn. */
  private readonly asked = new Set<string>();

  /** The pieces of a block; null until they are drawn. A tile without its picture can still be chosen. */
  of(block: string): readonly PicturePiece[] | null {
    return this.blocks.get(block) ?? null;
  }

  /** Where the front and the back of a style of the rack are; null until they are drawn. */
  flatOf(number: string): string | null {
    return this.flats.has(number) ? `/api/rack/${number}/picture` : null;
  }

  /** Ask for the picture of a block; what is returned gives its turn up. */
  askBlock(block: string): () => void {
    return this.ask(block, this.blocks.has(block), async () => {
      this.blocks.set(block, await call<readonly PicturePiece[]>(`/blocks/${block}/picture`, workroom.unit));
    });
  }

  /** Ask for the picture of a style of the rack; what is returned gives its turn up. */
  askFlat(number: string): () => void {
    return this.ask(number, this.flats.has(number), async () => {
      const picture = new Image();
      picture.src = `/api/rack/${number}/picture`;
      await picture.decode();
      this.flats.add(number);
    });
  }

  private ask(name: string, known: boolean, job: () => Promise<void>): () => void {
    if (known || this.asked.has(name)) return () => undefined;
    this.asked.add(name);
    const leave = this.turns.ask(() => job().finally(() => this.asked.delete(name)));
    return () => {
      if (leave()) this.asked.delete(name);
    };
  }
}

export const pictures = new Pictures();
