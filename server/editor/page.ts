/** What the features of the editor see of one setup: its text read and checked, and what stands around it. */
import type { Range } from "vscode-languageserver-protocol";
import type { Household } from "../../language/model/household.js";
import type { Fix, Place, Tree } from "../../language/text/types.js";
import type { RuleSet } from "../../rules/engine/types.js";
import type { Scene } from "../../rules/scene.js";
import type { Allowed, PlanOptions } from "../../rules/steps/plan.js";
import type { Computed, Finding, Level, TransferResult } from "../../rules/types.js";

/** A place in some file of the workspace. */
export interface Located {
  readonly path: string;
  readonly range: Range;
}

export interface TextChange extends Located {
  readonly text: string;
}

/** A change that would settle something, as it is offered. */
export interface Offer {
  readonly title: string;
  readonly changes: readonly TextChange[];
}

/** One line of the list of findings: of form, or of substance with the finding behind it. */
export interface Noted {
  readonly rule: string;
  readonly level: Level;
  readonly message: string;
  readonly range: Range;
  readonly related: readonly (Located & { readonly message: string })[];
  /** Ready-made fixes of a finding of form. */
  readonly fixes: readonly Fix[];
  readonly finding?: Finding;
}

export interface Page {
  /** As findings name the file. */
  readonly path: string;
  readonly text: string;
  readonly tree: Tree;
  readonly household: Household;
  /** Transfers and ways back, names resolved and steps run. */
  readonly scenes: readonly Scene[];
  /** The rule set under which the page was checked. */
  readonly set?: RuleSet;
  readonly noted: readonly Noted[];
  readonly transfers: readonly TransferResult[];
  /** Rule sets that can be named, as `rules` spells them: `home-transfer 2026.1`. The newest comes first. */
  readonly pins: readonly string[];
  /** Other setups of the workspace, as `from` would spell them in this file. */
  readonly files: readonly string[];
  /** What a file declares, as `from` spells it here. */
  declaredIn(path: string): readonly { readonly name: string; readonly kind: string }[];
  /** Which file `from` means. */
  resolve(path: string): string | undefined;
  quantities(scene: Scene): readonly Computed[];
  /** What the rules say of a step in the course of a transfer; undefined where no rule set could be used. */
  readonly allowed?: (scene: Scene) => { readonly allowed: Allowed; readonly options: PlanOptions };
  /** The same page with another text, checked again: to find out what a change would bring. */
  withText(text: string): Page;
}

/** A place of a model, which may lie in another file, as a file and a range. */
export function locate(page: Page, place: Place): Located | undefined {
  const at = page.household.locate(place.entry);
  if (!at) return undefined;
  const line = at.line + place.line;
  return { path: at.path, range: { start: { line, character: place.start }, end: { line, character: place.end } } };
}

/** The text with changes to this file applied; of changes that overlap the later ones are left out. */
export function applyChanges(text: string, changes: readonly { readonly range: Range; readonly text: string }[]): string {
  const starts = [0];
  for (let i = 0; i < text.length; i++) {
    if (text[i] === "\n" || (text[i] === "\r" && text[i + 1] !== "\n")) starts.push(i + 1);
  }
  const offset = (p: { line: number; character: number }): number => Math.min(text.length, (starts[p.line] ?? text.length) + p.character);
  const spans = changes.map((c, order) => ({ from: offset(c.range.start), to: offset(c.range.end), text: c.text, order }));
  spans.sort((a, b) => a.from - b.from || a.order - b.order);
  let out = "";
  let at = 0;
  for (const s of spans) {
    if (s.from < at) continue;
    out += text.slice(at, s.from) + s.text;
    at = s.to;
  }
  return out + text.slice(at);
}
