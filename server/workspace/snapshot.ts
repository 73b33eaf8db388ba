/**
 * The workspace: plans on disk and plans being edited, and what is known of each at a moment.
 *
 *     const workspace = new Workspace({ roots: ["/plans"], today: () => "2026-03-02" });
 *     workspace.open("/plans/home.span", text);      // from now on the editor's text counts
 *     workspace.snapshot("/plans/home.span").reported
 *     workspace.edit("/plans/home.span", newText);   // on every change; keeps all that did not change
 *     workspace.close("/plans/home.span");           // the file on disk counts again
 *     workspace.changed("/plans/pool.span");         // something else wrote, made or removed a file
 *
 * Paths are absolute. Nothing here knows an editor; nothing is ever executed.
 */
import path from "node:path";
import {
  emptyLibrary,
  householdOf,
  readSetup,
  type Household,
  type Library,
} from "../../language/model/household.js";
import type { Place, Tree } from "../../language/text/types.js";
import { createChecker, type Checker, type CheckResult } from "../../rules/engine/check.js";
import type { RuleSet, SetProblem } from "../../rules/engine/types.js";
import { quantities } from "../../rules/quantities/index.js";
import {
  asPlan,
  filesIn,
  isFault,
  isReallyWithin,
  isWithin,
  readPlan,
  repositoryOf,
  stampOf,
  type FileFault,
  type FileText,
} from "./files.js";
import { inReportOrder, reportFinding, reportForm, type Reported } from "./reported.js";
import { atTop, chooseSet, faultInWords, faultMessage, limited, type ChosenSet } from "./form.js";
import { NewerSets, type JudgedBy } from "./newer.js";
import { RuleSets, surroundings, type LoadedSet } from "./rule-sets.js";

export type { Position, Range, Reported } from "./reported.js";
export type { LoadedSet } from "./rule-sets.js";

/** What is known of one plan. The same object is given again while nothing that it rests on changes. */
export interface Snapshot {
  /** Absolute. */
  readonly path: string;
  /** Empty where the file cannot be read as a plan; `reported` then says why. */
  readonly text: string;
  readonly tree: Tree;
  readonly household: Household;
  /** Undefined where no rule set could be used, or the file is not a plan. `reported` then says why. */
  readonly result?: CheckResult;
  /** The rule set that the plan names, or the newest usual one. Its `set` is undefined where it was refused. */
  readonly ruleSet?: LoadedSet;
  /** Everything to be shown: findings of form and of substance, in the order of the file. */
  readonly reported: readonly Reported[];
  /** The day on which it was judged. */
  readonly today: string;
}

export interface WorkspaceOptions {
  /** Folders of plans; a plan may use files of its own folder of plans only. */
  readonly roots?: readonly string[];
  /** ISO 8601 date; the clock's by default. */
  readonly today?: () => string;
  readonly ruleSets?: RuleSets;
  /** Slow quantities are left out of a snapshot until `settle` is called for it: for an editor, where nothing may wait for them. */
  readonly haste?: boolean;
}

interface Document {
  readonly text: string;
  readonly tree: Tree;
  readonly fault?: FileFault;
  /** Of the file on disk; undefined for a text that is being edited. */
  readonly stamp?: string;
}

type Opened = ReturnType<Library["open"]>;
/** One thing that was looked up for a snapshot, so that it can be asked whether it would still come out the same. */
interface Lookup {
  readonly written: string;
  readonly from: string;
  readonly tree: Tree | string;
}

/** What a checker is kept for: a trial of another text must not disturb what was worked out for the text that counts. */
type Purpose = "text" | "trial" | "other";

interface Kept {
  readonly snapshot: Snapshot;
  /** What was said of the rule set and its policy when it was taken. */
  readonly chosen: string;
  readonly lookups: readonly Lookup[];
  readonly generation: number;
}

