/**
 * What the command line says: results on standard output, problems and progress on standard error.
 */

import type { CliCatalogue } from '@shedbook/words';

/** Where a command speaks to. Tests give their own. */
export interface Terminal {
  /** A line of result. */
  readonly say: (line: string) => void;
  /** A line about a problem. */
  readonly warn: (line: string) => void;
  /** A line that replaces the one before, for long work; nothing when the output is not a screen. */
  readonly progress: (line: string | null) => void;
}

/** A terminal, and the language that it is spoken to in. */
export interface Speaker extends Terminal {
  readonly catalogue: CliCatalogue;
}

/** The terminal of this process. */
export function processTerminal(): Terminal {
  const isScreen = process.stderr.isTTY === true;
  const clear = isScreen ? '\r\u001b[2K' : '';
  return {
    say: (line) => void process.stdout.write(`${line}\n`),
    warn: (line) => void process.stderr.write(`${clear}${line}\n`),
    progress: (line) => {
      if (isScreen) process.stderr.write(`${clear}${line ?? ''}`);
    },
  };
}
