/** The `shedbook` command. */
import { runProgram } from './program.ts';
import { processTerminal } from './terminal.ts';

process.exitCode = await runProgram(process.argv.slice(2), processTerminal());
