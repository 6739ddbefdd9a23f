import { defineConfig } from 'vitest/config';

const conditions = ['shedbook-source', 'node', 'import', 'module', 'default'];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    include: ['packages/**/*.test.ts', 'apps/**/*.test.ts', 'internal/**/*.test.ts'],
    exclude: ['**/node_modules/**', '**/dist/**', 'internal/checks/planted/**'],
    setupFiles: ['internal/testing/setup.ts'],
    testTimeout: 120_000,
    expect: { poll: { timeout: 20_000 } },
  },
});
