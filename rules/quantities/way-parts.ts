/** What lies on the way to the room: its routes with their ramps and doors, and the doors of the room itself. */
import type { Interval } from "../../language/quantity/interval.js";
import type { Thing } from "../../language/model/types.js";
import type { Of } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { absent, without } from "./inputs.js";
import type { Inputs } from "./standing.js";

/** Routes whose end is the room in which it is done. */
export const routesOf = (s: Scene): readonly Thing[] => s.routes;
/** Ramps on those routes. */
export const rampsOf = (s: Scene): readonly Thing[] => s.ramps;

export interface DoorsIn {
  readonly doors: readonly Thing[];
  /** Whether all of them are passed; else one of them is. */
  readonly all: boolean;
  /** A door that a route names and that is not found here, and that route. */
  readonly elsewhere?: { readonly name: string; readonly route: Thing };
}

/** Doors on the way in: those that the routes name; else those of the room, of which only one need be passed. */
export function doorsIn(s: Scene): DoorsIn {
  const own = s.room?.inner["door"] ?? [];
  const found: Thing[] = [];
  let elsewhere: DoorsIn["elsewhere"];
  for (const route of routesOf(s)) {
    const through = route.values["through"];
    for (const named of Array.isArray(through) ? through.map(String) : []) {
      const dot = named.lastIndexOf(".");
      const here = dot < 0 || named.slice(0, dot) === s.room?.name;
      const name = named.slice(dot + 1);
      const door =
        (here ? own.find((d) => d.name === name) : undefined) ??
        s.wayDoors.find((d) => d.name === named || d.name === name);
      if (!door) elsewhere ??= { name: named, route };
      else if (!found.includes(door)) found.push(door);
    }
  }
  if (found.length > 0 || elsewhere) return { doors: found, all: true, ...(elsewhere && { elsewhere }) };
  return { doors: own, all: false };
}

export const noRoute = without("no route to the room is written");
export const noRamp = without("no ramp is on a route to the room");

/** Inner blocks of one kind in all routes. */
export const blocksOf = (routes: readonly Thing[], kind: string): readonly Thing[] =>
  routes.flatMap((r) => r.inner[kind] ?? []);

/** Several values of one sort, each with a name: numbered inputs that `listed` takes apart again. */
export function list(
  sort: string,
  items: readonly { readonly name: string; readonly value: unknown }[],
): Inputs {
  const all: Inputs = { [`${sort} count`]: items.length };
  items.forEach((item, n) => {
    all[`${sort} ${n} name`] = item.name;
    all[`${sort} ${n}`] = item.value;
  });
  return all;
}

export interface Listed {
  readonly name: string;
  readonly value: Interval;
}
/** What `list` numbered; those left open are left out. */
export function listed(i: Readonly<Record<string, unknown>>, sort: string): readonly Listed[] {
  const found: Listed[] = [];
  for (let n = 0; n < Number(i[`${sort} count`] ?? 0); n++) {
    const value = i[`${sort} ${n}`] as Interval | undefined;
    if (value) found.push({ name: String(i[`${sort} ${n} name`]), value });
  }
  return found;
}

/** The least of some values and which it is: each true value is at least its own, so the least lies between the least ends. */
export function leastOf(all: readonly Listed[]): Listed | undefined {
  return all.reduce<Listed | undefined>(
    (a, b) =>
      !a
        ? b
        : {
            name: b.value.nominal < a.value.nominal ? b.name : a.name,
            value: {
              low: Math.min(a.value.low, b.value.low),
              nominal: Math.min(a.value.nominal, b.value.nominal),
              high: Math.min(a.value.high, b.value.high),
            },
          },
    undefined,
  );
}
/** The greatest of some values and which it is. */
export function greatestOf(all: readonly Listed[]): Listed | undefined {
  return all.reduce<Listed | undefined>(
    (a, b) =>
      !a
        ? b
        : {
            name: b.value.nominal > a.value.nominal ? b.name : a.name,
            value: {
              low: Math.max(a.value.low, b.value.low),
              nominal: Math.max(a.value.nominal, b.value.nominal),
              high: Math.max(a.value.high, b.value.high),
            },
          },
    undefined,
  );
}

/** A key of a thing for `list`: its words name the thing. */
export const item = (of: Of, thing: Thing, key: string, name: string, words: string) => ({
  name,
  value: of.written(thing, key, words),
});

/** What is not known of a room's door. */
export const doorMissing = (s: Scene): Computed =>
  absent(
    s.room ?? s.transfer,
    s.room ? "the door of the room (door)" : "the room in which it is done",
    s.room ? "door" : "room",
  );
