/** Measurements, each beside a yardstick in the same run. Run by `npm run bench`; nothing here is a test. */
import { coldStart } from "./cold-start.js";
import { serveJson } from "./json-server.js";
import { keystroke } from "./keystroke.js";
import { quantitiesBeside } from "./quantities.js";
import { reading } from "./reading.js";
import { growth, rules } from "./rules.js";
import { stdio } from "./stdio.js";
import { way } from "./way.js";

if (process.argv.includes("--json-server")) serveJson();
else if (process.argv.includes("--rules-growth")) growth();
else {
  console.log(
    `Node ${process.version}, ${process.platform} ${process.arch}. Ratios below 1 mean that Spanwise is faster.\n`,
  );
  for (const part of [reading, rules, way, quantitiesBeside, keystroke, stdio, coldStart]) {
    await part();
    console.log("");
  }
  process.exit(0);
}
