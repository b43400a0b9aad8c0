import assert from "node:assert/strict";
import { test } from "node:test";
import { PhraseBook } from "./phrases.ts";

const book = new PhraseBook({
  "{0}: got {1}, needs {2}.": "{0}: hay {1}, falta {2}.",
  "at least {0}": "al menos {0}",
  "Take {0} more {1}.": "Tome {0} {1} más.",
  readings: "lecturas",
  "Too tight.": "Demasiado tensa.",
  "Too tight. Loosen it.": "Tensa: afloje.",
  "The chain {0} is {1} longer than {2}.": "La cadena {0} es {1} más larga que {2}.",
  "{0} is {1}.": "{0} está {1}.",
  slack: "floja",
  "one of {0}": "uno de: {0!}",
});
const say = (text: string, theirs: string[] = []) => book.say(text, new Set(theirs));

test("fills the holes, and looks up what fills them", () => {
  assert.equal(say("Take 2 more readings.").text, "Tome 2 lecturas más.");
  assert.equal(
    say("Pitch: got 3 mm, needs at least 4.5 mm.").text,
    "Pitch: hay 3 mm, falta al menos 4.5 mm.",
  );
});

test("says several phrases one after another, a longer one before its parts", () => {
  assert.equal(
    say("Too tight. Take 2 more readings.").text,
    "Demasiado tensa. Tome 2 lecturas más.",
  );
  assert.equal(say("Too tight. Loosen it.").text, "Tensa: afloje.");
});

test("of two phrases that fit takes the one that says more", () => {
  const said = say("The chain slack is 2 mm longer than 5.9 m.").text;
  assert.equal(said, "La cadena floja es 2 mm más larga que 5.9 m.");
});

test("leaves what the user typed, and knows what it could not say", () => {
  const typed = say("The chain Long one is 2 mm longer than Too tight..", [
    "Long one",
    "Too tight.",
  ]);
  assert.deepEqual(typed, {
    text: "La cadena Long one es 2 mm más larga que Too tight..",
    left: [],
  });
  assert.deepEqual(say("Take 2 more pictures.").left, ["pictures"]);
  assert.deepEqual(say("Too tight. Nobody knows why.").left, ["Nobody knows why."]);
  assert.equal(say("Too tight. Nobody knows why.").text, "Demasiado tensa. Nobody knows why.");
});

test("says what the user chose from the words of the screens", () => {
  const said = say("The chain slack is 2 mm longer than 5.9 m.", ["slack"]).text;
  assert.equal(said, "La cadena floja es 2 mm más larga que 5.9 m.");
});

test("figures and symbols are the same in every language", () => {
  assert.deepEqual(say("3/16 in (4.76 mm)"), { text: "3/16 in (4.76 mm)", left: [] });
  assert.deepEqual(say("A B B A."), { text: "A B B A.", left: [] });
});

test("leaves names for programs, and what else the translation asks to leave", () => {
  const said = say("5: got 3 mm, needs one of slack, readings.");
  assert.deepEqual(said, { text: "5: hay 3 mm, falta uno de: slack, readings.", left: [] });
});
