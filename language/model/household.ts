/**
 * A household: everything that a setup declares or takes from other files, names resolved. It is made anew after every edit,
 * out of entries and things that are kept.
 */
import { notices, says } from "../text/messages.js";
import { nearest } from "../text/nearest.js";
import { readTree } from "../text/tree.js";
import type { Entry, LineProblem, Place, Tree } from "../text/types.js";
import { topOnly } from "../vocabulary/index.js";
import { readEntry, type LocatedProblem } from "./entry.js";
import { checkThing } from "./schema.js";
import { contradictionMessage, contradictions } from "./sides.js";
import type { Thing, Value } from "./types.js";

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
  /** The rule set that the plan names. */
  readonly pin?: { readonly name: string; readonly version: string; readonly place: Place };
  readonly visited?: string;
  /** By name: what this file declares and what it uses from others. */
  readonly things: ReadonlyMap<string, Thing>;
  /** In the order of the file. Used things come after the file's own. */
  readonly all: readonly Thing[];
  readonly client?: Thing;
  readonly review?: Thing;
  readonly trials: readonly Thing[];
  readonly accepts: readonly Said[];
  readonly expects: readonly Said[];
  /** Findings of form of this file, in its order. Those of used files are found where those files are checked. */
  readonly problems: readonly FormProblem[];
  /** Where an entry stands: its file and first line. */
  locate(entry: Entry): { readonly path: string; readonly line: number } | undefined;
  /** Whether a file that this one uses changed since (by its tree). */
  readonly uses: ReadonlyMap<string, Tree>;
}

/** What the surroundings must be able to do: find the text that `from "..."` names. */
export interface Library {
  /** Opens `path` as written in the file `from`. The path that comes back names the file in findings. */
  open(
    path: string,
    from: string,
  ):
    | { readonly path: string; readonly tree: Tree }
    | { readonly problem: "not-found" | "outside" | "unreadable"; readonly why?: string };
}

/** Reads a setup's text; with the tree before, what did not change is kept. */
export const readSetup = (text: string, before?: Tree): Tree => readTree(text, { topOnly }, before);

export const emptyLibrary: Library = { open: () => ({ problem: "not-found" }) };

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
    for (const { entry, line } of this.tree.entries) this.resolve(entry, line);
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
        ? (rules.value as { name?: string; version?: string })
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
        pin.version && { pin: { name: pin.name.toLowerCase(), version: pin.version, place: rules!.place } }),
      ...(typeof visited === "string" && { visited }),
      things: this.things,
      all: this.all,
      ...(client?.kind === "client" && { client }),
      ...(review && { review }),
      trials: this.trials,
      accepts: this.accepts,
      expects: this.expects,
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
    if (thing.kind === "trial") {
      this.trials.push(thing);
      this.all.push(thing);
      return;
    }
    const before = this.things.get(thing.name);
    if (before) {
      const spot = this.spots.get(before.entry)!;
      const file = spot.path === this.path ? undefined : spot.path;
      this.report(
        {
          rule: "form/name-used-twice",
          message: says["form/name-used-twice"]({ name: thing.name, line: spot.line + 1, file }),
          start: thing.node.statement.start,
          end: thing.node.statement.end,
        },
        line,
      );
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
    const { path, use } = from.value as { path?: string; use?: readonly Value[] };
    if (typeof path !== "string" || !Array.isArray(use)) return;
    const file = this.library.open(path, this.path);
    if ("problem" in file) {
      if (file.problem === "not-found")
        this.reportAt(from.place, "form/file-not-found", says["form/file-not-found"]({ path }));
      else if (file.problem === "outside")
        this.reportAt(from.place, "form/file-outside", says["form/file-outside"]({ path }));
      else
        this.reportAt(
          from.place,
          "form/file-unreadable",
          says["form/file-unreadable"]({ path, why: file.why ?? "it is not a text" }),
        );
      return;
    }
    const circle = this.findCircle(file.path, file.tree);
    if (circle) {
      this.reportAt(from.place, "form/file-circular", says["form/file-circular"]({ path }));
      return;
    }
    this.uses.set(file.path, file.tree);
    const declared = new Map<string, Thing>();
    for (const { entry, line } of file.tree.entries) {
      const thing = readEntry(entry).thing;
      if (!thing) continue;
      if (!declared.has(thing.name)) declared.set(thing.name, thing);
      if (!this.spots.has(entry)) this.spots.set(entry, { path: file.path, line });
    }
    for (const wanted of use) {
      const name = String(wanted).toLowerCase();
      const thing = declared.get(name);
      if (!thing) {
        const near = nearest(name, declared.keys());
        this.reportAt(
          from.place,
          "form/nothing-called",
          says["form/nothing-called"]({ name, path, nearest: near }),
        );
      } else if (this.things.has(name)) {
        const spot = this.spots.get(this.things.get(name)!.entry)!;
        this.reportAt(
          from.place,
          "form/name-used-twice",
          says["form/name-used-twice"]({
            name,
            line: spot.line + 1,
            file: spot.path === this.path ? undefined : spot.path,
          }),
        );
      } else {
        this.things.set(name, thing);
        this.all.push(thing);
      }
    }
  }

  /** Whether following `from` from that file leads back to this one. Each file is visited once. */
  private findCircle(start: string, tree: Tree): boolean {
    const seen = new Set<string>();
    const next: { path: string; tree: Tree }[] = [{ path: start, tree }];
    while (next.length > 0) {
      const file = next.pop()!;
      if (file.path === this.path) return true;
      if (seen.has(file.path)) continue;
      seen.add(file.path);
      for (const { entry } of file.tree.entries) {
        const said = readEntry(entry).statement;
        if (said?.key !== "from") continue;
        const path = (said.value as { path?: string }).path;
        if (typeof path !== "string") continue;
        const opened = this.library.open(path, file.path);
        if ("tree" in opened) next.push(opened);
      }
    }
    return false;
  }

  private compareSides(transfer: Thing): void {
    const of = transfer.values["of"];
    const base = typeof of === "string" ? this.things.get(of) : undefined;
    for (const c of contradictions(transfer, base)) {
      const line = this.spots.get(c.other.entry)!.line + c.other.line + 1;
      const near = {
        title: `Write ${c.said.replace(/left|right/, c.instead)}`,
        text: c.said.replace(/left|right/, c.instead),
      };
      this.reportAt(c.place, "form/side-contradicts", contradictionMessage(c, line), [near]);
    }
  }

  /** Every name that a thing of the vocabulary refers to must exist, and be of a kind that fits. */
  private resolve(entry: Entry, line: number): void {
    for (const r of readEntry(entry).references) {
      const thing = this.things.get(r.name);
      if (thing && r.kinds.includes(thing.kind)) continue;
      const fitting = [...this.things.values()].filter((t) => r.kinds.includes(t.kind)).map((t) => t.name);
      const near = nearest(r.name, fitting) ?? (fitting.length === 1 ? fitting[0] : undefined);
      const fixes = near ? [{ title: `Write ${near}`, text: near }] : [];
      const what = r.kinds.join(" or ");
      this.report(
        {
          rule: "form/unknown-name",
          message: says["form/unknown-name"]({ name: r.name, what, nearest: near }),
          start: r.start,
          end: r.end,
          fixes,
        },
        line + r.line,
      );
    }
  }
}

export type { LocatedProblem };
