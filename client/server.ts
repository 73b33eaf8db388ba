/** The language server as the extension bundles it: one process, speaking over its standard input and output. */
import { startServer } from "../server/editor/main.js";

startServer();
