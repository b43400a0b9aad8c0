import "fake-indexeddb/auto";
import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { openDatabase } from "./db.ts";
import { LabLine, type Reply } from "./lab-line.ts";

interface Question {
  of: string;
}
const AWAY: Reply = { status: 0, data: null, problem: null };
const said = (data: unknown): Reply => ({ status: 200, data, problem: undefined });

let count = 0;
/** A phone whose database outlives the app, and a service that does as it is told. */
function phone() {
  const name = `lab-${count++}`;
  const opened = openDatabase(name);
  const sent: unknown[] = [];
  let clock = 0;
  const service = { reply: async (_: Question): Promise<Reply> => AWAY };
  const around = {
    db: () => opened,
    now: () => `2026-01-01T00:00:0${clock++}Z`,
    send: (_: string, question: unknown) => {
      sent.push(question);
      return service.reply(question as Question);
    },
  };
  const start = (about = "") => new LabLine<Question, string>("torsion", about, around);
  return { service, sent, start, opened };
}

describe("a question to the service", () => {
  it("is none before anything was asked", async () => {
    const line = phone().start();
    await line.ready();
    assert.equal(line.state.value, "none");
    await line.again();
    assert.equal(line.state.value, "none");
  });

  it("is answered with the time, to the question that was asked", async () => {
    const { service, start } = phone();
    service.reply = async ({ of }) => said(`on ${of}`);
    const line = start();
    await line.ask({ of: "a" });
    assert.equal(line.state.value, "answered");
    const { answered } = line.kept.value;
    assert.deepEqual(answered, {
      question: { of: "a" },
      answer: "on a",
      at: "2026-01-01T00:00:01Z",
    });
  });

  it("waits while the service is away or busy, and survives the app being killed", async () => {
    const { service, sent, start } = phone();
    for (const status of [0, 401, 404, 429, 500, 503]) {
      service.reply = async () => ({ ...AWAY, status });
      const line = start();
      await line.ask({ of: "a" });
      assert.equal(line.state.value, "waiting", String(status));
    }
    const next = start();
    await next.ready();
    assert.equal(next.state.value, "waiting");
    assert.deepEqual(next.kept.value.asked?.question, { of: "a" });
    service.reply = async () => said("at last");
    await next.again();
    assert.equal(next.kept.value.answered?.answer, "at last");
    const asked = sent.length;
    const later = start();
    await later.again();
    assert.equal(later.state.value, "answered");
    assert.equal(sent.length, asked, "asked again what was answered");
  });

  it("is in the database before it is sent", async () => {
    const { service, start, opened } = phone();
    let there: unknown;
    service.reply = async () => {
      there = await (await opened).get("kept", "asked:torsion:");
      return said("yes");
    };
    await start().ask({ of: "a" });
    assert.equal((there as { open: boolean }).open, true);
    assert.deepEqual((there as { asked: { question: Question } }).asked.question, { of: "a" });
  });

  it("keeps the last answer while the next question waits", async () => {
    const { service, start } = phone();
    service.reply = async ({ of }) => said(of);
    const line = start();
    await line.ask({ of: "a" });
    service.reply = async () => AWAY;
    await line.ask({ of: "b" });
    assert.equal(line.state.value, "waiting");
    assert.equal(line.kept.value.answered?.answer, "a");
  });

  it("is refused in the service's words, once, and the last answer stays", async () => {
    const { service, sent, start } = phone();
    service.reply = async ({ of }) => said(of);
    const line = start();
    await line.ask({ of: "a" });
    service.reply = async () => ({
      status: 422,
      data: null,
      problem: { title: "No", detail: "", errors: [{ field: "speeds", detail: "Got 99." }] },
    });
    await line.ask({ of: "b" });
    await line.again();
    assert.equal(line.state.value, "refused");
    assert.equal(line.kept.value.refusal?.errors[0]?.field, "speeds");
    assert.equal(line.kept.value.answered?.answer, "a");
    assert.equal(sent.length, 2);
  });

  it("never takes the answer to an older question for one to the newest", async () => {
    const { service, sent, start } = phone();
    const held: ((reply: Reply) => void)[] = [];
    service.reply = () => new Promise((resolve) => held.push(resolve));
    const line = start();
    const first = line.ask({ of: "a" });
    while (held.length === 0) await new Promise((resolve) => setTimeout(resolve));
    const second = line.ask({ of: "b" });
    while (line.kept.value.asked?.question.of !== "b") {
      await new Promise((resolve) => setTimeout(resolve));
    }
    held[0]?.(said("to a"));
    while (held.length === 1) await new Promise((resolve) => setTimeout(resolve));
    // Through a function: the compiler would take it as null from here on.
    const told = () => line.kept.value.answered?.answer;
    assert.equal(told(), undefined);
    held[1]?.(said("to b"));
    await Promise.all([first, second]);
    assert.equal(told(), "to b");
    assert.deepEqual(sent, [{ of: "a" }, { of: "b" }]);
  });

  it("of one subject does not take the place of another", async () => {
    const { start } = phone();
    const [a, b] = [start("a"), start("b")];
    await a.ask({ of: "a" });
    await b.ready();
    assert.equal(b.state.value, "none");
    const again = start("a");
    await again.ready();
    assert.equal(again.state.value, "waiting");
  });
});
