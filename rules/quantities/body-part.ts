/** A length of the client's body: as measured, else the rule set's part of stature. */
import { multiply, type Interval } from "../../language/quantity/interval.js";
import { keySpec } from "../../language/vocabulary/index.js";
import type { Of } from "../quantity.js";
import type { Scene } from "../scene.js";
import { absent, isWritten } from "./inputs.js";

interface BodyLength {
  /** The client's key under which it stands when it was measured. */
  readonly key: string;
  readonly words: string;
}

export const headToHip: BodyLength = {
  key: "head-to-hip",
  words: "the client from the top of the head to the hip",
};
export const poplitealHeight: BodyLength = {
  key: "popliteal-height",
  words: "the client's popliteal height",
};
export const buttockKneeLength: BodyLength = {
  key: "buttock-knee-length",
  words: "the client from the back of the buttocks to the front of the knee",
};

/** What `bodyPart` gives, as it is handed on. */
export type BodyPart = { length: Interval } | { length?: undefined; fraction: Interval; stature: Interval };

/** The inputs from which `lengthOf` has the length, in metres. Without a measurement or a stature it is not known. */
export function bodyPart(s: Scene, of: Of, what: BodyLength): Record<string, unknown> {
  if (isWritten(s.client, what.key)) return { length: of.written(s.client, what.key, what.words) };
  return {
    // The vocabulary names the default that stands in, a part of stature.
    fraction: of.default(keySpec("client", what.key)!.default!),
    stature: s.client
      ? of.written(s.client, "stature", "the client's stature")
      : absent(undefined, "the client's stature", "stature"),
  };
}

export const lengthOf = (part: BodyPart): Interval => part.length ?? multiply(part.stature, part.fraction);
