import { readdirSync, readFileSync } from "node:fs";

/** The fields of a package.json that the checks of the workspace read. */
export interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly peerDependencies?: Readonly<Record<string, string>>;
}

const root = new URL("../packages/", import.meta.url);

/** Every package of the workspace, read from disk, in alphabetical order of its directory. */
export const packages: readonly {
  readonly directory: string;
  readonly source: URL;
  readonly manifest: Manifest;
}[] = readdirSync(root, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name)
  .sort()
  .map((directory) => ({
    directory,
    source: new URL(`${directory}/src/`, root),
    manifest: JSON.parse(readFileSync(new URL(`${directory}/package.json`, root), "utf8")) as Manifest,
  }));
