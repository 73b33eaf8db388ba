import { describe, expect, test } from "vitest";
import type { Interval } from "../../../language/quantity/interval.js";
import { quantities } from "../../../rules/quantities/index.js";
import { home, sceneFor } from "../scene-for.js";

const inch = 0.0254;
const measured = (what: string, text = home) =>
  text.replace("  along 40 in", `  along 40 in\n  measured { ${what} }`);
const near = (i: Interval | undefined, inches: number, digits = 6) =>
  expect(i!.nominal / inch).toBeCloseTo(inches, digits);

describe("the gap", () => {
  test("as measured counts; what was computed stands beside it", () => {
    const c = sceneFor(measured("gap 2 in"));
    near(c.get("gap.corner").value, 2);
    const computed = c.get("gap.corner-computed").value!.nominal / inch;
    near(c.get("gap.disagreement").value, 2 - computed);
    expect(sceneFor(home).get("gap.disagreement").without).toBe("the gap was not measured");
  });
  test("a measured one needs no measure of the wheels", () => {
    const text = measured("gap 2 in").replace(/ {2}drive-wheel.*\n/, "");
    const c = sceneFor(text);
    near(c.get("gap.corner").value, 2);
    expect(c.get("gap.hips").value).toBeDefined();
    expect(c.get("board.bearing-landing").value).toBeDefined();
    expect(c.get("board.wheel-clearance").missing).toMatchObject([{ key: "side-window" }]);
    expect(
      sceneFor(home.replace(/ {2}drive-wheel.*\n/, ""))
        .get("gap.corner")
        .missing.map((m) => m.key),
    ).toContain("drive-wheel");
  });
  test("a measured one lapses on a way back that turns the chair otherwise", () => {
    const text = measured("gap 2 in").replace(
      "{ steps planned }",
      "{ steps planned; turned 45 deg towards }",
    );
    expect(sceneFor(text, "out-of-bed").get("gap.disagreement").without).toBe("the gap was not measured");
    near(sceneFor(measured("gap 2 in"), "out-of-bed").get("gap.corner").value, 2);
  });
  test("is not known while it is not said how the chair is turned, or which way", () => {
    expect(sceneFor(home.replace("  turned 30 deg towards\n", "")).get("gap.corner").missing).toMatchObject([
      { key: "turned" },
    ]);
    expect(sceneFor(home.replace("30 deg towards", "30 deg")).get("gap.corner").missing).toMatchObject([
      { key: "turned" },
    ]);
    expect(sceneFor(home.replace("30 deg towards", "0 deg")).get("gap.corner").value).toBeDefined();
  });
  test("turned away from the bed the rear corner is the nearer, and the hips nearer than the front", () => {
    const away = sceneFor(home.replace("30 deg towards", "30 deg away"));
    expect(away.get("gap.hips").value!.nominal).toBeGreaterThan(away.get("gap.corner").value!.nominal);
  });
  test("with the near leg rest still on it is told what the gap would be without", () => {
    const on = sceneFor(home.replace("    remove legrest left\n", ""));
    expect(on.get("park.contact").choice).toBe("legrest");
    expect(on.get("gap.without-legrest").value!.nominal).toBeCloseTo(
      sceneFor(home).get("gap.corner").value!.nominal,
      12,
    );
    expect(
      on.get("gap.corner").value!.nominal - on.get("gap.without-legrest").value!.nominal,
    ).toBeGreaterThan(5 * inch);
  });
  test("lists only defaults that it may rest on: a hanger that cannot touch first is not guessed at", () => {
    const text = home.replace("  hanger-stub 1 in\n", "").replace("30 deg", "3 deg ± 1/2 deg");
    expect(
      sceneFor(text)
        .get("gap.corner")
        .assumed.map((a) => a.name),
    ).not.toContain("hanger-stub-default");
    const steep = home.replace("  hanger-stub 1 in\n", "").replace("30 deg", "45 deg");
    expect(
      sceneFor(steep)
        .get("gap.corner")
        .assumed.filter((a) => a.tapeable)
        .map((a) => a.name),
    ).toContain("hanger-stub-default");
  });
  test("measured hand rims and brake levers count, and nothing is assumed of them", () => {
    const level = home.replace("30 deg towards", "0 deg ± 0 deg");
    const rims = level.replace(
      "  cushion",
      "  hand-rim { standoff 2 in; diameter 21 in }\n  brake-lever 5 in\n  cushion",
    );
    // The lever stands out 5 in, further than the rim's 3 1/2 in.
    near(sceneFor(rims).get("park.contact").value, 5);
    expect(sceneFor(rims).get("park.contact").choice).toBe("other");
    const names = sceneFor(rims)
      .get("park.contact")
      .assumed.map((a) => a.name);
    expect(names).not.toContain("hand-rim-depth");
    expect(names).not.toContain("brake-lever-outside");
    // Without the lever the rim decides, half of what it is over its own width: its depth is no part of it.
    near(sceneFor(rims.replace("  brake-lever 5 in\n", "")).get("park.contact").value, 3.5);
  });
  test("the best angle is in the range that is searched, and repeats", () => {
    const best = sceneFor(home).get("gap.angle-best").value!;
    expect(best.low).toBe(best.high);
    expect(sceneFor(home.replace("30 deg towards", "50 deg towards")).get("gap.angle-best").value).toEqual(
      best,
    );
    const none = sceneFor(home.replace("  with board-30, daughter", "  no-board"));
    expect(none.get("gap.angle-best").value!.nominal).toBe(0);
  });
});

