import assert from "node:assert/strict";
import { test } from "node:test";
import { sayCalendar } from "./calendar.ts";

const NAME = "Second build, oil; plan";
const TEXT = [
  "BEGIN:VCALENDAR",
  "NAME:Second build\\, oil\\; plan",
  "BEGIN:VEVENT",
  "DTSTART;VALUE=DATE:20260401",
  "SUMMARY:Second build\\, oil\\; plan: First drain",
  "DESCRIPTION:At 322 km (200 miles) since the first start. Drain warm\\, new f",
  " ilter. The maker's manual comes first.",
  "END:VEVENT",
  "END:VCALENDAR",
  "",
].join("\r\n");

test("a calendar said in the language it has stays as it was, letter for letter", () => {
  assert.equal(
    sayCalendar(TEXT, NAME, (words) => words),
    TEXT,
  );
});

test("titles and texts are said whole, the plan's own name is not, and lines stay short", () => {
  const asked: string[] = [];
  const told = sayCalendar(TEXT, NAME, (words) => {
    asked.push(words);
    return `${words.replaceAll("e", "é")}; así, ${"ñ".repeat(60)}`;
  });
  assert.deepEqual(asked, [
    "First drain",
    "At 322 km (200 miles) since the first start. Drain warm, new filter. The maker's manual comes first.",
  ]);
  for (const line of told.split("\r\n")) {
    assert.ok(new TextEncoder().encode(line).length <= 75, line);
  }
  const whole = told.replaceAll("\r\n ", "");
  assert.match(whole, /SUMMARY:Second build\\, oil\\; plan: First drain\\; así\\, ñ{60}/);
  assert.match(whole, /DTSTART;VALUE=DATE:20260401\r\n/);
  assert.equal(whole.split("\r\n").length, TEXT.replaceAll("\r\n ", "").split("\r\n").length);
});
