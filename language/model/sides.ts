/**
 * Left and right are always the client's own: sitting in the chair, or lying on the back in the bed. A chair beside the left
 * side of the bed that faces the head end has the bed on its left; turned round, on its right.
 */
import { says } from "../text/messages.js";
import { placeOfNode } from "../text/tree.js";
import type { Place } from "../text/types.js";
import type { Thing, Value } from "./types.js";

export type Side = "left" | "right";

/** Side of the chair on which the bed lies; undefined where bed side or facing is not said. */
export function chairSide(bedSide: Value | undefined, facing: Value | undefined): Side | undefined {
  if ((bedSide !== "left" && bedSide !== "right") || (facing !== "head" && facing !== "foot"))
    return undefined;
  return facing === "head" ? bedSide : bedSide === "left" ? "right" : "left";
}

export interface Contradiction {
  readonly place: Place;
  /** The other line: where the side of the bed follows from. */
  readonly other: Place;
  readonly said: string;
  readonly instead: string;
}

/**
 * Steps that take away the armrest or leg rest on the far side only, so that side, facing and steps cannot all be right.
 * `base` is the transfer that a way back turns round.
 */
export function contradictions(transfer: Thing, base: Thing | undefined): Contradiction[] {
  const of = (key: string): { thing: Thing; value: Value | undefined } =>
    transfer.values[key] === undefined && base
      ? { thing: base, value: base.values[key] }
      : { thing: transfer, value: transfer.values[key] };
  const facing = of("facing");
  const near = chairSide(of("bed-side").value, facing.value);
  const steps = transfer.inner["steps"]?.[0];
  if (!near || !steps?.steps) return [];
  const found: Contradiction[] = [];
  for (const part of ["armrest", "legrest"]) {
    const moved = steps.steps.filter(
      (s) => s.step.side !== undefined && s.step.verb.endsWith(part) && !/^(refit|restore)/.test(s.step.verb),
    );
    if (moved.length === 0 || moved.some((s) => s.step.side === near)) continue;
    const { node, step } = moved[0]!;
    found.push({
      place: placeOfNode(steps.entry, node),
      other: facing.thing.placeOf("facing"),
      said: `${step.verb} ${step.side}`,
      instead: near,
    });
  }
  return found;
}

export const contradictionMessage = (c: Contradiction, line: number): string =>
  says["form/side-contradicts"]({
    said: `"${c.said}"`,
    other: `the bed being on the chair's ${c.instead} (bed-side and facing)`,
    line,
  });
