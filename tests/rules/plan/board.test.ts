import { describe, expect, test } from "vitest";
import { exactly, type Interval } from "../../../language/quantity/interval.js";
import { bearings, canLie, wheelClearance, type Bearings, type Laying } from "../../../rules/plan/board.js";
import { place, type Choosing } from "../../../rules/plan/placing.js";
import type { Gap } from "../../../rules/plan/parking.js";
import { around, degree, degrees, draws, inch, inches, sound, tight, type Exact } from "./sampling.js";

/** A board over a gap that is known beside the seat's front corner, laid so far behind it. */
const inputs = (random: () => number, askew: number, tilt: number) => ({
  length: around(random, 24 * inch, 36 * inch, 0.5 * inch),
  width: around(random, 6 * inch, 10 * inch, 0.5 * inch),
  turned: around(random, 5 * degree, 35 * degree, 4 * degree),
  corner: around(random, 1 * inch, 5 * inch, inch),
  phi: around(random, -askew * degree, askew * degree, tilt * degree),
  inside: around(random, 5 * inch, 9 * inch, 0.5 * inch),
  half: around(random, 8 * inch, 11 * inch, 0.5 * inch),
  bone: around(random, 2 * inch, 2.5 * inch, 0.25 * inch),
  asked: around(random, 2 * inch, 3 * inch, 0.25 * inch),
  setbackSeat: around(random, 0.5 * inch, inch, 0.5 * inch),
  setbackLanding: around(random, 1 * inch, 2 * inch, inch),
});
type Ins = ReturnType<typeof inputs>;
const back = 5 * inch;

const gapOf = (corner: Interval): Gap => ({
  over: (p) => ({
    low: corner.low + back * Math.min(p.sinFrom, p.sinTo),
    high: corner.high + back * Math.max(p.sinFrom, p.sinTo),
  }),
  at: (t) => corner.nominal + back * Math.sin(t),
});

const laying = (i: Ins): Laying => ({
  ...i,
  gap: gapOf(i.corner),
  laid: { angle: i.phi, inside: i.inside, back },
});

/**
 * The same by turning corners as points: edge of the bed along the line n = 0, the seat's near side through a point as far from
 * it as the gap there.
 */
function truth(x: Exact<Ins>) {
  const t = x.turned;
  // Along the edge, and away from the bed.
  const seatDirection = { e: Math.cos(t), n: -Math.sin(t) };
  const crossing = { e: 0, n: x.corner + back * Math.sin(t) };
  const inward = { e: Math.sin(t), n: Math.cos(t) };
  const b = { e: Math.sin(x.phi), n: -Math.cos(x.phi) };
  const across = { e: Math.cos(x.phi), n: Math.sin(x.phi) };
  // Inner end: along the board back from the crossing until it is `inside` from the seat's side.
  const back1 = -x.inside / (b.e * inward.e + b.n * inward.n);
  const inner = { e: crossing.e - b.e * back1, n: crossing.n - b.n * back1 };
  const sides = [-1, 1].map((sign) => {
    const start = {
      e: inner.e + (sign * across.e * x.width) / 2,
      n: inner.n + (sign * across.n * x.width) / 2,
    };
    // Where this long side crosses the seat's side, and the bed's edge, as lengths from the inner end.
    const det = b.e * -seatDirection.n - b.n * -seatDirection.e;
    const dx = crossing.e - start.e;
    const dn = crossing.n - start.n;
    const seat = (dx * -seatDirection.n - dn * -seatDirection.e) / det;
    const bed = -start.n / b.n;
    return { seat, span: bed - seat, landing: x.length - bed };
  });
  const middle = {
    seat: (sides[0]!.seat + sides[1]!.seat) / 2,
    bed: x.length - (sides[0]!.landing + sides[1]!.landing) / 2,
  };
  return {
    seat: Math.min(...sides.map((s) => s.seat)),
    landing: Math.min(...sides.map((s) => s.landing)),
    span: Math.max(...sides.map((s) => s.span)),
    runSeatHigher: x.length - middle.seat,
    runLandingHigher: middle.bed,
  };
}

