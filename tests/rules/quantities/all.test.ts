import { describe, expect, test } from "vitest";
import { between, exactly, type Interval } from "../../../language/quantity/interval.js";
import { quantities } from "../../../rules/quantities/index.js";
import { draws } from "../plan/sampling.js";
import { Bench, defaultsWith, home, sceneFor } from "../scene-for.js";

test("each quantity has its own name, a sentence and a formula", () => {
  expect(new Set(quantities.map((q) => q.name)).size).toBe(quantities.length);
  for (const q of quantities) {
    expect(q.name).toMatch(/^[a-z]+(\.[a-z]+(-[a-z]+)*)$/);
    expect(q.says.length).toBeGreaterThan(10);
    expect(q.formula.length).toBeGreaterThan(5);
    expect(q.source).not.toBe("");
  }
});

describe("whatever is left out, a quantity has a value, says what is missing, or says why it does not apply", () => {
  const lines = home.split("\n");
  const texts = lines.flatMap((line, n) => {
    if (/^\s*[}]|[{]\s*$|^\s*$/.test(line)) return [];
    const without = [...lines.slice(0, n), ...lines.slice(n + 1)].join("\n");
    // Statements of one line are left out one at a time as well.
    const body = /^(.*\{)(.*)(\}\s*)$/.exec(line);
    const parts = body ? body[2]!.split(";") : [];
    const each = parts.map((_, k) =>
      [
        ...lines.slice(0, n),
        `${body![1]} ${parts.filter((_p, j) => j !== k).join(";")} ${body![3]}`,
        ...lines.slice(n + 1),
      ].join("\n"),
    );
    return /^transfer|^way-back/.test(line) ? each : [without, ...each];
  });
  test(`${texts.length} setups with one statement missing`, () => {
    for (const text of texts)
      for (const name of ["into-bed", "out-of-bed"]) {
        const c = sceneFor(text, name);
        for (const q of quantities) {
          const r = c.workings.of(c.scene, q);
          const kinds = [r.value !== undefined, r.missing.length > 0, r.without !== undefined].filter(
            Boolean,
          ).length;
          expect(kinds, `${q.name} of\n${text}`).toBe(1);
          if (r.value)
            for (const x of [r.value.low, r.value.nominal, r.value.high])
              expect(Number.isFinite(x), q.name).toBe(true);
        }
      }
  });
  test("nothing but the transfer", () => {
    const c = sceneFor("transfer into-bed { turned 30 deg towards }");
    for (const q of quantities) expect(c.workings.of(c.scene, q).value, q.name).toBeUndefined();
  });
});

describe("only what an edit touches is worked out again", () => {
  const after = (edit: (text: string) => string) => {
    const bench = new Bench();
    const first = bench.check(home);
    for (const q of quantities) first.workings.of(first.scene, q);
    const second = bench.check(edit(home));
    for (const q of quantities) second.workings.of(second.scene, q);
    return bench.workings.computed;
  };
  test("nothing after an edit that moves lines", () => {
    expect(after((t) => `\n# a note\n${t}`)).toBe(0);
  });
  test("the room, and nothing of the board, after an edit of a nightstand", () => {
    const onPlaces = /^(park\.room-clearance|room\.(outside|overlap|side-clearance.*)|reach\..*)$/;
    expect(after((t) => t.replace("size 18 in by 16 in", "size 20 in by 16 in"))).toBe(
      quantities.filter((q) => onPlaces.test(q.name)).length,
    );
  });
  test("loads, pushes, bending and tipping, and nothing of lengths and angles, after an edit of the client's mass", () => {
    const onMass =
      /^(load\.ratio-(chair|board|surface)|push\.(along|leaving|peak)|helper\.(all|expected)|client\.|board\.(bending|deflection)|chair\.(load|hold|.*margin))/;
    expect(after((t) => t.replace("182 lb", "190 lb"))).toBe(
      quantities.filter((q) => onMass.test(q.name)).length,
    );
  });
});

describe("a whole setup's quantities hold every true value of exact inputs", () => {
  const lengths = [
    ["seat-height", 20.5],
    ["seat-loaded", 19],
    ["seat-width", 18],
    ["seat-depth", 18],
    ["overall-width", 25],
    ["diameter", 24],
    ["axle", 0],
    ["hanger-stub", 1],
    ["top-loaded", 19.5],
    ["top", 21],
    ["board-reach", 8],
    ["width", 8],
  ] as const;
  const base = home.replace("  along 40 in", "  along 40 in\n  board-reach 8 in\n  board-askew 5 deg");
  const write = (text: string, key: string, value: string) =>
    text.replace(new RegExp(`(?<=[ {;\\n])${key} [0-9/ ]+ in`), `${key} ${value}`);
  const names = [
    "height.rise",
    "board.rise-start",
    "board.rise-end",
    "park.contact",
    "gap.corner",
    "gap.hips",
    "chair.side-window",
    "board.bearing-seat",
    "board.bearing-seat-square",
  ];

  test("1,000 draws a quantity", () => {
    const random = draws(41);
    const defaults = [
      "parking-clearance",
      "hip-from-seat-rear",
      "scoot-forward",
      "hand-rim-depth",
      "armrest-length",
      "armrest-socket",
      "castor-front",
      "castor-outside",
      "castor-height",
      "brake-lever-forward",
      "brake-lever-outside",
      "footplate-inner",
      "footplate-height",
      "legrest-outside",
    ];
    for (let n = 0; n < 10; n++) {
      const nominal = lengths.map(
        ([key, x]) => [key, +(x + random() - 0.5).toFixed(3), +(random() * 0.5).toFixed(3)] as const,
      );
      const turned = +(10 + random() * 35).toFixed(3);
      let text = base
        .replace("30 deg", `${turned} deg ± 2 deg`)
        .replace("askew 5 deg", "askew 5 deg ± 2 deg");
      for (const [key, x, t] of nominal) text = write(text, key, `${x} in ± ${t} in`);
      const c = sceneFor(text, "into-bed");
      const found = names.map((name) => c.get(name).value!);
      const given = defaultsWith();
      for (let k = 0; k < 100; k++) {
        const within = (i: Interval) =>
          k % 2 ? i.low + random() * (i.high - i.low) : random() < 0.5 ? i.low : i.high;
        const replaced = Object.fromEntries(
          defaults.map((d) => [d, exactly(within(given.get(d)!.interval))]),
        );
        const parking = given.get("parking-angle")!.interval.high;
        const angle = turned + within(between(-2, 2)) + (within(between(-parking, parking)) * 180) / Math.PI;
        const askew = 5 + within(between(-2, 2));
        let exact = base
          .replace("30 deg", `${angle.toFixed(6)} deg ± 0 deg`)
          .replace("askew 5 deg", `askew ${askew.toFixed(6)} deg ± 0 deg`);
        for (const [key, x, t] of nominal)
          exact = write(exact, key, `${(x + within(between(-t, t))).toFixed(6)} in ± 0 in`);
        const e = sceneFor(exact, "into-bed", defaultsWith({ ...replaced, "parking-angle": exactly(0) }));
        names.forEach((name, j) => {
          const y = e.get(name).value!.nominal;
          expect(y, name).toBeGreaterThanOrEqual(found[j]!.low - 1e-6);
          expect(y, name).toBeLessThanOrEqual(found[j]!.high + 1e-6);
        });
      }
    }
  });
});