test("a bed on the chair's right gives the mirror image: every quantity is the same", () => {
  const other = home
    .replaceAll("legrest left", "legrest right")
    .replaceAll("armrest left", "armrest right")
    .replace("facing head", "facing foot")
    .replace(/room bedroom \{[^}]*\}\n/, "")
    .replace("  room bedroom\n", "");
  const plain = home.replace(/room bedroom \{[^}]*\}\n/, "").replace("  room bedroom\n", "");
  const a = sceneFor(plain);
  const b = sceneFor(other);
  expect([a.scene.side, b.scene.side]).toEqual(["left", "right"]);
  for (const q of quantities) {
    if (q.name.startsWith("landing.")) continue;
    expect(b.get(q.name).value, q.name).toEqual(a.get(q.name).value);
  }
});

describe("the board", () => {
  test("a measured bearing counts, and it is told what could be had", () => {
    const c = sceneFor(measured("bearing-landing 2 1/8 in"));
    near(c.get("board.bearing-landing").value, 2.125);
    near(c.get("board.bearing-landing-firm").value, 2.125 - 0.25);
    const possible = c.get("board.bearing-landing-possible").value!;
    expect(possible.low).toBeGreaterThan(8 * inch);
    near(
      c.get("board.bearing-landing-disagreement").value,
      2.125 - c.get("board.bearing-landing-computed").value!.nominal / inch,
    );
  });
  test("lies as it was laid where that is written", () => {
    const laid = home.replace(
      "  along 40 in",
      "  along 40 in\n  board-reach 6 in ± 0 in\n  board-askew -30 deg ± 0 deg",
    );
    const c = sceneFor(laid.replace("30 deg towards", "30 deg ± 0 deg towards"));
    // Square to the seat's side: it bears there by its whole reach.
    near(c.get("board.bearing-seat").value, 6, 9);
    near(c.get("board.bearing-seat-square").value, 6, 9);
  });
  test("reaching less far in, it bears less on the seat and more on the bed", () => {
    const at = (reach: number) =>
      sceneFor(home.replace("  along 40 in", `  along 40 in\n  board-reach ${reach} in`));
    expect(at(5).get("board.bearing-seat").value!.nominal).toBeLessThan(
      at(8).get("board.bearing-seat").value!.nominal,
    );
    expect(at(5).get("board.bearing-landing").value!.nominal).toBeGreaterThan(
      at(8).get("board.bearing-landing").value!.nominal,
    );
  });
  test("a soft edge takes from what bears on something solid", () => {
    const firm = sceneFor(home).get("board.bearing-landing-firm").value!;
    const soft = sceneFor(home.replace("edge firm", "edge soft")).get("board.bearing-landing-firm").value!;
    expect(soft.nominal).toBeLessThan(firm.nominal);
    const unsaid = sceneFor(home.replace("edge firm; ", ""));
    expect(unsaid.get("board.bearing-landing-firm").missing).toMatchObject([{ key: "edge" }]);
    expect(unsaid.get("board.bearing-landing").value).toBeDefined();
  });
  test("one of the shortest length that fits bears as asked whatever the tolerances; one shorter may not", () => {
    const shortest = sceneFor(home).get("board.shortest-that-fits").value!;
    const inside = (l: number) =>
      sceneFor(home.replace("length 30 in", `length ${(l / inch).toFixed(3)} in ± 0 in`));
    const enough = inside(shortest.high + 0.0001);
    expect(enough.get("board.shortest-that-fits").value!.high).toBeCloseTo(shortest.high, 2);
    expect(inside(shortest.low - 2 * inch).get("board.bearing-landing-firm").value!.low).toBeLessThan(
      3 * inch,
    );
  });
  test("a narrow side window puts it onto the wheel", () => {
    const narrow = sceneFor(home.replace("  seat-width", "  side-window 6 in\n  seat-width"));
    expect(narrow.get("chair.side-window").value!.nominal).toBeCloseTo(6 * inch, 12);
    expect(narrow.get("board.wheel-clearance").value!.high).toBeLessThan(0);
    const low = sceneFor(home.replace("diameter 24 in", "diameter 18 in"));
    expect(low.get("board.wheel-clearance").without).toBe("the wheel ends below the board");
  });
});

