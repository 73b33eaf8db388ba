/** Facts on the client that follow from what is written of single sides: limits, arms, lines and tubes. */
import { isQuantity, isUnknown, type Thing } from "../../language/model/types.js";
import type { Scene, Side } from "../scene.js";
import { surfaceSideOf } from "../steps/setup.js";
import { limitsOf } from "./facts-record.js";
import { quantityReading } from "./facts-use.js";
import type { Reading } from "./logic.js";
import { list, onTransfer, parts, word, yes, yesNo, type SpecialFact } from "./special-fact.js";
import { choiceReading, missingReading, withoutReading } from "./written.js";

const noClient = (n: string): Reading => missingReading(n, "who is moved (client)");

const weightBearing = onTransfer(
  "client.limit-weight-bearing",
  "how much weight a prescriber allows on the legs: none on at least one, some, or full where no limit is written",
  { choices: ["none", "some", "full"] },
  (s) => [s.client],
  (s, n) => {
    if (!s.client) return noClient(n);
    const amounts = limitsOf(s.client)
      .filter((l) => l["what"] === "weight-bearing")
      .map((l) => l["amount"]);
    const choice = amounts.includes("none") ? "none" : amounts.some((a) => a !== "full") ? "some" : "full";
    return choiceReading(n, choice, { thing: s.client, key: "limit" });
  },
);

const hipFlexion = onTransfer(
  "client.limit-hip-flexion",
  "whether a prescriber limits how far a hip may bend",
  yesNo,
  (s) => [s.client],
  (s, n) => {
    if (!s.client) return noClient(n);
    const limited = limitsOf(s.client).some((l) => l["what"] === "hip-flexion" && l["amount"] !== "full");
    return choiceReading(n, yes(limited), { thing: s.client, key: "limit" });
  },
);

const strengths = ["none", "weak", "able"];
/** The strength of one arm: as said for that side, else for both. */
function armOf(client: Thing, side: Side): number | undefined {
  const own = list(client.values["arm"])
    .map(parts)
    .find((a) => a["side"] === side);
  const said = word(own ? own["strength"] : client.values["arm-strength"]);
  const at = said === undefined ? -1 : strengths.indexOf(said);
  return at < 0 ? undefined : at;
}

/** The side to which the client moves, their own: in the chair that of the surface, on the surface that of the chair. */
const leadingSide = (s: Scene): Side | undefined =>
  s.setup.direction === "from-chair" ? s.side : surfaceSideOf(s.setup);

const leadingArm = onTransfer(
  "client.leading-arm",
  "whether the arm on the side to which the client moves is the stronger or the weaker one",
  { choices: ["stronger", "weaker", "even"] },
  (s) => [s.client, s.side, s.setup, s.transfer],
  (s, n) => {
    if (!s.client) return noClient(n);
    const at = { thing: s.client, key: "arm" };
    const [left, right] = [armOf(s.client, "left"), armOf(s.client, "right")];
    // Where nothing is said of one side, nobody said that the two differ.
    if (s.client.values["arm"] === undefined || left === right) return choiceReading(n, "even", at);
    if (left === undefined || right === undefined)
      return missingReading(n, "the strength of the other arm (arm-strength)", {
        thing: s.client,
        key: "arm-strength",
      });
    const to = leadingSide(s);
    if (to === undefined)
      return missingReading(n, "to which side the client moves (side and facing)", {
        thing: s.transfer,
        key: "facing",
      });
    const [leads, trails] = to === "left" ? [left, right] : [right, left];
    return choiceReading(n, leads > trails ? "stronger" : "weaker", at);
  },
);

const shortestLine = onTransfer(
  "client.line-shortest",
  "the shortest line or tube, from where it leaves the body to what it hangs on",
  { dimension: "length" },
  (s) => [s.client],
  (s, n) => {
    if (!s.client) return noClient(n);
    const at = { thing: s.client, key: "line" };
    const written = s.client.values["line"];
    if (written === undefined || isUnknown(written)) return missingReading(n, "lines and tubes (line)", at);
    const lines = list(written).filter((l) => l !== "none");
    if (lines.length === 0) return withoutReading(n, "No lines or tubes are written");
    const lengths = lines.map((l) => parts(l)["length"]).filter(isQuantity);
    if (lengths.length < lines.length) return missingReading(n, "how long each line and tube is (line)", at);
    const shortest = lengths.reduce((a, b) => (b.nominal < a.nominal ? b : a));
    const low = Math.min(...lengths.map((l) => l.low));
    return quantityReading(n, shortest, { low, nominal: shortest.nominal, high: shortest.high }, at);
  },
);

const healedSore = onTransfer(
  "client.healed-sores",
  "whether a pressure sore has healed somewhere",
  yesNo,
  (s) => [s.client],
  (s, n) =>
    s.client
      ? choiceReading(n, yes(s.client.values["healed-sore"] !== undefined), {
          thing: s.client,
          key: "healed-sore",
        })
      : noClient(n),
);

export const clientFacts: readonly SpecialFact[] = [
  weightBearing,
  hipFlexion,
  leadingArm,
  shortestLine,
  healedSore,
];
