/** Facts that rules read and that are not written under one key: each row changes one household in one place. */
import { describe, expect, it } from "vitest";
import { emptyLibrary, householdOf, readSetup } from "../../../language/model/household.js";
import { FactTable } from "../../../rules/engine/fact-table.js";
import { FactReader } from "../../../rules/engine/facts.js";
import { quantities } from "../../../rules/quantities/index.js";
import { Scenes } from "../../../rules/scenes.js";
import { defaultsWith } from "../scene-for.js";

const table = new FactTable(quantities);
const flat = `
client { code C-07; mass 182 lb; arm-strength able; line none }
wheelchair chair { seat-height 20 in; armrests removable; legrests removable }
bed bed { top 20 in; rails none }
toilet toilet { top 17 in; arms both; arms-kind flip-up }
board board { length 30 in }
lift lift { rated-load 400 lb }
sling sling { for lift; fits 150 lb to 250 lb; label-legible yes }
room bedroom { walk 12 ft east, 10 ft north, 12 ft west, 10 ft south }
`;
const bed = (more = "with board; room bedroom; bed-side left; facing head") =>
  `transfer move { from chair to bed; ${more} }\n`;
const toilet = (more = "with board; room bedroom; side left; facing same") =>
  `transfer move { from chair to toilet; ${more} }\n`;

/** A fact of the transfer `move`: its word or its value; `without` or `missing` where there is none. */
function fact(name: string, text: string, today = "2026-03-02", transfer = "move"): string | number {
  const household = householdOf("home.span", readSetup(text), emptyLibrary);
  const scene = new Scenes().of(household).find((s) => s.name === transfer)!;
  const reader = new FactReader(table, defaultsWith());
  reader.begin();
  const r = reader.ofScene({ household, today, scene }).read(name);
  if (r.without !== undefined) return "without";
  return r.choice ?? r.value?.nominal ?? "missing";
}
const pounds = (n: number): unknown => expect.closeTo(n * 0.45359237, 9);

describe("the rail of a bed on the side of the chair", () => {
  it.each([
    ["rails none", "no"],
    ["rails both", "yes"],
    ["rails right", "no"],
    ["rails left", "yes"],
    ["rails left; rail left folds-down", "comes-away"],
    ["rails left; rail left lifts-off", "comes-away"],
    ["rails left; rail left fixed", "yes"],
    ["rails right; rail left folds-down; rail right folds-down", "no"],
    ["rail left folds-down", "comes-away"],
    ["rail left none; rail right fixed", "no"],
    ["rail right fixed", "missing"],
    ["edge firm", "missing"],
  ])("with %s beside its left side: %s", (rails, says) =>
    expect(fact("surface.rail-near", flat.replace("rails none", rails) + bed())).toBe(says),
  );
  it("is not asked where nobody said on which side the chair parks, and not of a toilet", () => {
    expect(fact("surface.rail-near", flat.replace("rails none", "rails left") + bed("with board"))).toBe(
      "missing",
    );
    expect(fact("surface.rail-near", flat + toilet())).toBe("without");
  });
});

describe("the arm of a seat on the side of the chair", () => {
  it.each([
    ["arms both; arms-kind flip-up", "flip-up"],
    ["arms both; arms-kind fixed", "fixed"],
    ["arms left; arms-kind fixed", "fixed"],
    ["arms right; arms-kind fixed", "none"],
    ["arms none", "none"],
    ["arms both", "missing"],
    ["edge firm", "missing"],
  ])("with %s beside the client's left: %s", (arms, says) =>
    expect(fact("surface.arm-near", flat.replace("arms both; arms-kind flip-up", arms) + toilet())).toBe(
      says,
    ),
  );
});

describe("what carries the client", () => {
  it.each([
    ["with lift, sling; no-board", "yes"],
    ["with lift", "yes"],
    ["with board, lift", "no"],
    ["with board", "no"],
    ['with board; if-not { stop "pain"; meanwhile "wait"; otherwise lift }', "no"],
    ["no-board", "no"],
  ])("%s: a lift carries, %s", (used, says) => expect(fact("lift.carries", flat + bed(used))).toBe(says));
  it("a sling says for whom it is made, and nothing where none is named", () => {
    expect(fact("sling.fits-least", flat + bed("with lift, sling"))).toEqual(pounds(150));
    expect(fact("sling.fits-most", flat + bed("with lift, sling"))).toEqual(pounds(250));
    expect(fact("sling.fits-most", flat + bed("with lift"))).toBe("without");
    expect(fact("sling.label-legible", flat + bed("with lift, sling"))).toBe("yes");
  });
});

