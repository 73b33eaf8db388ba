/** Rule sets: the released ones that come with the program, and those of the workspace, which stand before them. */
import { existsSync, readdirSync, statSync } from "node:fs";
import path from "node:path";
import embedded from "virtual:rule-sets";
import { loadRuleSet, readReleased } from "../../rules/engine/load.js";
import { overlaid } from "../../rules/engine/overlay.js";
import { readPolicy } from "../../rules/engine/overlay-read.js";
import { unpackRuleSet } from "../../rules/engine/pack.js";
import type { ReadSet, RuleFile, RuleSet, SetProblem } from "../../rules/engine/types.js";
import { FactTable } from "../../rules/engine/fact-table.js";
import { quantities } from "../../rules/quantities/index.js";
import { contentHash } from "./content-hash.js";
import { byText, isFault, isReallyWithin, readPlan, stampOf } from "./files.js";
import { Policies, type LoadedPolicy } from "./policies.js";

export { contentHash };

/** What rules may speak of. */
export const surroundings = new FactTable(quantities);

/** The rule set whose newest version is used where a plan names none. */
export const usualSet = "home-transfer";

export interface LoadedSet {
  readonly name: string;
  readonly version: string;
  /** SHA-256 over the names and texts of its files, in hex. Line ends of any kind count as one. */
  readonly hash: string;
  /** Undefined: it was refused; `problems` says why. */
  readonly set: RuleSet | undefined;
  /** What could be read of it, also where it was refused. */
  readonly partial: RuleSet;
  readonly problems: readonly SetProblem[];
  readonly files: readonly RuleFile[];
  /** The folder that it was read from; undefined for one that comes with the program. */
  readonly folder?: string;
  /** The policy under which it stands; `set` and `problems` are then those of the two together. */
  readonly policy?: LoadedPolicy;
  /** The policy's file where it was refused. */
  readonly refusedPolicy?: string;
}

/** Tells sets apart that judge otherwise: the set's content, and that of the policy under which it stands. */
export const identityOf = (s: LoadedSet): string => `${s.hash} ${s.policy?.hash ?? ""}`;

type Embedded = (typeof embedded)[number];
const hashOf = (s: Embedded): string => s.hash ?? contentHash(s.files);

/** The set that comes with the program, if it has this content; the build verified it (`spanwise rules`), and read it. */
function releasedAs(name: string, version: string, hash: string): ReadSet | undefined {
  const found = embedded.find((s) => s.name === name && s.version === version);
  if (!found || hashOf(found) !== hash) return undefined;
  if (found.packed === undefined) return readReleased(found.files, surroundings);
  const set = unpackRuleSet(found.packed);
  return { set, partial: set, problems: [] };
}

interface Listed {
  readonly name: string;
  readonly version: string;
  readonly folder?: string;
}

export class RuleSets {
  /** By content, so that a set that stands in a folder and in the program is read once. */
  private readonly byHash = new Map<string, ReadSet>();
  private readonly byFolder = new Map<string, { stamp: string; loaded: LoadedSet }>();
  private readonly released = new Map<string, LoadedSet>();
  private readonly underPolicy = new WeakMap<object, LoadedSet>();
  readonly policies: Policies;

  /**
   * `open` gives the text of a rule file that is being edited; undefined where none is. `all`: released sets are verified too,
   * as `spanwise rules` does; else a set whose content is that of a released one is not verified at every start again.
   */
  constructor(
    private readonly open: (file: string) => string | undefined = () => undefined,
    private readonly all = false,
  ) {
    this.policies = new Policies(open, surroundings);
  }

  /** Every rule set that a plan in `root` can name, by name and version. */
  list(root?: string): readonly Listed[] {
    const all = new Map<string, Listed>();
    for (const s of embedded) all.set(`${s.name} ${s.version}`, { name: s.name, version: s.version });
    if (root !== undefined) for (const s of foldersIn(root)) all.set(`${s.name} ${s.version}`, s);
    return [...all.values()].sort((a, b) => byText(a.name, b.name) || byVersion(a.version, b.version));
  }

  /** The newest version of a rule set. */
  newest(name: string, root?: string): Listed | undefined {
    return this.list(root)
      .filter((s) => s.name === name)
      .at(-1);
  }

  /** The set of that name and version, read and checked. Undefined where there is none. */
  get(name: string, version: string, root?: string): LoadedSet | undefined {
    if (root !== undefined && isPlain(name) && isPlain(version)) {
      const folder = path.join(root, "rules", name, version);
      const own = this.fromFolder(name, version, folder, root);
      if (own) return own;
    }
    const key = `${name} ${version}`;
    const known = this.released.get(key);
    if (known) return known;
    const found = embedded.find((s) => s.name === name && s.version === version);
    if (!found) return undefined;
    const loaded = this.load(name, version, found);
    this.released.set(key, loaded);
    return loaded;
  }

  /**
   * A set under the policy that the plan `from` names; `why` where there is none to be used. A policy that is refused gives a set
   * that cannot be used, with every reason.
   */
  under(
    base: LoadedSet,
    written: string,
    from: string,
    root: string,
    today: string,
  ): LoadedSet | { readonly why: string } {
    if (!base.set) return base;
    const made = this.policies.under(base.set, written, from, root, today);
    if ("why" in made) return made;
    let loaded = this.underPolicy.get(made);
    if (!loaded) {
      const { set, problems, policy, file } = made;
      loaded = {
        ...base,
        set,
        partial: set ?? base.partial,
        problems,
        ...(policy && { policy }),
        ...(problems.length > 0 && { refusedPolicy: file }),
      };
      this.underPolicy.set(made, loaded);
    }
    return loaded;
  }

