/** Makes the scenes of a household: each transfer and way back with its names resolved and its steps run. */
import type { Household } from "../language/model/household.js";
import type { StepLine, Thing, Value } from "../language/model/types.js";
import { doorsByName } from "../language/model/names.js";
import { chairSideOf } from "../language/model/sides.js";
import { endKinds } from "../language/vocabulary/index.js";
import type { Scene } from "./scene.js";
import { stepSetup } from "./scene-setup.js";
import { equipmentAt, run, type Run } from "./steps/machine.js";
import type { Found, StepSetup } from "./steps/setup.js";
import { foundAfter } from "./steps/state.js";
import type { Equipment } from "./steps/types.js";

export { perSide } from "./scene-setup.js";

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
    const { things, client } = household;
    const named = (name: string | undefined, ...kinds: readonly string[]): Thing | undefined => {
      const t = name === undefined ? undefined : things.get(name);
      return t && kinds.includes(t.kind) ? t : undefined;
    };
    const base = transfer.kind === "way-back" ? named(word(transfer.values["of"]), "transfer") : undefined;
    const holder = (key: string): Thing => (transfer.values[key] === undefined && base ? base : transfer);
    const value = (key: string) => ({ thing: holder(key), value: holder(key).values[key] });
    const plain = (key: string): Value | undefined => value(key).value;
    const fromTo = parts((base ?? transfer).values["from"]);
    const there = named(word(fromTo["from"]), ...endKinds);
    const thither = named(word(fromTo["to"]), ...endKinds);
    const [from, to] = base ? [thither, there] : [there, thither];
    const { chair, surface, seat } = partsPlayed(from, to);
    const used = plain("with");
    const withThings = (Array.isArray(used) ? used : [])
      .map((n) => things.get(String(n)))
      .filter((t) => t !== undefined);
    const one = (kind: string): Thing | undefined => withThings.find((t) => t.kind === kind);
    const list = (what: string, of: readonly Thing[]): readonly Thing[] =>
      this.list(`${transfer.name} ${what}`, of);
    const helpers = list(
      "helpers",
      withThings.filter((t) => t.kind === "helper"),
    );
    const room = named(word(plain("room")), "room");
    const placed = this.list(`${transfer.name} placed`, placedIn(room, things), (p) => [p.thing, p.place]);
    const routes = list("routes", routesTo(room, things));
    const ramps = list("ramps", rampsOf(routes, things));
    const wayDoors = list("doors", doorsOf(routes, things));
    const [board, belt, lift, sling, handle] = ["board", "belt", "lift", "sling", "handle"].map(one);
    const ifNot = transfer.inner["if-not"]?.[0] ?? base?.inner["if-not"]?.[0];
    const liftMeant = lift ?? named(word(ifNot?.values["otherwise"]), "lift");
    const side = chairSideOf(plain);
    const setup = stepSetup({
      value: plain,
      from,
      seat,
      surface,
      ...(side && { side }),
      helpers: helpers.length,
      uses: (kind) => one(kind) !== undefined,
      client,
      found: base && ends.get(base),
    });
    const ran = this.ran(transfer.name, transfer.inner["steps"]?.[0]?.steps, setup);
    return {
      name: transfer.name,
      direction: base || (to?.kind === "wheelchair" && from?.kind !== "wheelchair") ? "back" : "there",
      transfer,
      ...(base && { base }),
      ...(from && { from }),
      ...(to && { to }),
      ...(chair && { chair }),
      ...(surface && { surface }),
      ...(board && { board }),
      ...(belt && { belt }),
      ...(lift && { lift }),
      ...(sling && { sling }),
      ...(handle && { handle }),
      ...(liftMeant && { liftMeant }),
      helpers,
      ...(client && { client }),
      ...(room && { room }),
      placed,
      routes,
      ramps,
      wayDoors,
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

/**
 * Who plays which part: the wheelchair, and the other end. Where no wheelchair takes part, the commode stands in the chair's
 * place for the steps, else what is not a bed; `chair` is then left out.
 */
function partsPlayed(
  from: Thing | undefined,
  to: Thing | undefined,
): { readonly chair?: Thing; readonly seat?: Thing; readonly surface?: Thing } {
  const ends = [from, to].filter((t) => t !== undefined);
  const chair = ends.find((t) => t.kind === "wheelchair");
  const whole = from !== undefined && to !== undefined;
  const instead = whole
    ? (ends.find((t) => t.kind === "commode") ?? ends.find((t) => t.kind !== "bed"))
    : undefined;
  const seat = chair ?? instead;
  const surface = ends.find((t) => t !== seat && t.kind !== "wheelchair");
  return { ...(chair && { chair }), ...(seat && { seat }), ...(surface && { surface }) };
}

/** The routes that lead to a room. */
const routesTo = (room: Thing | undefined, things: ReadonlyMap<string, Thing>): Thing[] =>
  room ? [...things.values()].filter((t) => t.kind === "route" && t.values["to"] === room.name) : [];

/** The doors that those routes name, where it is plain which door is meant. */
function doorsOf(routes: readonly Thing[], things: ReadonlyMap<string, Thing>): Thing[] {
  const named = routes.flatMap((r) => (Array.isArray(r.values["through"]) ? r.values["through"] : []));
  if (named.length === 0) return [];
  const doors = doorsByName(things.values());
  const found = named.map((n) => doors.get(String(n))).filter((d) => d?.length === 1);
  return [...new Set(found.map((d) => d![0]!.thing))];
}

function rampsOf(routes: readonly Thing[], things: ReadonlyMap<string, Thing>): Thing[] {
  const names = routes.flatMap((r) => (Array.isArray(r.values["ramp"]) ? r.values["ramp"] : []));
  const ramps = [...new Set(names)].map((n) => things.get(String(n)));
  return ramps.filter((t) => t?.kind === "ramp") as Thing[];
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
