/** Builds the practice room: files that run from any folder of any host. Packs are made of them. */
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('practice'),
  base: './',
  publicDir: here('public'),
  plugins: [react()],
  resolve: { conditions: ['shedbook-source', 'module', 'browser', 'development|production'] },
  worker: { format: 'es' },
  build: {
    outDir: here('dist/practice'),
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    rolldownOptions: {
      input: { index: here('practice/index.html'), sw: here('src/practice/offline/sw.ts') },
      output: {
        entryFileNames: ({ name }) => (name === 'sw' ? 'sw.js' : 'assets/[name]-[hash].js'),
      },
    },
  },
});
