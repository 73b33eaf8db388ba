/** `spanwise check` on one file from a cold start, beside `node -e 0`. */
import { spawnSync } from "node:child_process";
import { row, sideBySide } from "./measure.js";

export async function coldStart(): Promise<void> {
  const node =
    (...args: string[]) =>
    () =>
      void spawnSync(process.execPath, args, { stdio: "ignore" });
  const check = node("dist/spanwise.mjs", "check", "samples/first-week/home.span", "--on", "2026-03-02");
  row(
    "spanwise check on one file, from a cold start",
    ...(await sideBySide(25, 3, check, node("-e", "0"))),
    "node -e 0",
  );
}
