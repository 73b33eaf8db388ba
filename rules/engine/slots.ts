/**
 * Facts of one subject, kept from one check to the next. Each fact is a slot that knows since which check it has been the reading
 * that it is, so that what rests on it is compared by numbers and not read again.
 */
import type { Thing } from "../../language/model/types.js";
import type { FactSpec } from "./fact-table.js";
import type { Reading } from "./logic.js";
import type { Sight } from "./special-fact.js";
import { goesOn } from "./written.js";

/** One fact of a subject. */
export interface Slot {
  readonly name: string;
  reading: Reading;
  /** The check in which it last became another reading. */
  changed: number;
  /** The check for which it was last asked. */
  asked: number;
  /** How it is found, looked up once. */
  spec?: FactSpec | undefined;
  /** What the reading depends on, where that is more than the things of its subject. */
  depends?: readonly unknown[];
}

/** Facts of one subject, each read once a check. */
export interface Facts {
  read(name: string): Reading;
  /** The fact with the number of the check in which it changed. The same object while the subject is there. */
  slot(name: string): Slot;
  /** The thing in a role, for messages and places. */
  role(name: string): Thing | undefined;
  readonly sight: Sight;
  /** What keeps the slots: of a step, the facts of its transfer. */
  readonly owner: object;
  /** The number of the check for which these facts are good. */
  readonly round: number;
  /** The check in which any fact of the subject last changed. */
  readonly changed: number;
}

/** How the facts of a subject are found. */
export interface Source {
  /** May keep what it depends on in the slot, and give the slot's own reading again. */
  ask(slot: Slot, facts: KeptFacts): Reading;
  role(name: string, facts: KeptFacts): Thing | undefined;
  /** Whether a fact looks beyond the things of its subject: then it is asked anew at every check. */
  isWide(name: string): boolean;
}

export class KeptFacts implements Facts {
  private readonly narrow = new Map<string, Slot>();
  private readonly wide = new Map<string, Slot>();
  readonly owner = this;
  round: number;
  changed: number;
  /** The check in which the things of the subject last became other objects. */
  private moved: number;

  /** `lazy`: a fact is asked anew only when it is read; then `changed` says nothing of facts that nobody read. */
  constructor(
    public sight: Sight,
    private readonly source: Source,
    round: number,
    private readonly lazy: boolean,
  ) {
    this.round = round;
    this.changed = round;
    this.moved = round;
  }

  /** Makes the facts good for another check. `same`: the things of the subject are the same objects as before. */
  refresh(sight: Sight, round: number, same: boolean): this {
    this.sight = sight;
    this.round = round;
    if (!same) this.moved = round;
    if (this.lazy) return this;
    if (!same) for (const slot of this.narrow.values()) this.again(slot);
    for (const slot of this.wide.values()) this.again(slot);
    return this;
  }

  private again(slot: Slot): void {
    slot.asked = this.round;
    const reading = this.source.ask(slot, this);
    if (reading === slot.reading || goesOn(slot.reading, reading)) return;
    slot.reading = reading;
    slot.changed = this.changed = this.round;
  }

  role(name: string): Thing | undefined {
    return this.source.role(name, this);
  }
  read(name: string): Reading {
    return this.slot(name).reading;
  }
  slot(name: string): Slot {
    const narrow = this.narrow.get(name);
    const known = narrow ?? this.wide.get(name);
    if (known) {
      if (this.lazy && known.asked < (narrow ? this.moved : this.round)) this.again(known);
      return known;
    }
    const slot = { name, changed: this.round, asked: this.round } as Slot;
    slot.reading = this.source.ask(slot, this);
    (this.source.isWide(name) ? this.wide : this.narrow).set(name, slot);
    return slot;
  }
}
