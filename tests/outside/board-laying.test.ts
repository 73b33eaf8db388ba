/**
 * Lengths of a flat board over two parallel edges, found beforehand by measuring 2001 lines along the board, with none of the
 * project's code: independent table "board bearing lengths". The board's middle lies on the middle of the gap, shifted along
 * the board towards the seat.
 */
import { expect, test } from "vitest";
import { exactly } from "../../language/quantity/interval.js";
import { bearings } from "../../rules/plan/board.js";

const degree = Math.PI / 180;

test.each([
  // width 230 mm throughout: gap, angle, shift, least and most on the bed, least and most on the seat
  [200, 0, 0, 250.0, 250.0, 250.0, 250.0],
  [200, 20, 0, 201.7, 285.4, 201.7, 285.4],
  [260, 30, 0, 133.5, 266.3, 133.5, 266.3],
  [200, 20, 60, 141.7, 225.5, 261.7, 345.4],
])(
  "gap %d mm, board at %d degrees, moved %d mm towards the seat",
  (gap, angle, shift, bedLeast, bedMost, seatLeast, seatMost) => {
    const phi = angle * degree;
    const middle = (700 - gap / Math.cos(phi)) / 2 + shift;
    const b = bearings({
      length: exactly(0.7),
      width: exactly(0.23),
      turned: exactly(0),
      gap: { over: () => ({ low: gap / 1000, high: gap / 1000 }), at: () => gap / 1000 },
      laid: { angle: exactly(phi), inside: exactly((middle * Math.cos(phi)) / 1000), back: 0.2 },
      half: exactly(0.5),
      bone: exactly(0.05),
      asked: exactly(0.075),
      setbackSeat: exactly(0),
      setbackLanding: exactly(0),
    });
    // Printed to a tenth; the lines measured stand a tenth of a millimetre apart.
    const near = (x: number, printed: number) => expect(Math.abs(x - printed)).toBeLessThan(0.07);
    near(b.seat.nominal * 1000, seatLeast);
    near(b.landing.nominal * 1000, bedLeast);
    // The longer long side bears by the board's skew more at each end, whichever end is looked at.
    const more = 230 * Math.tan(phi);
    near(b.seat.nominal * 1000 + more, seatMost);
    near(b.landing.nominal * 1000 + more, bedMost);
    // Edges are parallel, so every line along the board spans the same: what neither end bears.
    // Two printed lengths, each rounded.
    expect(Math.abs(b.span.nominal * 1000 - (700 - seatLeast - bedMost))).toBeLessThan(0.11);
    near((b.runLandingHigher.nominal + b.landing.nominal) * 1000 + more / 2, 700);
  },
);
