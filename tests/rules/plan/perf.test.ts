import { test } from "vitest";
import { Bench, home } from "../scene-for.js";
import { quantities } from "../../../rules/quantities/index.js";
test("perf", () => {
  const b = new Bench();
  const tot = new Map<string, number>(), totK = new Map<string, number>();
  for (let i = 0; i < 2000; i++) {
    const text = home.replace("seat-depth 18 in", `seat-depth ${16 + (i % 400) / 100} in`);
    for (const m of [tot, totK]) {
    const c = b.check(text);
    for (const q of quantities) { const t0 = performance.now(); c.workings.of(c.scene, q); const d = performance.now() - t0; if (i > 1000) m.set(q.name, (m.get(q.name) ?? 0) + d); }
    }
  }
  let s = 0, k = 0;
  for (const [n, v] of [...tot].sort((a, b) => b[1] - a[1])) { s += v; k += totK.get(n)!; console.log(n, (v).toFixed(2), totK.get(n)!.toFixed(2)); }
  console.log("total us", s, k);
});
