/** The `shedbook` command line; who starts it joins it with the server that `serve` starts. */
import type { LoadDesk } from './commands/serve.ts';
import { settleFor } from './listen/short-run.ts';
import { runProgram } from './program.ts';
import { processTerminal } from './terminal.ts';

export type { Desk, DeskOptions, LoadDesk, RunningDesk } from './commands/serve.ts';
export { runProgram } from './program.ts';

/** Runs the command line of this process, in the language of its environment, and leaves its exit status. */
export async function runCommandLine(loadDesk: LoadDesk): Promise<void> {
  // A reader that has seen enough, such as `head`, is no fault.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(0);
  });
  const { LC_ALL, LC_MESSAGES, LANG } = process.env;
  const locale = LC_ALL || LC_MESSAGES || LANG || '';
  process.exitCode = await runProgram(process.argv.slice(2), processTerminal(), {
    ...{ loadDesk, locale },
    settle: settleFor,
  });
}
