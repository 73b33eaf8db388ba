/** What would help: the rule's remedies with their numbers worked out. Asked for rarely, so worked out when asked. */
import { isQuantity, type Thing } from "../../language/model/types.js";
import { showValue } from "../../language/quantity/show.js";
import type { Dimension, Quantity, ShownUnit } from "../../language/quantity/types.js";
import { spell } from "../../language/vocabulary/verbs.js";
import type { Shape } from "../../language/vocabulary/types.js";
import type { Edit, Remedy } from "../types.js";
import { insertStep, moveStep, setValue } from "./edits.js";
import type { Kept } from "./evaluate.js";
import { holderOf, pathIn, valueAt, type Path } from "./fact-paths.js";
import { holesIn } from "./holes.js";
import { fill } from "./messages.js";
import type { Judgement } from "./judge.js";
import { holdingRanges, nearestIn, type Range, type Tried } from "./ranges.js";
import type { Subject } from "./subjects.js";
import type { RemedyRule, Rule } from "./types.js";
import { loadedWith, valuesSet, withBlock, withThing, withValues, type Variants } from "./variants.js";

export function remediesOf(rule: Rule, subject: Subject, kept: Kept, variants: Variants): readonly Remedy[] {
  return rule.remedies.flatMap((r): readonly Remedy[] => {
    if (r.is === "text") return [{ title: fill(r.text, rule, kept.judgement, subject) }];
    return r.is === "set" ? setting(r, rule, subject, kept, variants) : stepping(r, rule, subject, kept);
  });
}

function stepping(
  r: RemedyRule & { readonly is: "insert" | "move" },
  rule: Rule,
  subject: Subject,
  kept: Kept,
): readonly Remedy[] {
  const { step, scene } = subject;
  if (!step || !scene) return [];
  // Near and far mean nothing while nobody has said on which side the surface lies.
  if (!scene.side && holesIn(r.step).some((h) => h === "near" || h === "far")) return [];
  const text = fill(r.step, rule, kept.judgement, subject);
  const entry = scene.transfer.entry;
  const beside = step.line.node;
  const number = (scene.steps ?? []).indexOf(step.line) + 1;
  const where = `${r.side} step ${number}, "${step.phrase}"`;
  if (r.is === "insert") {
    const edit = insertStep(entry, beside, text, r.side);
    return [{ title: `Put the step "${text}" ${where}`, ...(edit && { edits: [edit] }) }];
  }
  const lines = scene.steps ?? [];
  const later = [...lines.slice(number), ...lines.slice(0, Math.max(0, number - 1)).reverse()];
  const moved = later.find((l) => spell(l.step) === text || spell(l.step).startsWith(`${text} `));
  const edits = moved && moveStep(entry, moved, beside, spell(moved.step), r.side);
  return [{ title: `Move the step "${text}" ${where}`, ...(edits && { edits }) }];
}

/** What a tape, a scale or a protractor is read to. */
function stepOf(dimension: Dimension, unit: ShownUnit): { readonly step: number; readonly unit: ShownUnit } {
  const metric = ["mm", "cm", "m", "kg", "N"].includes(unit.unit);
  switch (dimension) {
    case "length":
      return metric
        ? { step: 0.005, unit }
        : { step: 0.0254 / 4, unit: { ...unit, denominator: Math.max(4, unit.denominator ?? 4) } };
    case "angle":
      return { step: (5 * Math.PI) / 180, unit };
    case "mass":
      return { step: metric ? 0.5 : 0.45359237, unit };
    case "force":
      return { step: metric ? 5 : 4.4482216152605, unit };
    default:
      return { step: 0.05, unit };
  }
}

function setting(
  r: RemedyRule & { readonly is: "set" },
  rule: Rule,
  subject: Subject,
  kept: Kept,
  variants: Variants,
): readonly Remedy[] {
  const target = targetOf(r, subject);
  if (!target) return [];
  const { thing, path, written, plausible } = target;
  const { step, unit } = stepOf(written.dimension, written.unit);
  const household = subject.facts.sight.household;
  const asWritten = isQuantity(valueAt(thing, path)) ? written.nominal : undefined;
  const trial =
    (exact: boolean) =>
    (x: number): Tried => {
      const base = exact
        ? { ...written, low: written.nominal, high: written.nominal, toleranceGiven: true }
        : written;
      const judged = variants.judge(
        rule,
        subject,
        withThing(household, target.owner, changed(target, base, x)),
      );
      return { holds: judged?.verdict === "holds", slack: judged && slackOf(judged) };
    };
  let ranges = holdingRanges(plausible[0], plausible[1], step, asWritten, trial(false));
  // The doubt of the present value can be too wide for anything to hold; what is set anew is measured anew.
  if (ranges.length === 0) ranges = holdingRanges(plausible[0], plausible[1], step, asWritten, trial(true));
  const best = nearestIn(ranges, written.nominal);
  if (!best) return [];
  const range = rangeInWords(best.range, plausible, written.dimension, unit);
  const title = fill(r.text, rule, kept.judgement, subject, { range });
  const edits = editsFor(
    target,
    written,
    best.value,
    unit,
    household.path,
    (entry) => household.locate(entry)?.path,
  );
  return [{ title, ...(edits && { edits }) }];
}

