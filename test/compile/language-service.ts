import { fileURLToPath } from "node:url";
import ts from "typescript";

/** The sources of the units package, as the compiler of these tests finds them. */
export const unitsSource = fileURLToPath(new URL("../../packages/units/src/index.ts", import.meta.url));

/** The rules that the workspace is compiled by. */
const options: ts.CompilerOptions = {
  ...{ target: ts.ScriptTarget.ES2022, lib: ["lib.es2023.d.ts"], types: [], noEmit: true, skipLibCheck: true },
  ...{ module: ts.ModuleKind.ESNext, moduleResolution: ts.ModuleResolutionKind.Bundler },
  ...{ strict: true, noUncheckedIndexedAccess: true, exactOptionalPropertyTypes: true },
  paths: { "@tarewatt/units": [unitsSource] },
};

/** The language service of an editor, with one file open that is not on disk. */
export function languageServiceOf(text: string): { readonly service: ts.LanguageService; readonly file: string } {
  const file = fileURLToPath(new URL("./open-in-the-editor.ts", import.meta.url));
  const service = ts.createLanguageService({
    ...{ fileExists: ts.sys.fileExists, readFile: ts.sys.readFile, directoryExists: ts.sys.directoryExists },
    ...{ getDefaultLibFileName: ts.getDefaultLibFilePath, getCurrentDirectory: () => "/" },
    getCompilationSettings: () => options,
    getScriptFileNames: () => [file],
    getScriptVersion: () => "1",
    getScriptSnapshot: (name) => {
      const content = name === file ? text : ts.sys.readFile(name);
      return content === undefined ? undefined : ts.ScriptSnapshot.fromString(content);
    },
  });
  return { service, file };
}
