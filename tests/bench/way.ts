/** The widest way through a furnished room, beside a plain search over a grid of poses; and how it grows with the furniture. */
import { draws } from "../rules/plan/sampling.js";
import { gridSearch } from "../rules/plan/way/grid-search.js";
import { bedroom, randomRoom } from "../rules/plan/way/rooms.js";
import { widestWay } from "../../rules/plan/way/way.js";
import { ms, row, sideBySide, times } from "./measure.js";

const mm = (x: number): string => `${(1000 * x).toFixed(1)} mm`;

export async function way(): Promise<void> {
  const room = bedroom();
  // The grid's bounds are about two and a half steps apart: at this step it knows a quarter as much as the search does.
  const step = 0.04;
  for (let n = 0; n < 10; n++) widestWay(room);
  const ours = widestWay(room);
  const grid = gridSearch(room, step);
  console.log(
    `room of 12 by 10 ft, six pieces of furniture: from ${mm(ours.low)} to ${mm(ours.high)} with ${ours.work} clearances; the grid of ${mm(step)}: from ${mm(grid.low)} to ${mm(grid.high)} with ${grid.nodes}`,
  );
  row(
    "The widest way through it, to a centimetre; the grid several times coarser",
    ...(await sideBySide(
      5,
      1,
      () => widestWay(room),
      () => gridSearch(room, step),
    )),
    "grid of poses",
  );
  const finer = (grid.high - grid.low) / 0.01;
  console.log(
    `  for a centimetre the grid's step would be ${finer.toFixed(1)} times finer, its poses ${Math.round(finer ** 3)} times as many`,
  );
  console.log("Growth with what stands in the room (twelve random rooms each):");
  for (const things of [3, 6, 12, 24]) {
    const random = draws(91);
    const took: number[] = [];
    const work: number[] = [];
    for (let n = 0; n < 12; n++) {
      const problem = randomRoom(random, things);
      const start = performance.now();
      work.push(widestWay(problem).work);
      took.push(performance.now() - start);
    }
    const [t, w] = [times(took), times(work)];
    console.log(
      `  ${String(things).padStart(2)} things   median ${ms(t.median)}, ${w.median} clearances   p95 ${ms(t.p95)}, ${w.p95} clearances`,
    );
  }
}
