/** Who plays which part in a transfer, and what is said where nobody does. */
import type { Household } from "../../language/model/household.js";
import type { Thing } from "../../language/model/types.js";
import type { Scene } from "../scene.js";
import { doneOutdoors, liftOf, outdoors } from "./facts-use.js";
import type { Reading } from "./logic.js";
import { missingReading, withoutReading } from "./written.js";

/** The thing that plays a role in a transfer. */
export function roleInScene(name: string, scene: Scene, household: Household): Thing | undefined {
  switch (name) {
    case "helper":
      return scene.helpers[0];
    case "lift":
      return liftOf(scene, household.things);
    case "client":
    case "chair":
    case "surface":
    case "from":
    case "to":
    case "board":
    case "belt":
    case "room":
    case "transfer":
      return scene[name];
    default:
      return undefined;
  }
}

const optional: { readonly [role: string]: string } = {
  board: "No board is used",
  belt: "No belt is used",
  helper: "Nobody helps",
  lift: "No lift is named",
};
const words: { readonly [role: string]: { readonly what: string; readonly key: string } } = {
  board: { what: "which board is used (with, or no-board)", key: "with" },
  belt: { what: "whether a belt is used (with)", key: "with" },
  helper: { what: "who helps (with)", key: "with" },
  lift: { what: "whether a lift is used (with)", key: "with" },
  room: { what: "the room in which it is done (room)", key: "room" },
  client: { what: "who is moved (client)", key: "client" },
};

/** A fact of a thing that is not there: because somebody decided so, or because nobody said which. */
export function absent(name: string, role: string, scene: Scene | undefined): Reading {
  if (role === "room" && scene && outdoors(scene)) return withoutReading(name, doneOutdoors);
  if (role === "chair" && scene?.from && scene.to) return withoutReading(name, "No wheelchair takes part");
  const decided =
    scene &&
    (role === "board" ? scene.value("no-board").value === true : Array.isArray(scene.value("with").value));
  const without = optional[role];
  if (without !== undefined && decided) return withoutReading(name, without);
  const said = words[role] ?? { what: "from where to where it goes (from)", key: "from" };
  return missingReading(
    name,
    said.what,
    scene && { thing: said.key === "from" ? (scene.base ?? scene.transfer) : scene.transfer, key: said.key },
  );
}