  /**
   * A policy by itself, against every rule set for which it says that it is (the newest usual one where it names none): what is
   * wrong with it, and the last of these sets as it stands under it.
   */
  policyAlone(
    file: RuleFile,
    root: string | undefined,
    today: string,
  ): { readonly set: RuleSet; readonly problems: readonly SetProblem[] } {
    const named = readPolicy(file).head?.for ?? [];
    const newest = this.newest(usualSet, root);
    const among = named.length > 0 ? named : newest ? [newest] : [];
    const problems = new Map<string, SetProblem>();
    let set = emptySet;
    for (const { name, version } of among) {
      const base = this.get(name, version, root)?.set;
      const found = base ? overlaid(base, file, today, surroundings) : undefined;
      set = found?.set ?? base ?? set;
      const missing = `There is no rule set ${name} ${version} that can be used.`;
      for (const p of found?.problems ?? [atStart(file, missing)])
        problems.set(`${p.line} ${p.start} ${p.message}`, p);
    }
    return { set, problems: [...problems.values()] };
  }

  private fromFolder(name: string, version: string, folder: string, root: string): LoadedSet | undefined {
    const files = ruleFilesIn(folder);
    if (files.length === 0 || !isReallyWithin(folder, root)) return undefined;
    const stamp = files.map((f) => this.open(f) ?? stampOf(f) ?? "").join("\0");
    const kept = this.byFolder.get(folder);
    if (kept?.stamp === stamp) return kept.loaded;
    const texts: RuleFile[] = [];
    const unread: SetProblem[] = [];
    for (const file of files) {
      const shown = `${name}/${version}/${path.basename(file)}`;
      const edited = this.open(file);
      const got =
        edited !== undefined
          ? { text: edited }
          : isReallyWithin(file, root)
            ? readPlan(file)
            : ({ problem: "unreadable", why: "a link leads out of this folder of plans" } as const);
      if (isFault(got))
        unread.push({
          path: shown,
          line: 0,
          start: 0,
          end: 0,
          rule: "rules/unreadable",
          message: `This file cannot be read: ${"why" in got ? got.why : "what" in got ? `it holds ${got.what}` : "it is too large"}.`,
        });
      else texts.push({ path: shown, text: got.text });
    }
    const loaded = this.load(name, version, { files: texts }, folder, unread);
    this.byFolder.set(folder, { stamp, loaded });
    return loaded;
  }

  private load(
    name: string,
    version: string,
    from: { readonly files: readonly RuleFile[]; readonly hash?: string },
    folder?: string,
    unread: readonly SetProblem[] = [],
  ): LoadedSet {
    const hash = from.hash ?? contentHash(from.files);
    const key = `${name} ${version} ${hash}`;
    let read = this.byHash.get(key);
    if (!read) {
      const released = this.all ? undefined : releasedAs(name, version, hash);
      read = released ?? loadRuleSet(from.files, surroundings);
      this.byHash.set(key, read);
    }
    const problems = [...unread, ...read.problems, ...misnamed(name, version, read.partial, from)];
    return {
      name,
      version,
      hash,
      set: problems.length === 0 ? read.set : undefined,
      partial: read.partial,
      problems,
      // What comes with the program is opened only where somebody asks for its text.
      get files() {
        return from.files;
      },
      ...(folder !== undefined && { folder }),
    };
  }
}

const emptySet: RuleSet = {
  name: "",
  version: "",
  title: "",
  cautions: [],
  sources: new Map(),
  limits: new Map(),
  defaults: new Map(),
  rules: [],
  changes: [],
};

const atStart = (file: RuleFile, message: string): SetProblem => ({
  path: file.path,
  line: 0,
  start: 0,
  end: 0,
  rule: "rules/missing",
  message,
});

/** A set must call itself what its folder is called, or a plan would be judged by another set than it names. */
function misnamed(
  name: string,
  version: string,
  set: RuleSet,
  from: { readonly files: readonly RuleFile[] },
): SetProblem[] {
  if (set.name === "" || (set.name === name && set.version === version)) return [];
  const message = `This rule set calls itself ${set.name} ${set.version}, but its folder is ${name}/${version}.`;
  return [{ path: from.files[0]?.path ?? "", line: 0, start: 0, end: 0, rule: "rules/name", message }];
}

/** A name that cannot lead out of the folder in which it is looked up. */
const isPlain = (name: string): boolean => /^[\w][\w.-]*$/.test(name) && !name.includes("..");

/** Versions in their order: 2026.2 before 2026.10. */
export const byVersion = (a: string, b: string): number =>
  a.localeCompare(b, "en", { numeric: true }) || byText(a, b);

const foldersOf = (at: string): string[] => {
  try {
    return readdirSync(at, { withFileTypes: true })
      .filter((e) => e.isDirectory() && isPlain(e.name))
      .map((e) => e.name);
  } catch {
    return [];
  }
};

function ruleFilesIn(folder: string): string[] {
  // Most folders of plans have no rule sets of their own, and this is asked at every keystroke: no error is made for that.
  try {
    if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return [];
    return readdirSync(folder)
      .filter((f) => f.endsWith(".spanrules"))
      .sort(byText)
      .map((f) => path.join(folder, f));
  } catch {
    return [];
  }
}

function foldersIn(root: string): Listed[] {
  const rules = path.join(root, "rules");
  if (!existsSync(rules)) return [];
  return foldersOf(rules).flatMap((name) =>
    foldersOf(path.join(rules, name)).flatMap((version) => {
      const folder = path.join(rules, name, version);
      return ruleFilesIn(folder).length > 0 ? [{ name, version, folder }] : [];
    }),
  );
}
