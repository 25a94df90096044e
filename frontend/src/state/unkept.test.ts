import assert from "node:assert/strict";
import { test } from "node:test";
import { Unkept, type Place, type Shelf } from "./unkept.ts";

const PLACE: Place = { style: "3 F-003", unit: "cm", step: "skirt-1" };

function shelf(kept: string | null = null): Shelf & { kept: string | null } {
  return {
    kept,
    getItem() { return this.kept; },
    setItem(_key: string, value: string) { this.kept = value; },
    removeItem() { this.kept = null; },
  };
}

test("what is typed comes back at its own place only", () => {
  const storage = shelf();
  new Unkept(storage).put(PLACE, { length: "63" });
  const again = new Unkept(storage);
  assert.deepEqual(again.of(PLACE), { length: "63" });
  for (const other of [{ unit: "in" }, { step: "vent-1" }, { style: "4 F-004" }]) {
    assert.deepEqual(again.of({ ...PLACE, ...other }), {}, JSON.stringify(other));
  }
});

test("what was kept or dropped is forgotten, and the others stay", () => {
  const storage = shelf();
  const unkept = new Unkept(storage);
  unkept.put(PLACE, { length: "63" });
  unkept.put({ ...PLACE, step: "vent-1" }, { depth: "20" });
  unkept.put(PLACE, {});
  assert.deepEqual(unkept.of(PLACE), {});
  assert.deepEqual(unkept.of({ ...PLACE, step: "vent-1" }), { depth: "20" });
  unkept.put({ ...PLACE, step: "vent-1" }, {});
  assert.equal(storage.kept, null);
});

test("a storage that holds something else, or refuses, loses nothing else", () => {
  for (const broken of ["no json", "[1]", "null", '"text"']) {
    const storage = shelf(broken);
    assert.deepEqual(new Unkept(storage).of(PLACE), {}, broken);
    new Unkept(storage).put(PLACE, { length: "63" });
    assert.deepEqual(new Unkept(storage).of(PLACE), { length: "63" }, broken);
  }
  const full: Shelf = { ...shelf(), setItem() { throw new Error("full"); } };
  new Unkept(full).put(PLACE, { length: "63" });
});
