/** The language server as the extension bundles it: one process, speaking over its standard input and output. */
import { isMainThread } from "node:worker_threads";
import { startServer } from "../server/editor/main.js";

if (isMainThread) startServer();
else void import("../server/workspace/slow.js").then((slow) => slow.serveSlowWork());
