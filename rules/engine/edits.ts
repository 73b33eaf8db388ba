/** Edits that a remedy offers: a value set in its place, a step put before or after another. */
import type { StepLine, Thing } from "../../language/model/types.js";
import type { Entry, Node, Place, Statement } from "../../language/text/types.js";
import type { Edit } from "../types.js";

/** The statement that starts at a place. */
function statementAt(place: Place): Statement | undefined {
  const item = place.entry.lines[place.line]?.items.find(
    (i) => i.type === "statement" && i.start === place.start,
  );
  return item?.type === "statement" ? item : undefined;
}

/**
 * Writes `text` as the value of a key. Only the amount is replaced, what follows it (a tolerance, how it is known, a word)
 * stays. Undefined where what stands there is not an amount.
 */
export function setValue(thing: Thing, key: string, text: string): Edit | undefined {
  if (thing.values[key] === undefined) return insertKey(thing, key, text);
  const place = thing.placeOf(key);
  const statement = statementAt(place);
  const value = statement?.atoms.find(
    (a, i) => i > 0 && (a.type === "measure" || (a.type === "word" && a.word === "unknown")),
  );
  return value && { place: { ...place, start: value.start, end: value.end }, text };
}

/** Writes a new line `key text` as the first of a block; in a block on one line, the first statement. */
export function insertKey(thing: Thing, key: string, text: string): Edit | undefined {
  const { entry, node } = thing;
  const line = entry.lines[node.line]?.text;
  if (line === undefined || !node.children) return undefined;
  if (node.close?.line === node.line) {
    const brace = line.indexOf("{", node.statement.end);
    return brace < 0
      ? undefined
      : {
          place: at(entry, node.line, brace + 1),
          text: ` ${key} ${text}${node.children.length > 0 ? ";" : " "}`,
        };
  }
  return { place: at(entry, node.line, line.length), text: `\n${indent(line)}  ${key} ${text}` };
}

/** Puts a step before or after another one, on a line of its own where that one has one. */
export function insertStep(
  entry: Entry,
  beside: Node,
  text: string,
  side: "before" | "after",
): Edit | undefined {
  const line = entry.lines[beside.line];
  if (!line) return undefined;
  const alone = line.items.length === 1;
  const { start, end } = beside.statement;
  if (side === "before")
    return {
      place: at(entry, beside.line, start),
      text: alone ? `${text}\n${indent(line.text)}` : `${text}; `,
    };
  return alone
    ? { place: at(entry, beside.line, line.text.length), text: `\n${indent(line.text)}${text}` }
    : { place: at(entry, beside.line, end), text: `; ${text}` };
}

/** Moves a step before or after another one. */
export function moveStep(
  entry: Entry,
  moved: StepLine,
  beside: Node,
  text: string,
  side: "before" | "after",
): readonly Edit[] | undefined {
  const insert = insertStep(entry, beside, text, side);
  const { start, end } = moved.node.statement;
  return insert && [insert, { place: { entry, line: moved.node.line, start, end }, text: "" }];
}

const at = (entry: Entry, line: number, column: number): Place => ({
  entry,
  line,
  start: column,
  end: column,
});
const indent = (line: string): string => /^\s*/.exec(line)![0];
