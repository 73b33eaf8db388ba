import { defineConfig } from "vitest/config";
import { ruleSetsForTests } from "./rule-sets.plugin.mjs";

export default defineConfig({
  plugins: [ruleSetsForTests],
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/editors/**", "tests/bench/**", "node_modules/**"],
    // The default leaves one core to a person who works beside it; here the tests are all that runs.
    maxWorkers: "100%",
    testTimeout: 20_000,
    hookTimeout: 20_000,
    reporters: ["default"],
  },
});