const quantities: readonly [keyof Bearings, (x: Exact<Ins>) => number][] = [
  ["seat", (x) => truth(x).seat],
  ["seatSquare", (x) => truth(x).seat * Math.cos(x.phi + x.turned)],
  ["landing", (x) => truth(x).landing],
  ["landingSquare", (x) => truth(x).landing * Math.cos(x.phi)],
  ["span", (x) => truth(x).span],
  ["runSeatHigher", (x) => truth(x).runSeatHigher],
  ["runLandingHigher", (x) => truth(x).runLandingHigher],
];

describe("every true bearing and span lies in the computed interval", () => {
  test.each(quantities)("%s", (name, true_) => {
    const random = draws(21);
    for (let n = 0; n < 60; n++) {
      const i = inputs(random, 20, 4);
      sound(bearings(laying(i))[name], i, true_, random, 100);
    }
  });
});

describe("and the interval is at most a quarter wider than draws find", () => {
  // Three or four inputs matter to each; with these few varying, draws at their ends reach all corners.
  test.each(quantities)("%s", (name, true_) => {
    const random = draws(22);
    for (let n = 0; n < 25; n++) {
      const full = inputs(random, 15, 3);
      const varied = ["length", "width", "turned", "corner", "inside", n % 2 ? "phi" : "none"];
      const i = Object.fromEntries(
        Object.entries(full).map(([k, v]) => [k, varied.includes(k) ? v : exactly(v.nominal)]),
      ) as unknown as Ins;
      const computed = bearings(laying(i))[name];
      tight(computed, sound(computed, i, true_, random, 6000));
    }
  });
});

test("the nominal value is the true one for nominal inputs", () => {
  const random = draws(23);
  for (let n = 0; n < 200; n++) {
    const i = inputs(random, 20, 4);
    const x = Object.fromEntries(Object.entries(i).map(([k, v]) => [k, v.nominal])) as Exact<Ins>;
    const b = bearings(laying(i));
    for (const [name, true_] of quantities) expect(b[name].nominal).toBeCloseTo(true_(x), 9);
  }
});

test("drawn out as far as the seat end allows, a board of the shortest length that fits bears just as asked at the weaker end", () => {
  const random = draws(24);
  for (let n = 0; n < 200; n++) {
    const i = inputs(random, 20, 0);
    const x = Object.fromEntries(
      Object.entries(i).map(([k, v]) => [k, exactly(v.nominal)]),
    ) as unknown as Ins;
    const first = bearings(laying(x));
    const psi = x.phi.nominal + x.turned.nominal;
    const needs = x.asked.nominal + x.setbackSeat.nominal + (x.width.nominal / 2) * Math.sin(Math.abs(psi));
    const inside = Math.max(x.half.nominal - x.bone.nominal, needs);
    const short = bearings(
      laying({ ...x, length: exactly(first.shortest.nominal), inside: exactly(inside) }),
    );
    expect(short.landingSquare.nominal - x.setbackLanding.nominal).toBeCloseTo(x.asked.nominal, 9);
    expect(short.seatSquare.nominal - x.setbackSeat.nominal).toBeGreaterThanOrEqual(x.asked.nominal - 1e-9);
    // What could be had on the landing is what a board laid like that has.
    const drawn = bearings(laying({ ...x, inside: exactly(inside) }));
    expect(first.landingPossible.nominal).toBeCloseTo(drawn.landing.nominal, 9);
  }
});

test("a board square to both edges bears by plain subtraction", () => {
  const b = bearings({
    length: inches(30),
    width: inches(8),
    turned: degrees(0),
    gap: { over: () => ({ low: 4 * inch, high: 4 * inch }), at: () => 4 * inch },
    laid: { angle: exactly(0), inside: inches(9), back },
    half: inches(9),
    bone: inches(2),
    asked: inches(3),
    setbackSeat: inches(0),
    setbackLanding: inches(1),
  });
  const at = (i: Interval) => i.nominal / inch;
  expect(at(b.seat)).toBeCloseTo(9, 9);
  expect(at(b.landing)).toBeCloseTo(17, 9);
  expect(at(b.span)).toBeCloseTo(4, 9);
  expect(at(b.runSeatHigher)).toBeCloseTo(21, 9);
  expect(at(b.runLandingHigher)).toBeCloseTo(13, 9);
  expect(at(b.landingPossible)).toBeCloseTo(19, 9);
  expect(at(b.shortest)).toBeCloseTo(7 + 4 + 4, 9);
});

