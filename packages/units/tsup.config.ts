import { writeFile } from "node:fs/promises";
import { defineConfig, type Options } from "tsup";

const common: Options = {
  entry: ["src/index.ts"],
  tsconfig: "tsconfig.build.json",
  sourcemap: true,
  target: "es2022",
  // Either build would sweep away what the other wrote; the names of the files never change.
  clean: false,
};

// The declarations exist once, for CommonJS; those of the ES module pass them on, which is always allowed this way round. So
// a `Quantity<Mass>` that was required and one that was imported are one type, and not two that TypeScript cannot compare.
export default defineConfig([
  {
    ...common,
    format: "esm",
    onSuccess: () => writeFile("dist/index.d.ts", 'export * from "./index.cjs";\n'),
  },
  {
    ...common,
    format: "cjs",
    // tsup sets `baseUrl` for the declarations, which TypeScript 6 calls deprecated.
    dts: { compilerOptions: { ignoreDeprecations: "6.0" } },
  },
]);
