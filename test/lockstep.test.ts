import { expect, test } from "vitest";
import { packages } from "./packages.js";

test("the six packages carry one version", () => {
  expect(packages.map((each) => each.directory)).toEqual([
    "estimate",
    "pack",
    "report",
    "roadload",
    "tarewatt",
    "units",
  ]);
  const versions = new Map(packages.map((each) => [each.manifest.name, each.manifest.version]));
  expect(new Set(versions.values()), `versions: ${JSON.stringify([...versions])}`).toHaveLength(1);
});

test("a package depends on its siblings at the same version, whatever that is", () => {
  for (const { manifest } of packages) {
    const siblings = Object.entries(manifest.dependencies ?? {}).filter(([name]) => name.startsWith("@tarewatt/"));
    for (const [name, range] of siblings) expect(range, `${manifest.name} -> ${name}`).toBe("workspace:*");
  }
});
