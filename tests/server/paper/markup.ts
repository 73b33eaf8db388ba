/** A strict reader of the markup that a page of the book may hold: everything is closed, every value is quoted, every name is known. */

export interface Element {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: (Element | string)[];
}

const alone = new Set(["meta", "br"]);
/** Drawn pieces without content are closed at once, as XML does. */
const closedAtOnce = /\/$/;

const entities: Readonly<Record<string, string>> = { "&amp;": "&", "&lt;": "<", "&gt;": ">", "&quot;": '"' };

/** A text as it is read; throws for an ampersand that begins none of the four names that the book uses. */
function plain(text: string): string {
  const left = text.replaceAll(/&(?:amp|lt|gt|quot);/g, "");
  if (/[&<>]/.test(left)) throw new Error(`A sign of markup stands in a text: ${text.slice(0, 80)}`);
  return text.replaceAll(/&\w+;/g, (e) => entities[e]!);
}

/** Reads a page; throws where it is not well formed. */
export function readPage(html: string): Element {
  if (!html.startsWith("<!DOCTYPE html>\n")) throw new Error("The page does not say that it is HTML.");
  const root: Element = { name: "", attributes: new Map(), children: [] };
  const open: Element[] = [root];
  const pieces = /<(\/?)([a-zA-Z][a-zA-Z0-9]*)((?:\s+[a-zA-Z-]+="[^"<>]*")*)\s*(\/?)>|([^<]+)/y;
  pieces.lastIndex = "<!DOCTYPE html>\n".length;
  while (pieces.lastIndex < html.length) {
    const at = pieces.lastIndex;
    const m = pieces.exec(html);
    if (!m) throw new Error(`Not well formed: ${html.slice(at, at + 120)}`);
    const [, end, name, attributes, slash, text] = m;
    const top = open[open.length - 1]!;
    if (text !== undefined) top.children.push(top.name === "style" ? text : plain(text));
    else if (end) {
      if (top.name !== name)
        throw new Error(`</${name}> closes <${top.name}> near ${html.slice(at - 80, at)}`);
      open.pop();
    } else {
      const pairs = [...attributes!.matchAll(/([a-zA-Z-]+)="([^"]*)"/g)];
      const element: Element = {
        name: name!,
        attributes: new Map(pairs.map(([, key, value]) => [key!, plain(value!)])),
        children: [],
      };
      if (element.attributes.size !== pairs.length) throw new Error(`<${name}> says something twice.`);
      top.children.push(element);
      if (!alone.has(name!) && !closedAtOnce.test(slash!)) open.push(element);
    }
  }
  if (open.length > 1) throw new Error(`<${open[open.length - 1]!.name}> is never closed.`);
  return root;
}

export function* all(e: Element): Generator<Element> {
  yield e;
  for (const c of e.children) if (typeof c !== "string") yield* all(c);
}

export const textOf = (e: Element): string =>
  e.children.map((c) => (typeof c === "string" ? c : textOf(c))).join("");

/** The only element with this id. */
export function withId(page: Element, id: string): Element {
  const found = [...all(page)].filter((e) => e.attributes.get("id") === id);
  if (found.length !== 1) throw new Error(`${found.length} elements are called ${id}.`);
  return found[0]!;
}
