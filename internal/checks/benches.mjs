/** Benches call what rooms export, and no test runs them: the compiler checks them against what was built last. */
import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { ROOT } from './tree.mjs';

const TSC = join(ROOT, 'node_modules/typescript/bin/tsc');

/**
 * What the compiler has against benches and the helpers that they load, a line each.
 * @param project the configuration that names them
 */
export function checkBenches(project = join(ROOT, 'tsconfig.bench.json')) {
  return new Promise((resolve) => {
    execFile(process.execPath, [TSC, '-p', project, '--pretty', 'false'], { cwd: ROOT }, (_, said) =>
      resolve(said.split('\n').filter((line) => line !== '')),
    );
  });
}
