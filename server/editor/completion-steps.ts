/** Completion of a step: those that can be taken and are allowed as things stand at this line come first, with why the others wait. */
import { CompletionItemKind, type Position } from "vscode-languageserver-protocol";
import { phrases, readStep, type Step } from "../../language/vocabulary/verbs.js";
import { apply, judge, run } from "../../rules/steps/machine.js";
import type { Scene } from "../../rules/scene.js";
import type { Proposal } from "./completion-values.js";
import type { Page } from "./page.js";
import type { Spot } from "./where.js";

export function stepItems(page: Page, position: Position, spot: Spot): readonly Proposal[] {
  const scene = sceneAround(page, spot);
  const said = spot.before.flatMap((a) => (a.type === "word" ? [a.word] : []));
  if (said.length < spot.before.length) return [];
  const lead = said.map((w) => `${w} `).join("");
  const judged = scene && judgeAt(page, scene, position);
  const rows = phrases(scene?.surface?.name).flatMap(({ text, phrase }, order) => {
    if (!text.startsWith(lead)) return [];
    const step = readStep(text.split(" ")).step;
    const standing = judged && step ? judged(step) : { rank: 0 };
    const help = `${phrase.help}\n\nNeeds: ${phrase.needs}.\n\nAfterwards: ${phrase.changes}.`;
    const proposal: Proposal = {
      label: text,
      kind: CompletionItemKind.Function,
      help,
      ...(standing.why !== undefined && { detail: standing.why }),
      ...(spot.before[0] && { from: spot.before[0].start }),
    };
    return [{ proposal, rank: standing.rank, order }];
  });
  return rows.sort((a, b) => a.rank - b.rank || a.order - b.order).map((r) => r.proposal);
}

/** The transfer whose steps are being written. */
function sceneAround(page: Page, spot: Spot): Scene | undefined {
  const [head] = spot.open;
  const name = head?.head.atoms[1];
  return name?.type === "word" ? page.scenes.find((s) => s.name === name.word) : undefined;
}

interface Standing {
  /** 0: can be taken and changes something; 1: a rule speaks against it here; 2: changes nothing; 3: cannot be taken. */
  readonly rank: number;
  readonly why?: string;
}

function judgeAt(page: Page, scene: Scene, position: Position): (step: Step) => Standing {
  const first = page.household.locate(scene.transfer.entry)?.line ?? 0;
  const before = (scene.steps ?? []).filter(({ node }) => {
    const line = first + node.line;
    return line < position.line || (line === position.line && node.statement.end < position.character);
  });
  const { setup } = scene;
  const state = run(
    before.map((s) => s.step),
    setup,
  ).end;
  const rules = page.rulesOfSteps(scene);
  return (step) => {
    const possible = judge(state, step, setup);
    if (!possible.ok) return { rank: 3, why: `not possible here: ${possible.because}` };
    const after = apply(state, step, setup);
    if (after === state) return { rank: 2, why: "changes nothing here" };
    const verdict = rules?.allowed(state, step, after, false) ?? true;
    return verdict === true
      ? { rank: 0 }
      : { rank: 1, why: verdict === false ? "a rule speaks against it here" : verdict };
  };
}
