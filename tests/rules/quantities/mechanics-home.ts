/** The invented household with everything that forces, bending and tipping ask for, exact where a test works them out by hand. */
import { home } from "../scene-for.js";

/** As written by somebody who wrote everything: a board on clothing, its thickness and material, the chair's mass. */
export const mechanics = home
  .replace("  along 40 in", "  along 40 in\n  skin-covered yes")
  .replace("width 8 in;", "width 8 in; thickness 3/4 in; material plywood;")
  .replace("  rated-load 300 lb", "  mass 38 lb\n  rated-load 300 lb")
  .replace("  hip-breadth 16 in", "  hip-breadth 16 in\n  assistance moderate")
  .replace("trained yes }", "trained yes; safe-pull 30 lbf }");
