/** The vocabulary itself as plain JSON, for programs that offer or check single words. */
import { units } from "../../quantity/units.js";
import { setupVocabulary, smallWords } from "../index.js";
import { stepPhrases } from "../step-phrases.js";

/**
 * Statements, kinds, steps, units and small words, in the order of the table. `plausible` is in SI; `siFactor` is how many SI
 * units one of a unit is (m, kg, rad, N, 1; a day for times).
 */
export const vocabularyTable = (): object => ({
  format: 1,
  statements: setupVocabulary.keys,
  kinds: setupVocabulary.blocks,
  steps: stepPhrases,
  units: units.map((u) => ({
    symbol: u.symbol,
    dimension: u.dimension,
    siFactor: Number((u.times ?? u.factor.valueOf()).toPrecision(15)),
    spellings: u.spellings,
    ...(u.then && { then: u.then }),
  })),
  smallWords: [...smallWords],
});
