/** Facts on the other surface: its kind, its height, and what stands on the side on which the chair parks. */
import { isQuantity } from "../../language/model/types.js";
import { surfaceKinds } from "../../language/vocabulary/index.js";
import type { Scene, Side } from "../scene.js";
import type { Reading } from "./logic.js";
import { list, onTransfer, parts, word, yes, yesNo, type SpecialFact } from "./special-fact.js";
import { choiceReading, missingReading, withoutReading } from "./written.js";

/** Where nobody said between which two surfaces the client moves. */
const noSurface = (s: Scene, n: string): Reading =>
  missingReading(n, "from where to where it goes (from)", { thing: s.base ?? s.transfer, key: "from" });

/** Side of the surface on which the chair stands: the client's own, lying on the bed or sitting on the seat. */
const sideOf = (s: Scene): Side | undefined => {
  const said = word(s.value("bed-side").value) ?? word(s.value("side").value);
  return said === "left" || said === "right" ? said : undefined;
};
const noSide = (s: Scene, n: string): Reading => {
  const bed = s.surface?.kind === "bed";
  return missingReading(
    n,
    bed
      ? "the side of the bed on which the chair parks (bed-side)"
      : "the side at which the chair stands (side)",
    { thing: s.transfer, key: bed ? "bed-side" : "side" },
  );
};

const surfaceKind: SpecialFact = onTransfer(
  "surface.kind",
  "what kind of surface the one beside the wheelchair is",
  { choices: surfaceKinds },
  (s) => [s.surface, s.transfer, s.base],
  (s, n) => (s.surface ? choiceReading(n, s.surface.kind, { thing: s.surface }) : noSurface(s, n)),
);

const adjustable: SpecialFact = onTransfer(
  "surface.adjustable",
  "whether the height of the surface adjusts",
  yesNo,
  (s) => [s.surface, s.transfer, s.base],
  (s, n) => {
    if (!s.surface) return noSurface(s, n);
    const at = { thing: s.surface, key: "adjusts" };
    const value = s.surface.values["adjusts"];
    if (value === "no") return choiceReading(n, "no", at);
    return isQuantity(value) || parts(value)["low"] !== undefined
      ? choiceReading(n, "yes", at)
      : missingReading(n, `whether the height of ${s.surface.name} adjusts`, at);
  },
);

/** The rail on one side: as `rails` says which stand, and as `rail SIDE KIND` says how it is taken out of the way. */
const railNear: SpecialFact = onTransfer(
  "surface.rail-near",
  "whether a rail stands on the side of the bed on which the chair parks; `comes-away` where it folds down or lifts off",
  { choices: ["no", "comes-away", "yes"] },
  (s) => [s.surface, s.transfer, s.base],
  (s, n) => {
    if (!s.surface) return noSurface(s, n);
    if (s.surface.kind !== "bed") return withoutReading(n, `${s.surface.name} is no bed and has no rails`);
    const { values } = s.surface;
    const at = { thing: s.surface, key: values["rails"] === undefined ? "rail" : "rails" };
    const standing = word(values["rails"]);
    const kinds = new Map(
      list(values["rail"]).map((r) => [word(parts(r)["side"]), word(parts(r)["kind"])] as const),
    );
    if (standing === undefined && kinds.size === 0)
      return missingReading(n, `the rails of ${s.surface.name}`, { thing: s.surface, key: "rails" });
    if (standing === "none") return choiceReading(n, "no", at);
    const side = sideOf(s);
    if (side === undefined) return noSide(s, n);
    const kind = kinds.get(side);
    if (standing !== undefined && standing !== "both" && standing !== side) return choiceReading(n, "no", at);
    if (standing === undefined && kind === undefined)
      return missingReading(n, `whether a rail stands on the ${side} of ${s.surface.name} (rails)`, at);
    if (standing === undefined && kind === "none") return choiceReading(n, "no", at);
    // `rails` says that one stands there: `rail ... none` beside it is a contradiction, of which the worse is taken.
    return choiceReading(n, kind === "folds-down" || kind === "lifts-off" ? "comes-away" : "yes", at);
  },
);

/** The arm of the surface on the side of the chair, and how it is taken out of the way. */
const armNear: SpecialFact = onTransfer(
  "surface.arm-near",
  "the arm of the surface on the side on which the chair stands, and how it is taken out of the way",
  { choices: ["none", "fixed", "swing-away", "flip-up", "removable"] },
  (s) => [s.surface, s.transfer, s.base],
  (s, n) => {
    if (!s.surface) return noSurface(s, n);
    if (s.surface.kind === "bed") return withoutReading(n, `${s.surface.name} is a bed and has no arms`);
    const at = { thing: s.surface, key: "arms" };
    const arms = word(s.surface.values["arms"]);
    if (arms === undefined) return missingReading(n, `the arms of ${s.surface.name} (arms)`, at);
    if (arms === "none") return choiceReading(n, "none", at);
    if (arms !== "both") {
      const side = sideOf(s);
      if (side === undefined) return noSide(s, n);
      if (side !== arms) return choiceReading(n, "none", at);
    }
    const kind = word(s.surface.values["arms-kind"]);
    return kind === undefined
      ? missingReading(n, `how the arms of ${s.surface.name} are taken away (arms-kind)`, {
          thing: s.surface,
          key: "arms-kind",
        })
      : choiceReading(n, kind, { thing: s.surface, key: "arms-kind" }, `arms of ${s.surface.name}`);
  },
);

const chairStands: SpecialFact = onTransfer(
  "surface.chair-side",
  "the side of the surface at which the chair stands: the client's own, lying on the bed or sitting on the seat",
  { choices: ["left", "right"] },
  (s) => [s.surface, s.transfer, s.base],
  (s, n) => {
    if (!s.surface) return noSurface(s, n);
    const side = sideOf(s);
    if (side === undefined) return noSide(s, n);
    const key = s.surface.kind === "bed" ? "bed-side" : "side";
    return choiceReading(n, side, { thing: s.value(key).thing, key });
  },
);

const wetSaid: SpecialFact = onTransfer(
  "surface.wet-said",
  "whether anything is written of water: on the surface, or in the transfer",
  yesNo,
  (s) => [s.surface, s.transfer, s.base],
  (s, n) => {
    if (!s.surface) return noSurface(s, n);
    const own = s.surface.values["wet"];
    const said = s.value("wet");
    return choiceReading(
      n,
      yes(own !== undefined || said.value !== undefined),
      own !== undefined ? { thing: s.surface, key: "wet" } : { thing: s.transfer, key: "wet" },
    );
  },
);

export const surfaceFacts: readonly SpecialFact[] = [
  surfaceKind,
  adjustable,
  railNear,
  armNear,
  chairStands,
  wetSaid,
];