describe("where the hips land", () => {
  test("square to the bed they arrive where they were along it", () => {
    near(sceneFor(home).get("landing.hips").value, 40);
  });
  test("an askew board carries them towards the end that the chair faces", () => {
    const askew = home.replace("  along 40 in", "  along 40 in\n  board-askew 10 deg");
    expect(sceneFor(askew).get("landing.hips").value!.nominal).toBeLessThan(40 * inch);
    const foot = askew
      .replace("facing head", "facing foot")
      .replaceAll("left", "right")
      .replace("bed-side right", "bed-side left");
    expect(sceneFor(foot).get("landing.hips").value!.nominal).toBeGreaterThan(40 * inch);
  });
  test("what is left to move is the difference to where they must be", () => {
    const c = sceneFor(home);
    near(c.get("landing.target").value, 4 + 0.4825 * 69);
    near(c.get("landing.scoot").value, 40 - (4 + 0.4825 * 69));
  });
  test("leaving the bed nobody lands on it", () => {
    expect(sceneFor(home, "out-of-bed").get("landing.hips").without).toBe("the client leaves the bed");
  });
});

describe("what else stands where the chair parks", () => {
  test("a nightstand beside the head end is in the way of a chair parked high up", () => {
    const near = sceneFor(home).get("park.room-clearance");
    expect(near.choice).toBe("nightstand");
    const low = sceneFor(home.replace("along 40 in", "along 60 in")).get("park.room-clearance");
    expect(low.value!.nominal).toBeGreaterThan(near.value!.nominal + 8 * inch);
  });
  test("the far leg rest left on takes room in front", () => {
    const one = home.replace("along 40 in", "along 50 in");
    const both = one.replace(
      "    remove legrest left\n",
      "    remove legrest left\n    remove legrest right\n",
    );
    const room = (text: string) => sceneFor(text).get("park.room-clearance").value!.nominal;
    expect(room(both)).toBeGreaterThan(room(one) + inch);
  });
  test("with nothing else placed the walls are what is left, and without the bed's place nothing is known", () => {
    const walls = sceneFor(home.replace(/ {2}place nightstand.*\n/, "")).get("park.room-clearance");
    expect(walls.choice).toBe("east wall");
    expect(sceneFor(home.replace(/ {2}walk 12.*\n/, "")).get("park.room-clearance").missing).toMatchObject([
      { key: "walk" },
    ]);
    expect(sceneFor(home.replace(/ {2}place bed.*\n/, "")).get("park.room-clearance").missing).toMatchObject([
      { key: "place" },
    ]);
  });
});
