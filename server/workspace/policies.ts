/** Policies: files beside the plans that change a released rule set for one place of work. A plan names the one under which it stands. */
import { statSync } from "node:fs";
import path from "node:path";
import { overlaid } from "../../rules/engine/overlay.js";
import type { Overlay } from "../../rules/engine/overlay-types.js";
import type { RuleSet, SetProblem } from "../../rules/engine/types.js";
import type { Surroundings } from "../../rules/engine/verify.js";
import { contentHash } from "./content-hash.js";
import { isFault, isReallyWithin, isWithin, readPlan, stampOf } from "./files.js";

/** A file of this name in the folder of plans is the policy of its plans; each must name it. */
export const usualPolicy = "policy.spanrules";

/** A policy in force, with its content in one short text. */
export interface LoadedPolicy extends Overlay {
  /** SHA-256 over its text, in hex. */
  readonly hash: string;
}

export interface UnderPolicy {
  /** Undefined: the policy was refused; `problems` says why, each at its line. */
  readonly set: RuleSet | undefined;
  readonly policy: LoadedPolicy | undefined;
  readonly problems: readonly SetProblem[];
  /** The policy's file, absolute. */
  readonly file: string;
}

/** Why there is no policy to be used, in words. */
export interface NoPolicy {
  readonly why: string;
}

interface Kept {
  readonly stamp: string;
  readonly today: string;
  readonly base: RuleSet;
  readonly made: UnderPolicy;
}

/** Asked at every keystroke, mostly where there is none: for that no error is made. A text that was never saved has no folder at all. */
function isFile(file: string): boolean {
  try {
    return statSync(file, { throwIfNoEntry: false })?.isFile() === true;
  } catch {
    return false;
  }
}

export class Policies {
  private readonly kept = new Map<string, Kept>();

  /** `open`: the text of a file that is being edited. */
  constructor(
    private readonly open: (file: string) => string | undefined,
    private readonly around: Surroundings,
  ) {}

  /** The policy of a folder of plans that every plan in it should name, relative to the plan `from`; undefined where there is none. */
  usualFor(from: string, root: string): string | undefined {
    if (root === "") return undefined;
    const file = path.join(root, usualPolicy);
    if (!isFile(file)) return undefined;
    return path.relative(path.dirname(from), file).split(path.sep).join("/");
  }

  /** The set under the policy that a plan writes as `written`. The same object while nothing that it rests on changes. */
  under(base: RuleSet, written: string, from: string, root: string, today: string): UnderPolicy | NoPolicy {
    const found = this.find(written, from, root);
    if ("why" in found) return found;
    const { file } = found;
    const key = `${file}\n${base.name} ${base.version}`;
    const edited = this.open(file);
    const stamp = edited ?? stampOf(file) ?? "";
    const kept = this.kept.get(key);
    if (kept && kept.stamp === stamp && kept.today === today && kept.base === base) return kept.made;
    const got = edited !== undefined ? { text: edited } : readPlan(file);
    if (isFault(got)) {
      const why =
        got.problem === "not-found"
          ? "there is no such file"
          : "why" in got
            ? got.why
            : "what" in got
              ? `it holds ${got.what}`
              : "it is too large";
      return { why };
    }
    const shown = path.relative(root, file).split(path.sep).join("/");
    const text = { path: shown, text: got.text };
    const { set, overlay, problems } = overlaid(base, text, today, this.around);
    const policy = overlay && { ...overlay, hash: contentHash([text]) };
    const made: UnderPolicy = { set, policy, problems, file };
    this.kept.set(key, { stamp, today, base, made });
    return made;
  }

  /** Nothing outside the plan's folder of plans is opened, whatever links say. */
  private find(written: string, from: string, root: string): { readonly file: string } | NoPolicy {
    if (root === "") return { why: "no file is read here" };
    const away = path.isAbsolute(written) || path.win32.isAbsolute(written) || /^[a-z]:/i.test(written);
    const file = path.resolve(path.dirname(from), written.replaceAll("\\", "/"));
    if (away || !isWithin(file, root)) return { why: "it lies outside this folder of plans" };
    if (!file.endsWith(".spanrules")) return { why: "the name of a policy's file ends in .spanrules" };
    if (this.open(file) !== undefined) return { file };
    if (stampOf(file) === undefined) return { why: "there is no such file" };
    if (!isReallyWithin(file, root)) return { why: "it lies outside this folder of plans" };
    return { file };
  }
}
