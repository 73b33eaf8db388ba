/** Studies of transfers: gaps, heights, angles and loads. */
import type { Printed, PrintedLimit } from "./figures.js";

export const studies: readonly Printed[] = [
  {
    source: "transfer-setup-1",
    at: "Conclusions",
    figures: ["2 in", "2.54 cm"],
    follows: [2 * 2.54], // the right conversion of 2 in
  },
  {
    source: "transfer-setup-1",
    at: "Table 6, adjustable gap protocol",
    figures: [
      "n 114",
      "3.5 in: 108, 95 %",
      "7 in: 92, 81 %, CI 72-87 %",
      "10.5 in: 49 %",
      "14 in: 21 %",
      "17.5 in: 12 %",
    ],
    follows: [100], // shares of a hundred
  },
  { source: "transfer-setup-1", at: "lateral grab bar use, text under Table 11", figures: [] },
  {
    source: "transfer-setup-2",
    at: "Transfer heights",
    figures: ["within 1 in: 94 to 95 %"],
    follows: [100], // shares of a hundred
  },
  {
    source: "transfer-setup-2",
    at: "Table 9",
    figures: [
      "no bars, highest: 5th 22.8, 25th 26.0, 50th 28.0 in; n 71",
      "lowest: 5th 22.2, 25th 19.5 in; n 71",
      "mean seat (Table 3): 22.1 in",
      "share at or above the 5th: 95 %",
    ],
    follows: [5, 100], // shares of a hundred
  },
  {
    source: "toro-2013",
    at: "abstract",
    figures: ["47 of 113, 42 %", "side guard 6 in"],
    follows: [100], // shares of a hundred
  },
  { source: "tsai-2014", at: "Table 2", figures: ["20 to 45 degrees", "within 3 in", "front two thirds"] },
  { source: "gagnon-2008", at: "abstract", figures: ["0.5 m to 0.6 m: 10 cm"] },
  { source: "wei-2015", at: "results", figures: [] },
  { source: "barbareschi-2018", at: "abstract", figures: [] },
];

export const studyLimits: readonly PrintedLimit[] = [
  { name: "close-gap", printed: 3, unit: "in", source: "tsai-2014", at: "Table 2", rounding: 0 },
  {
    name: "wide-gap",
    printed: 7,
    unit: "in",
    source: "transfer-setup-1",
    at: "Table 6, adjustable gap protocol",
    rounding: 0,
  },
  { name: "turned-least", printed: 20, unit: "deg", source: "tsai-2014", at: "Table 2", rounding: 0 },
  { name: "turned-most", printed: 45, unit: "deg", source: "tsai-2014", at: "Table 2", rounding: 0 },
];
