/** How far the client turns from sitting in the parked chair to sitting on the surface. */
import { absolute, shift, subtract, exactly, type Interval } from "../../language/quantity/interval.js";
import type { Outcome } from "../quantity.js";
import { absent, beyondSquare, choiceOf, derived, endsOr, signedTurn, turnInputs } from "./inputs.js";

type Way = "square" | "same" | "opposite";

export const turnBody = derived({
  name: "turn.body",
  dimension: "angle",
  says: "how far the client turns between sitting in the parked chair and sitting on the other surface",
  formula:
    "90 degrees + the chair's angle on a bed's side, or on a surface at a right angle; that angle where both face the same way; 180 degrees - it where they face each other",
  source: "plane geometry",
  inputs: (s, of): Record<string, unknown> => {
    const ends = endsOr(s);
    if ("none" in ends) return { none: ends.none };
    const facing = choiceOf(s.value("facing").thing, "facing");
    const way: Way | undefined =
      ends.surface.kind === "bed"
        ? "square"
        : facing === "same" || facing === "opposite" || facing === "square"
          ? facing
          : undefined;
    if (!way)
      return { none: absent(s.transfer, "which way the chair faces beside the surface (facing)", "facing") };
    return { ...turnInputs(s, of), parking: of.default("parking-angle"), way };
  },
  compute: (i: { turn: Interval; away: boolean; parking: Interval; way: Way }): Outcome => {
    const off = Math.max(Math.abs(i.parking.low), Math.abs(i.parking.high));
    const turned = signedTurn(i.turn, i.away, off);
    if (!turned) return beyondSquare;
    if (i.way === "square") return { value: shift(turned, Math.PI / 2) };
    const turn = absolute(turned);
    return { value: i.way === "same" ? turn : subtract(exactly(Math.PI), turn) };
  },
});
