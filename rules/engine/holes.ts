/** Holes in the texts of rules: `{value}`, `{limit}`, `{board.span}`. */

const hole = /\{([a-z][a-z0-9./-]*)\}/g;

/** Holes that are filled with what something is called. */
export const nameHoles: ReadonlySet<string> = new Set([
  "from",
  "to",
  "board",
  "chair",
  "surface",
  "client",
  "helper",
  "belt",
  "room",
  "transfer",
  "thing",
  "step",
  "near",
  "far",
]);

/** Names that every message may use, beside facts and limits. */
export const knownHoles: ReadonlySet<string> = new Set([
  ...nameHoles,
  "value",
  "limit",
  "short",
  "range",
  "missing",
]);

export const holesIn = (text: string): readonly string[] =>
  text.includes("{") ? [...text.matchAll(hole)].map((m) => m[1]!) : [];

/** Fills holes; one for which `fill` has nothing reads "not known". The text before the hole comes along. */
export const fillHoles = (text: string, fill: (name: string, before: string) => string | undefined): string =>
  text.replace(hole, (_, name: string, offset: number) => fill(name, text.slice(0, offset)) ?? "not known");
