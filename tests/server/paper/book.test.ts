/** The rule book: everything of a rule set is in it once, it can be followed and reviewed line by line, and it holds all it needs. */
import { beforeAll, describe, expect, it } from "vitest";
import sets from "virtual:rule-sets";
import { basisWords } from "../../../rules/engine/explain-words.js";
import { lineOf } from "../../../rules/engine/explain-strip.js";
import { loadRuleSet } from "../../../rules/engine/load.js";
import type { RuleFile, RuleSet } from "../../../rules/engine/types.js";
import { quantities } from "../../../rules/quantities/index.js";
import { ruleBook } from "../../../server/paper/book.js";
import { writtenLines } from "../../../server/paper/written-lines.js";
import { contentHash, surroundings } from "../../../server/workspace/rule-sets.js";
import { all, readPage, textOf, withId, type Element } from "./markup.js";

const bookOf = (set: RuleSet, files: readonly RuleFile[]): string =>
  ruleBook({ set, hash: contentHash(files), files, table: surroundings });

const flat = (e: Element): string => textOf(e).replaceAll(/\s+/g, " ").trim();

describe.each(sets.map((s) => [s.name, s.version, s.files] as const))("the book of %s %s", (_, __, files) => {
  let set: RuleSet;
  let html: string;
  let page: Element;
  let elements: readonly Element[];
  beforeAll(() => {
    set = loadRuleSet(files, surroundings).partial;
    html = bookOf(set, files);
    page = readPage(html);
    elements = [...all(page)];
  });
  const named = (name: string): readonly Element[] => elements.filter((e) => e.name === name);

  it("has every rule, limit, default, source and quantity once, at its anchor", () => {
    const anchors = [
      ...set.rules.map((r) => [r.id, r.title] as const),
      ...[...set.limits.values()].map((l) => [`limit.${l.name}`, l.title] as const),
      ...[...set.defaults.values()].map((d) => [`default.${d.name}`, d.title] as const),
      ...[...set.sources.values()].map((s) => [`source.${s.name}`, s.title] as const),
      ...quantities.map((q) => [`quantity.${q.name}`, q.formula] as const),
    ];
    expect(anchors.length).toBeGreaterThan(300);
    const ids = elements.flatMap((e) => e.attributes.get("id") ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    const byId = new Map(elements.map((e) => [e.attributes.get("id"), e]));
    for (const [id, says] of anchors) expect(textOf(byId.get(id)!), id).toContain(says);
  });

  it("leads nowhere that does not exist, and fetches nothing", () => {
    const ids = new Set(elements.map((e) => e.attributes.get("id")));
    const addresses = new Set([...set.sources.values()].map((s) => s.address));
    const links = named("a").map((a) => a.attributes.get("href")!);
    expect(links.length).toBeGreaterThan(500);
    for (const href of links)
      if (href.startsWith("#")) expect(ids, href).toContain(decodeURI(href.slice(1)));
      else expect([...addresses].map((a) => a && encodeURI(a))).toContain(href);
    for (const e of elements) {
      expect(["script", "link", "img", "iframe", "object", "image", "use"]).not.toContain(e.name);
      for (const [key, value] of e.attributes) {
        expect(key).not.toMatch(/^on|^src|^style$/);
        if (key === "fill")
          expect(value).toMatch(/^(#fff|#[0-9a-f]{6}|url\(#hatch-(advice|caution|stop)\))$/);
      }
    }
    expect(textOf(named("style")[0]!)).not.toMatch(/@import|url\(|https?:/);
  });

  it("can be used without seeing it: language, headings in order, heads of tables, drawings in words", () => {
    expect(named("html")[0]!.attributes.get("lang")).toBe("en");
    const levels = elements.filter((e) => /^h[1-6]$/.test(e.name)).map((e) => Number(e.name[1]));
    expect(levels[0]).toBe(1);
    for (let i = 1; i < levels.length; i++) expect(levels[i]).toBeLessThanOrEqual(levels[i - 1]! + 1);
    for (const t of named("table")) {
      const inside = [...all(t)];
      expect(inside.some((e) => e.name === "caption")).toBe(true);
      for (const th of inside.filter((e) => e.name === "th"))
        expect(th.attributes.get("scope")).toMatch(/^(col|row)$/);
      const widths = inside.filter((e) => e.name === "tr").map((r) => r.children.length);
      expect(new Set(widths).size).toBe(1);
    }
    const strips = elements.filter((e) => e.attributes.get("class") === "strip");
    expect(strips.length).toBe(
      set.rules.filter((r) => r.judged.is === "bands" && r.judged.bands.length > 0).length,
    );
    for (const s of strips) {
      const inside = [...all(s)];
      const by = s.attributes.get("aria-labelledby")!.split(" ");
      expect(by.map((id) => inside.find((e) => e.attributes.get("id") === id)?.name)).toEqual([
        "title",
        "desc",
      ]);
    }
  });

  it("says of every example what the rule makes of it, and of every basis what it takes from which place", () => {
    for (const rule of set.rules) {
      const text = flat(withIdOnce(rule.id));
      const numbers = [...all(withIdOnce(rule.id))]
        .filter((e) => e.attributes.get("class") === "n")
        .map((e) => Number(flat(e).replace("line ", "")));
      for (const e of rule.examples) expect(numbers, rule.id).toContain(lineOf(e.at));
      for (const b of rule.bases) {
        expect(text, rule.id).toContain(`${basisWords[b.basis]}.`);
        if (b.citation) {
          expect(text, rule.id).toContain(set.sources.get(b.citation.id)!.title);
          expect(text, rule.id).toContain(b.citation.at);
        }
      }
      for (const c of rule.cautions) expect(text, rule.id).toContain(c.replaceAll(/\s+/g, " ").slice(1));
    }
  });
  const withIdOnce = (id: string): Element => elements.find((e) => e.attributes.get("id") === id)!;

  it("numbers every statement with the line at which it is written", () => {
    const keys = [
      "for",
      "when",
      "judge",
      "require",
      "because",
      ...Object.keys(basisWords),
      "covers",
      "not-covered",
      "remedy",
      "caution",
    ];
    for (const rule of set.rules) {
      const lines = writtenLines(rule, files);
      const text = files.find((f) => f.path === rule.at.path)!.text.split(/\r?\n/);
      expect(text[lines.first - 1], rule.id).toContain(`rule ${rule.id}`);
      expect(text[lines.last - 1], rule.id).toMatch(/\}/);
      const counts: Readonly<Record<string, number>> = {
        for: 1,
        when: rule.when.length,
        [rule.judged.is === "require" ? "require" : "judge"]: 1,
        because: 1,
        covers: rule.covers.length,
        "not-covered": rule.notCovered.length,
        remedy: rule.remedies.length,
        caution: rule.cautions.length,
      };
      for (const [key, count] of Object.entries(counts))
        for (const line of lines.of([key], count)) {
          expect(keys).toContain(key);
          expect(text[line! - 1], `${rule.id} ${key}`).toMatch(new RegExp(`\\b${key}\\b`));
        }
    }
  });

  it("carries the version and the content that it was made from, and every caution", () => {
    const front = flat(page);
    expect(front).toContain(`${set.name} ${set.version}`);
    expect(front).toContain(contentHash(files));
    for (const c of set.cautions) expect(front).toContain(c);
  });

  it("is the same to the byte when made again, and made within a second", () => {
    const times = [1, 2, 3].map(() => {
      const start = performance.now();
      expect(bookOf(set, files)).toBe(html);
      return performance.now() - start;
    });
    expect(Math.min(...times)).toBeLessThan(1_000);
  });
});

describe("texts that somebody wrote", () => {
  const nasty = `<script>alert(1)</script> & "quoted" \u202E\u0007`;
  const files: readonly RuleFile[] = [
    {
      path: "trial.spanrules",
      text: `ruleset trial 1 { title "T <b>"; caution "C & c" }
source odd-1 { kind study; title "<i>Odd</i>"; by "N"; address "javascript:alert(1)"; read 2026-01-02; extent part }
limit odd-limit 3 in { title "L < M"; published odd-1 at "p. 3" says "3 < 4" takes "3 in" }
rule gap/odd { title "<script>alert(1)</script> & so"; for each transfer; judge gap.hips
  bands {
    less than odd-limit   holds
    more than odd-limit   stop  "<img src=x> {value}"
  }
  because "a & b"; common-practice "c"
  examples { 3 in: holds; 4 in: stop }
}`,
    },
  ];
  const set = loadRuleSet(files, surroundings).partial;
  const page = readPage(bookOf(set, files));

  it("stay text: no markup of theirs, no address that is none of the web, no sign that steers", () => {
    const found = [...all(page)];
    expect(found.filter((e) => ["script", "img", "b", "i"].includes(e.name))).toEqual([]);
    expect(found.filter((e) => /^javascript/i.test(e.attributes.get("href") ?? ""))).toEqual([]);
    const text = flat(withId(page, "gap/odd"));
    expect(text).toContain("<script>alert(1)</script> & so");
    expect(text).toContain("<img src=x> [value]");
    expect(flat(withId(page, "source.odd-1"))).toContain("javascript:alert(1)");
  });
  it("and signs that turn the writing round are shown as unreadable", () => {
    const turned = { ...set, title: nasty };
    const html = bookOf(turned, files);
    expect(html).not.toMatch(/[\u202E\u0007]/);
    expect(flat(readPage(html))).toContain('<script>alert(1)</script> & "quoted" \uFFFD\uFFFD');
  });
  it("statements that share a line are numbered with it", () => {
    const lines = writtenLines(set.rules[0]!, files);
    expect([lines.first, lines.last]).toEqual([4, 11]);
    expect(lines.of(["for"], 1)).toEqual([4]);
    expect(lines.of(["because"], 1)).toEqual([9]);
    expect(lines.of(["common-practice"], 1)).toEqual([9]);
    expect(lines.of(["remedy"], 2)).toEqual([undefined, undefined]);
  });
});

describe("the reader of pages that these tests use", () => {
  it.each([
    ["an element that is never closed", "<p>a"],
    ["elements closed in the wrong order", "<b><i>a</b></i>"],
    ["an ampersand by itself", "<p>a & b</p>"],
    ["a value without quotes", "<p id=a>a</p>"],
    ["an attribute that stands twice", '<p id="a" id="b">a</p>'],
    ["a sign of markup in a text", "<p>a < b</p>"],
  ])("refuses %s", (_, html) => {
    expect(() => readPage(`<!DOCTYPE html>\n${html}`)).toThrow();
    expect(readPage("<!DOCTYPE html>\n<p>a &amp; b</p>").children).toHaveLength(1);
  });
});
