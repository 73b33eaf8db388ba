import { describe, expect, it } from "vitest";
import { findings } from "../form.js";

const flagged = (text: string, what: string): void => {
  const home = findings(text, { a: "form/personal-data" });
  const said = home.problems.find((p) => p.rule === "form/personal-data")!;
  expect(said.message).toContain(what);
  expect(said.level).toBe("advice");
};

describe("Names, dates of birth and addresses are pointed out, whoever is meant", () => {
  it.each([
    'client { note ⟦"see Mrs Miller"⟧a }',
    'setup ⟦"Mr. O\'Brien at home"⟧a',
    'helper son { note ⟦"Frau Größing rufen"⟧a }',
    'client { limit weight-bearing left none by ⟦"Dr Smith"⟧a }',
    'client { limit weight-bearing left none by ⟦"Anna Berger"⟧a }',
    'helper son { safe-pull 30 lbf judged by ⟦"Anna Berger"⟧a }',
    "client { code ⟦Miller⟧a }",
    'client { code ⟦"John Q. Miller"⟧a }',
    "helper ⟦mrs-miller⟧a { }",
    'accept room/loose-rug at r until 2026-05-01 because ⟦"Ms Jones tapes it down"⟧a',
    'bed { note "firm"; note ⟦"from Prof Weber"⟧a }',
    'transfer t { if-not { stop ⟦"call Miss Ito"⟧a } }',
  ])("a name: %s", (text) => flagged(text, "a person's name"));

  it.each([
    'client { note ⟦"born in May"⟧a }',
    'client { note ⟦"DOB 12 May"⟧a }',
    'client { note ⟦"1941-05-12"⟧a }',
    'client { note ⟦"12/05/1941"⟧a }',
    'client { note ⟦"12 May 1941"⟧a }',
    'client { note ⟦"May 12, 1941"⟧a }',
  ])("a date of birth: %s", (text) => flagged(text, "a date of birth"));

  it.each([
    'setup ⟦"14 Elm Street"⟧a',
    'setup ⟦"Flat at 3b North Park Road"⟧a',
    'room r { note ⟦"Lindenstraße 12"⟧a }',
    'room r { note ⟦"12 rue des Lilas"⟧a }',
  ])("a street address: %s", (text) => flagged(text, "a street address"));

  it.each([
    'client { limit weight-bearing left none by "Orthopaedic Clinic" }',
    'helper night-nurse { safe-pull 30 lbf judged by "Occupational Therapist" }',
    "client { code R-12 }",
    "client { code K31 }",
    'client { note "tired after dialysis, better from 10 on" }',
    'setup "First week home, ground floor"',
    'room r { note "60 in between bed and wall; carpet laid in 2026" }',
    'phase first { until "the bed is delivered, about 12 May 2026" }',
    'client { note "may drive the chair way round the table 12 times" }',
    "review { on 2026-03-16; when fall, mattress }",
  ])("nothing is said of roles, places of work, codes and days of the plan: %s", (text) => {
    findings(text, {});
  });
});
