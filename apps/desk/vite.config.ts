import optimizeLocales from '@react-aria/optimize-locales-plugin';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** Where the server of the desk listens while the desk is being worked on. */
const SERVER = 'http://127.0.0.1:4747';

export default defineConfig({
  plugins: [optimizeLocales.vite({ locales: ['en', 'de'] }), react()],
  resolve: { conditions: ['shedbook-source', 'module', 'browser', 'development|production'] },
  worker: { format: 'es' },
  build: { outDir: 'dist/site', emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0 },
  server: { proxy: { '/api': SERVER } },
});
