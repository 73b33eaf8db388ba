/** Makes the scenes of a household: each transfer and way back with its names resolved and its steps run. */
import type { Household } from "../language/model/household.js";
import { isUnknown, type StepLine, type Thing, type Value } from "../language/model/types.js";
import { chairSide } from "../language/model/sides.js";
import type { Scene, Side } from "./scene.js";
import { equipmentAt, run, type Run } from "./steps/machine.js";
import type { ArmrestKind, Found, LegRestKind, StepSetup } from "./steps/setup.js";
import { foundAfter } from "./steps/state.js";
import type { Equipment } from "./steps/types.js";

type Parts = { readonly [part: string]: Value | undefined };
const parts = (v: Value | undefined): Parts =>
  typeof v === "object" && v !== null && !Array.isArray(v) ? (v as Parts) : {};
const word = (v: Value | undefined): string | undefined => (typeof v === "string" ? v : undefined);

interface Ran {
  readonly steps: readonly StepLine[] | undefined;
  readonly key: string;
  readonly setup: StepSetup;
  readonly run: Run | undefined;
  readonly parked: Equipment;
}

/**
 * Keeps what scenes are made of from one check of a file to the next, so that a part that did not change is the same object
 * and nothing is worked out from it again.
 */
export class Scenes {
  private lists = new Map<string, readonly unknown[]>();
  private runs = new Map<string, Ran>();

  of(household: Household): readonly Scene[] {
    const scenes: Scene[] = [];
    const ends = new Map<Thing, Found>();
    for (const thing of household.all) {
      if (thing.kind !== "transfer" && thing.kind !== "way-back") continue;
      const scene = this.scene(household, thing, ends);
      if (scene.run) ends.set(thing, foundAfter(scene.run.end));
      scenes.push(scene);
    }
    return scenes;
  }

  private scene(household: Household, transfer: Thing, ends: ReadonlyMap<Thing, Found>): Scene {
    const { things } = household;
    const named = (name: string | undefined, ...kinds: string[]): Thing | undefined => {
      const t = name === undefined ? undefined : things.get(name);
      return t && kinds.includes(t.kind) ? t : undefined;
    };
    const base = transfer.kind === "way-back" ? named(word(transfer.values["of"]), "transfer") : undefined;
    const holder = (key: string): Thing => (transfer.values[key] === undefined && base ? base : transfer);
    const value = (key: string) => ({ thing: holder(key), value: holder(key).values[key] });
    const fromTo = parts((base ?? transfer).values["from"]);
    const ends2 = [
      named(word(fromTo["from"]), "bed", "wheelchair"),
      named(word(fromTo["to"]), "bed", "wheelchair"),
    ];
    const [from, to] = base ? [ends2[1], ends2[0]] : ends2;
    const chair = [from, to].find((t) => t?.kind === "wheelchair");
    const surface = [from, to].find((t) => t !== undefined && t.kind !== "wheelchair");
    const used = value("with").value;
    const withThings = (Array.isArray(used) ? used : [])
      .map((n) => things.get(String(n)))
      .filter((t) => t !== undefined);
    const one = (kind: string): Thing | undefined => withThings.find((t) => t.kind === kind);
    const helpers = this.list(
      `${transfer.name} helpers`,
      withThings.filter((t) => t.kind === "helper"),
    );
    const room = named(word(value("room").value), "room");
    const placed = this.list(`${transfer.name} placed`, placedIn(room, things), (p) => [p.thing, p.place]);
    const [board, belt, lift] = [one("board"), one("belt"), one("lift")];
    const bedSide = word(value("bed-side").value);
    const facing = word(value("facing").value);
    const side = chairSide(bedSide, facing);
    const direction = base ? "back" : from?.kind === "wheelchair" || !from ? "there" : "back";
    const setup = stepSetup({
      chair,
      surface,
      side,
      direction: from?.kind === "wheelchair" ? "from-chair" : "to-chair",
      helped: helpers.length > 0,
      belt: belt !== undefined,
      board: board !== undefined,
      found: base && ends.get(base),
    });
    const stepsBlock = transfer.inner["steps"]?.[0];
    const ran = this.ran(transfer.name, stepsBlock?.steps, setup);
    return {
      name: transfer.name,
      direction,
      transfer,
      ...(base && { base }),
      ...(from && { from }),
      ...(to && { to }),
      ...(chair && { chair }),
      ...(surface && { surface }),
      ...(board && { board }),
      ...(belt && { belt }),
      ...(lift && { lift }),
      helpers,
      ...(household.client && { client: household.client }),
      ...(room && { room }),
      placed,
      ...(side && { side }),
      parked: ran.parked,
      ...(ran.steps && { steps: ran.steps }),
      setup: ran.setup,
      ...(ran.run && { run: ran.run }),
      value,
    };
  }

