import { defineConfig } from "vitest/config";

/** The tests in real editors: they install an editor and a browser, and take a minute. */
export default defineConfig({
  test: {
    include: ["tests/editors/**/*.test.ts"],
    globalSetup: ["tests/editors/install.ts"],
    fileParallelism: false,
    testTimeout: 120_000,
    hookTimeout: 180_000,
    teardownTimeout: 20_000,
  },
});
