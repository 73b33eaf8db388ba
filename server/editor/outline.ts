/** The outline: what a setup declares, block by block. It needs only the tree, so it also answers while lines are wrong. */
import {
  SymbolKind,
  type DocumentSymbol,
  type FoldingRange,
  FoldingRangeKind,
} from "vscode-languageserver-protocol";
import type { Atom, Node, Tree } from "../../language/text/types.js";
import { kindOf, rangeOfNode, rangeOn } from "./where.js";

const symbols: { readonly [kind: string]: SymbolKind | undefined } = {
  client: SymbolKind.Object,
  helper: SymbolKind.Object,
  room: SymbolKind.Namespace,
  transfer: SymbolKind.Function,
  "way-back": SymbolKind.Function,
  trial: SymbolKind.Event,
  steps: SymbolKind.Array,
  rule: SymbolKind.Function,
  limit: SymbolKind.Constant,
  default: SymbolKind.Constant,
  source: SymbolKind.File,
};

export function outline(tree: Tree): DocumentSymbol[] {
  return tree.entries.flatMap(({ entry, line }) => symbolOf(entry.node, line, 0));
}

function symbolOf(node: Node, line: number, depth: number): DocumentSymbol[] {
  const head = kindOf(node.statement.atoms);
  if (!head || (!node.children && depth > 0)) return [];
  const rest = node.statement.atoms.slice(head.used);
  const kind = head.kind.replaceAll("may-change", "may change");
  // A statement of its own is shown with what it says, a block with its name.
  const name = node.children && rest.length > 0 ? spelled(rest[0]!) : kind;
  const detail = node.children
    ? rest.length > 0
      ? [kind, ...rest.slice(1).map(spelled)].join(" ")
      : ""
    : rest.map(spelled).join(" ");
  return [
    {
      name,
      ...(detail !== "" && { detail }),
      kind: symbols[head.kind] ?? (node.children ? SymbolKind.Class : SymbolKind.Property),
      range: rangeOfNode(node, line),
      selectionRange: rangeOn(line + node.line, node.statement.start, node.statement.end),
      children: (node.children ?? []).flatMap((c) => symbolOf(c, line, depth + 1)),
    },
  ];
}

function spelled(a: Atom): string {
  switch (a.type) {
    case "word":
    case "number":
      return a.raw;
    case "text":
      return a.value;
    case "measure":
      return a.spelling;
    case "date":
      return a.date;
    case "mark":
      return a.mark;
  }
}

/** Blocks of more than one line, and runs of comment lines. */
export function folding(tree: Tree): FoldingRange[] {
  const found: FoldingRange[] = [];
  const blocks = (node: Node, line: number): void => {
    const end = node.close?.line;
    if (end !== undefined && end > node.line + 1)
      found.push({ startLine: line + node.line, endLine: line + end - 1 });
    for (const child of node.children ?? []) blocks(child, line);
  };
  for (const { entry, line } of tree.entries) blocks(entry.node, line);
  let first = -1;
  for (let i = 0; i <= tree.lines.length; i++) {
    const line = tree.lines[i];
    const onlyComment =
      line !== undefined &&
      line.comment !== undefined &&
      line.items.length === 0 &&
      line.text.trimStart().startsWith("#");
    if (onlyComment && first < 0) first = i;
    if (onlyComment || first < 0) continue;
    if (i - first > 1) found.push({ startLine: first, endLine: i - 1, kind: FoldingRangeKind.Comment });
    first = -1;
  }
  return found;
}
