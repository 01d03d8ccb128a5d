import { readdirSync, writeFileSync } from "node:fs";
import type { Reporter, TestModule, Vitest } from "vitest/node";
import type { PublishedRow } from "./published.js";
import { validationTable } from "./validation-table.js";

/** From the foundation up, then what crosses packages; a package that is not named here comes after, in order of its name. */
const order = ["units", "roadload", "pack", "estimate", "report", "root"];

/** Writes docs/validation.md from the published checks of a run, when the run was complete and nothing failed. */
export default class ValidationReporter implements Reporter {
  private vitest: Vitest | undefined;

  onInit(vitest: Vitest): void {
    this.vitest = vitest;
  }

  async onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[], reason: string): Promise<void> {
    const vitest = this.vitest;
    if (vitest === undefined || reason !== "passed" || errors.length > 0) return;
    if (!(await isComplete(vitest, modules))) return;
    const names = modules.map(({ project }) => project.name);
    const sections = [...new Set([...order, ...names.sort()])].map((name) => ({
      title: name === "root" ? "Across packages" : `@tarewatt/${name}`,
      rows: rowsOf(modules.filter(({ project }) => project.name === name)),
    }));
    if (sections.every(({ rows }) => rows.length === 0)) return;
    writeFileSync(new URL("../../docs/validation.md", import.meta.url), validationTable(sections));
  }
}

/** Whether nothing was left out: a table with half of the checks would look like a whole one. */
async function isComplete(vitest: Vitest, modules: readonly TestModule[]): Promise<boolean> {
  const { testNamePattern, shard, tagsFilter } = vitest.config;
  if (testNamePattern !== undefined || shard !== undefined || (tagsFilter ?? []).length > 0) return false;
  const packages = readdirSync(new URL("../../packages/", import.meta.url), { withFileTypes: true });
  const wanted = ["root", ...packages.filter((entry) => entry.isDirectory()).map(({ name }) => name)];
  const present = new Set(vitest.projects.map(({ name }) => name));
  if (!wanted.every((name) => present.has(name))) return false;
  const all = await vitest.globTestSpecifications();
  const ran = new Set(modules.map(({ moduleId }) => moduleId));
  if (!all.every(({ moduleId }) => ran.has(moduleId))) return false;
  return modules.every((module) => [...module.children.allTests()].every(({ options }) => options.mode !== "only"));
}

function rowsOf(modules: readonly TestModule[]): PublishedRow[] {
  return [...modules]
    .sort((a, b) => (a.relativeModuleId < b.relativeModuleId ? -1 : 1))
    .flatMap((module) => [...module.children.allTests()].flatMap((test) => test.meta().published ?? []));
}