describe("outdoors", () => {
  it("is a decision: a room is then neither there nor asked for", () => {
    const text = flat + bed("with board; room none");
    expect(fact("transfer.indoors", text)).toBe("no");
    expect(fact("room.floor", text)).toBe("without");
    expect(fact("room.loose-rug", text)).toBe("without");
  });
  it("is not assumed where no room is written", () => {
    expect(fact("transfer.indoors", flat + bed("with board"))).toBe("missing");
    expect(fact("room.floor", flat + bed("with board"))).toBe("missing");
    expect(fact("transfer.indoors", flat + bed())).toBe("yes");
  });
});

describe("between a bed and a toilet without a wheelchair", () => {
  it("nothing of a wheelchair is asked", () => {
    const text = `${flat}transfer move { from bed to toilet; with board }\n`;
    expect(fact("chair.brakes", text)).toBe("without");
    expect(fact("chair.armrest-near", text)).toBe("without");
  });
});

describe("the client", () => {
  it.each([
    ["arm right weak", "move", "weaker"],
    ["arm right weak", "back", "stronger"],
    ["arm left weak", "move", "stronger"],
    ["arm left weak; arm right weak", "move", "even"],
    ["skin intact", "move", "even"],
  ])("with %s, %s leads with the %s arm", (arm, transfer, says) => {
    // The chair stands at the left of the seat and faces as the sitter does: the seat is on the chair's right.
    const text = flat.replace("line none", arm) + toilet() + "way-back back of move { steps planned }\n";
    expect(fact("client.leading-arm", text, "2026-03-02", transfer)).toBe(says);
  });
  it.each([
    ["line none", "without"],
    ["line drain left 20 in; line oxygen middle 12 ft", 0.508],
    ["line drain left; line oxygen middle 12 ft", "missing"],
    ["skin intact", "missing"],
  ])("with %s the shortest line is %s", (line, says) => {
    const found = fact("client.line-shortest", flat.replace("line none", line) + bed());
    expect(found).toEqual(typeof says === "number" ? expect.closeTo(says, 9) : says);
  });
  it.each([
    ["limit none", "no"],
    ["limit hip-flexion left 90 deg", "yes"],
    ["limit weight-bearing left none", "no"],
  ])("with %s a hip is limited: %s", (limit, says) =>
    expect(fact("client.limit-hip-flexion", flat.replace("line none", limit) + bed())).toBe(says),
  );
});

describe("what is lent, and when", () => {
  it.each([
    ["delivered yes on 2026-03-01", "none"],
    ["delivered yes on 2026-03-02", "none"],
    ["delivered yes on 2026-03-03", "bed"],
    ["delivered no on 2026-03-09", "bed"],
    ["delivered no", "bed"],
    ['by "loan pool"', "missing"],
  ])("a rented bed with %s on 2 March: not there is %s", (said, says) =>
    expect(fact("kit.awaited", `${flat}${bed()}kit bed { rented; ${said} }\n`)).toBe(says),
  );
  it("asks nothing of what this transfer does not use", () =>
    expect(fact("kit.awaited", `${flat}${bed()}kit lift { rented; delivered no }\n`)).toBe("none"));
  it.each([
    ["2026-03-01", "board"],
    ["2026-03-02", "none"],
  ])("a board due back on %s is overdue on 2 March: %s", (due, says) =>
    expect(fact("kit.overdue", `${flat}${bed()}kit board { lent; due-back ${due} }\n`)).toBe(says),
  );
  it.each([
    ["until 2026-03-01", "over"],
    ["until 2026-03-02", "now"],
    ['until "the review"', "now"],
    ['holds-from 2026-03-03; until "the review"', "to-come"],
    ['holds-from 2026-03-02; until "the review"', "now"],
  ])("a phase with %s is %s on 2 March", (dates, says) =>
    expect(fact("phase.standing", `${flat}${bed()}phase first { ${dates}; uses bed }\n`)).toBe(says),
  );
  it("is of no phase where none names the surface", () =>
    expect(fact("phase.standing", `${flat}${bed()}phase first { until 2026-03-01; uses toilet }\n`)).toBe(
      "none",
    ));
});
