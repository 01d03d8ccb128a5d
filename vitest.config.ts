import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    // The json report is read by the count at the end of the check; the last one writes docs/validation.md after a complete run.
    reporters: ["default", ["json", { outputFile: "out/vitest.json" }], "./test/support/validation-reporter.ts"],
    projects: [
      "packages/*",
      {
        // Checks that cross packages. They read the sources (through `paths`), so they need no build;
        // those under test/consumers use the build, and skip with a reason where there is none.
        resolve: { tsconfigPaths: true },
        test: {
          name: "root",
          environment: "node",
          include: ["test/**/*.test.ts", "docs/examples/**/*.test.ts"],
          exclude: ["**/node_modules/**", "test/bench/**"],
          setupFiles: ["test/support/fast-check.ts"],
          typecheck: { enabled: true, include: ["test/**/*.test-d.ts"], tsconfig: "test/tsconfig.json" },
        },
      },
    ],
    coverage: {
      provider: "v8",
      include: ["packages/*/src/**/*.ts"],
      reporter: ["text-summary", "html"],
      reportsDirectory: "coverage",
      thresholds: { lines: 90 },
    },
  },
});