/** How far a judgement is from the bounds of `holds`, with its doubt against it. */
function slackOf(j: Judgement): number | undefined {
  if (j.margin === undefined || !j.value) return undefined;
  const { low, nominal, high } = j.value.interval;
  const slack = j.margin - Math.max(nominal - low, high - nominal);
  return Number.isFinite(slack) ? slack : undefined;
}

interface Target {
  /** The thing that is replaced in the household. */
  readonly owner: Thing;
  /** Where the key stands: the owner, or a block inside it. */
  readonly thing: Thing;
  readonly path: Path & { readonly key: string };
  readonly written: Quantity;
  readonly plausible: readonly [number, number];
}

function targetOf(r: RemedyRule & { readonly is: "set" }, subject: Subject): Target | undefined {
  const role = r.role === "transfer" ? transferThing(r.key, subject) : subject.facts.role(r.role);
  const path = role && pathIn(role.kind, r.key);
  const holder = role && path && holderOf(role, path);
  if (!holder || path.key === undefined) return undefined;
  const shape = quantityShape(path.spec?.shape, path.part);
  if (!shape?.plausible) return undefined;
  const value = valueAt(holder, path);
  const written: Quantity = isQuantity(value)
    ? value
    : {
        type: "quantity",
        dimension: shape.dimension,
        low: shape.plausible[0],
        nominal: shape.plausible[0],
        high: shape.plausible[0],
        toleranceGiven: false,
        shape: "plain",
        known: "measured",
        knownGiven: false,
        unit: { unit: shape.units[0] ?? "1" },
      };
  // What adjusts is a range of choice: setting it is another act.
  if (written.shape === "adjusts") return undefined;
  return {
    owner: role,
    thing: holder,
    path: { ...path, key: path.key },
    written,
    plausible: shape.plausible,
  };
}

const transferThing = (key: string, subject: Subject): Thing | undefined => {
  const said = subject.scene?.value(key.split(".")[0]!);
  return said && (said.value !== undefined ? said.thing : subject.scene!.transfer);
};

function quantityShape(
  shape: Shape | undefined,
  part: string | undefined,
): Extract<Shape, { is: "quantity" }> | undefined {
  if (shape?.is === "quantity") return shape;
  if (shape?.is === "parts")
    return quantityShape(
      shape.parts.find((p) => (part === undefined ? p.shape.is === "quantity" : p.name === part))?.shape,
      undefined,
    );
  if (shape?.is === "either")
    return shape.shapes.map((s) => quantityShape(s, part)).find((s) => s !== undefined);
  return undefined;
}

/** The owner with the target at `x`. A key of an inner block is set there. */
function changed(t: Target, base: Quantity, x: number): Thing {
  const thing = withValues(t.thing, valuesSet(t.thing, t.path, base, x));
  return t.thing === t.owner ? thing : withBlock(t.owner, t.thing, thing);
}

function editsFor(
  t: Target,
  written: Quantity,
  value: number,
  unit: ShownUnit,
  own: string,
  pathOf: (entry: Thing["entry"]) => string | undefined,
): readonly Edit[] | undefined {
  if (pathOf(t.thing.entry) !== own) return undefined;
  const edit = setValue(t.thing, t.path.key, showValue(value, written.dimension, unit));
  if (!edit) return undefined;
  const other = loadedWith[t.path.key];
  const beside = other === undefined ? undefined : t.thing.values[other];
  if (other === undefined || !isQuantity(beside)) return [edit];
  const moved = setValue(
    t.thing,
    other,
    showValue(beside.nominal + value - written.nominal, beside.dimension, beside.unit),
  );
  return moved && [edit, moved];
}

/** `17 1/2 in to 19 1/2 in`; open where the range goes as far as anything plausible. */
function rangeInWords(
  range: Range,
  plausible: readonly [number, number],
  dimension: Dimension,
  unit: ShownUnit,
): string {
  const say = (x: number): string => showValue(x, dimension, unit);
  const low = range.low > plausible[0] + 1e-6;
  const high = range.high < plausible[1] - 1e-6;
  if (low && !high) return `${say(range.low)} or more`;
  if (high && !low) return `${say(range.high)} or less`;
  return say(range.low) === say(range.high) ? say(range.low) : `${say(range.low)} to ${say(range.high)}`;
}
