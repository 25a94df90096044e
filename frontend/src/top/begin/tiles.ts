/** What a style may begin with, as tiles: blocks by their families, the styles of the rack in one row. */

import type { BlockBeginning, RackBeginning } from "../../server/types.ts";

/** One tile: what it stands for, what is read on it, and what it says where the pointer rests. */
export interface Tile {
  readonly value: string;
  readonly said: string;
  readonly under: string;
  readonly about: string;
}

/** Tiles that belong together; a lone group needs no name. */
export interface TileGroup {
  readonly name: string;
  readonly tiles: readonly Tile[];
}

export function blockTiles(blocks: readonly BlockBeginning[]): readonly TileGroup[] {
  const families = [...new Set(blocks.map((one) => one.family))];
  return families.map((name) => ({ name, tiles: blocks.filter((one) => one.family === name).map(blockTile) }));
}

export function rackTiles(styles: readonly RackBeginning[]): readonly TileGroup[] {
  const tiles = styles.map(({ number, said, about }) => ({ value: number, said, under: number, about }));
  return tiles.length ? [{ name: "", tiles }] : [];
}

function blockTile({ block, said, summary, with_blocks: others }: BlockBeginning): Tile {
  const under = others.length ? `with its ${others.map((one) => one.said).join(" and ")}` : "";
  return { value: block, said, under, about: summary };
}
