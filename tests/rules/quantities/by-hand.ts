/** A value worked out by hand for every quantity: inches, pounds, pounds of force and degrees, as somebody would do it on paper. */
import * as households from "./everything-home.js";

export interface ByHand {
  readonly text: string;
  /** Into the bed unless it is told otherwise. */
  readonly transfer?: string;
  readonly value: number;
  /** How far apart hand and program may be, in the same unit; else a millionth of it. */
  readonly within?: number;
}

const { everything, taped, inPlace, misread, inCar } = households;
const degree = Math.PI / 180;
const sin = (d: number): number => Math.sin(d * degree);
const cos = (d: number): number => Math.cos(d * degree);
const atan = (x: number): number => Math.atan(x) / degree;

/** The chair turned 30 degrees: its hanger's stub of 1 in touches first, with a quarter inch left. */
const gap = 0.25 + 1 * sin(30);
/** The board, 30 by 8 in, square to the bed and in to the midline of a seat 18 in wide, its front side at the seat's corner. */
const back = 4 / cos(30);
const gapAtBoard = gap + back * sin(30);
const inside = 9 / cos(30);
const span = gapAtBoard + (4 * sin(30)) / cos(30);
const onSeat = (9 - 4 * sin(30)) / cos(30);
const onBed = 30 - inside - gapAtBoard;
/** The least on the seat: under the near sitting bone, 2 1/4 in from the midline. */
const leastIn = (9 - 2.25) / cos(30);
const runUp = inside + gapAtBoard;
const runDown = 30 - inside;
const climb = atan(2 / runUp);
const drop = atan(1 / runDown);
const window = 18 - Math.sqrt(12 ** 2 - (20.5 - 12) ** 2);
const besideWheel = (window - back) * cos(30) - 4;

const onBoard = 182 * 0.8775;
const mixed = 0.3 + 0.375 * (0.455 - 0.3);
const start = onBoard * (sin(climb) + 0.3 * cos(climb));
const end = onBoard * (-sin(drop) + 0.3 * cos(drop));
const leaving = onBoard * (sin(climb) + mixed * cos(climb));
const pascals = 4.4482216152605 / 0.0254 ** 2;
const stress = ((1.5 * onBoard * 1.125 * runUp) / (8 * 0.75 ** 2)) * pascals * 1e-6;

/** Castors from the seat's rear edge, the client's part of the load, and where the load lies, scooted forward. */
const castors = 18 - 0.75 - 2;
const part = onBoard / (onBoard + 38);
const scooted = part * (5 + 4 + 69 * 0.0275) + (1 - part) * 3;
const wholeBody = (182 * (5 + 4 + 69 * 0.06) + 38 * 3) / (182 + 38);
const track = 12.5 - 1 - 1.1875 / 2;
const line = (load: number): number => track + ((9 + 0.25 - track) * load) / castors;
/** Over the board's inner end: what of the push goes into the chair, acting at the height of its seat, along the board. */
const away = 0.165 * (leaving / onBoard);
const endAhead = 18 - back - 9 * Math.tan(30 * degree) - away * 20.5 * sin(30);
const overEnd = part * endAhead + (1 - part) * 3;
const farSide = line(overEnd) - part * away * 20.5 * cos(30);
const holdOfLocks = (182 + 38) * sin(9.5) - onBoard * away;

/** The chair parallel to the bed: 3 3/4 in from it by its hand rim, its hips 9 in ahead of the seat's rear edge. */
const parallel = everything.replace("30 deg towards", "0 deg").replace(/ {2}place nightstand.*\n/, "");
const legrestAhead = 122 - 40 - 9 + 18 + 16;
/** In front, in the corner of the room: as far from both walls as from the corner of the leg rest, 9 in aside of the middle. */
const [cornerX, cornerY] = [145 - (99 + 3.75 + 9 + 9), 122 - legrestAhead];
const standing = cornerX + cornerY - Math.sqrt(2 * cornerX * cornerY);
/** In the corner south west of the bed: as far from both walls as from the bed's corner, 60 in and 42 in away from them. */
const circle = 60 + 42 - Math.sqrt(2 * 60 * 42);

/** What is left at a turn, over angles a hundredth of a degree apart. */
function turn(before: number, after: number): number {
  let least = Infinity;
  for (let t = 0; t <= 90; t += 0.01)
    least = Math.min(
      least,
      (before * sin(t) + after * cos(t) - 42 * sin(t) * cos(t) - 25) / (1 + sin(t) + cos(t)),
    );
  return least;
}
const roomy = everything
  .replace(/walk .*/, "walk 14 ft east, 13 ft north, 14 ft west, 13 ft south")
  .replace("at 5 ft, 42 in", "at 5 ft, 76 in")
  .replace("at 18 in; clear 31 1/2 in", "at 30 in; clear 28 in")
  .replace(/ {2}place (nightstand|chest).*\n/g, "");

const on = (value: number, text = everything, within?: number): ByHand => ({
  text,
  value,
  ...(within !== undefined && { within }),
});

