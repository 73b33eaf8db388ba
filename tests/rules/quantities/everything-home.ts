/** Invented households in which between them every quantity has a value, each with one thing written otherwise. */
import { mechanics } from "./mechanics-home.js";

/** Everything written: a way to the room with turns, ramps and edges, a lift and its sling, a handle, places for two helpers. */
export const everything = mechanics
  .replace(
    "room bedroom",
    `lift hoist { rated-load 400 lb; base-length 42 in }
sling sling-m { rated-load 300 lb }
handle bar { kind overhead; rated-load 150 lb }
helper son { trained yes; safe-pull 20 lbf }
furniture chest { size 30 in by 14 in; height 40 in }
room bedroom`,
  )
  .replace("rated-load 450 lb }", "rated-load 450 lb; room-under 5 in }")
  .replace("  legrests removable", "  legrests removable\n  overall-length 42 in")
  .replace("with board-30, daughter", "with board-30, daughter, son, hoist, sling-m, bar")
  .replace(
    "  place bed",
    `  door hall { wall south; at 18 in; clear 31 1/2 in; threshold 5/8 in; opens inward; hinged west }
  narrowest 34 in "between bed and chest"
  diagonal sw-ne 15 ft 9 1/2 in
  place chest { wall west; at 6 ft }
  place bed`,
  )
  .replace("    scoot forward", "    helper in-front\n    scoot forward")
  .replace("    slide\n", "    feet on floor\n    slide\n")
  .concat(`ramp porch { rise 6 in; run 72 in; width 36 in; landing-top 60 in; landing-bottom 80 in }
ramp step { rise 3 in; run 28 in; width 35 in; landing-top 61 in; landing-bottom 59 in }
route in {
  from "the street"
  to bedroom
  through hall
  ramp porch, step
  corridor { width 38 in }
  turn { from-width 40 in; to-width 39 in }
  turn { from-width 41 in; door-clear 34 in }
  threshold { height 3/4 in; bevelled no; at "front door" }
  kerb 7/8 in "at the street"
}
`);

const inTransfer = (lines: string, text = everything): string =>
  text.replace("  along 40 in", `  along 40 in\n${lines}`);

/** The board as it was laid, so that its place is no choice. */
export const laid = inTransfer("  board-reach 8 in\n  board-askew 5 deg");
/** Gap and bearings as taped with the chair parked. */
export const taped = inTransfer("  measured { gap 7 1/2 in; bearing-landing 8 in; bearing-seat 8 1/2 in }");
/** Nothing measured with the client sitting; a soft edge, a bed set to its height on other ground than the chair's. */
export const unloaded = everything
  .replace("top-loaded 19 1/2 in; ", "level 1/2 in; ")
  .replace("  seat-loaded 19 in\n", "")
  .replace("edge firm", "edge soft");
/** The sink as it was measured, the bed then set otherwise; the board on a rail, the free seat side taped. */
export const railed = inTransfer("  set bed 20 in").replace(
  "  seat-width",
  "  rail-height 20 in\n  side-window 9 in\n  seat-width",
);
/** The near leg rest swung away and no more, nothing written of hangers; the slope at which clothing slides was tried. */
export const swung = everything
  .replace("remove legrest left", "swing-away legrest left")
  .replace("  hanger-stub 1 in\n  hanger-reach 16 in\n", "")
  .replace("material plywood;", "material plywood; slides-at 17 deg;");
/** The near leg rest in place, so that it can be told what lifting it off would bring; a plastic board. */
export const inPlace = everything
  .replace("    remove legrest left\n", "")
  .replace("material plywood;", "material plastic;");
/** The chair's front turned away from the bed, which is well above the seat. */
export const away = everything
  .replace("30 deg towards", "10 deg away")
  .replace("top 21 in; top-loaded 19 1/2 in", "top 24 in; top-loaded 23 in");
/** A bed well below the seat. */
export const lower = everything.replace("top 21 in; top-loaded 19 1/2 in", "top 17 in; top-loaded 16 in");
/** Walls that do not close, one of them read a foot short. */
export const misread = everything.replace("12 ft 1 in west", "11 ft 1 in west");
/** Without a board. */
export const boardless = everything.replace("with board-30, daughter", "no-board\n  with daughter");
/** The castors, the hand rims and the brake levers measured, and the seat's height in front and at the rear. */
export const fine = everything.replace(
  "  cushion",
  "  hand-rim { standoff 1 1/8 in; diameter 21 3/4 in }\n  castor { diameter 6 in; trail 2 in }\n  brake-lever 1 1/2 in\n  tyre-width 1 1/4 in\n  seat-front 21 in\n  seat-rear 19 1/2 in\n  cushion",
);

/** Into a car, whose door opens to a width that is known to half an inch. */
export const inCar = `
client { code C-07; mass 182 lb; stature 5 ft 9 in }
wheelchair chair-18 { seat-height 20 1/2 in }
car-seat front { door-opening 30 in ± 1/2 in }
transfer into-car { from chair-18 to front }
way-back out-of-car of into-car { note "the same door" }
`;

export const households: Readonly<Record<string, string>> = {
  everything,
  laid,
  taped,
  unloaded,
  railed,
  swung,
  "in place": inPlace,
  away,
  lower,
  misread,
  boardless,
  fine,
};
