// Prints "N passed, N failed" from vitest's JSON report, and exits non-zero unless everything ran and passed.
// Usage: node .ci/counts.mjs REPORT STATUS, where STATUS is the exit code of the check that wrote the report.
import { existsSync, readFileSync } from "node:fs";

const [reportPath, status] = process.argv.slice(2);
const report = existsSync(reportPath) ? JSON.parse(readFileSync(reportPath, "utf8")) : undefined;

// A test file that could not be loaded holds no test, yet it failed: it counts as one.
const brokenFiles = (report?.testResults ?? []).filter(
  (file) => file.status === "failed" && !file.assertionResults.some((test) => test.status === "failed"),
).length;
const passed = report?.numPassedTests ?? 0;
const failed = (report?.numFailedTests ?? 0) + brokenFiles;

if (report === undefined) console.error("The check stopped before the tests: no test ran.");
else if (passed + failed === 0) console.error("vitest found no test.");

const green = status === "0" && report?.success === true && failed === 0 && passed > 0;
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = green ? 0 : Number(status) || 1;