  /** The list of the check before where it holds the same things. */
  private list<T>(
    key: string,
    now: readonly T[],
    parts: (t: T) => readonly unknown[] = (t) => [t],
  ): readonly T[] {
    const before = this.lists.get(key) as readonly T[] | undefined;
    if (
      before &&
      before.length === now.length &&
      before.every((b, i) => parts(b).every((x, j) => x === parts(now[i]!)[j]))
    )
      return before;
    this.lists.set(key, now);
    return now;
  }

  private ran(name: string, steps: readonly StepLine[] | undefined, setup: StepSetup): Ran {
    const key = JSON.stringify(setup);
    const before = this.runs.get(name);
    if (before && before.key === key && before.steps === steps) return before;
    const done =
      steps &&
      run(
        steps.map((s) => s.step),
        setup,
      );
    // Where no steps are written the chair stands as it is found: nothing has been taken away yet.
    const parked = equipmentAt(done ?? run([], setup));
    const ran: Ran = {
      steps,
      key,
      setup: before && before.key === key ? before.setup : setup,
      run: done,
      parked: sameEquipment(before?.parked, parked) ? before!.parked : parked,
    };
    this.runs.set(name, ran);
    return ran;
  }
}

function placedIn(
  room: Thing | undefined,
  things: ReadonlyMap<string, Thing>,
): { thing: Thing; place: Thing }[] {
  const placed: { thing: Thing; place: Thing }[] = [];
  for (const place of room?.inner["place"] ?? []) {
    const thing = things.get(place.name);
    if (thing) placed.push({ thing, place });
  }
  return placed;
}

const sameEquipment = (a: Equipment | undefined, b: Equipment): boolean =>
  a !== undefined &&
  a.scooted === b.scooted &&
  a.legrests.left === b.legrests.left &&
  a.legrests.right === b.legrests.right &&
  a.armrests.left === b.armrests.left &&
  a.armrests.right === b.armrests.right;

/** The kind of leg rest or armrest on each side: said for one side, else for both. */
export function perSide(
  chair: Thing | undefined,
  one: "legrest" | "armrest",
): { left?: string; right?: string } {
  const both = word(chair?.values[`${one}s`]);
  const said = chair?.values[one];
  const of = (side: Side): string | undefined => {
    for (const v of Array.isArray(said) ? said : [])
      if (parts(v)["side"] === side) return word(parts(v)["kind"]);
    return both;
  };
  const left = of("left");
  const right = of("right");
  return { ...(left && { left }), ...(right && { right }) };
}

function stepSetup(p: {
  chair: Thing | undefined;
  surface: Thing | undefined;
  side: Side | undefined;
  direction: StepSetup["direction"];
  helped: boolean;
  belt: boolean;
  board: boolean;
  found: Found | undefined;
}): StepSetup {
  const footplates = word(p.chair?.values["footplates"]);
  const brakes = word(p.chair?.values["brakes"]) as StepSetup["brakes"];
  const castors = word(p.surface?.values["castors"]) as StepSetup["castors"];
  const adjusts = p.surface?.values["adjusts"];
  return {
    direction: p.direction,
    ...(p.side && { side: p.side }),
    surface: { name: p.surface?.name ?? "bed", kind: p.surface?.kind ?? "bed" },
    legrests: perSide(p.chair, "legrest") as { left?: LegRestKind; right?: LegRestKind },
    armrests: perSide(p.chair, "armrest") as { left?: ArmrestKind; right?: ArmrestKind },
    ...((footplates === "fixed" || footplates === "flip-up") && { footplates }),
    ...(brakes && { brakes }),
    helped: p.helped,
    belt: p.belt,
    board: p.board,
    ...(castors && { castors }),
    ...(adjusts !== undefined && !isUnknown(adjusts) && { adjusts: adjusts !== "no" }),
    ...(p.found && { found: p.found }),
  };
}