/** The day that it is here, by the clock. */
export function clockDay(now: Date = new Date()): string {
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

export class Workspace {
  readonly ruleSets: RuleSets;
  private roots: readonly string[];
  private readonly today: () => string;
  private readonly haste: boolean;
  /** Being edited, by path. */
  private readonly edited = new Map<string, Document>();
  /** Read from disk, by path. */
  private readonly onDisk = new Map<string, Document>();
  private readonly kept = new Map<string, Kept>();
  private readonly checkers = new Map<string, { readonly set: LoadedSet; readonly checker: Checker }>();
  private readonly newer = new NewerSets((file, name, version) => this.judgedBy(file, name, version));
  private readonly chosen = new WeakMap<Snapshot, string>();
  private readonly ruleTexts = new Map<string, string>();
  private listed = new Map<string, readonly string[]>();
  private generation = 0;

  constructor(options: WorkspaceOptions = {}) {
    this.roots = (options.roots ?? []).map((r) => path.resolve(r));
    this.today = options.today ?? (() => clockDay());
    this.haste = options.haste === true;
    this.ruleSets = options.ruleSets ?? new RuleSets((file) => this.ruleTexts.get(file));
  }

  /** The folders of plans, when they change. */
  setRoots(roots: readonly string[]): void {
    this.roots = roots.map((r) => path.resolve(r));
    this.listed.clear();
    this.generation++;
  }

  /** Takes the text of a document that an editor holds, a plan (`.span`) or a rule file (`.spanrules`). */
  open(file: string, text: string): void {
    this.edit(file, text);
  }

  /** The text after a change; what did not change is kept. */
  edit(file: string, text: string): void {
    this.generation++;
    if (file.endsWith(".spanrules")) {
      this.ruleTexts.set(file, text);
      return;
    }
    const before = this.edited.get(file) ?? this.onDisk.get(file);
    this.edited.set(file, documentOf(asPlan(text), before?.tree));
  }

  /** The editor let go of it: what is on disk counts. */
  close(file: string): void {
    this.generation++;
    this.edited.delete(file);
    this.ruleTexts.delete(file);
    if (stampOf(file) !== undefined) return;
    for (const store of [this.onDisk, this.kept]) store.delete(file);
    this.newer.forget(file);
    for (const key of [...this.checkers.keys()]) if (key.endsWith(`\n${file}`)) this.checkers.delete(key);
  }

  /** A file was written, made or removed by something else. */
  changed(_file?: string): void {
    this.generation++;
    this.listed.clear();
  }

  isOpen(file: string): boolean {
    return this.edited.has(file) || this.ruleTexts.has(file);
  }

  /** Documents that an editor holds, in the order in which they were opened. */
  openFiles(): readonly string[] {
    return [...this.edited.keys()];
  }

  /** Every plan of the folders of plans, and what is being edited, in the order of their paths. */
  plans(): readonly string[] {
    const all = new Set(this.edited.keys());
    for (const root of this.roots) {
      let files = this.listed.get(root);
      if (!files) this.listed.set(root, (files = filesIn(root)));
      for (const f of files) all.add(f);
    }
    return [...all].sort();
  }

  /** The folder of plans of a file: a root that holds it, else the repository around it, else the folder in which it lies. */
  rootOf(file: string): string {
    const holding = this.roots.filter((r) => isWithin(file, r)).sort((a, b) => a.length - b.length);
    return holding[0] ?? repositoryOf(path.dirname(file)) ?? path.dirname(file);
  }

  /** The text of a plan as it counts now. */
  text(file: string): FileText {
    const doc = this.document(file);
    return doc.fault ?? { text: doc.text };
  }

  /** The tree of a plan as it counts now; of one that cannot be read, an empty one. */
  tree(file: string): Tree {
    return this.document(file).tree;
  }

  /** What is known of a plan now. Never throws. */
  snapshot(file: string): Snapshot {
    const kept = this.kept.get(file);
    const today = this.today();
    if (kept && kept.snapshot.today === today) {
      if (kept.generation === this.generation && this.edited.has(file)) return kept.snapshot;
      if (this.stillGood(file, kept)) {
        this.kept.set(file, { ...kept, generation: this.generation });
        return kept.snapshot;
      }
    }
    const lookups: Lookup[] = [];
    const snapshot = this.take(file, today, lookups);
    this.keep(file, snapshot, lookups);
    return snapshot;
  }

  private keep(file: string, snapshot: Snapshot, lookups: readonly Lookup[]): void {
    const chosen = this.chosen.get(snapshot) ?? "";
    this.kept.set(file, { snapshot, chosen, lookups, generation: this.generation });
  }

  /**
   * Works out what was left out of the snapshot in haste, and what a newer version of its rule set would change. The same snapshot
   * comes back where nothing was.
   */
  settle(file: string): Snapshot {
    const quick = this.snapshot(file);
    let { lookups } = this.kept.get(file)!;
    let snapshot = quick;
    if (quick.result?.complete === false) {
      const anew: Lookup[] = [];
      snapshot = this.take(file, quick.today, anew, this.document(file), "text", false);
      lookups = anew;
    }
    const { household, result } = snapshot;
    const newest = household.pin && this.ruleSets.newest(household.pin.name, this.rootOf(file));
    const set = newest && this.ruleSets.get(newest.name, newest.version, this.rootOf(file));
    if (this.newer.look(household, result, set)) {
      const others = snapshot.reported.filter((r) => r.rule !== "form/rule-set-newer");
      const newer = this.newer.problems(household).map(reportForm);
      const chosen = this.chosen.get(snapshot) ?? "";
      snapshot = { ...snapshot, reported: inReportOrder(file, [...others, ...newer]) };
      this.chosen.set(snapshot, chosen);
    }
    if (snapshot !== quick) this.keep(file, snapshot, lookups);
    return snapshot;
  }

  /** How a plan comes out under another rule set, with the policy that it names. Nothing that is kept of it is disturbed. */
  judgedBy(file: string, name: string, version: string): JudgedBy {
    const { household, today } = this.snapshot(file);
    const place = household.pin?.place ?? placeAtTop(household.tree);
    const other: Household = { ...household, pin: { ...household.pin, name, version, place } };
    const { loaded, problems } = chooseSet(this.ruleSets, other, this.rootOf(file), today);
    if (!loaded?.set)
      return { ...(loaded && { ruleSet: loaded }), why: problems[0]?.message ?? "there is no such rule set" };
    const result = this.checkerFor(file, loaded, "other").check(household, today);
    return { ruleSet: loaded, result };
  }

  /** What would be known of a plan if its text were this one. Nothing is kept of it. */
  tryText(file: string, text: string): Snapshot {
    const got = asPlan(text);
    const doc = documentOf(got, this.document(file).tree);
    return this.take(file, this.today(), [], doc, "trial");
  }

  /** A policy file by itself: what is wrong with it, and the rules as they stand under it. */
  policyAt(
    file: string,
    text: string,
    root: string,
  ): { readonly set: RuleSet; readonly problems: readonly SetProblem[] } {
    return this.ruleSets.policyAlone({ path: path.relative(root, file), text }, root, this.today());
  }

  /** Plans that use this one (`from "..."`), of those that `plans` lists. */
  usersOf(file: string): readonly string[] {
    return this.plans().filter((p) => p !== file && this.snapshot(p).household.uses.has(file));
  }

  private stillGood(file: string, { snapshot, lookups, chosen }: Kept): boolean {
    if (this.document(file).tree !== snapshot.tree) return false;
    const now = chooseSet(this.ruleSets, snapshot.household, this.rootOf(file), snapshot.today);
    if (now.loaded !== snapshot.ruleSet || saidOf(now) !== chosen) return false;
    return lookups.every((l) => outcome(this.lookUp(l.written, l.from)) === l.tree);
  }

  private document(file: string): Document {
    const edited = this.edited.get(file);
    if (edited) return edited;
    const stamp = stampOf(file);
    const before = this.onDisk.get(file);
    if (before && before.stamp === stamp) return before;
    const doc = { ...documentOf(readPlan(file), before?.tree), stamp };
    this.onDisk.set(file, doc);
    return doc;
  }

  /** Finds what `from "..."` names. Nothing outside the file's folder of plans is opened, whatever links say. */
  private lookUp(written: string, from: string): Opened {
    if (path.isAbsolute(written) || path.win32.isAbsolute(written) || /^[a-z]:/i.test(written))
      return { problem: "outside" };
    const root = this.rootOf(from);
    const file = path.resolve(path.dirname(from), written.replaceAll("\\", "/"));
    if (!isWithin(file, root)) return { problem: "outside" };
    if (this.edited.has(file)) return { path: file, tree: this.document(file).tree };
    const stamp = stampOf(file);
    if (stamp === undefined) return { problem: "not-found" };
    if (!isReallyWithin(file, root)) return { problem: "outside" };
    const doc = this.document(file);
    if (!doc.fault) return { path: file, tree: doc.tree };
    if (doc.fault.problem === "not-found") return { problem: "not-found" };
    return { problem: "unreadable", why: faultInWords(doc.fault) };
  }

  private take(
    file: string,
    today: string,
    lookups: Lookup[],
    doc: Document = this.document(file),
    purpose: Purpose = "text",
    haste: boolean = this.haste,
  ): Snapshot {
    if (doc.fault) return this.notAPlan(file, doc, doc.fault, today);
    const root = this.rootOf(file);
    const library: Library = {
      open: (written, from) => {
        const opened = this.lookUp(written, from);
        lookups.push({ written, from, tree: outcome(opened) });
        return opened;
      },
    };
    const household = householdOf(file, doc.tree, library);
    const { loaded, problems } = chooseSet(this.ruleSets, household, root, today);
    const reported: Reported[] = [...limited(household.problems), ...problems].map(reportForm);
    if (purpose === "text") reported.push(...this.newer.problems(household).map(reportForm));
    let result: CheckResult | undefined;
    if (loaded?.set) {
      try {
        result = this.checkerFor(file, loaded, purpose).check(household, today, haste);
        for (const f of result.findings) reported.push(reportFinding(household, f));
      } catch (error) {
        reported.push(
          reportForm(
            atTop(
              file,
              "form/not-checked",
              `The rules could not be applied to this plan because of a fault in the program (${oneLine(error)}). Nothing here says that the plan is good.`,
            ),
          ),
        );
      }
    }
    const snapshot: Snapshot = {
      path: file,
      text: doc.text,
      tree: doc.tree,
      household,
      ...(result && { result }),
      ...(loaded && { ruleSet: loaded }),
      reported: inReportOrder(file, reported),
      today,
    };
    this.chosen.set(snapshot, saidOf({ problems }));
    return snapshot;
  }

  /** Kept for each file and rule set, so that what was worked out survives an edit. */
  private checkerFor(file: string, set: LoadedSet, purpose: Purpose): Checker {
    const key = `${set.name} ${set.version} ${purpose}\n${file}`;
    const kept = this.checkers.get(key);
    if (kept?.set === set) return kept.checker;
    const checker = createChecker(set.set!, quantities, surroundings);
    this.checkers.set(key, { set, checker });
    return checker;
  }

  private notAPlan(file: string, doc: Document, fault: FileFault, today: string): Snapshot {
    const [rule, message] = faultMessage(file, fault);
    const household = {
      ...householdOf(file, doc.tree, emptyLibrary),
      problems: [atTop(file, rule, message)],
    };
    return {
      path: file,
      text: "",
      tree: doc.tree,
      household,
      reported: household.problems.map(reportForm),
      today,
    };
  }
}

const saidOf = ({ problems }: ChosenSet): string => problems.map((p) => p.message).join("\n");

/** A place for what is said of a plan that names no rule set. */
function placeAtTop(tree: Tree): Place {
  const entry = tree.entries[0]?.entry ?? readSetup('setup ""').entries[0]!.entry;
  return { entry, line: 0, start: 0, end: 0 };
}

const outcome = (o: Opened): Tree | string => ("tree" in o ? o.tree : `${o.problem} ${o.why ?? ""}`);

function documentOf(got: FileText, before: Tree | undefined): Document {
  return isFault(got)
    ? { text: "", tree: readSetup(""), fault: got }
    : { text: got.text, tree: readSetup(got.text, before) };
}

const oneLine = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).split("\n")[0]!.slice(0, 200);
