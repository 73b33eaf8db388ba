/**
 * A household: everything that a setup declares or takes from other files, names resolved. It is made anew after every edit,
 * out of entries and things that are kept.
 */
import { notices, says } from "../text/messages.js";
import { nearest } from "../text/nearest.js";
import { readTree } from "../text/tree.js";
import type { Entry, LineProblem, Place, Tree } from "../text/types.js";
import { blockSpec, surfaceKinds, topOnly } from "../vocabulary/index.js";
import { resolveChange } from "./changes.js";
import { readEntry, type LocatedProblem } from "./entry.js";
import { leadsBack, useOf, type Library } from "./files.js";
import { Names } from "./names.js";
import { checkThing } from "./schema.js";
import { contradictionMessage, contradictions, unfit } from "./sides.js";
import type { Change, Thing, Value } from "./types.js";

export { emptyLibrary, type Library } from "./files.js";

export interface FormProblem extends LineProblem {
  readonly level: "advice" | "caution";
  readonly path: string;
  /** Absolute line in that file. */
  readonly line: number;
}

export interface Said {
  readonly value: Value;
  readonly place: Place;
}

export interface Household {
  readonly path: string;
  readonly tree: Tree;
  readonly title?: string;
  /** The rule set that the plan names, and the file of the policy under which it stands. */
  readonly pin?: {
    readonly name: string;
    readonly version: string;
    readonly policy?: string;
    readonly place: Place;
  };
  readonly visited?: string;
  /** By name: what this file declares and what it uses from others. */
  readonly things: ReadonlyMap<string, Thing>;
  /**
   * In the order of the file. Used things come after the file's own. Trials, kits and other blocks that bear the name of
   * something else are here and not in `things`.
   */
  readonly all: readonly Thing[];
  readonly client?: Thing;
  readonly review?: Thing;
  readonly trials: readonly Thing[];
  readonly accepts: readonly Said[];
  readonly expects: readonly Said[];
  /** What may be changed, as far as it could be understood. */
  readonly changes: readonly Change[];
  /** Findings of form of this file, in its order. Those of used files are found where those files are checked. */
  readonly problems: readonly FormProblem[];
  /** Where an entry stands: its file and first line. */
  locate(entry: Entry): { readonly path: string; readonly line: number } | undefined;
  /** Whether a file that this one uses changed since (by its tree). */
  readonly uses: ReadonlyMap<string, Tree>;
}

/** Reads a setup's text; with the tree before, what did not change is kept. */
export const readSetup = (text: string, before?: Tree): Tree => readTree(text, { topOnly }, before);

export function householdOf(path: string, tree: Tree, library: Library): Household {
  const maker = new Maker(path, tree, library);
  return maker.make();
}

class Maker {
  private readonly problems: FormProblem[] = [];
  private readonly things = new Map<string, Thing>();
  private readonly all: Thing[] = [];
  private readonly spots = new Map<Entry, { path: string; line: number }>();
  private readonly uses = new Map<string, Tree>();
  private readonly heads: { [key: string]: Said } = {};
  private readonly accepts: Said[] = [];
  private readonly expects: Said[] = [];
  private readonly froms: Said[] = [];
  private readonly trials: Thing[] = [];
  private readonly changes: Change[] = [];

  constructor(
    private readonly path: string,
    private readonly tree: Tree,
    private readonly library: Library,
  ) {}

  make(): Household {
    for (const p of this.tree.problems) this.report(p, p.line);
    for (const { entry, line } of this.tree.entries) {
      this.spots.set(entry, { path: this.path, line });
      const reading = readEntry(entry);
      for (const p of reading.problems) this.report(p, line + p.line);
      if (reading.thing) this.declare(reading.thing, line);
      if (reading.statement) this.state(reading.statement, line);
    }
    for (const from of this.froms) this.use(from);
    const names = new Names(this.things);
    for (const { entry, line } of this.tree.entries) this.resolve(entry, line, names);
    for (const thing of this.all)
      if (thing.kind === "transfer" || thing.kind === "way-back") this.compareSides(thing);
    if (this.tree.entries.length === 0 && this.tree.problems.length === 0)
      this.report({ rule: "form/empty", message: says["form/empty"](), start: 0, end: 0 }, 0);
    this.problems.sort(
      (a, b) => a.line - b.line || a.start - b.start || (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0),
    );
    return this.household();
  }

  private household(): Household {
    const text = (key: string): string | undefined => this.heads[key]?.value as string | undefined;
    const rules = this.heads["rules"];
    const pin =
      rules && typeof rules.value === "object"
        ? (rules.value as { name?: string; version?: string; policy?: string })
        : undefined;
    const title = text("setup");
    const visited = text("visited");
    const client = this.things.get("client");
    const review = this.all.find((t) => t.kind === "review");
    return {
      path: this.path,
      tree: this.tree,
      ...(typeof title === "string" && { title }),
      ...(pin?.name &&
        pin.version && {
          pin: {
            name: pin.name.toLowerCase(),
            version: pin.version,
            ...(pin.policy !== undefined && { policy: pin.policy }),
            place: rules!.place,
          },
        }),
      ...(typeof visited === "string" && { visited }),
      things: this.things,
      all: this.all,
      ...(client?.kind === "client" && { client }),
      ...(review && { review }),
      trials: this.trials,
      accepts: this.accepts,
      expects: this.expects,
      changes: this.changes,
      problems: this.problems,
      locate: (entry) => this.spots.get(entry),
      uses: this.uses,
    };
  }

