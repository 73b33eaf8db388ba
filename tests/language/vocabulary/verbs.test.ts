import { describe, expect, it } from "vitest";
import fc from "fast-check";
import {
  acceptedSpellings,
  phraseOf,
  phrases,
  readStep,
  spell,
  stepPhrases,
} from "../../../language/vocabulary/verbs.js";

const read = (line: string) => readStep(line.split(" "));
const spelt = (line: string) => {
  const r = read(line);
  return r.step ? spell(r.step) : `? ${r.problem}`;
};

describe("A step is read as people type it and written back in one spelling", () => {
  it.each([
    ["lock brakes", "lock brakes"],
    ["brakes on", "lock brakes"],
    ["lock the brakes", "lock brakes"],
    ["lock both brakes", "lock brakes"],
    ["brake off", "unlock brakes"],
    ["remove legrest left", "remove legrest left"],
    ["remove left leg rest", "remove legrest left"],
    ["take off left leg-rest", "remove legrest left"],
    ["lift off the right legrest", "remove legrest right"],
    ["swing away legrest right", "swing-away legrest right"],
    ["left footrest off", "remove legrest left"],
    ["swing away armrest left", "swing-away armrest left"],
    ["swing out left arm rest", "swing-away armrest left"],
    ["swing-away left armrest", "swing-away armrest left"],
    ["flip back armrest right", "flip-back armrest right"],
    ["remove side panel left", "remove armrest left"],
    ["put back left legrest", "refit legrest left"],
    ["put back left armrest", "restore armrest left"],
    ["approach bed", "approach bed"],
    ["approach the bed", "approach bed"],
    ["approach bed-2", "approach bed-2"],
    ["park beside bed", "approach bed"],
    ["gait belt on", "belt on"],
    ["put belt on", "belt on"],
    ["lean to the left", "lean left"],
    ["sliding board in", "place board"],
    ["take board out", "withdraw board"],
    ["remove board", "withdraw board"],
    ["feet flat on the floor", "feet on floor"],
    ["feet on foot plates", "feet on plates"],
    ["foot plates up", "footplates up"],
    ["slide", "slide"],
    ["slide part way", "slide part-way"],
    ["sit on edge of bed", "sit on-edge"],
    ["position in bed", "position in-bed"],
    ["helper in front", "helper in-front"],
    ["lock casters", "lock castors"],
    ["set-height bed", "set-height bed"],
    ["set height of bed-2", "set-height bed-2"],
    ["back away", "back-away"],
    ["restore right leg rest", "refit legrest right"],
    ["move the lines", "move lines"],
  ])("%s reads as %s", (typed, spelling) => expect(spelt(typed)).toBe(spelling));

  it("reads back every spelling that is offered", () => {
    for (const { text } of phrases("bed-2")) expect(spelt(text)).toBe(text);
  });

  it("keeps every accepted spelling for one step only", () => {
    const verbs = new Map<string, string>();
    for (const { text, phrase } of acceptedSpellings) {
      expect(verbs.get(text) ?? phrase.verb, text).toBe(phrase.verb);
      verbs.set(text, phrase.verb);
    }
    expect(verbs.size).toBeGreaterThan(3 * stepPhrases.length);
  });

  it("says in words what every step is for, needs and changes", () => {
    for (const p of stepPhrases) {
      expect(p.help, p.verb).toMatch(/^[A-Z].*\.$/);
      expect(p.needs.length, p.verb).toBeGreaterThan(5);
      expect(p.changes.length, p.verb).toBeGreaterThan(5);
      expect(phraseOf(p.verb)).toBe(p);
    }
  });
});

describe("What is not a step is said, with what was probably meant", () => {
  it.each([
    ["lokc brakes", "lock brakes"],
    ["aproach bed", "approach bed"],
    ["remove legret left", "remove legrest left"],
    ["swing-away armest right", "swing-away armrest right"],
    ["plase board", "place board"],
    ["withdaw board", "withdraw board"],
    ["feet on flor", "feet on floor"],
    ["slidde", "slide"],
  ])("%s: perhaps %s", (typed, meant) => expect(read(typed).nearest?.[0]).toBe(meant));

  it("asks for the side, and offers both", () => {
    expect(read("remove legrest")).toEqual({
      problem: `"remove legrest": which side, the client's own left or right?`,
      nearest: ["remove legrest left", "remove legrest right"],
    });
    expect(read("lean").nearest).toEqual(["lean left", "lean right"]);
  });

  it("wants one step for each side", () => {
    expect(read("remove both legrests").problem).toBe(
      `"remove both legrests": one step for each side, please.`,
    );
    expect(read("remove legrest left right").nearest).toEqual([
      "remove legrest left",
      "remove legrest right",
    ]);
  });

  it("does not drop a side that the step cannot have", () => {
    expect(read("lock brakes left")).toEqual({
      problem: '"lock brakes left": `lock brakes` has no side.',
      nearest: ["lock brakes"],
    });
  });

  it("offers nothing where nothing is near", () => {
    const far = read("phone the clinic tomorrow");
    expect(far.problem).toBe('"phone the clinic tomorrow" is not a step that is known here.');
    expect(far.nearest).toBeUndefined();
    expect(readStep([]).problem).toBe("No step is written here.");
    expect(read("left").problem).toBe('"left" names a side, but no step.');
  });

  it("guesses no rail or door into a bed height", () => {
    expect(read("lower rail").step).toBeUndefined();
    expect(read("raise knees").step).toBeUndefined();
  });

  it("answers any list of words", () => {
    const words = fc.array(
      fc.oneof(
        fc.string(),
        fc.constantFrom("left", "right", "both", "brakes", "board", "on", "lean", "approach", "leg", "rest"),
      ),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(words, (list) => {
        const r = readStep(list);
        if (!r.step) return r.problem.length > 0 && (r.nearest?.length ?? 1) <= 4;
        const again = readStep(spell(r.step).split(" "));
        return again.step !== undefined && spell(again.step) === spell(r.step);
      }),
      { numRuns: 2000 },
    );
  });
});
