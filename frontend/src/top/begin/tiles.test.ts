import assert from "node:assert/strict";
import { test } from "node:test";
import type { BlockBeginning, RackBeginning } from "../../server/types.ts";
import { blockTiles, rackTiles } from "./tiles.ts";

const ASKED = { needed: [], substituted: [], helpful: [] };

function block(name: string, family: BlockBeginning["family"], ...others: string[]): BlockBeginning {
  return { ...ASKED, block: name, said: name, family, summary: `About ${name}.`, with_blocks: others.map((one) => ({ name: one, said: one })) };
}

test("blocks stand by their families, in the order in which they came", () => {
  const groups = blockTiles([block("bodice", "upper"), block("skirt", "skirts"), block("sleeve", "upper", "bodice")]);
  assert.deepEqual(groups.map((group) => [group.name, group.tiles.map((one) => one.value)]), [["upper", ["bodice", "sleeve"]], ["skirts", ["skirt"]]]);
  assert.deepEqual(groups[0]?.tiles.map((one) => one.under), ["", "with its bodice"]);
});

test("the styles of the rack are one group, and none before they came", () => {
  const style: RackBeginning = { ...ASKED, number: "S-201", said: "Shell", about: "Without sleeves." };
  assert.deepEqual(rackTiles([style]), [{ name: "", tiles: [{ value: "S-201", said: "Shell", under: "S-201", about: "Without sleeves." }] }]);
  assert.deepEqual(rackTiles([]), []);
});
