/** Plans steps where they are missing: `steps planned`, no steps at all, or a transfer without a way back. */
import type { TextEdit } from "vscode-languageserver-protocol";
import type { Household } from "../../language/model/household.js";
import type { Entry, Node } from "../../language/text/types.js";
import { spell } from "../../language/vocabulary/verbs.js";
import type { Scene } from "../../rules/scene.js";
import { plan, type Plan } from "../../rules/steps/plan.js";
import type { FixContext, Proposed } from "./fixes.js";
import type { Page } from "./page.js";
import { rangeOfNode, rangeOn, touches } from "./where.js";

export function planFixes({ page, range }: FixContext): readonly Proposed[] {
  return page.scenes.flatMap((scene): Proposed[] => {
    const at = page.household.locate(scene.transfer.entry);
    if (at?.path !== page.path) return [];
    const { node } = scene.transfer;
    const left = plannedStatement(node);
    const head = rangeOn(at.line + node.line, node.statement.start, node.statement.end);
    const statement = left && rangeOn(at.line + left.line, left.statement.start, left.statement.end);
    const here = touches(head, range) || (statement !== undefined && touches(statement, range));
    if (!here) return [];
    const offered: Proposed[] = [];
    if (!scene.transfer.inner["steps"]) {
      const title = scene.transfer.kind === "way-back" ? "Plan the way back" : "Plan the steps";
      offered.push(
        ...propose(page, scene, page.household, title, (steps) => edit(page, at.line, node, left, steps)),
      );
    }
    if (scene.transfer.kind === "transfer" && !page.scenes.some((s) => s.base === scene.transfer))
      offered.push(...createWayBack(page, scene, at.line));
    return offered;
  });
}

/** An editor asks for fixes at every move of the cursor; an order is searched once for a scene. */
const planned = new WeakMap<Scene, Plan>();

function propose(
  page: Page,
  scene: Scene,
  household: Household,
  title: string,
  editOf: (steps: readonly string[]) => TextEdit | undefined,
): Proposed[] {
  const rules = page.rulesOfSteps(scene, household);
  // Without rules every order would do; that would be a guess.
  if (!rules) return [];
  let found = planned.get(scene);
  if (!found) planned.set(scene, (found = plan(scene.setup, rules.allowed, { reads: rules.reads })));
  if (!found.steps) return [{ title, edits: [], for: [], disabled: found.reason }];
  const change = editOf(found.steps.map(spell));
  return change
    ? [
        {
          title: `${title}: ${found.steps.length} steps`,
          edits: [{ path: page.path, edit: change }],
          for: [],
        },
      ]
    : [];
}

/** The statement `steps planned` of a block. */
const plannedStatement = (node: Node): Node | undefined =>
  node.children?.find((c) => {
    const [a, b] = c.statement.atoms;
    return (
      !c.children && a?.type === "word" && a.word === "steps" && b?.type === "word" && b.word === "planned"
    );
  });

const blockOf = (steps: readonly string[], indent: string): string =>
  [`steps {`, ...steps.map((s) => `${indent}  ${s}`), `${indent}}`].join("\n");

/** Puts the steps in place of `steps planned`, or before the brace that closes the transfer. */
function edit(
  page: Page,
  first: number,
  node: Node,
  left: Node | undefined,
  steps: readonly string[],
): TextEdit | undefined {
  const textOf = (line: number): string => page.tree.lines[first + line]!.text;
  const indent = /^\s*/.exec(textOf(node.line))![0];
  if (left) {
    const text = textOf(left.line);
    const { start, end } = left.statement;
    const own = /^\s*/.exec(text)![0];
    if (own.length === start)
      return { range: rangeOn(first + left.line, start, end), newText: blockOf(steps, own) };
    // In a block on one line: the steps get lines of their own, and so does what follows them.
    const from = text.slice(0, start).trimEnd().length;
    const to = end + /^\s*/.exec(text.slice(end))![0].length;
    return {
      range: rangeOn(first + left.line, from, to),
      newText: `\n${indent}  ${blockOf(steps, `${indent}  `)}\n${indent}`,
    };
  }
  const { close } = node;
  if (!close) return undefined;
  const text = textOf(close.line);
  const brace = close.start - 1;
  const own = /^\s*/.exec(text)![0];
  if (own.length === brace)
    return {
      range: rangeOn(first + close.line, 0, 0),
      newText: `${indent}  ${blockOf(steps, `${indent}  `)}\n`,
    };
  const from = text.slice(0, brace).trimEnd().length;
  return {
    range: rangeOn(first + close.line, from, brace),
    newText: `\n${indent}  ${blockOf(steps, `${indent}  `)}\n${indent}`,
  };
}

/** A block for the way back, behind the transfer, with its steps planned as it would then be read. */
function createWayBack(page: Page, scene: Scene, first: number): Proposed[] {
  const { node, name, entry } = scene.transfer;
  if (!node.close || sharesLastLine(page, entry, first)) return [];
  const wanted = name.startsWith("into-") ? `out-of-${name.slice(5)}` : `${name}-back`;
  const wayBack = page.household.things.has(wanted) ? `${name}-way-back` : wanted;
  if (page.household.things.has(wayBack)) return [];
  const end = rangeOfNode(node, first).end;
  const after = page.tree.lines[end.line]!.text.length;
  const at = rangeOn(end.line, after, after);
  const block = (steps: string): string => `\n\nway-back ${wayBack} of ${name} {\n  ${steps}\n}`;
  const lines = page.text.split(/(?<=\r\n|\n|\r(?!\n))/);
  const before = lines.slice(0, end.line).join("").length + after;
  const tried = page.scenesOf(page.text.slice(0, before) + block("steps planned") + page.text.slice(before));
  const back = tried.scenes.find((s) => s.name === wayBack);
  if (!back) return [];
  return propose(page, back, tried.household, "Add the way back", (steps) => ({
    range: at,
    newText: block(blockOf(steps, "  ")),
  }));
}

/** Another statement follows on the line on which the block ends. */
const sharesLastLine = (page: Page, entry: Entry, first: number): boolean => {
  const last = first + entry.lines.length - 1;
  return page.tree.entries.some(
    (e) => e.entry !== entry && e.line <= last && last < e.line + e.entry.lines.length,
  );
};
