/** A keystroke in a 300-line setup, text to findings in process, beside a JSON service validating the same household. */
import path from "node:path";
import { getLanguageService, TextDocument } from "vscode-json-languageservice";
import { Workspace } from "../../server/workspace/snapshot.js";
import { jsonOf, schemaOf, setupOf } from "./household.js";
import { row, sideBySide } from "./measure.js";

export async function keystroke(): Promise<void> {
  const setup = setupOf(300);
  const json = jsonOf(setup);
  const file = path.resolve("samples/first-week/bench.span");
  const workspace = new Workspace({ roots: [path.resolve("samples")], today: () => "2026-03-02" });
  const service = getLanguageService({});
  service.configure({
    validate: true,
    schemas: [{ uri: "spanwise://model", fileMatch: ["*"], schema: schemaOf() }],
  });
  // The mattress height changes with each keystroke, so that every height, board and rule that rests on it is judged anew.
  const heights = Array.from({ length: 40 }, (_, i) => 20 + i / 8);
  workspace.open(file, setup);
  const first = workspace.snapshot(file);
  const validate = async (text: string, version: number) => {
    const document = TextDocument.create("spanwise://home.json", "json", version, text);
    return service.doValidation(document, service.parseJSONDocument(document));
  };
  const problems = await validate(json, 0);
  console.log(
    `setup of ${setup.split("\n").length} lines, ${setup.length} characters, ${first.reported.length} findings; the same in JSON: ${json.split("\n").length} lines, ${json.length} characters, ${problems.length} problems`,
  );
  const edit = (i: number): string =>
    setup.replace("top-loaded 23 in", `top-loaded ${heights[i % heights.length]} in`);
  const jsonEdit = (i: number): string => json.replace('"code": "C-07"', `"code": "C-${i % 90}"`);
  const ours = (i: number): void => {
    workspace.edit(file, edit(i));
    workspace.snapshot(file);
  };
  row(
    "A keystroke that moves the mattress, text to findings, in process",
    ...(await sideBySide(1500, 500, ours, (i) => validate(jsonEdit(i), i))),
    "JSON service",
  );
  const note = (i: number): void => {
    workspace.edit(file, setup.replace("code C-07", `code C-${i % 90}`));
    workspace.snapshot(file);
  };
  row(
    "A keystroke that no quantity rests on (the client's code)",
    ...(await sideBySide(1500, 500, note, (i) => validate(jsonEdit(i), i))),
    "JSON service",
  );
}
