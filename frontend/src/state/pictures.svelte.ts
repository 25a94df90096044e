/** The pictures of the blocks, each asked for once. */

import { SvelteMap } from "svelte/reactivity";
import { call } from "../server/call.ts";
import type { PicturePiece } from "../server/types.ts";
import { workroom } from "./workroom.svelte.ts";

class Pictures {
  private readonly read = new SvelteMap<string, readonly PicturePiece[]>();
  private readonly asked = new Set<string>();

  of(block: string): readonly PicturePiece[] | null {
    return this.read.get(block) ?? null;
  }

  async fetch(block: string): Promise<void> {
    if (this.asked.has(block)) return;
    this.asked.add(block);
    try {
      this.read.set(block, await call<readonly PicturePiece[]>(`/blocks/${block}/picture`, workroom.unit));
    } catch {
      this.asked.delete(block); // a tile without its picture can still be chosen; the next one asks again
    }
  }
}

export const pictures = new Pictures();