export const byHand: Readonly<Record<string, ByHand>> = {
  "height.rise": on(19.5 - 19),
  "height.empty-from": on(20.5),
  "height.empty-to": on(21),
  "height.loaded-from": on(19),
  "height.loaded-to": on(19.5),
  "height.over-popliteal": on(19.5 - (0.24 * 69 + 0.5)),
  "height.rest-empty-from": on(20.5),
  "height.rest-empty-to": on(21),
  "height.rest-loaded-from": on(19),
  "height.rest-loaded-to": on(19.5),
  "board.rise-start": on(21 - 19),
  "board.rise-end": on(19.5 - 20.5),
  "park.contact": on(1 * sin(30)),
  "gap.corner": on(gap),
  "gap.corner-computed": on(gap),
  "gap.disagreement": on(7.5 - gap, taped),
  "gap.hips": on(gap + (18 - 5 - 4) * sin(30)),
  "gap.without-legrest": on(gap, inPlace),
  "gap.angle-best": on(0),
  "chair.side-window": on(window),
  "board.bearing-seat": on(8.5, taped),
  "board.bearing-seat-computed": on(onSeat),
  "board.bearing-seat-square": on(9 - 4 * sin(30)),
  "board.bearing-seat-firm": on(9 - 4 * sin(30) - 0.25),
  "board.bearing-seat-disagreement": on(8.5 - (9 - 4 * sin(30)) / cos(30), taped),
  "board.bearing-landing": on(8, taped),
  "board.bearing-landing-computed": on(onBed),
  "board.bearing-landing-square": on(onBed),
  "board.bearing-landing-firm": on(onBed - 0.25),
  "board.bearing-landing-possible": on(30 - leastIn - gapAtBoard),
  "board.bearing-landing-disagreement": on(8 - (30 - inside - 7.5 - back * sin(30)), taped),
  "board.span": on(span),
  "board.wheel-clearance": on(besideWheel),
  "board.shortest-that-fits": on(leastIn + gapAtBoard + 3 + 0.25),
  "board.run": on(runUp),
  "board.run-seat-higher": on(runDown),
  "board.run-bed-higher": on(runUp),
  "board.slope-start": on(climb),
  "board.slope-end": on(drop),
  "board.slope": on(climb),
  "landing.hips": on(40),
  "landing.target": on(4 + 0.4825 * 69),
  "landing.scoot": on(40 - 4 - 0.4825 * 69),
  "park.room-clearance": on(122 - legrestAhead, parallel),
  // To a centimetre, which is how closely the way is searched: half of what the door is wider than the chair.
  "reach.tightest": on((28 - 25) / 2, roomy, 0.4),
  "reach.place": on((28 - 25) / 2, roomy, 0.4),
  // In forward, round, and back or forward to the place: never many.
  "reach.turns": on(2, roomy, 2),
  "room.misclosure": on(12, misread),
  "room.misclosure-share": on(12 / (145 + 122 + 133 + 122), misread),
  "room.misclosure-wall": on(3, misread),
  "room.crossings": on(0),
  "room.outside": on(132 + 18 - 145, everything.replace("at 8 ft 5 in", "at 11 ft")),
  "room.overlap": on(60 + 39 - 101),
  "door.past-wall": on(120 + 31.5 - 145, everything.replace("at 18 in; clear", "at 120 in; clear")),
  "room.side-clearance": on(145 - 60 - 39),
  "room.side-clearance-left": on(145 - 60 - 39),
  "room.side-clearance-right": on(60 - 14),
  "room.turning-circle": on(2 * circle, everything, 0.08),
  "helper.standing": on(2 * standing, parallel, 0.08),
  "lift.approach": on(46 - 42),
  "door.clear-width": on(31.5),
  "door.past-knees": { text: inCar, transfer: "into-car", value: 30 - 0.3625 * 69 },
  "route.clear-width": on(34),
  "route.turn": on(Math.min(turn(40, 39), turn(41, 34))),
  "route.turn-width": on(39),
  "threshold.height": on(7 / 8),
  "threshold.unbevelled": on(3 / 4),
  "ramp.slope": on(3 / 28),
  "ramp.rise": on(6),
  "ramp.run": on(12 * 6),
  "ramp.width": on(35),
  "landing.length": on(59),
  "load.ratio-chair": on((182 * 1.125) / 300),
  "load.ratio-board": on((182 * 1.125) / 400),
  "load.ratio-surface": on((182 * 1.125) / 450),
  "load.ratio-lift": on((182 * 1.125) / 400),
  "load.ratio-sling": on((182 * 1.125) / 300),
  "load.ratio-handle": on((182 * 0.375 * 1.125) / 150),
  "board.load-share": on((0.865 + 0.89) / 2),
  "board.incline-start": on(climb),
  "board.incline-end": on(-drop),
  "push.friction": on(0.3),
  "push.along-board-start": on(start),
  "push.along-board-end": on(end),
  "push.leaving": on(leaving),
  "push.leaving-extra": on(leaving - start),
  "push.peak": on(leaving),
  "push.of-weight": on(leaving / 182),
  "push.runaway": on(atan(0.3) - climb),
  "helper.all": on(leaving / 2),
  "helper.expected": on(leaving / 2 / 2),
  "helper.expected-of-two": on(leaving / 2 / 2),
  "client.must-give": on(1 - (30 + 20) / leaving),
  "board.bending-stress": on(stress),
  "board.bending-share": on(stress / 51.5),
  "board.deflection": on((onBoard * 1.125 * runUp ** 3) / (4 * (8.75e9 / pascals) * 8 * 0.75 ** 3)),
  "board.lip": on(0.75 * 0.625),
  "board.seesaw": on(runUp * sin(climb)),
  "board.hip-clearance": on(besideWheel + 4 - 5),
  "chair.load": on(38 + onBoard),
  "chair.forward-margin": on(castors - scooted),
  "chair.forward-margin-leaning": on(castors - scooted - part * 69 * 0.065),
  "chair.forward-margin-plates": on(castors - wholeBody),
  "chair.side-margin": on(farSide),
  "chair.side-margin-leaning": on(line(scooted) - part * 69 * 0.065),
  "chair.castor-gain": on(4),
  "chair.hold": on(holdOfLocks),
  "turn.body": on(90 + 30),
};
