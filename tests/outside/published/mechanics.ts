/** Bodies, friction, materials and tipping. */
import type { Printed } from "./figures.js";

export const mechanics: readonly Printed[] = [
  { source: "winter-fractions", at: "Figure 4.1", figures: ["hip .530", "knee .285"] },
  { source: "winter-fractions", at: "Table 4.1", figures: ["total leg .161", "shank .0465, foot .0145"] },
  {
    source: "de-leva-1996",
    at: "Table 4",
    figures: [
      "thigh, shank, foot, men: .1416 + .0433 + .0137 = .1986, rounded .199",
      "women: .1478 + .0481 + .0129 = .2088, rounded .209",
    ],
  },
  {
    source: "plagenhoef-1983",
    at: "segment masses",
    figures: ["percent, men / women: shank 4.75/5.35, foot 1.43/1.33"],
  },
  {
    source: "seat-friction-2024",
    at: "abstract",
    figures: ["vinyl wheelchair seat cover .503-.572", "woven office seat .336-.448"],
  },
  { source: "skin-friction-2022", at: "abstract", figures: ["static .31-.90", "dynamic .25-.79"] },
  {
    source: "wood-handbook",
    at: "chapter 5, Table 5-3, as others quote it",
    figures: [
      "12 % moisture, N/mm2: beech 102.8, sugar maple 109.0, bur oak 71.0",
      "thousand N/mm2: beech 11.86, sugar maple 12.6, bur oak 7.1",
    ],
    follows: [103, 11.9, 2], // rounded; N/mm2
  },
  {
    source: "plywood-layups",
    at: "Table 3",
    figures: ["five layups: 37.6-65.7 N/mm2", "6860-8979 N/mm2"],
    follows: [6.86, 8.98, 2], // thousands, rounded; N/mm2
  },
  { source: "stability-1995", at: "abstract", figures: ["towards the tip: -25.2 to -52.3 %"] },
  { source: "footrests-stability", at: "abstract", figures: [] },
];
