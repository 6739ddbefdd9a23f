/**
 * `docs/CHANGES.md`, written by asking the compiler. With `--write` it is written anew; the test beside this fails where
 * the committed one differs.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ROOT } from '../tree.mjs';
import { askedBehind } from './compile.mjs';
import { DOORS } from './doors.data.mjs';

/** Where the page lies. */
export const PAGE = 'docs/CHANGES.md';

const INTRO = `# Adding something

Seven doors. Write the first line, compile (\`npx tsc -b\`), and go where the compiler sends you, lowest room first; each
place below is a decision that nobody can take for you. Whatever is not named here follows by itself.

Written by \`node internal/checks/doors/page.mjs --write\`, which makes something up behind every door and lists what the
compiler names; a test holds this page to it. Where a door leaves a place out that then is silently wrong, the house is at
fault: make a table of that place (\`Readonly<Record<…>>\`, \`satisfies\`, \`satisfies never\`).`;

function section({ door, begins, afterwards }, places) {
  const asked = places.map((place) => {
    const [file, what] = place.split(': ');
    return `- \`${file}\`: \`${what}\``;
  });
  return [
    `## ${door}`,
    '',
    `Begin with ${begins}. The compiler asks for:`,
    '',
    ...asked,
    '',
    ...afterwards.flatMap((line) => [line, '']),
  ];
}

/** The page as the compiler has it now, and what it said of no addition. */
export function makePage() {
  const { places, strays } = askedBehind(DOORS);
  const lines = [INTRO, '', ...DOORS.flatMap((door, index) => section(door, places[index]))];
  return { text: `${lines.join('\n').trimEnd()}\n`, strays };
}

if (
  process.argv[1] &&
  import.meta.url === pathToFileURL(process.argv[1]).href &&
  process.argv.includes('--write')
)
  writeFileSync(join(ROOT, PAGE), makePage().text);
