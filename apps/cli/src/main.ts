/** The `shedbook` command. */
import { runProgram } from './program.ts';
import { processTerminal } from './terminal.ts';

/** A reader that has seen enough, such as `head`, is no fault. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

process.exitCode = await runProgram(process.argv.slice(2), processTerminal());
