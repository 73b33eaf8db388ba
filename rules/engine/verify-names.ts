/** Names of limits, defaults and sources: nothing that looks like another name, nothing that stands in for something else. */
import { nearest } from "../../language/text/nearest.js";
import { grades } from "../types.js";
import { problemAt } from "./read.js";
import type { RulePlace, RuleSet, SetProblem } from "./types.js";

type Report = (p: SetProblem) => void;

/** Words of expressions, bands and examples: a value of that name could not be told from them. */
const small =
  "or and not is of more less at least most than one smaller larger up down else to known given unknown without assumed yes no";
const reserved: ReadonlySet<string> = new Set([...small.split(" "), ...grades]);

/**
 * Only small letters of the English alphabet, digits and hyphens: other letters look alike and are not the same. A dot would make
 * it the name of a fact, and the value would be read in the fact's place.
 */
const plainName = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/;

export function verifyNames(set: RuleSet, report: Report): void {
  const check = (what: string, name: string, at: RulePlace): void => {
    if (reserved.has(name))
      report(
        problemAt(
          at,
          "rules/name-expected",
          `A ${what} cannot be called "${name}": that word has a meaning of its own in a rule.`,
        ),
      );
    else if (!plainName.test(name))
      report(
        problemAt(
          at,
          "rules/name-expected",
          `A ${what} is named in the small letters a to z, digits and hyphens, not "${name}": letters of other alphabets look alike, and a name with a dot is that of a fact.`,
        ),
      );
  };
  for (const s of set.sources.values()) check("source", s.name, s.at);
  for (const l of set.limits.values()) check("limit", l.name, l.at);
  for (const d of set.defaults.values()) {
    check("default", d.name, d.at);
    const limit = set.limits.get(d.name);
    if (limit)
      report(
        problemAt(
          d.at,
          "rules/given-twice",
          `The name ${d.name} is that of a limit also, in ${limit.at.path} on line ${limit.at.line + limit.at.place.line + 1}: a value has one place.`,
        ),
      );
  }
}

/** How often a set is told what was probably meant. Whoever got hundreds of names wrong needs no list of likely ones. */
export const mostSuggestions = 100;

/** `nearest`, but only so many times: it compares with every name, and a rule file is somebody else's data. */
export function suggestions(): (name: string, among: () => Iterable<string>) => string | undefined {
  let left = mostSuggestions;
  return (name, among) => (left-- > 0 ? nearest(name, among()) : undefined);
}

/** A common practice is known from practice alone; one that names a source or an address is a citation without its place. */
export function verifyCommonPractice(set: RuleSet, report: Report): void {
  const sources = [...set.sources.values()];
  for (const holder of [...set.limits.values(), ...set.defaults.values(), ...set.rules])
    for (const note of holder.bases) {
      if (note.basis !== "common-practice") continue;
      const words = new Set(note.text.toLowerCase().split(/[^a-z0-9-]+/));
      const source = sources.find(
        // A source may be called by an ordinary word; one of several parts is a name, and so is a whole title.
        (s) =>
          (s.name.includes("-") && words.has(s.name)) ||
          (s.title.includes(" ") && note.text.includes(s.title)),
      );
      if (source === undefined && !/https?:\/\/|\bdoi\b/i.test(note.text)) continue;
      report(
        problemAt(
          holder.at,
          "rules/citation",
          `A common practice has no source, yet this text names ${source?.name ?? "an address"}. Cite it by published, with its place, or leave it out.`,
        ),
      );
    }
}
