/** The program `spanwise`. */
import { isMainThread } from "node:worker_threads";
import { runProgram } from "./program.js";
import { harmless, terminalOf } from "./terminal.js";

// Whoever reads our output may stop reading, as `head` does; that is no fault.
for (const stream of [process.stdout, process.stderr])
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE") process.exitCode = 2;
    process.exit();
  });

const two = (n: number): string => String(n).padStart(2, "0");

const run = (): Promise<void> =>
  runProgram(process.argv.slice(2), {
    cwd: process.cwd(),
    env: process.env,
    terminal: terminalOf(process.stdout, process.env),
    today: () => {
      const now = new Date();
      return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
    },
    out: (text) => void process.stdout.write(text),
    say: (text) => void process.stderr.write(`${text.split("\n").map(harmless).join("\n")}\n`),
    exitCode: (code) => {
      process.exitCode = code;
    },
  });

// The same file is the language server's thread for what is slow.
if (isMainThread) await run();
else (await import("../workspace/slow.js")).serveSlowWork();
