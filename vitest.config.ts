import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    projects: [
      "packages/*",
      {
        // Checks that cross packages. They read the sources (through `paths`), so they need no build;
        // the ones under test/consumers pack the build themselves.
        resolve: { tsconfigPaths: true },
        test: {
          name: "root",
          environment: "node",
          include: ["test/**/*.test.ts", "docs/examples/**/*.test.ts"],
          exclude: ["**/node_modules/**", "test/bench/**"],
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
