/** Builds the practice room: files that run from any folder of any host. Packs are made of them. */
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { oldBrowserScreen } from '../../scripts/pages/old-browser.ts';
import { buildTargets, oldestBrowsers } from '../../scripts/pages/oldest-browsers.mjs';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Lets the browser fetch the plan together with the page that it stands on, rather than after it. */
const planWithPage: Plugin = {
  name: 'plan-with-page',
  transformIndexHtml: {
    order: 'post',
    handler: (html, { bundle = {} }) => {
      const plan = Object.values(bundle).find((file) => file.name === 'plan-body');
      if (plan?.type !== 'chunk') return [];
      const scripts = [plan.fileName, ...plan.imports].filter((file) => !html.includes(file));
      const styles = [...(plan.viteMetadata?.importedCss ?? [])];
      const link = (attrs: Record<string, string | boolean>) => ({
        tag: 'link',
        attrs,
        injectTo: 'head' as const,
      });
      return [
        ...scripts.map((file) =>
          link({ rel: 'modulepreload', fetchpriority: 'low', crossorigin: true, href: `./${file}` }),
        ),
        ...styles.map((file) =>
          link({ rel: 'preload', as: 'style', fetchpriority: 'low', crossorigin: true, href: `./${file}` }),
        ),
      ];
    },
  },
};

/** Where the time of a build goes is nobody's question who starts the desk. */
const checks = { bundlerTimings: false };

export default defineConfig({
  root: here('.'),
  base: './',
  publicDir: here('public'),
  plugins: [react(), planWithPage, oldBrowserScreen('practice', './files/sheet.pdf')],
  resolve: { conditions: ['shedbook-source', 'module', 'browser', 'development|production'] },
  worker: { format: 'es', rolldownOptions: { checks } },
  build: {
    outDir: here('dist/site'),
    emptyOutDir: true,
    target: buildTargets(oldestBrowsers()),
    assetsInlineLimit: 0,
    rolldownOptions: {
      checks,
      input: { index: here('index.html'), sw: here('src/offline/sw.ts'), link: here('src/offline/link.ts') },
      output: {
        // Workers keep their names, by which browsers find newer ones.
        entryFileNames: ({ name }) => (/^(?:sw|link)$/.test(name) ? '[name].js' : 'assets/[name]-[hash].js'),
      },
    },
  },
});
