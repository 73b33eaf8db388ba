/** Times of many runs, and how they are printed. */
export interface Times {
  readonly median: number;
  readonly p95: number;
}

export function times(samples: readonly number[]): Times {
  const sorted = [...samples].sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  return { median: at(0.5), p95: at(0.95) };
}

/** Runs two things turn and turn about, so that both meet the same machine; the first `warmUp` rounds are not counted. */
export async function sideBySide(
  rounds: number,
  warmUp: number,
  a: (i: number) => unknown,
  b: (i: number) => unknown,
): Promise<[Times, Times]> {
  const [as, bs]: [number[], number[]] = [[], []];
  for (let i = 0; i < rounds + warmUp; i++) {
    for (const [run, into] of [
      [a, as],
      [b, bs],
    ] as const) {
      const start = performance.now();
      await run(i);
      const took = performance.now() - start;
      if (i >= warmUp) into.push(took);
    }
  }
  return [times(as), times(bs)];
}

export const ms = (x: number): string => `${x.toFixed(3)} ms`;

export function row(title: string, ours: Times, yardstick: Times, name: string): void {
  console.log(`${title}`);
  console.log(`  spanwise              median ${ms(ours.median)}   p95 ${ms(ours.p95)}`);
  console.log(`  ${name.padEnd(20)}  median ${ms(yardstick.median)}   p95 ${ms(yardstick.p95)}`);
  console.log(
    `  ratio                 median ${(ours.median / yardstick.median).toFixed(2)}       p95 ${(ours.p95 / yardstick.p95).toFixed(2)}`,
  );
}
