import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { packages } from "../packages.js";

/** Projects that hold the packages as a registry would deliver them: packed, and unpacked into their `node_modules`. */

const root = fileURLToPath(new URL("../../", import.meta.url));

/** Why there is nothing to pack; empty when every package is built. */
export const notBuilt = packages.every(({ directory }) =>
  existsSync(join(root, "packages", directory, "dist/index.cjs")),
)
  ? ""
  : " (skipped: the packages are not built, run the build first)";

/** What a program printed; a program that fails is an error that shows what it said. */
function output(command: string, parameters: readonly string[], cwd: string): string {
  const { status, stdout, stderr, error } = spawnSync(command, parameters, { cwd, encoding: "utf8" });
  if (status !== 0)
    throw new Error(`${command} ${parameters.join(" ")}: ${error?.message ?? ""}\n${stdout}\n${stderr}`);
  return stdout;
}

/** A folder of its own, with every package packed once and unpacked as `node_modules` of a project. */
export class Consumers {
  readonly folder = mkdtempSync(join(tmpdir(), "tarewatt-consumers-"));

  constructor() {
    const { scripts } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { scripts: { test: string } };
    const pnpm = /pnpm@[\d.]+/.exec(scripts.test)?.[0] ?? "pnpm";
    const tarballs = join(this.folder, "tarballs");
    output("npx", ["-y", pnpm, "--filter", "./packages/*", "pack", "--pack-destination", tarballs], root);
    for (const tarball of readdirSync(tarballs)) {
      const to = join(this.folder, "node_modules/@tarewatt", /^tarewatt-([a-z]+)-/.exec(tarball)?.[1] ?? tarball);
      mkdirSync(to, { recursive: true });
      output("tar", ["-xzf", join(tarballs, tarball), "-C", to, "--strip-components=1"], this.folder);
    }
    writeFileSync(join(this.folder, "package.json"), '{"type":"module","private":true}');
    this.addOtherVersion();
  }

  /** A dependency that brings units of another version along, in a `node_modules` of its own. */
  private addOtherVersion(): void {
    const dependency = join(this.folder, "node_modules/dependency");
    const units = join(dependency, "node_modules/@tarewatt/units");
    cpSync(join(this.folder, "node_modules/@tarewatt/units"), units, { recursive: true });
    const manifest = join(units, "package.json");
    writeFileSync(manifest, readFileSync(manifest, "utf8").replace(/"version": "[^"]*"/, '"version": "0.0.1"'));
    for (const name of ["dist/index.js", "dist/index.cjs"]) {
      writeFileSync(join(units, name), `/* another version */\n${readFileSync(join(units, name), "utf8")}`);
    }
    writeFileSync(join(dependency, "package.json"), '{"name":"dependency","type":"module","exports":"./index.js"}');
    writeFileSync(join(dependency, "index.js"), 'export * as units from "@tarewatt/units";\n');
  }

  /** Writes a file of the project and gives its path. */
  write(name: string, text: string): string {
    const file = join(this.folder, name);
    writeFileSync(file, text);
    return file;
  }

  /** What a program of the project prints, line by line. */
  run(name: string, text: string, command: readonly string[] = [process.execPath]): string[] {
    const [first = "", ...parameters] = command;
    return output(first, [...parameters, this.write(name, text)], this.folder)
      .trim()
      .split("\n");
  }

  remove(): void {
    rmSync(this.folder, { recursive: true });
  }
}
