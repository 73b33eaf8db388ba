/** Resolves names: every name that a thing refers to must be declared, and be of a kind that fits. */
import { says } from "../text/messages.js";
import { nearest } from "../text/nearest.js";
import type { LineProblem } from "../text/types.js";
import type { Reference } from "./value.js";
import type { Thing } from "./types.js";

export interface Door {
  /** `room.door`. */
  readonly name: string;
  readonly thing: Thing;
}

export class Names {
  private doors: ReadonlyMap<string, readonly Door[]> | undefined;

  /** `things`: everything declared here or taken from other files, by name. */
  constructor(private readonly things: ReadonlyMap<string, Thing>) {}

  /** What is wrong with a name; undefined where it is resolved. */
  problem(r: Reference): LineProblem | undefined {
    return r.kinds[0] === "door" ? this.doorProblem(r) : this.thingProblem(r);
  }

  private thingProblem(r: Reference): LineProblem | undefined {
    const thing = this.things.get(r.name);
    if (thing && r.kinds.includes(thing.kind)) return undefined;
    const fitting = [...this.things.values()].filter((t) => r.kinds.includes(t.kind)).map((t) => t.name);
    return this.unknown(r, fitting, inWords(r.kinds));
  }

  /** Doors stand inside rooms: by their name where only one room has such a door, else `room.door`. */
  private doorProblem(r: Reference): LineProblem | undefined {
    const doors = (this.doors ??= doorsByName(this.things.values()));
    const found = doors.get(r.name);
    if (found?.length === 1) return undefined;
    if (!found) return this.unknown(r, [...doors.keys()], "door");
    const among = found.map((d) => d.name);
    return {
      rule: "form/name-ambiguous",
      message: says["form/name-ambiguous"]({ name: r.name, what: "doors", among: among.join(", ") }),
      start: r.start,
      end: r.end,
      fixes: among.map((name) => ({ title: `Write ${name}`, text: name })),
    };
  }

  private unknown(r: Reference, fitting: readonly string[], what: string): LineProblem {
    // The only bed is meant by whatever name; a helper is not meant by the name of a board, though both can stand there.
    const only = r.kinds.length === 1 && fitting.length === 1 ? fitting[0] : undefined;
    const near = nearest(r.name, fitting) ?? only;
    return {
      rule: "form/unknown-name",
      message: says["form/unknown-name"]({ name: r.name, what, nearest: near }),
      start: r.start,
      end: r.end,
      fixes: near ? [{ title: `Write ${near}`, text: near }] : [],
    };
  }
}

/** A list of kinds that is too long to read says no more than that a thing is meant. */
const inWords = (kinds: readonly string[]): string => (kinds.length > 4 ? "thing" : kinds.join(" or "));

/**
 * Every door by its own name and by that of its room and its own (`hall.bath`), with the doors that are meant by it: several where
 * two rooms have one of the same name.
 */
export function doorsByName(things: Iterable<Thing>): ReadonlyMap<string, readonly Door[]> {
  const found = new Map<string, Door[]>();
  for (const room of things)
    for (const thing of room.kind === "room" ? (room.inner["door"] ?? []) : []) {
      const door = { name: `${room.name}.${thing.name}`, thing };
      found.set(door.name, [door]);
      const alike = found.get(thing.name);
      if (alike) alike.push(door);
      else found.set(thing.name, [door]);
    }
  return found;
}
