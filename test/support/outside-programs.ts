import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/**
 * Programs from outside that some checks need. Where one is missing those checks are skipped with a line that says so; the whole
 * check of continuous integration (`WHOLE_CHECK=1`) installs them and fails without them.
 */

/** Where the browser is: Debian's, or the one that `CHROMIUM` names. */
export const chromium: string = process.env.CHROMIUM ?? "/usr/bin/chromium";

/** Debian's Python: another one on the path knows nothing of its packages. */
export const python = "/usr/bin/python3";

function hasNotebooks(): boolean {
  return existsSync(python) && spawnSync(python, ["-c", "import nbclient, nbformat"]).status === 0;
}

/** Why checks in a browser are skipped; empty when they run. */
export const noBrowser: string = existsSync(chromium)
  ? ""
  : ` (skipped: there is no Chromium at ${chromium}; install the Debian package chromium, or name another in CHROMIUM)`;

/** Why checks of notebooks are skipped; empty when they run. */
export const noNotebooks: string = hasNotebooks()
  ? ""
  : ` (skipped: ${python} cannot run notebooks; install the Debian package python3-nbclient)`;

/** Whether a check that is skipped elsewhere must not be skipped here. */
export const demanded: boolean = process.env.WHOLE_CHECK === "1";
