/** Joins the apps into one command: the command line is given the server that its `serve` starts. */
import { runCommandLine } from '@shedbook/cli';

await runCommandLine(() => import('@shedbook/server'));
