import assert from "node:assert/strict";
import { test } from "node:test";
import { sayCalendar } from "./calendar-said.ts";

const CALENDAR = [
  "BEGIN:VCALENDAR",
  "NAME:Größe ½\\; zwei\\, drei",
  "BEGIN:VEVENT",
  "SUMMARY:Größe ½\\; zwei\\, drei: Measure the slack: the first wear should ",
  " be over",
  "DESCRIPTION:Drain warm\\, new filter.",
  "END:VEVENT",
  "END:VCALENDAR",
  "",
].join("\r\n");
const TITLE = "Größe ½; zwei, drei";

test("a calendar in the core's own language is the same, letter by letter", () => {
  assert.equal(
    sayCalendar(CALENDAR, TITLE, (text) => text),
    CALENDAR,
  );
});

test("what is due is said, the plan's own title stays; lines keep to 75 octets", () => {
  const asked: string[] = [];
  const said = sayCalendar(CALENDAR, TITLE, (text) => {
    asked.push(text);
    return "ñ; ".repeat(60);
  });
  assert.deepEqual(asked, [
    "Measure the slack: the first wear should be over",
    "Drain warm, new filter.",
  ]);
  const lines = said.split("\r\n");
  assert.ok(lines.every((line) => new TextEncoder().encode(line).length <= 75));
  const whole = said.replace(/\r\n /g, "");
  assert.ok(whole.includes(`SUMMARY:Größe ½\\; zwei\\, drei: ${"ñ\\; ".repeat(60)}\r\n`));
});
