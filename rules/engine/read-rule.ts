/** Reads one rule: what it looks at, when it applies, what it judges, and everything said about it. */
import type { Atom, Node } from "../../language/text/types.js";
import type { BasisNote, Level } from "../types.js";
import { atomText } from "../../language/text/atom.js";
import { ExpressionError, parseExpression, parsePrefix } from "./parse-expression.js";
import { readsAny, type Expr } from "./expression.js";
import { readBands } from "./read-bands.js";
import { readExamples } from "./read-examples.js";
import { nameOf, put } from "./read-values.js";
import { basisKeys, isBasisKey, readBasis, type Page } from "./statements.js";
import type { Judged, RemedyRule, Rule, Scope } from "./types.js";

export const ruleWords = [
  "title",
  "for",
  "when",
  "judge",
  "bands",
  "require",
  "message",
  "unknown",
  "because",
  ...basisKeys,
  "covers",
  "not-covered",
  "remedy",
  "caution",
  "at",
  "examples",
];
const isRuleWord: ReadonlySet<string> = new Set(ruleWords);
export const levels: readonly Level[] = ["advice", "caution", "stop"];

const topicAndTrouble = /^[a-z][a-z0-9-]*\/[a-z][a-z0-9-]*$/;

/** `order` is set by the reader of the whole set. */
export function readRule(page: Page, node: Node): Rule | undefined {
  const id = nameOf(page, node, "rule");
  if (id !== undefined && !topicAndTrouble.test(id))
    page.problem(
      "rules/name-expected",
      node,
      `A rule is named topic/trouble, in small letters, not "${id}".`,
      node.statement.atoms[1],
    );
  const once = new Map<string, Node>();
  const notes: BasisNote[] = [];
  const when: Rule["when"][number][] = [];
  const texts: Record<"covers" | "not-covered" | "caution", string[]> = {
    covers: [],
    "not-covered": [],
    caution: [],
  };
  const remedies: RemedyRule[] = [];
  const places: string[] = [];
  let wrong = false;
  for (const s of node.children ?? []) {
    const key = page.key(s);
    if (key === undefined) continue;
    if (isBasisKey(key)) put(notes, readBasis(page, s, key));
    else if (key === "covers" || key === "not-covered" || key === "caution") put(texts[key], page.text(s));
    else if (key === "when") {
      const expr = expression(page, s, 1);
      if (expr) when.push({ expr, at: page.place(s) });
      else wrong = true;
    } else if (key === "remedy") put(remedies, readRemedy(page, s));
    else if (key === "at") places.push(...readPlaces(page, s));
    else if (isRuleWord.has(key)) {
      const before = once.get(key);
      if (before)
        page.problem(
          "rules/given-twice",
          s,
          `${key} is given twice in this rule (also on line ${page.line + before.line + 1}).`,
        );
      else once.set(key, s);
    } else page.unknownKey(s, key, "A rule", ruleWords);
  }
  const text = (key: string): string | undefined => {
    const s = once.get(key);
    return s && page.text(s);
  };
  const title = text("title");
  const because = text("because");
  const message = text("message");
  const unknown = text("unknown");
  const scope = readScope(page, node, once.get("for"));
  const judged = readJudged(page, node, once);
  const exampleNode = once.get("examples");
  const examples = exampleNode ? readExamples(page, exampleNode) : [];
  for (const [key, say] of [
    ["title", "a title"],
    ["because", "its rationale (because)"],
    ["examples", "examples"],
  ] as const)
    if (!once.has(key)) page.problem("rules/missing", node, `This rule lacks ${say}.`);
  if (
    notes.length === 0 &&
    !(node.children ?? []).some(
      (s) => s.statement.atoms[0]?.type === "word" && isBasisKey(s.statement.atoms[0].word),
    )
  )
    page.problem(
      "rules/no-basis",
      node,
      "This rule says nowhere what it rests on: published, derived, common-practice, from-memory or project-choice.",
    );
  if (!id || wrong || !title || !because || !scope || !judged) return undefined;
  return {
    id,
    title,
    scope,
    when,
    judged,
    ...(message !== undefined && { message }),
    ...(unknown !== undefined && { unknown }),
    because,
    bases: notes,
    covers: texts.covers,
    notCovered: texts["not-covered"],
    remedies,
    cautions: texts.caution,
    places,
    examples,
    at: page.place(node),
    order: 0,
  };
}

export function expression(page: Page, node: Node, from: number, to?: number): Expr | undefined {
  const read = parseExpression(node.statement.atoms.slice(from, to), {
    start: node.statement.start,
    end: node.statement.end,
  });
  if (!(read instanceof ExpressionError)) return read;
  page.problem("rules/expression", node, read.message, read);
  return undefined;
}

