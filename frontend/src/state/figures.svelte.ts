/** The drawn figures, each read once. */

import { SvelteMap } from "svelte/reactivity";
import { call } from "../server/call.ts";
import type { FigureAnswer } from "../server/types.ts";
import { workroom } from "./workroom.svelte.ts";

export type Population = FigureAnswer["population"];

class Figures {
  private readonly read = new SvelteMap<Population, FigureAnswer>();

  of(population: Population): FigureAnswer | null {
    return this.read.get(population) ?? null;
  }

  async fetch(population: Population): Promise<void> {
    if (this.read.has(population)) return;
    try {
      this.read.set(population, await call<FigureAnswer>(`/figures/${population}`, workroom.unit));
    } catch (error) {
      workroom.failed(error, null);
    }
  }
}

export const figures = new Figures();
