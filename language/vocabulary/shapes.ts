/** Short ways to write the shapes of the vocabulary. */
import type { Dimension } from "../quantity/types.js";
import type { KeySpec, Part, Shape } from "./types.js";

type More = Partial<Omit<KeySpec, "shape" | "help">>;
const key =
  (shape: Shape) =>
  (help: string, more: More = {}): KeySpec => ({ shape, help, ...more });

const inch = 0.0254;
const pound = 0.45359237;
/** A length with what is plausible for it, in inches. */
export const length = (low: number, high: number): ReturnType<typeof key> => key(lengthShape(low, high));
export const lengthShape = (low: number, high: number): Shape => ({
  is: "quantity",
  dimension: "length",
  plausible: [low * inch, high * inch],
  units: ["in", "cm", "mm"],
});
/** The same, always as a range of choice: what adjusts, or what something fits. */
export const lengthRange = (low: number, high: number): Shape => ({
  is: "quantity",
  dimension: "length",
  range: true,
  plausible: [low * inch, high * inch],
  units: ["in", "cm", "mm"],
});
export const rangeOfLengths = (low: number, high: number): ReturnType<typeof key> =>
  key(lengthRange(low, high));
/** A slope in percent, however steep a ramp of planks may be; an angle is read as its tangent. */
export const slope = (low: number, high: number): ReturnType<typeof key> =>
  key({
    is: "quantity",
    dimension: "ratio",
    slope: true,
    plausible: [low / 100, high / 100],
    units: ["%", "deg"],
  });
/** A mass with what is plausible for it, in pounds. */
export const mass = (low: number, high: number): ReturnType<typeof key> => key(massShape(low, high));
export const massShape = (low: number, high: number): Shape => ({
  is: "quantity",
  dimension: "mass",
  plausible: [low * pound, high * pound],
  units: ["lb", "kg"],
});
export const massRange = (low: number, high: number): Shape => ({
  is: "quantity",
  dimension: "mass",
  range: true,
  plausible: [low * pound, high * pound],
  units: ["lb", "kg"],
});
/** An angle in degrees. */
export const angleShape = (low: number, high: number): Shape => ({
  is: "quantity",
  dimension: "angle",
  plausible: [(low * Math.PI) / 180, (high * Math.PI) / 180],
  units: ["deg"],
});
export const angle = (low: number, high: number): ReturnType<typeof key> => key(angleShape(low, high));
/** A force in pounds-force. */
export const force = (low: number, high: number): ReturnType<typeof key> =>
  key({
    is: "quantity",
    dimension: "force",
    plausible: [low * 4.4482216152605, high * 4.4482216152605],
    units: ["lbf", "N"],
  });

export const choiceShape = (...choices: string[]): Shape => ({ is: "choice", choices });
export const choice = (...choices: string[]): ReturnType<typeof key> => key(choiceShape(...choices));
export const flag = key({ is: "flag" });
export const text = key({ is: "text" });
export const code = key({ is: "code" });
export const mention = key({ is: "mention" });
export const nameShape = (...of: string[]): Shape => ({ is: "name", of });
export const name = (...of: string[]): ReturnType<typeof key> => key(nameShape(...of));
export const list = (item: Shape): ReturnType<typeof key> => key({ is: "list", item });
export const either = (...shapes: Shape[]): ReturnType<typeof key> => key({ is: "either", shapes });
export const size = (dimension: Dimension = "length"): ReturnType<typeof key> =>
  key({ is: "pair", dimension, joined: "by", units: ["in", "cm"], second: "required" });
export const placeAt = key({
  is: "pair",
  dimension: "length",
  joined: ",",
  units: ["in", "cm"],
  second: "optional",
});
export const parts = (...of: Part[]): ReturnType<typeof key> => key({ is: "parts", parts: of });

/** Something of which there may be several, or `none` where somebody looked and there was nothing. */
export const partsOrNone = (...of: Part[]): ReturnType<typeof key> =>
  either(choiceShape("none"), { is: "parts", parts: of });

export const part = (name: string, shape: Shape, more: { lead?: string; optional?: boolean } = {}): Part => ({
  name,
  shape,
  ...more,
});
export const textShape: Shape = { is: "text" };
export const codeShape: Shape = { is: "code" };
export const wholeShape: Shape = { is: "code", whole: true };
export const timeShape: Shape = { is: "time" };
export const dateShape: Shape = { is: "date" };
export const date = key(dateShape);
/** A list of names of things. */
export const names = (...of: string[]): ReturnType<typeof key> => list(nameShape(...of));
/** Said of the left or the right, the client's own; once for each side. */
export const sidePart: Part = part("side", choiceShape("left", "right"));

/** Any number of notes. */
export const note: KeySpec = text("a note", { many: true });
/** The greatest load that a thing's maker allows. */
export const ratedLoad = (low = 50): KeySpec =>
  mass(low, 1500)("the greatest load that its maker allows", {
    need: "wanted",
    measure: "on the label or in the data sheet",
    safer: "low",
  });

/** The help that a transfer needs, from none to all. */
export const assistanceLevels = [
  "independent",
  "setup",
  "supervision",
  "moderate",
  "maximal",
  "dependent",
] as const;
