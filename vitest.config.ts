import { defineConfig } from 'vitest/config';
import { FILES_AT_ONCE, SideBySide } from './internal/testing/side-by-side.mjs';

/** The stories that are told in every engine: `npm run test:engines`. */
const ENGINES = '**/browser/engines/**';
const inEngines = process.env['SHEDBOOK_ENGINES'] !== undefined;

const conditions = ['shedbook-source', 'node', 'module', 'default'];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    include: ['packages/**/*.test.ts', 'apps/**/*.test.ts', 'internal/**/*.test.ts'],
    exclude: [
      '**/node_modules/**',
      '**/dist/**',
      'internal/checks/planted/**',
      ...(inEngines ? [] : [ENGINES]),
    ],
    maxWorkers: FILES_AT_ONCE,
    // Megabytes for what is new: with Node's own 16 a fifteenth of the processor's time goes into tidying up.
    execArgv: ['--max-semi-space-size=64'],
    // What one file of tests has loaded (the engraver, a browser, the kit) serves the next.
    isolate: false,
    sequence: { sequencer: SideBySide },
    setupFiles: ['internal/testing/setup.ts'],
    // A busy machine takes many times as long as a quiet one: only what hangs is to fail.
    testTimeout: 240_000,
    hookTimeout: 240_000,
    // Each look at a page takes four thousandths of a second of the processor.
    expect: { poll: { timeout: 60_000, interval: 150 } },
  },
});
