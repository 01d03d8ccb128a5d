import { defineConfig } from "vitest/config";

export default defineConfig({
  resolve: { tsconfigPaths: true },
  test: {
    name: "tarewatt",
    environment: "node",
    include: ["test/**/*.test.ts"],
    setupFiles: ["../../test/support/fast-check.ts"],
    // A wrong type assertion in a plain test passes: type tests are named *.test-d.ts.
    typecheck: { enabled: true, include: ["test/**/*.test-d.ts"], tsconfig: "tsconfig.json" },
  },
});
