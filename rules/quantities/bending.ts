/** The board as a beam: stress and sag with the client at the worst place. */
import { divide, exactly, multiply, scale, type Interval } from "../../language/quantity/interval.js";
import type { Thing } from "../../language/model/types.js";
import { isQuantity } from "../../language/model/types.js";
import { bendingStress, deflection } from "../plan/beam.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { boardRiseEnd, boardRiseStart } from "./board-rise.js";
import { boardRun } from "./board-slope.js";
import { absent, boardOr, choiceOf, derived, without } from "./inputs.js";
import { boardSpan } from "./laying.js";
import { boardLoadShare } from "./load-share.js";
import { onTheBoard } from "./push.js";
import { clientWeight } from "./weight.js";

/** Pascals in a newton per square millimetre, in which strength and stress are given. */
const megapascal = 1e6;

/** A handbook value of the board's material; there is none for what nobody has named. */
function ofMaterial(board: Thing, what: "strength" | "stiffness", of: Of): Computed {
  const material = choiceOf(board, "material");
  if (material === "wood" || material === "plywood" || material === "plastic")
    return of.default(`${what}-${material}`);
  return material === undefined
    ? absent(board, "what the board is made of", "material")
    : without(`no handbook value stands for a board of ${material}`);
}

type BeamHanded = {
  weight: Interval;
  share: Interval;
  factor: Interval;
  run: Interval;
  span: Interval;
  riseStart: Interval;
  riseEnd: Interval;
  width: Interval;
  thickness: Interval;
  asRead: Interval;
  toleranceGiven: boolean;
};

function beamInputs(
  s: Scene,
  of: Of,
  more: (board: Thing) => Record<string, Computed>,
): Record<string, unknown> {
  const b = boardOr(s);
  if ("none" in b) return { none: b.none };
  const thickness = b.board.values["thickness"];
  return {
    weight: clientWeight(s, of),
    share: of(boardLoadShare),
    factor: of.default("load-factor"),
    run: of(boardRun),
    span: of(boardSpan),
    riseStart: of(boardRiseStart),
    riseEnd: of(boardRiseEnd),
    width: of.written(b.board, "width", "the board's width"),
    thickness: of.written(b.board, "thickness", "the board's thickness"),
    asRead: of.default("thickness-read"),
    toleranceGiven: isQuantity(thickness) && thickness.toleranceGiven,
    ...more(b.board),
  };
}

/**
 * The thickness of a board is read on its edge, far closer than a height in a room: without a tolerance of its own it takes
 * that of such a reading.
 */
export const readThickness = (i: {
  thickness: Interval;
  asRead: Interval;
  toleranceGiven: boolean;
}): Interval =>
  i.toleranceGiven
    ? i.thickness
    : {
        low: i.thickness.nominal - i.asRead.high,
        nominal: i.thickness.nominal,
        high: i.thickness.nominal + i.asRead.high,
      };

/** A board that lies level on the way bears on both edges, and only its free span bends; else it bends over its run. */
function bends(i: BeamHanded): Interval {
  const rises = [i.riseStart, i.riseEnd];
  const level = Math.min(...rises.map((r) => r.low)) <= 0 && Math.max(...rises.map((r) => r.high)) >= 0;
  const low = Math.max(0, level ? Math.min(i.span.low, i.run.low) : i.run.low);
  return { low, nominal: Math.max(low, i.run.nominal), high: Math.max(low, i.run.high) };
}
const load = (i: BeamHanded): Interval => multiply(onTheBoard(i.weight, i.share), i.factor);
const noBeam: Outcome = {
  missing: [{ what: "a width and a thickness of the board above zero", key: "thickness" }],
};

const stress = (i: BeamHanded): Interval | undefined => {
  const pascals = bendingStress(load(i), bends(i), i.width, readThickness(i));
  return pascals && scale(pascals, 1 / megapascal);
};

export const boardBendingStress = derived({
  name: "board.bending-stress",
  dimension: "number",
  says: "greatest bending stress in the board with the client at the worst place, in newtons per square millimetre",
  formula: "(3 / 2) x weight on the board x factor for moving x run / (width x thickness^2)",
  source: "a beam on two supports with a load in its middle: P L / 4 over b h^2 / 6",
  inputs: (s, of) => beamInputs(s, of, () => ({})),
  compute: (i: BeamHanded): Outcome => {
    const value = stress(i);
    return value ? { value } : noBeam;
  },
});

export const boardBendingShare = derived({
  name: "board.bending-share",
  dimension: "ratio",
  says: "the greatest bending stress as a part of the stress at which such a material breaks",
  formula: "board.bending-stress / strength of the material",
  source: "a beam on two supports with a load in its middle; strength from the rule set",
  inputs: (s, of) => beamInputs(s, of, (board) => ({ strength: ofMaterial(board, "strength", of) })),
  compute: (i: BeamHanded & { strength: Interval }): Outcome => {
    const value = stress(i);
    if (!value) return noBeam;
    if (i.strength.low <= 0) return { missing: [{ what: "a strength above zero" }] };
    return { value: divide(value, i.strength) };
  },
});

export const boardDeflection = derived({
  name: "board.deflection",
  dimension: "length",
  says: "how far the board sags in its middle with the client at the worst place",
  formula: "weight on the board x factor for moving x run^3 / (4 x stiffness x width x thickness^3)",
  source: "a beam on two supports with a load in its middle: P L^3 / (48 E I), I = b h^3 / 12",
  inputs: (s, of) => beamInputs(s, of, (board) => ({ stiffness: ofMaterial(board, "stiffness", of) })),
  compute: (i: BeamHanded & { stiffness: Interval }): Outcome => {
    const value = deflection(
      load(i),
      bends(i),
      i.width,
      readThickness(i),
      multiply(i.stiffness, exactly(1e9)),
    );
    return value ? { value } : noBeam;
  },
});
