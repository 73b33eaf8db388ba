/** Facts on when things are there: what was lent or rented, and the phases of a plan. */
import type { Household } from "../../language/model/household.js";
import type { Thing } from "../../language/model/types.js";
import type { Scene } from "../scene.js";
import { onTransfer, parts, word, type Sight, type SpecialFact } from "./special-fact.js";
import { choiceReading, missingReading } from "./written.js";

/** The things that this transfer cannot be made without. */
const thingsOf = (s: Scene): ReadonlySet<string> =>
  new Set(
    [s.from, s.to, s.board, s.belt, s.lift, s.sling, s.handle, ...s.ramps].flatMap((t) =>
      t ? [t.name] : [],
    ),
  );
const blocks = (h: Household, kind: string): readonly Thing[] => h.all.filter((t) => t.kind === kind);
const kitOf = (s: Scene, h: Household): readonly Thing[] => {
  const used = thingsOf(s);
  return blocks(h, "kit").filter((k) => used.has(k.name));
};
const depends =
  (kind: string) =>
  (s: Scene, { household, today }: Sight) => [
    s.transfer,
    s.base,
    s.from,
    s.to,
    s.surface,
    s.board,
    s.belt,
    s.lift,
    s.sling,
    s.handle,
    s.ramps,
    today,
    ...blocks(household, kind),
  ];

/** Names what is not there on the day of the check; what is to come, or was said to come later than today. */
const awaited = onTransfer(
  "kit.awaited",
  "what this transfer uses and is not there on the day of the check; `none` where everything is, or where nothing is lent",
  { open: true },
  depends("kit"),
  (s, n, { household, today }) => {
    const kits = kitOf(s, household);
    const waiting = kits.filter((k) => {
      const { is, on } = parts(k.values["delivered"]);
      return is === "no" || (is === "yes" && (word(on) ?? "") > today);
    });
    const first = waiting[0];
    if (first)
      return choiceReading(n, waiting.map((k) => k.name).join(", "), { thing: first, key: "delivered" });
    const open = kits.find((k) => parts(k.values["delivered"])["is"] === undefined);
    return open
      ? missingReading(n, `whether ${open.name} is there (delivered)`, { thing: open, key: "delivered" })
      : choiceReading(n, "none");
  },
  true,
);

const overdue = onTransfer(
  "kit.overdue",
  "what this transfer uses and should have gone back before the day of the check; `none` where there is nothing such",
  { open: true },
  depends("kit"),
  (s, n, { household, today }) => {
    const late = kitOf(s, household).filter((k) => {
      const due = word(k.values["due-back"]);
      return due !== undefined && due < today;
    });
    const first = late[0];
    return first
      ? choiceReading(n, late.map((k) => k.name).join(", "), { thing: first, key: "due-back" })
      : choiceReading(n, "none");
  },
  true,
);

/** ISO 8601 dates compare as texts; an end in words is not known to have passed. */
function phaseState(p: Thing, today: string): "now" | "to-come" | "over" {
  const from = word(p.values["holds-from"]);
  const until = word(p.values["until"]);
  if (from !== undefined && today < from) return "to-come";
  return until !== undefined && /^\d{4}-\d{2}-\d{2}$/.test(until) && today > until ? "over" : "now";
}

const standing = onTransfer(
  "phase.standing",
  "whether the phase in which this transfer's surface is used holds on the day of the check; `none` where no phase names it",
  { choices: ["now", "to-come", "over", "none"] },
  depends("phase"),
  (s, n, { household, today }) => {
    const phases = blocks(household, "phase").filter((p) => {
      const uses = p.values["uses"];
      return s.surface && Array.isArray(uses) && uses.includes(s.surface.name);
    });
    const states = phases.map((p) => phaseState(p, today));
    const state = (["now", "to-come", "over"] as const).find((x) => states.includes(x));
    return state
      ? choiceReading(n, state, { thing: phases[states.indexOf(state)]! })
      : choiceReading(n, "none");
  },
  true,
);

export const kitFacts: readonly SpecialFact[] = [awaited, overdue, standing];