test("the distance to the wheel holds every true one, and is below zero where the board lies on it", () => {
  const random = draws(25);
  for (let n = 0; n < 60; n++) {
    const i = {
      turned: around(random, -20 * degree, 40 * degree, 4 * degree),
      phi: around(random, -20 * degree, 20 * degree, 3 * degree),
      width: around(random, 6 * inch, 10 * inch, 0.5 * inch),
      window: around(random, 5 * inch, 12 * inch, 0.5 * inch),
      outward: around(random, 3 * inch, 5 * inch, 0.5 * inch),
    };
    const computed = wheelClearance(
      { angle: i.phi, inside: inches(8), back },
      i.turned,
      i.width,
      i.window,
      i.outward,
    );
    const found = sound(
      computed,
      i,
      (x) => {
        // Nearest point of the wheel's front face to the board's rear long side, both in the chair's frame.
        const psi = x.phi + x.turned;
        let least = Infinity;
        for (let k = 0; k <= 20; k++) {
          const y = (x.outward * k) / 20;
          const ahead = x.window - back;
          least = Math.min(least, ahead * Math.cos(psi) + y * Math.sin(psi) - x.width / 2);
        }
        return least;
      },
      random,
      1500,
    );
    tight(computed, found);
  }
});

describe("where the board is laid", () => {
  const usual: Choosing = {
    turned: 30 * degree,
    gapFront: inch,
    length: 30 * inch,
    width: 8 * inch,
    depth: 18 * inch,
    half: 9 * inch,
    window: 10 * inch,
    outward: 3.5 * inch,
    clear: 0.5 * inch,
    hip: 9 * inch,
    bone: 2.25 * inch,
    asked: 3 * inch,
    setbackSeat: 0,
    setbackLanding: 0.25 * inch,
  };

  test("with room enough it lies square to the bed, in front of the wheel, under the sitting bone", () => {
    const p = place(usual);
    expect(p.angle).toBe(0);
    expect(p.short).toBe(0);
    expect(p.inside).toBeLessThanOrEqual(usual.half);
    expect(p.inside).toBeGreaterThanOrEqual(usual.half - usual.bone);
  });

  test("both ends bear alike where the board is short", () => {
    const p = place({ ...usual, length: 17.5 * inch, turned: 0 });
    expect(p.inside).toBeGreaterThan(usual.half - usual.bone);
    expect(p.inside).toBeLessThan(usual.half);
    const landing = 17.5 * inch - p.inside - inch - usual.setbackLanding;
    expect(landing).toBeCloseTo(p.inside, 9);
  });

  test("a narrow side window turns it towards square on the seat, and says what is short", () => {
    const p = place({ ...usual, window: 6 * inch });
    expect(p.angle).toBeLessThan(0);
    expect(p.short / inch).toBeGreaterThan(2);
    expect(p.short / inch).toBeLessThan(3);
  });

  test("what is short at the wheel is within a quarter inch of the least that any angle gives", () => {
    const random = draws(26);
    for (let n = 0; n < 200; n++) {
      const c = {
        ...usual,
        window: (5 + 6 * random()) * inch,
        turned: 45 * degree * random(),
        width: (6 + 4 * random()) * inch,
      };
      const p = place(c);
      const least = Math.min(
        ...Array.from({ length: 241 }, (_, k) => (k - 120) / 2)
          .filter((a) => Math.abs(a * degree + c.turned) <= 60 * degree)
          .map((a) => place({ ...c, angle: a * degree }).short),
      );
      expect(p.short).toBeLessThanOrEqual(least + 0.25 * inch + 1e-4);
    }
  });

  test("as it was laid counts, where that is written", () => {
    const p = place({ ...usual, angle: 12 * degree, inside: 5 * inch });
    expect(p.angle).toBe(12 * degree);
    expect(p.inside).toBe(5 * inch);
  });

  test("the answer repeats and does not hang on the last digit of an input", () => {
    const p = place(usual);
    for (let n = 1; n < 20; n++)
      expect(place({ ...usual, gapFront: usual.gapFront * (1 + n * 1e-12) }).angle).toBe(p.angle);
  });
});

test("a board that is all but parallel to an edge is not laid", () => {
  expect(canLie(degrees(30), degrees(0))).toBe(true);
  expect(canLie(degrees(30), degrees(55))).toBe(false);
  expect(canLie(degrees(0, 100), degrees(0))).toBe(false);
});
