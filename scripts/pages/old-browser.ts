/**
 * What stands in a page before it is one: a script in the oldest form of the language, which says in both languages
 * what is needed where the browser is too old or the page was opened out of a file. Else that would be a blank page.
 */
import { fileURLToPath } from 'node:url';
import type { OLD_BROWSER, OldBrowserWords } from '@shedbook/words/old-browser';
import { type Plugin, runnerImport } from 'vite';
import { type OldestBrowsers, oldestBrowsers } from './oldest-browsers.mjs';

/** What a browser is asked for, as code that is true or throws, with the part of the platform, as MDN names it. */
export const PROBES: readonly (readonly [part: string, code: string])[] = [
  ['css.types.color.color-mix', "CSS.supports('color', 'color-mix(in srgb, red, red)')"],
  ['css.selectors.has', "CSS.supports('selector(:has(a))')"],
  ['javascript.regular_expressions.lookbehind_assertion', "new RegExp('(?<=a)b')"],
];

type Words = typeof OLD_BROWSER;
type Reason = 'old' | 'file' | 'script';

/** What a screen is made of. */
interface Screen {
  readonly words: Words;
  readonly oldest: OldestBrowsers;
  /** Address of what opens without all that; null where there is nothing. */
  readonly sheet: string | null;
}

const LOOK = 'font:1.25rem/1.5 system-ui,sans-serif;max-width:34rem;margin:8vh auto;padding:0 1rem';

/** The words as they are written: what is compiled of them may not be there yet. */
async function readWords(): Promise<Words> {
  const source = fileURLToPath(new URL('../../packages/words/src/screens/old-browser.ts', import.meta.url));
  const { module } = await runnerImport<{ OLD_BROWSER: Words }>(source, { configFile: false });
  return module.OLD_BROWSER;
}

/** The reason in one language, with the versions in their places. */
function partIn(tag: string, says: OldBrowserWords, reason: Reason, { oldest, sheet }: Screen): string {
  const { title, lead } = says[reason];
  const { chrome, firefox, safari, ios_saf: system } = oldest;
  const versions: Readonly<Record<string, string>> = { chrome, firefox, safari, system };
  const text = lead.replace(/\{\$(\w+)\}/g, (_, name: string) => versions[name] ?? '');
  const link =
    sheet === null ? '' : `<p>${says.sheet}<a href="${sheet}">${sheet.replace(/^.*\//, '')}</a></p>`;
  return `<div lang="${tag}"><h1 style="font-size:1.5rem">${title}</h1><p>${text}</p>${link}</div>`;
}

function screenOf(reason: Reason, screen: Screen): string {
  const parts = Object.entries(screen.words).map(([tag, says]) => partIn(tag, says, reason, screen));
  return `<main style="${LOOK}">${parts.join('')}</main>`;
}

/** The script, for the oldest browsers there are: ECMAScript 3. */
function scriptOf(root: string, screen: Screen): string {
  const text = (reason: Reason) => JSON.stringify(screenOf(reason, screen)).replace(/</g, '\\x3c');
  return `
(function () {
  var says = /^https?:$/.test(location.protocol) ? '' : ${text('file')};
  var isNew = false;
  try {
    isNew = Boolean(${PROBES.map(([, code]) => code).join(' && ')});
  } catch (error) {}
  if (!isNew) says = says || ${text('old')};
  if (says) {
    var root = document.getElementById('${root}');
    root.removeAttribute('id');
    root.innerHTML = says;
  }
})();
`;
}

/**
 * Puts it behind the root element, which loses its name where something is said: no page begins there then.
 * @param sheet address of what opens without all that; null where there is nothing
 */
export function oldBrowserScreen(root: string, sheet: string | null = null): Plugin {
  return {
    name: 'old-browser-screen',
    transformIndexHtml: async (html) => {
      const screen = { words: await readWords(), oldest: oldestBrowsers(), sheet };
      const tags = [
        { tag: 'noscript', children: screenOf('script', screen), injectTo: 'body' as const },
        { tag: 'script', children: scriptOf(root, screen), injectTo: 'body' as const },
      ];
      return { html, tags };
    },
  };
}
