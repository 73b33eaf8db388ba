/**
 * The published decision logic for moving somebody from seat to seat (the nursing-home guidelines' Figure 1, which the Veterans'
 * algorithm for safe handling repeats as its Algorithm 1), case by case through the released rule set.
 *
 * The table is the publication's: whether the person bears weight, takes part, has strength in the arms, and what follows. What
 * the rule set says of a board comes from a whole check of a household that differs in these three lines alone.
 */
import { describe, expect, it } from "vitest";
import embedded from "virtual:rule-sets";
import { emptyLibrary, householdOf, readSetup } from "../../language/model/household.js";
import { createChecker } from "../../rules/engine/check.js";
import { FactTable } from "../../rules/engine/fact-table.js";
import { loadRuleSet } from "../../rules/engine/load.js";
import { quantities } from "../../rules/quantities/index.js";
import type { Verdict } from "../../rules/types.js";

const { files } = embedded.find((s) => s.name === "home-transfer" && s.version === "2026.1")!;
const { partial: set } = loadRuleSet(files, new FactTable(quantities));

interface Person {
  readonly bears: "fully" | "partly" | "not";
  readonly takesPart: boolean;
  readonly arms: "able" | "weak";
}
const limits = { fully: "full", partly: "touch", not: "none" } as const;

const board = `  with board-30, belt-1, daughter, son
  steps { lock brakes; approach bed; place board; slide; withdraw board }`;
const lift = (helpers: string): string => `  with lift-1, sling-1, ${helpers}
  no-board
  steps {
    lock brakes; sling under; open base; bring lift; attach sling; check loops
    raise sling; check lifted; turn lift; lower sling; detach sling; lift away; sling out
  }`;

function verdicts(p: Person, way: string): ReadonlyMap<string, Verdict> {
  const text = `setup "Decision logic"
client {
  code C-1; mass 150 lb; stature 5 ft 6 in
  sitting-balance good; assistance moderate
  cooperates ${p.takesPart ? "yes" : "no"}
  arm-strength ${p.arms}
  limit weight-bearing both ${limits[p.bears]} review 2026-12-01
}
helper daughter { trained yes }
helper son { trained yes }
wheelchair chair { seat-loaded 19 in; armrests flip-back; brakes both }
bed bed { top 20 in; top-loaded 19 in; rails none }
board board-30 { length 30 in; width 8 in }
belt belt-1 { }
lift lift-1 { rated-load 400 lb }
sling sling-1 { for lift-1; fits 100 lb to 200 lb; kind full-body }
transfer into-bed {
  from chair to bed
  bed-side left
  facing head
  turned 30 deg towards
${way}
}
`;
  const household = householdOf("home.span", readSetup(text), emptyLibrary);
  const { verdicts: all } = createChecker(set, quantities).check(household, "2026-03-02");
  // A rule on steps counts as failed where it fails at any step.
  const found = new Map<string, Verdict>();
  for (const v of all) if (!found.has(v.rule) || v.verdict === "fails") found.set(v.rule, v);
  return found;
}

const cooperates = "person/does-not-cooperate";
const arms = "person/arms-too-weak";
const couldStand = "person/could-stand";
const logic = [cooperates, arms, couldStand];
/** What these rules say: the gravest level of those that fail, or that nothing is said against the way. */
function said(p: Person, way: string): string {
  const found = verdicts(p, way);
  const failed = logic.flatMap((id) => {
    const v = found.get(id)!;
    expect(["holds", "fails", "not-applicable"], id).toContain(v.verdict);
    return v.verdict === "fails" ? [v.levels.worst] : [];
  });
  return failed.includes("stop") ? "stop" : (failed[0] ?? "nothing against it");
}

const published: readonly (readonly [
  bears: Person["bears"],
  takesPart: boolean,
  arms: Person["arms"],
  outcome: string,
])[] = [
  ["fully", true, "able", "no help, somebody stands by"],
  ["fully", true, "weak", "no help, somebody stands by"],
  ["fully", false, "able", "no help, somebody stands by"],
  ["fully", false, "weak", "no help, somebody stands by"],
  ["partly", true, "able", "stand and turn with a belt, or a powered stand aid"],
  ["partly", true, "weak", "stand and turn with a belt, or a powered stand aid"],
  ["partly", false, "able", "full-body sling lift, two helpers"],
  ["partly", false, "weak", "full-body sling lift, two helpers"],
  ["not", false, "able", "full-body sling lift, two helpers"],
  ["not", false, "weak", "full-body sling lift, two helpers"],
  ["not", true, "weak", "full-body sling lift, two helpers"],
  ["not", true, "able", "seated transfer aid"],
];

/** What each outcome means for a plan that takes a board. */
const onABoard: Readonly<Record<string, string>> = {
  "seated transfer aid": "nothing against it",
  "full-body sling lift, two helpers": "stop",
  "stand and turn with a belt, or a powered stand aid": "advice",
  "no help, somebody stands by": "nothing against it",
};

describe("the published decision logic on a plan with a board", () => {
  it.each(published)("bears weight %s, takes part: %s, arms %s: %s", (bears, takesPart, arms, outcome) => {
    // The logic sends whoever bears all weight away before it asks for cooperation. A board asks for it of everybody, and bearing all
    // weight is here only that nobody limited it, so the rule set is stricter in these two rows.
    const stricter = bears === "fully" && !takesPart;
    expect(said({ bears, takesPart, arms }, board)).toBe(stricter ? "stop" : onABoard[outcome]);
  });

  it("covers every case, each once", () => {
    expect(new Set(published.map((p) => p.slice(0, 3).join(" "))).size).toBe(3 * 2 * 2);
    expect(published).toHaveLength(12);
  });
});

describe("the outcomes of the published decision logic as plans", () => {
  const lifted = published.filter((p) => p[3].startsWith("full-body sling lift"));

  it.each(lifted)(
    "bears weight %s, takes part: %s, arms %s: nothing is said against a %s",
    (bears, takesPart, arms) => {
      expect(said({ bears, takesPart, arms }, lift("daughter, son"))).toBe("nothing against it");
    },
  );

  it("asks for two helpers at a lift with a full-body sling", () => {
    const person: Person = { bears: "not", takesPart: true, arms: "weak" };
    const oneHelper = "steps/lift-one-helper";
    expect(verdicts(person, lift("daughter, son")).get(oneHelper)?.verdict).toBe("holds");
    expect(verdicts(person, lift("daughter")).get(oneHelper)?.verdict).toBe("fails");
  });

  it("asks for chair arms that come away, as the branch with a seated aid does", () => {
    const person: Person = { bears: "not", takesPart: true, arms: "able" };
    expect(verdicts(person, board).get("steps/armrest-in-the-way")?.verdict).toBe("fails");
  });
});
