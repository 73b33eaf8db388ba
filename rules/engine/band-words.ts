/** Bands in words. */
import { valueInWords } from "./phrase.js";
import type { BandEnd } from "./types.js";

export const shownEnd = (e: BandEnd, signed: boolean): string =>
  valueInWords(e.value, e.dimension, e.unit, signed);

export function rangeInWords(h: { readonly low: BandEnd; readonly high: BandEnd }, signed: boolean): string {
  if (h.low.value === -Infinity && h.high.value === Infinity) return "any value";
  if (h.low.value === -Infinity) return `at most ${shownEnd(h.high, signed)}`;
  if (h.high.value === Infinity) return `at least ${shownEnd(h.low, signed)}`;
  return `${shownEnd(h.low, signed)} to ${shownEnd(h.high, signed)}`;
}