  private report(p: LineProblem, line: number): void {
    this.problems.push({ ...p, path: this.path, line, level: notices.has(p.rule) ? "advice" : "caution" });
  }
  private reportAt(place: Place, rule: string, message: string, fixes: LineProblem["fixes"] = []): void {
    this.report(
      { rule, message, fixes, start: place.start, end: place.end },
      this.spots.get(place.entry)!.line + place.line,
    );
  }

  private declare(thing: Thing, line: number): void {
    for (const message of checkThing(thing))
      this.report(
        {
          rule: "form/value-expected",
          message,
          start: thing.node.statement.start,
          end: thing.node.statement.end,
        },
        line,
      );
    if (typeof blockSpec(thing.kind)?.name === "object") {
      if (thing.kind === "trial") this.trials.push(thing);
      this.all.push(thing);
      return;
    }
    const before = this.things.get(thing.name);
    if (before) {
      const { start, end } = thing.node.statement;
      const message = this.usedTwice(thing.name, before);
      this.report({ rule: "form/name-used-twice", message, start, end }, line);
      return;
    }
    this.things.set(thing.name, thing);
    this.all.push(thing);
  }

  private state(said: { key: string; value: Value; place: Place }, line: number): void {
    if (said.key === "accept") this.accepts.push(said);
    else if (said.key === "expect") this.expects.push(said);
    else if (said.key === "from") this.froms.push(said);
    else if (this.heads[said.key])
      this.report(
        {
          rule: "form/given-twice",
          message: says["form/given-twice"]({
            key: said.key,
            where: "this setup",
            line: this.spots.get(this.heads[said.key]!.place.entry)!.line + 1,
          }),
          start: said.place.start,
          end: said.place.end,
        },
        line,
      );
    else this.heads[said.key] = said;
  }

  /** Takes the things that a `from "file" use a, b` names. */
  private use(from: Said): void {
    const used = useOf(from.value);
    if (!used) return;
    const { path } = used;
    const file = this.library.open(path, this.path);
    if ("problem" in file) {
      const why = file.why ?? "it is not a text";
      const rule = `form/file-${file.problem}` as const;
      this.reportAt(from.place, rule, says[rule]({ path, why }));
      return;
    }
    if (leadsBack(this.path, file, this.library)) {
      this.reportAt(from.place, "form/file-circular", says["form/file-circular"]({ path }));
      return;
    }
    this.uses.set(file.path, file.tree);
    const declared = new Map<string, Thing>();
    for (const { entry, line } of file.tree.entries) {
      const thing = readEntry(entry).thing;
      if (!thing || typeof blockSpec(thing.kind)?.name === "object") continue;
      if (!declared.has(thing.name)) declared.set(thing.name, thing);
      if (!this.spots.has(entry)) this.spots.set(entry, { path: file.path, line });
    }
    for (const name of used.use) this.take(from, path, name, declared);
  }

  private take(from: Said, path: string, name: string, declared: ReadonlyMap<string, Thing>): void {
    const thing = declared.get(name);
    const taken = this.things.get(name);
    if (!thing) {
      const near = nearest(name, declared.keys());
      this.reportAt(
        from.place,
        "form/nothing-called",
        says["form/nothing-called"]({ name, path, nearest: near }),
      );
    } else if (taken) this.reportAt(from.place, "form/name-used-twice", this.usedTwice(name, taken));
    else {
      this.things.set(name, thing);
      this.all.push(thing);
    }
  }

  private usedTwice(name: string, before: Thing): string {
    const spot = this.spots.get(before.entry)!;
    const file = spot.path === this.path ? undefined : spot.path;
    return says["form/name-used-twice"]({ name, line: spot.line + 1, file });
  }

  /** Side, facing and steps of a transfer must agree with each other, and with the kind of surface. */
  private compareSides(transfer: Thing): void {
    const of = transfer.values["of"];
    const base = typeof of === "string" ? this.things.get(of) : undefined;
    const ends = (base ?? transfer).values["from"] as
      { readonly from?: Value; readonly to?: Value } | undefined;
    const surface = [ends?.from, ends?.to]
      .map((name) => (typeof name === "string" ? this.things.get(name) : undefined))
      .find((t) => t !== undefined && (surfaceKinds as readonly string[]).includes(t.kind));
    for (const c of contradictions(transfer, base, surface?.kind.replaceAll("-", " ") ?? "bed")) {
      const line = this.spots.get(c.other.entry)!.line + c.other.line + 1;
      this.reportAt(c.place, "form/side-contradicts", contradictionMessage(c, line), [
        { title: `Write ${c.instead}`, text: c.instead },
      ]);
    }
    for (const u of surface ? unfit(transfer, surface) : [])
      this.reportAt(
        transfer.placeOf(u.key),
        u.rule,
        u.message,
        u.instead.map((text) => ({ title: `Write ${text}`, text })),
      );
  }

  private resolve(entry: Entry, line: number, names: Names): void {
    const reading = readEntry(entry);
    for (const r of reading.references) {
      const problem = names.problem(r);
      if (problem) this.report(problem, line + r.line);
    }
    for (const c of reading.thing?.changes ?? []) {
      const { change, problems } = resolveChange(c, entry, this.things.get(c.thing));
      if (change) this.changes.push(change);
      for (const p of problems) this.report(p, line + c.node.line);
    }
  }
}

export type { LocatedProblem };
