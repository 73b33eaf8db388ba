/**
 * Left and right are always the client's own: sitting in the chair, sitting on the other surface, or lying on the back in the bed.
 * A chair beside the left side of the bed that faces the head end has the bed on its left; turned round, on its right. A chair
 * beside the left side of a seat that faces the same way as the sitter has the seat on its right; the other way, on its left.
 */
import { says } from "../text/messages.js";
import { placeOfNode } from "../text/tree.js";
import type { Place } from "../text/types.js";
import type { Thing, Value } from "./types.js";

export type Side = "left" | "right";
const otherSide = (side: Side): Side => (side === "left" ? "right" : "left");
const sideIn = (v: Value | undefined): Side | undefined => (v === "left" || v === "right" ? v : undefined);

/**
 * Side of the chair on which the other surface lies: as said by `chair-side`, else as it follows from the side at which the
 * chair stands and the way it faces. Undefined where neither is so: nobody said how the chair stands, or it stands square to the
 * surface and either side is possible.
 */
export const chairSide = (
  side: Value | undefined,
  facing: Value | undefined,
  said?: Value,
): Side | undefined => sideIn(said) ?? followingSide(side, facing);

/** The same, where `value` reads a key of the transfer. `side` and `bed-side` say the same thing of a bed. */
export const chairSideOf = (value: (key: string) => Value | undefined): Side | undefined =>
  chairSide(surfaceSideOf(value), value("facing"), value("chair-side"));

/** Side of the other surface at which the chair stands: the client's own, sitting or lying on it. */
export const surfaceSideOf = (value: (key: string) => Value | undefined): Side | undefined =>
  sideIn(value("bed-side")) ?? sideIn(value("side"));

function followingSide(side: Value | undefined, facing: Value | undefined): Side | undefined {
  const at = sideIn(side);
  if (at === undefined) return undefined;
  if (facing === "head" || facing === "opposite") return at;
  return facing === "foot" || facing === "same" ? otherSide(at) : undefined;
}

export interface Contradiction {
  readonly place: Place;
  /** The other line. */
  readonly other: Place;
  /** What stands there, and what would agree with the other line. */
  readonly said: string;
  readonly instead: string;
  /** What the other line says, in words. */
  readonly against: string;
}

/**
 * Lines on side, facing and steps that cannot all be right. `base` is the transfer that a way back turns round; `surface` how
 * messages call the other surface.
 */
export function contradictions(
  transfer: Thing,
  base: Thing | undefined,
  surface: string,
): readonly Contradiction[] {
  const holder = (key: string): Thing => (transfer.values[key] === undefined && base ? base : transfer);
  const value = (key: string): Value | undefined => holder(key).values[key];
  const found: Contradiction[] = [];
  const disagree = (key: string, said: Side, instead: Side, by: string, against: string): void => {
    found.push({
      place: holder(key).placeOf(key),
      other: holder(by).placeOf(by),
      said: `${key} ${said}`,
      instead: `${key} ${instead}`,
      against,
    });
  };
  const [side, bedSide] = [sideIn(value("side")), sideIn(value("bed-side"))];
  if (side && bedSide && side !== bedSide) disagree("side", side, bedSide, "bed-side", `bed-side ${bedSide}`);
  const follows = followingSide(surfaceSideOf(value), value("facing"));
  const saidSide = sideIn(value("chair-side"));
  if (saidSide && follows && saidSide !== follows)
    disagree(
      "chair-side",
      saidSide,
      follows,
      "facing",
      `the ${surface} being on the chair's ${follows} (side and facing)`,
    );
  const near = chairSideOf(value);
  if (near) {
    const by = saidSide ? "chair-side" : "facing";
    const keys = saidSide ? "chair-side" : `${bedSide ? "bed-side" : "side"} and facing`;
    const other = holder(by).placeOf(by);
    const against = `the ${surface} being on the chair's ${near} (${keys})`;
    found.push(...farSteps(transfer, near).map((f) => ({ ...f, other, against })));
  }
  return found;
}

/** Steps that take away the armrest or leg rest on the far side only. */
function farSteps(transfer: Thing, near: Side): Pick<Contradiction, "place" | "said" | "instead">[] {
  const steps = transfer.inner["steps"]?.[0];
  const found: Pick<Contradiction, "place" | "said" | "instead">[] = [];
  for (const part of ["armrest", "legrest"]) {
    const moved = (steps?.steps ?? []).filter(
      (s) => s.step.side !== undefined && s.step.verb.endsWith(part) && !/^(refit|restore)/.test(s.step.verb),
    );
    if (!steps || moved.length === 0 || moved.some((s) => s.step.side === near)) continue;
    const { node, step } = moved[0]!;
    found.push({
      place: placeOfNode(steps.entry, node),
      said: `${step.verb} ${step.side}`,
      instead: `${step.verb} ${near}`,
    });
  }
  return found;
}

export const contradictionMessage = (c: Contradiction, line: number): string =>
  says["form/side-contradicts"]({ said: `"${c.said}"`, other: c.against, line });

const ofBeds = ["head", "foot"];
const ofSeats = ["same", "opposite", "square"];

export interface Unfit {
  readonly rule: "form/facing-unfit" | "form/side-unfit";
  readonly key: string;
  readonly message: string;
  /** Statements that fit. */
  readonly instead: readonly string[];
}

/** Words of a transfer that do not fit the kind of its other surface: a bed has a head and a foot, a seat has not. */
export function unfit(transfer: Thing, surface: Thing): readonly Unfit[] {
  const found: Unfit[] = [];
  const called = `the ${surface.kind.replaceAll("-", " ")} ${surface.name}`;
  const isBed = surface.kind === "bed";
  const facing = transfer.values["facing"];
  const fits = isBed ? ofBeds : ofSeats;
  if (typeof facing === "string" && !fits.includes(facing)) {
    const words = `${fits.slice(0, -1).join(", ")} or ${fits[fits.length - 1]}`;
    const message = says["form/facing-unfit"]({ facing, surface: called, fits: words });
    const instead = fits.map((f) => `facing ${f}`);
    found.push({ rule: "form/facing-unfit", key: "facing", message, instead });
  }
  const [key, right] = isBed ? ["side", "bed-side"] : ["bed-side", "side"];
  const side = sideIn(transfer.values[key]);
  if (side && transfer.values[right] === undefined) {
    const message = says["form/side-unfit"]({ key, surface: called, fits: right });
    found.push({ rule: "form/side-unfit", key, message, instead: [`${right} ${side}`] });
  }
  return found;
}
