/** Tells things apart by what they are called, so that what was read of one is found again when its block is read anew. */
import type { Thing } from "../language/model/types.js";
import type { Entry } from "../language/text/types.js";

const heads = new WeakMap<Entry, string>();
function headOf(entry: Entry): string {
  let head = heads.get(entry);
  if (head === undefined) {
    const [kind, name] = entry.node.statement.atoms.map((a) => (a.type === "word" ? a.word : ""));
    heads.set(entry, (head = `${kind ?? ""} ${name ?? ""}`));
  }
  return head;
}

/** Two rooms may each have a door of the same name, and every chair has a drive wheel: the block around it counts too. */
export const whoOf = ({ entry, kind, name }: Thing): string => `${headOf(entry)} ${kind} ${name}`;
