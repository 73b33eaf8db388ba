import { describe, expect, test } from "vitest";
import { CompletionItemKind } from "vscode-languageserver-protocol";
import { setupVocabulary } from "../../../language/vocabulary/index.js";
import { offersAt, pageWith } from "./marked.js";

const household = `setup "Trial"
client { code C-01; mass 80 kg }
wheelchair chair { seat-height 50 cm; seat-width 45 cm; seat-depth 40 cm; brakes both; legrests removable; armrests swing-away; footplates flip-up }
bed bed { top 50 cm; size 90 cm by 200 cm; edge firm; castors none }
board plank { length 70 cm; width 20 cm }
helper son { trained yes }
`;

describe("at the top of a plan", () => {
  test("an empty file is offered every kind, what every plan needs first", () => {
    const { labels } = offersAt("‸");
    expect(labels[0]).toBe("setup");
    expect(labels).toEqual(
      expect.arrayContaining([
        ...Object.keys(setupVocabulary.blocks).filter((k) => k !== "may-change"),
        "may change",
        "accept",
      ]),
    );
  });

  test("what may stand only once is not offered again, and what is there comes after what is missing", () => {
    const { labels } = offersAt(`${household}‸`);
    expect(labels).not.toContain("client");
    expect(labels).not.toContain("setup");
    expect(labels.indexOf("transfer")).toBeLessThan(labels.indexOf("bed"));
  });

  test("a kind is offered as a form in which nothing is guessed", () => {
    const { items } = offersAt("be‸", {}, true);
    const form = (items.find((i) => i.label === "bed")!.textEdit as { newText: string }).newText;
    expect(form).toMatch(/^bed \$1 \{\n {2}top \$\{2:unknown\}\n/);
    expect(form).toMatch(/ edge \$\{\d+\|unknown,firm,soft,rounded\|\}/);
  });

  test.each(Object.keys(setupVocabulary.blocks))(
    "the form of %s, filled in with a name, is read without a wrong word",
    (kind) => {
      const { items } = offersAt("‸", {}, true);
      const label = kind === "may-change" ? "may change" : kind;
      const form = (items.find((i) => i.label === label)!.textEdit as { newText: string }).newText;
      const text = form
        .replaceAll(/\$\{\d+\|([^,]+),[^}]*\}/g, "$1")
        .replaceAll(/\$\{\d+:([^}]+)\}/g, "$1")
        .replace(/"\$\d+"/g, '"words"')
        .replace(/\$\d+/g, "");
      const wrong = pageWith(text).reported.filter((r) =>
        ["form/unknown-word", "form/block-not-closed", "form/unknown-choice", "form/character"].includes(
          r.rule,
        ),
      );
      expect(wrong.map((r) => r.message)).toEqual([]);
    },
  );

  test("an editor without forms gets the word alone", () => {
    expect(offersAt("be‸").taking("bed")).toBe("bed ");
  });

  test("the known rule sets are offered as a pin", () => {
    expect(offersAt("rules ‸").labels).toContain("home-transfer 2026.1");
    expect(offersAt("rules ‸").taking("home-transfer 2026.1")).toBe("rules home-transfer 2026.1");
  });

  test("after from, the other plans of the folder, and then what they declare and is not taken yet", () => {
    const pool = { "pool.span": "board long { length 90 cm; width 20 cm }\nbelt b-1 { fits 130 cm }" };
    expect(offersAt('from "‸', pool).taking("pool.span")).toBe('from "pool.span');
    expect(offersAt('from "pool.span" ‸', pool).labels).toEqual(["use"]);
    expect(offersAt('from "pool.span" use long, ‸', pool).labels).toEqual(["b-1"]);
  });
});

