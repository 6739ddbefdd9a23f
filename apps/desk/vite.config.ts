import optimizeLocales from '@react-aria/optimize-locales-plugin';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { oldBrowserScreen } from '../../scripts/pages/old-browser.ts';
import { buildTargets, oldestBrowsers } from '../../scripts/pages/oldest-browsers.mjs';

/** Where the server of the desk listens while the desk is being worked on. */
const SERVER = 'http://127.0.0.1:4747';

/** The engraver, which rooms below bring along, asks for a module of Node, and only there: browsers get an empty one. */
const withoutNode = (): Plugin => ({
  name: 'without-node',
  enforce: 'pre',
  resolveId: (id) => (id === 'node:module' ? '\0without-node' : null),
  load: (id) => (id === '\0without-node' ? 'export {};' : null),
});

/** One text in quotes, or several joined by `+`. */
const TEXT = `(?:${["'", '"', '`'].map((quote) => `${quote}(?:[^${quote}\\\\]|\\\\.)*${quote}`).join('|')})`;
const TEXTS = `${TEXT}(?:\\s*\\+\\s*${TEXT})*`;
const DESCRIPTION = new RegExp(`z\\.describe\\(\\s*${TEXTS}\\s*,?\\s*\\)`, 'g');

/** What a route does, and what its refusals mean. */
const ROUTE_DESCRIPTION = new RegExp(`\\b(?:does|meaning):\\s*${TEXTS},?`, 'g');

/** The rest of a line, and of those that belong to it. */
const WHOLE = '.*(?:\\n {5,}.*|\\n {4}[)\\]}].*)*';

/** What the server alone asks of a route and of a refusal: whose it is, what it reads, with what it refuses. */
const FOR_THE_SERVER = new RegExp(`\\n {4}(?:whose|params|query|refusals): ${WHOLE}|\\bstatus: \\d+,`, 'g');

/** What is sent with a route: a desk sends JSON where it is neither nothing nor a file. */
const SENT = new RegExp(`\\n {4}body: (?!null\\b|'bytes')${WHOLE}`, 'g');

/** Descriptions of schemas, routes and refusals are for the reference in docs, which no browser writes: they stay behind. */
const withoutDescriptions = (): Plugin => ({
  name: 'without-descriptions',
  enforce: 'pre',
  transform: (code, id) => {
    const [, room] = /\/packages\/(core|routes)\/src\//.exec(id) ?? [];
    if (room === undefined) return null;
    const plain = code.replaceAll(DESCRIPTION, "z.describe('')");
    if (room === 'core') return { code: plain, map: null };
    const bare = plain
      .replaceAll(ROUTE_DESCRIPTION, '')
      .replaceAll(FOR_THE_SERVER, '')
      .replaceAll(SENT, '\n    body: 0,');
    return { code: bare, map: null };
  },
});

/** Where the time of a build goes is nobody's question who starts the desk. */
const checks = { bundlerTimings: false };

/** The largest file before it is compressed, in kB; what the first visit may load, compressed, a test holds ([ST27]). */
const LARGEST_KB = 800;

export default defineConfig({
  plugins: [
    withoutNode(),
    withoutDescriptions(),
    optimizeLocales.vite({ locales: ['en', 'de'] }),
    react(),
    oldBrowserScreen('desk'),
  ],
  resolve: { conditions: ['shedbook-source', 'module', 'browser', 'development|production'] },
  worker: { format: 'es', plugins: () => [withoutNode()], rolldownOptions: { checks } },
  build: {
    outDir: 'dist/site',
    emptyOutDir: true,
    target: buildTargets(oldestBrowsers()),
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: LARGEST_KB,
    rolldownOptions: { checks },
  },
  server: { proxy: { '/api': SERVER } },
});
