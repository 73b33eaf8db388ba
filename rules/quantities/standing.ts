/** The room as it was measured: its walls as walked, its doors, and what is placed in it, read from the setup into an outline. */
import type { Interval } from "../../language/quantity/interval.js";
import { isQuantity, type Thing, type Value } from "../../language/model/types.js";
import { roomOutline, type RoomOutline, type WallName } from "../plan/outline.js";
import type { Compass } from "../plan/room.js";
import { viewOf } from "../part-view.js";
import type { Of } from "../quantity.js";
import type { Scene } from "../scene.js";
import { absent, choiceOf, partsOf, without } from "./inputs.js";

export type Inputs = Record<string, unknown>;

/** What the inputs below hand over: lengths by numbered names (`wall 0`, `at 0 1`, `size 0 2`, `door 0 at`), words beside them. */
export type RoomHanded = {
  readonly [numbered: `${"at" | "size"} ${number} ${1 | 2}` | `wall ${number}`]: Interval | undefined;
} & { readonly [numbered: `height ${number}` | `door ${number} ${"at" | "clear"}`]: Interval | undefined } & {
  readonly [
    numbered:
      | `${"thing" | "kind" | "stands" | "head" | "faces"} ${number}`
      | `door ${number} ${"name" | "wall" | "opens" | "hinged"}`
  ]: string | undefined;
} & {
  readonly ways?: readonly Value[];
  /** How many things are placed in the room, and how many doors it has. */
  readonly placed?: number;
  readonly doors?: number;
};

/** The items of a list or of a repeated key that have several parts, each as a thing of its own whose place is the key's. */
export function itemsOf(thing: Thing, key: string): readonly (Thing | undefined)[] {
  const said = thing.values[key];
  return (Array.isArray(said) ? (said as readonly Value[]) : []).map((v) => {
    const whole = typeof v !== "object" || v === null || Array.isArray(v) || isQuantity(v) || "type" in v;
    return whole ? undefined : viewOf(v, thing, key);
  });
}

/** Lengths of the walls as walked, each an input. */
export function wallInputs(room: Thing, of: Of): Inputs {
  const walls = room.values["walk"];
  if (!Array.isArray(walls)) return { ways: absent(room, "the walls of the room (walk)", "walk") };
  const all: Inputs = { ways: walls };
  itemsOf(room, "walk").forEach((w, n) => {
    if (w) all[`wall ${n}`] = of.written(w, "length", `wall ${n + 1}`);
  });
  return all;
}

/** Pairs written `a by b` or `a, b`, each as its own input. */
export function pair(of: Of, thing: Thing, key: string, name: string, words: string, second = true): Inputs {
  const parts = partsOf(thing, key);
  if (!parts) return { [`${name} 1`]: absent(thing, words, key) };
  return {
    [`${name} 1`]: of.written(parts, "first", second ? `${words}, first figure` : words),
    ...(second && { [`${name} 2`]: of.written(parts, "second", `${words}, second figure`) }),
  };
}

/** Everything placed in the room that `taken` lets through, the bed included. */
export function placedInputs(s: Scene, of: Of, taken: (thing: Thing) => boolean = () => true): Inputs {
  const placed = s.placed.filter((p) => taken(p.thing));
  const all: Inputs = { placed: placed.length };
  placed.forEach((p, n) => {
    const wall = choiceOf(p.place, "wall");
    all[`thing ${n}`] = p.thing.name;
    all[`kind ${n}`] = p.thing.kind;
    all[`stands ${n}`] = wall;
    all[`head ${n}`] =
      choiceOf(p.place, "head") ??
      (p.thing.kind === "bed"
        ? absent(p.place, "the side of the room to which the bed's head points", "head")
        : undefined);
    all[`faces ${n}`] = choiceOf(p.place, "faces");
    Object.assign(all, pair(of, p.place, "at", `at ${n}`, `where ${p.thing.name} stands in the room`, !wall));
    Object.assign(all, pair(of, p.thing, "size", `size ${n}`, `the size of ${p.thing.name}`));
    all[`height ${n}`] = of.optional(of.written(p.thing, "height", `the height of ${p.thing.name}`));
  });
  return all;
}