/** `for each transfer`, `for each bed`, `for setup`, `for each step slide`, `for end of transfer`. Step words may stand in quotes. */
function readScope(page: Page, node: Node, s: Node | undefined): Scope | undefined {
  if (!s) {
    page.problem(
      "rules/missing",
      node,
      "This rule does not say what it looks at: for each transfer, for each bed, for each step, for setup ...",
    );
    return undefined;
  }
  const words = s.statement.atoms
    .slice(1)
    .map((a) => (a.type === "word" ? a.word : a.type === "text" ? a.value : undefined));
  const [first, kind, ...rest] = words;
  if (first === "setup" && words.length === 1) return { is: "setup" };
  if (first === "end" && kind === "of" && rest[0] === "transfer" && words.length === 3) return { is: "end" };
  if (first === "each" && kind === "step") {
    const phrases: string[] = [];
    let phrase: string[] = [];
    for (const a of s.statement.atoms.slice(3)) {
      if (a.type === "mark" && a.mark === ",") {
        if (phrase.length > 0) phrases.push(phrase.join(" "));
        phrase = [];
      } else if (a.type === "word" || a.type === "text")
        phrase.push(a.type === "word" ? a.word : a.value.trim().toLowerCase());
      else {
        page.problem("rules/statement", s, `A step is expected here, not "${atomText(a)}".`, a);
        return undefined;
      }
    }
    if (phrase.length > 0) phrases.push(phrase.join(" "));
    return { is: "step", phrases };
  }
  if (first === "each" && kind !== undefined && words.length === 2)
    return kind === "transfer" ? { is: "transfer" } : { is: "thing", kind };
  page.problem(
    "rules/statement",
    s,
    "for takes: each transfer, each bed (or another kind), each step, setup, or end of transfer.",
  );
  return undefined;
}

function readJudged(page: Page, node: Node, once: ReadonlyMap<string, Node>): Judged | undefined {
  const judge = once.get("judge");
  const bands = once.get("bands");
  const require = once.get("require");
  if (require && (judge || bands)) {
    page.problem(
      "rules/statement",
      require,
      "A rule either judges a value by bands or requires something, not both.",
    );
    return undefined;
  }
  if (require) return readRequire(page, require);
  if (!judge || !bands) {
    page.problem(
      "rules/missing",
      node,
      judge
        ? "The judged value has no bands."
        : bands
          ? "These bands judge nothing: judge is missing."
          : "This rule judges nothing: it needs judge and bands, or require.",
    );
    return undefined;
  }
  const expr = expression(page, judge, 1);
  const read = readBands(page, bands);
  return expr && { is: "bands", expr, ...read, signed: read.signed && isRise(expr), at: page.place(judge) };
}

/** Rises are shown as up or down; every other value that may be below nothing is shown with its sign. */
const isRise = (expr: Expr): boolean => readsAny(expr, (name) => /[.-]rise(-|$)/.test(name));

/** `require EXPR else LEVEL ["message"]`. */
function readRequire(page: Page, s: Node): Judged | undefined {
  const atoms = s.statement.atoms;
  const read = parsePrefix(atoms.slice(1), s.statement);
  if (read instanceof ExpressionError) {
    page.problem("rules/expression", s, read.message, read);
    return undefined;
  }
  const [other, level, message, more] = atoms.slice(1 + read.taken);
  if (
    other?.type !== "word" ||
    other.word !== "else" ||
    level?.type !== "word" ||
    !levels.includes(level.word as Level)
  ) {
    page.problem(
      "rules/statement",
      s,
      `require EXPRESSION else advice, caution or stop is expected${other ? `, not "${atomText(other)}"` : ""}.`,
      other ?? s.statement,
    );
    return undefined;
  }
  const wrong = message && message.type !== "text" ? message : more;
  if (wrong) page.problem("rules/left-over", s, `"${atomText(wrong)}" is left over here.`, wrong);
  return {
    is: "require",
    expr: read.expr,
    level: level.word as Level,
    ...(message?.type === "text" && { message: message.value }),
    at: page.place(s),
  };
}

/** `remedy "text"`, `remedy set to.top "text"`, `remedy insert "check brakes" before`, `remedy move "check brakes" before`. */
function readRemedy(page: Page, s: Node): RemedyRule | undefined {
  const [, first, second, third, more] = s.statement.atoms;
  const over = (a: Atom | undefined): boolean => {
    if (a) page.problem("rules/left-over", s, `"${atomText(a)}" is left over here.`, a);
    return !a;
  };
  if (first?.type === "text") return over(second) ? { is: "text", text: first.value } : undefined;
  if (first?.type === "word" && first.word === "set" && second?.type === "word" && third?.type === "text") {
    const dot = second.word.indexOf(".");
    if (dot < 0)
      page.problem("rules/statement", s, "remedy set names a role and a key, such as to.top.", second);
    else if (over(more))
      return {
        is: "set",
        role: second.word.slice(0, dot),
        key: second.word.slice(dot + 1),
        text: third.value,
        at: page.spot(s.line, second),
      };
    return undefined;
  }
  if (
    first?.type === "word" &&
    (first.word === "insert" || first.word === "move") &&
    second?.type === "text" &&
    third?.type === "word" &&
    (third.word === "before" || third.word === "after")
  )
    return over(more)
      ? { is: first.word, step: second.value, side: third.word, at: page.spot(s.line, second) }
      : undefined;
  page.problem(
    "rules/statement",
    s,
    `remedy takes "text", set ROLE.KEY "text", insert "step" before (or after), or move "step" before (or after).`,
  );
  return undefined;
}

function readPlaces(page: Page, s: Node): readonly string[] {
  const found: string[] = [];
  for (const a of s.statement.atoms.slice(1)) {
    if (a.type === "word") found.push(a.word);
    else if (!(a.type === "mark" && a.mark === ","))
      page.problem("rules/statement", s, `at takes names such as to.top, not "${atomText(a)}".`, a);
  }
  return found;
}
