/** Short ways to write the shapes of the vocabulary. */
import type { Dimension } from "../quantity/types.js";
import type { KeySpec, Part, Shape } from "./types.js";

type More = Partial<Omit<KeySpec, "shape" | "help">>;
const key =
  (shape: Shape) =>
  (help: string, more: More = {}): KeySpec => ({ shape, help, ...more });

const inch = 0.0254;
/** A length with what is plausible for it, in inches. */
export const length = (low: number, high: number): ReturnType<typeof key> => key(lengthShape(low, high));
export const lengthShape = (low: number, high: number): Shape => ({
  is: "quantity",
  dimension: "length",
  plausible: [low * inch, high * inch],
  units: ["in", "cm", "mm"],
});
/** A mass with what is plausible for it, in pounds. */
export const mass = (low: number, high: number): ReturnType<typeof key> =>
  key({
    is: "quantity",
    dimension: "mass",
    plausible: [low * 0.45359237, high * 0.45359237],
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

export const part = (name: string, shape: Shape, more: { lead?: string; optional?: boolean } = {}): Part => ({
  name,
  shape,
  ...more,
});
export const textShape: Shape = { is: "text" };
export const dateShape: Shape = { is: "date" };

/** The help that a transfer needs, from none to all. */
export const assistanceLevels = [
  "independent",
  "setup",
  "supervision",
  "moderate",
  "maximal",
  "dependent",
] as const;
