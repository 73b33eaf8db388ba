/** What people type for the steps at other surfaces and with a lift. */
import { describe, expect, it } from "vitest";
import { readStep, spell } from "../../../language/vocabulary/verbs.js";

describe("A step at another surface or with a lift is read as people type it", () => {
  it.each([
    ["swing away arm of toilet left", "clear arm-of toilet left"],
    ["flip down arm of wc right", "restore arm-of wc right"],
    ["undress", "clothing down"],
    ["pull clothing up", "clothing up"],
    ["towel on board", "cover board"],
    ["dry the bench", "wipe-dry bench"],
    ["towel dry", "dry skin"],
    ["left leg over rim", "leg in left"],
    ["lift right leg out", "leg out right"],
    ["slide along bench", "move-along in"],
    ["car door open", "open door"],
    ["car seat back", "seat rearward"],
    ["duck", "duck head"],
    ["put sling under", "sling under"],
    ["detach sling", "detach sling"],
    ["check the loops", "check loops"],
    ["check in the air", "check lifted"],
    ["lower onto", "lower sling"],
    ["slide sheet in", "sheet in"],
    ["second helper behind", "helper-two behind"],
    ["set height of chair", "set-height chair"],
    ["roll back", "castors forward"],
    ["board over sill gap", "place board"],
    ["clear lines and tubes", "move lines"],
  ])("%s reads as %s", (typed, spelled) => {
    const read = readStep(typed.split(" "));
    expect(read.problem).toBeUndefined();
    expect(spell(read.step!)).toBe(spelled);
  });

  it("does not guess whether `remove sling` means unhooked or taken out", () => {
    expect(readStep(["remove", "sling"]).step).toBeUndefined();
  });
});
