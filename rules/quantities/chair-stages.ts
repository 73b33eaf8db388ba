/** The stages of a transfer as loads on a chair's wheels, one for each place where somebody's weight may bear. */
import {
  add,
  exactly,
  multiply,
  negate,
  scale,
  subtract,
  type Interval,
} from "../../language/quantity/interval.js";
import { partOf, type Across, type Along } from "../plan/tipping.js";
import type { ChairLoad, Seated, Stage } from "./chair-load.js";

export interface At {
  readonly stage: Stage;
  readonly along: Along;
  readonly across: Across;
  /** Part of the body's mass that bears there, and what of its weight pushes the chair away. */
  readonly share: Interval;
  readonly away: Interval;
}

const zero = exactly(0);

/** A stage, with the chair's own measures. */
function at(
  { stand: { half, outside, track, depth, axle, castor, centre } }: ChairLoad,
  stage: Stage,
  share: Interval,
  away: Interval,
  along: Omit<Along, "depth" | "axle" | "castor" | "centre">,
  across: Omit<Across, "half" | "outside" | "track">,
): At {
  return {
    stage,
    share,
    away,
    along: { depth, axle, castor, centre, ...along } as Along,
    across: { half, outside, track, ...across },
  };
}

const seatedAt = (
  l: ChairLoad,
  stage: Stage,
  sit: Seated,
  forward: Interval,
  aside: Interval,
): At | undefined => {
  const part = partOf(multiply(l.mass, sit.share), l.chairMass);
  const ahead = add(add(l.hip, sit.centre), forward);
  return part && at(l, stage, sit.share, zero, { ofDepth: zero, part, ahead }, { aside, ofHalf: 0 });
};

/** Sitting back and scooted forward. `lean`: 30 degrees forward, or away from the surface. */
export function sitting(l: ChairLoad, lean?: "forward" | "away", seated = l.seated): readonly At[] {
  const ahead = lean === "forward" ? l.lean : zero;
  const aside = lean === "away" ? negate(l.lean) : zero;
  return seated.flatMap((sit) =>
    [seatedAt(l, "back", sit, ahead, aside), seatedAt(l, "scooted", sit, add(l.scoot, ahead), aside)].filter(
      (x) => x !== undefined,
    ),
  );
}

/** Over the seat end of the board, half way, and the empty chair. `forward`: the trunk leans 30 degrees forward. */
export function onBoard(l: ChairLoad, forward = false): readonly At[] {
  const { board } = l;
  const all: At[] = [];
  if (board)
    for (const share of board.share)
      for (const place of board.places)
        for (const [stage, of, away] of [
          ["over-seat-end", 1, board.away.end],
          // Half of the load on a board rests on either end when it is half way; the drag goes where the load goes.
          ["mid-span", 0.5, board.away.middle],
        ] as const) {
          const part = partOf(multiply(l.mass, scale(share, of)), l.chairMass);
          if (!part) continue;
          // The push acts at the height of the seat and points back along the board, away from the surface.
          const lever = multiply(away, board.height);
          const ahead = subtract(
            forward ? add(place.ahead, l.lean) : place.ahead,
            multiply(lever, board.sine),
          );
          const aside = subtract(place.aside, multiply(lever, board.cosine));
          all.push(
            at(
              l,
              stage,
              scale(share, of),
              away,
              { part, ahead, ofDepth: place.ofDepth },
              { aside, ofHalf: place.ofHalf },
            ),
          );
        }
  const empty = { part: zero, ahead: zero, ofDepth: zero };
  all.push(at(l, "last-contact", zero, zero, empty, { aside: zero, ofHalf: 0 }));
  return all;
}
