import assert from "node:assert/strict";
import { test } from "node:test";
import { Turns } from "./turns.ts";

/** Jobs that end when they are told to, and which of them were begun. */
function jobs(): { begun: string[]; job: (name: string) => () => Promise<void>; end: (name: string, failed?: boolean) => Promise<void> } {
  const begun: string[] = [];
  const ends = new Map<string, { done: () => void; fail: () => void }>();
  return {
    begun,
    job: (name) => () => {
      begun.push(name);
      return new Promise((done, fail) => ends.set(name, { done, fail: () => fail(new Error(name)) }));
    },
    end: async (name, failed = false) => {
      if (failed) ends.get(name)?.fail();
      else ends.get(name)?.done();
      await new Promise((wake) => setTimeout(wake));
    },
  };
}

test("one after the other, in the order in which they were asked for", async () => {
  const { begun, job, end } = jobs();
  const turns = new Turns(1);
  for (const name of ["a", "b", "c"]) turns.ask(job(name));
  assert.deepEqual(begun, ["a"]);
  await end("a");
  assert.deepEqual(begun, ["a", "b"]);
  await end("b", true);
  assert.deepEqual(begun, ["a", "b", "c"], "one that fails holds up none");
  await end("c");
  turns.ask(job("d"));
  assert.deepEqual(begun, ["a", "b", "c", "d"]);
});

test("a turn that is given up does not come; one that has come is not taken back", async () => {
  const { begun, job, end } = jobs();
  const turns = new Turns(1);
  const leave = ["a", "b", "c"].map((name) => turns.ask(job(name)));
  assert.equal(leave[0]?.(), false);
  assert.equal(leave[1]?.(), true);
  assert.equal(leave[1]?.(), false);
  await end("a");
  assert.deepEqual(begun, ["a", "c"]);
});

test("two at a time: a third begins when one of them ends", async () => {
  const { begun, job, end } = jobs();
  const turns = new Turns(2);
  for (const name of ["a", "b", "c", "d"]) turns.ask(job(name));
  assert.deepEqual(begun, ["a", "b"]);
  await end("b");
  assert.deepEqual(begun, ["a", "b", "c"]);
  await end("c");
  await end("a");
  assert.deepEqual(begun, ["a", "b", "c", "d"]);
});