describe("in a block", () => {
  test("missing required keys come first, then wanted ones; a key that is written is not offered again", () => {
    const { labels } = offersAt("bed b {\n  edge firm\n  ‸\n}");
    const required = Object.entries(setupVocabulary.blocks["bed"]!.keys).filter(
      ([key, k]) => k.need === "required" && key !== "edge",
    );
    expect(labels.slice(0, required.length)).toEqual(required.map(([key]) => key));
    expect(required.length).toBeGreaterThan(1);
    expect(labels).not.toContain("edge");
    expect(labels.indexOf("adjusts")).toBeLessThan(labels.indexOf("room-under"));
  });

  test("a key that is written further down is not offered", () => {
    expect(offersAt("bed b {\n  ‸\n  top 50 cm\n}").labels).not.toContain("top");
  });

  test("a word that is half written is replaced, with what stands behind the cursor", () => {
    expect(offersAt("bed b { to‸ }").taking("top")).toBe("bed b { top  }");
    expect(offersAt("bed b { t‸op 50 cm }").taking("top-loaded")).toBe("bed b { top-loaded  50 cm }");
  });

  test.each([
    ["a choice", "bed b { edge ‸ }", ["firm", "soft", "rounded", "unknown"]],
    ["a flag", "helper h { trained ‸ }", ["yes", "no", "unknown"]],
    ["the units that fit", "bed b { top 50 ‸ }", ["in", "cm", "mm", "ft", "m"]],
    ["the units of a mass", "client { mass 80 ‸ }", ["lb", "kg", "oz", "st"]],
    ["the word between two sizes", "bed b { size 90 cm ‸ }", ["by"]],
    ["the word between two heights", "bed b { top about 50 cm ‸ }", ["to"]],
    [
      "the way of an angle",
      "transfer t { turned 30 deg ‸ }",
      ["towards", "away", "±", "measured", "stated", "judged", "estimated", "on"],
    ],
    [
      "the parts of a limit, in their order",
      "client { limit ‸ }",
      ["none", "weight-bearing", "hip-flexion", "arm-push", "trunk-turn", "unknown"],
    ],
    ["the side of a limit", "client { limit weight-bearing ‸ }", ["left", "right", "both"]],
    ["a block inside", "wheelchair w { cushion { kind ‸ } }", ["foam", "gel", "air", "none", "unknown"]],
  ])("%s", (_, source, expected) => {
    expect(offersAt(source).labels).toEqual(expected);
  });

  test("a unit follows its number with a blank", () => {
    expect(offersAt("bed b { top 50‸ }").taking("cm")).toBe("bed b { top 50 cm }");
    expect(offersAt("bed b { top 50 ‸ }").taking("cm")).toBe("bed b { top 50 cm }");
  });

  test("after a value: how far off it may be, how it is known, and when", () => {
    expect(offersAt("bed b { top 50 cm ‸ }").labels).toEqual([
      "±",
      "measured",
      "stated",
      "judged",
      "estimated",
      "on",
    ]);
    expect(offersAt("bed b { top 50 cm measured ‸ }").labels).toEqual(["on"]);
  });

  test("nothing is offered in a comment, in a text, or behind a value that is whole", () => {
    expect(offersAt("bed b { top 50 cm # wri‸ }").labels).toEqual([]);
    expect(offersAt('setup "Fir‸"').labels).toEqual([]);
    expect(offersAt("bed b { edge firm ‸ }").labels).toEqual([]);
  });

  test("nothing is offered in a block that the vocabulary does not know", () => {
    expect(offersAt("bathroom b { ‸ }").labels).toEqual([]);
  });
});

describe("names", () => {
  test("only things of the kinds that fit, without those that are listed already", () => {
    expect(offersAt(`${household}transfer t { from ‸ }`).labels).toEqual(["chair", "bed", "unknown"]);
    expect(offersAt(`${household}transfer t { from chair to ‸ }`).labels).toEqual(["bed"]);
    expect(offersAt(`${household}transfer t { with plank, ‸ }`).labels).toEqual(["son"]);
    expect(offersAt(`${household}transfer t { }\nway-back u of ‸ { }`).labels).toEqual(["t"]);
  });

  test("names are offered in a block that is not closed yet", () => {
    expect(offersAt(`${household}transfer t {\n  with ‸`).labels).toContain("plank");
  });

  test("the rules that find something here come first for what is accepted", () => {
    const { labels } = offersAt(`${household}transfer t { from chair to bed; with son }\naccept ‸`);
    const found = new Set(
      pageWith(`${household}transfer t { from chair to bed; with son }`).reported.flatMap((r) =>
        r.finding ? [r.rule] : [],
      ),
    );
    expect(found.size).toBeGreaterThan(2);
    expect(new Set(labels.slice(0, found.size))).toEqual(found);
  });
});

describe("steps", () => {
  const steps = (written: string): string =>
    `${household}transfer t {\n  from chair to bed\n  with plank, son\n  bed-side left\n  facing head\n  steps {\n${written}\n  }\n}`;

  test("what can be done as things stand comes before what cannot, with the reason", () => {
    const { items, labels } = offersAt(steps("    ‸"));
    expect(labels).toContain("slide");
    expect(labels.indexOf("lock brakes")).toBeLessThan(labels.indexOf("slide"));
    expect(items.find((i) => i.label === "unlock castors")!.detail).toMatch(/^not possible here: /);
    expect(items[0]!.kind).toBe(CompletionItemKind.Function);
  });

  test("with the brakes locked the chair cannot approach; once they are open it can", () => {
    const locked = offersAt(steps("    lock brakes\n    ‸"));
    expect(locked.items.find((i) => i.label === "approach bed")!.detail).toBe(
      "not possible here: the brakes are locked",
    );
    const open = offersAt(steps("    lock brakes\n    unlock brakes\n    ‸"));
    expect(open.items.find((i) => i.label === "approach bed")?.detail ?? "").not.toMatch(/^not possible/);
  });

  test("a step that a rule speaks against comes after those that none does", () => {
    const { items, labels } = offersAt(steps("    approach bed\n    ‸"));
    const refused = items.find((i) => i.label === "remove legrest left")!;
    expect(refused.detail).toMatch(/\(steps\/[a-z-]+\)$/);
    expect(labels.indexOf("lock brakes")).toBeLessThan(labels.indexOf("remove legrest left"));
  });

  test("a step that is begun is offered whole and replaced whole", () => {
    const { labels, taking } = offersAt(steps("    remove le‸"));
    expect(labels).toEqual(
      ["remove legrest left", "remove legrest right", "remove armrest left", "remove armrest right"].filter(
        (l) => labels.includes(l),
      ),
    );
    expect(taking("remove legrest right")).toContain("\n    remove legrest right\n");
  });
});
