/** How the command of the package is bundled: our own code in a few files, third-party packages left to the manifest. */
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));

/** Threads are files of their own, beside the command. */
const input = {
  shedbook: here('join.mjs'),
  'sheet-worker': here('../apps/server/src/sheet/sheet-worker.ts'),
  'film-worker': here('../apps/server/src/films/film-worker.ts'),
  'import-worker': here('../apps/server/src/files/import-worker.ts'),
  'outside-worker': here('../packages/host/src/outside/outside-worker.ts'),
  'decode-worker': here('../packages/host/src/decode/decode-worker.ts'),
};

export default defineConfig({
  root: here('..'),
  publicDir: false,
  ssr: {
    noExternal: [/^@shedbook\//],
    resolve: { conditions: ['shedbook-source', 'node', 'import', 'default'] },
  },
  build: {
    ssr: true,
    outDir: here('../dist'),
    emptyOutDir: true,
    target: 'node20',
    rolldownOptions: {
      input,
      external: (id) => !/^(?:[./]|@shedbook\/)/.test(id),
      // constants made variables would be read anew at every step of a loop over samples
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js', topLevelVar: false },
    },
  },
});
