/** Bodies, friction, materials and tipping. */
import type { Printed, PrintedLimit } from "./figures.js";

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
  {
    source: "wet-skin-friction",
    at: "abstract",
    figures: ["volar forearm: normal (dry) about 0.3-0.5, over-hydrated 0.9-1.3"],
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
    source: "wood-handbook",
    at: "Table 5-3a, pines and redwood",
    figures: [
      "12%, modulus of rupture in kPa: sugar pine 57000, ponderosa pine 65000, young-growth redwood 54000",
      "modulus of elasticity in MPa: 8200, 8900, 7600",
    ],
    follows: [57, 65, 54, 2], // kPa / 1000; N/mm2
  },
  {
    source: "plywood-layups",
    at: "Table 3",
    figures: [
      "modulus of rupture, MPa: 44.27, 47.19, 41.53, 37.60, 65.74",
      "modulus of elasticity, MPa: 7134.69, 7331.89, 7020.43, 6860.96, 8979.43",
    ],
    follows: [65.7, 6.86, 8.98, 2], // rounded; thousands, rounded; N/mm2
  },
  // Worked out from the measurements of 4082 men and 1986 women, in mm: what 1, 5, 50, 95 and 99 of 100 do not pass.
  {
    source: "army-survey-2012",
    at: "measurements, hip breadth sitting",
    figures: ["men 333, 378, 431 mm", "women 348, 397, 456 mm"],
    follows: [5, 50, 95, 100], // shares of a hundred
  },
  {
    source: "army-survey-2012",
    at: "measurements, trochanterion height over stature",
    figures: ["men .481, .489, .512, .540, .552", "women .486, .496, .519, .543, .554"],
    follows: [1, 5, 50, 95, 99, 100], // shares of a hundred
  },
  {
    source: "army-survey-2012",
    at: "measurements, popliteal height over stature",
    figures: ["men .226, .232, .245, .258, .264", "women .216, .223, .239, .253, .258"],
    follows: [1, 5, 50, 95, 99, 100], // shares of a hundred
  },
  {
    source: "army-survey-2012",
    at: "measurements, buttock-knee length over stature",
    figures: ["men .330, .336, .351, .370, .380", "women .334, .343, .361, .386, .397"],
    follows: [1, 5, 50, 95, 99, 100], // shares of a hundred
  },
  // The least and the most of all of them.
  {
    source: "army-survey-2012",
    at: "measurements, least and most trochanterion height over stature",
    figures: ["men .455, .570", "women .456, .569"],
  },
  {
    source: "army-survey-2012",
    at: "measurements, least and most popliteal height over stature",
    figures: ["men .213, .273", "women .197, .272"],
  },
  {
    source: "army-survey-2012",
    at: "measurements, most popliteal height and an inch of sole over stature",
    figures: ["25.4 mm added: men .288, women .287"],
  },
  {
    source: "army-survey-2012",
    at: "measurements, least and most buttock-knee length over stature",
    figures: ["men .315, .397", "women .324, .420"],
  },
  // The kneecap was measured standing, the hollow of the knee sitting, both barefoot.
  {
    source: "army-survey-2012",
    at: "measurements, height of the middle of the kneecap less popliteal height",
    figures: ["men 40, 58, 80 mm", "women 43, 60, 82 mm"],
    follows: [5, 50, 95, 100], // shares of a hundred
  },
  { source: "stability-1995", at: "abstract", figures: ["towards the tip: -25.2 to -52.3 %"] },
  { source: "footrests-stability", at: "abstract", figures: [] },
];

const survey = "army-survey-2012";
const hips = "measurements, least and most trochanterion height over stature";
const hollow = "measurements, least and most popliteal height over stature";
const inShoes = "measurements, most popliteal height and an inch of sole over stature";
const thighs = "measurements, least and most buttock-knee length over stature";

export const mechanicsLimits: readonly PrintedLimit[] = [
  {
    name: "head-to-hip-least",
    printed: 100 * (1 - 0.57),
    unit: "%",
    source: survey,
    at: hips,
    rounding: 0.1,
  },
  {
    name: "head-to-hip-most",
    printed: 100 * (1 - 0.455),
    unit: "%",
    source: survey,
    at: hips,
    rounding: 0.1,
  },
  { name: "popliteal-least", printed: 19.7, unit: "%", source: survey, at: hollow, rounding: 0.25 },
  { name: "popliteal-most", printed: 28.8, unit: "%", source: survey, at: inShoes, rounding: 0.25 },
  { name: "buttock-knee-least", printed: 31.5, unit: "%", source: survey, at: thighs, rounding: 0.5 },
  { name: "buttock-knee-most", printed: 42, unit: "%", source: survey, at: thighs, rounding: 0.5 },
];