/** The doors of the room; what is not written of one leaves it out of the outline, for most do not need it. */
export function doorInputs(room: Thing, of: Of): Inputs {
  const doors = room.inner["door"] ?? [];
  const all: Inputs = { doors: doors.length };
  doors.forEach((d, n) => {
    all[`door ${n} name`] = d.name;
    for (const key of ["wall", "opens", "hinged"] as const) all[`door ${n} ${key}`] = choiceOf(d, key);
    all[`door ${n} at`] = of.optional(of.written(d, "at", `where the door ${d.name} stands in its wall`));
    all[`door ${n} clear`] = of.optional(of.written(d, "clear", `the clear width of the door ${d.name}`));
  });
  return all;
}

/** The room in which it is done, or what keeps it from being known. */
export function roomOr(s: Scene): { readonly room: Thing } | { readonly none: ReturnType<typeof absent> } {
  return s.room ? { room: s.room } : { none: absent(s.transfer, "the room in which it is done", "room") };
}

/** Walls, doors and everything placed: what the whole outline needs. Read once for all quantities of a scene. */
export const roomInputs = (_: Scene, of: Of): Inputs => of.shared(readRoom);

function readRoom(s: Scene, of: Of): Inputs {
  const found = roomOr(s);
  if ("none" in found) return found;
  return { ...wallInputs(found.room, of), ...doorInputs(found.room, of), ...placedInputs(s, of) };
}

const zero: Interval = { low: 0, nominal: 0, high: 0 };
const compass = (word: unknown): Compass | undefined =>
  word === "north" || word === "east" || word === "south" || word === "west" ? word : undefined;
const wallName = (word: string | undefined): WallName | undefined =>
  word !== undefined && /^\d+$/.test(word) ? Number(word) : compass(word);
/** A wall that was named but is none, so that the thing is not taken for one that stands free. */
const noWall = 0;

export function roomOf(i: RoomHanded): RoomOutline {
  const count = (n: number | undefined): readonly number[] => Array.from({ length: n ?? 0 }, (_, k) => k);
  return roomOutline({
    walk: (i.ways ?? []).flatMap((w, n) => {
      const length = i[`wall ${n}`];
      const way = compass(typeof w === "object" && w !== null && "way" in w ? w.way : undefined);
      return length && way ? [{ length, way }] : [];
    }),
    doors: count(i.doors).map((n) => ({
      name: i[`door ${n} name`] ?? "door",
      wall: wallName(i[`door ${n} wall`]),
      at: i[`door ${n} at`],
      clear: i[`door ${n} clear`],
      opens: i[`door ${n} opens`],
      hinged: compass(i[`door ${n} hinged`]),
    })),
    things: count(i.placed).map((n) => ({
      name: String(i[`thing ${n}`]),
      kind: String(i[`kind ${n}`]),
      head: compass(i[`head ${n}`]),
      wall: i[`stands ${n}`] === undefined ? undefined : (wallName(i[`stands ${n}`]) ?? noWall),
      at: i[`at ${n} 1`] ?? zero,
      second: i[`at ${n} 2`],
      wide: i[`size ${n} 1`] ?? zero,
      deep: i[`size ${n} 2`] ?? zero,
      height: i[`height ${n}`],
    })),
  });
}

/** What a room whose walls enclose nothing, or cross, gives instead of a number. */
export const noRoom = {
  missing: [{ what: "walls that close around the room, in the order walked (walk)", key: "walk" }],
} as const;

/** The bed that takes part, where it stands; or what keeps it from being known. */
export function bedPlaceOr(s: Scene): { readonly bed: Thing } | { readonly none: ReturnType<typeof absent> } {
  if (s.surface && s.surface.kind !== "bed") return { none: without("no bed takes part") };
  if (!s.surface) return { none: absent(s.transfer, "the bed", "from") };
  return s.placed.some((p) => p.thing === s.surface)
    ? { bed: s.surface }
    : { none: absent(s.room, "where the bed stands in the room", "place") };
}
