import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { SITE } from '../../../../internal/testing/browser.ts';

it('[ST7202] no part of the built desk asks for the first module of a worker, which WebKit would run a second time', () => {
  const folder = join(SITE, 'assets');
  const scripts = readdirSync(folder).filter((name) => name.endsWith('.js'));
  const workers = scripts.filter((name) => /\.worker-[^.]+\.js$/.test(name));
  expect(workers.some((name) => name.startsWith('film.worker-'))).toBe(true);
  // standard: ECMAScript, import declarations and import(); a worker itself is named by its address alone
  const asks = (text: string, worker: string) =>
    ['"', "'", '`'].some((quote) =>
      [`from${quote}./`, `from ${quote}./`, `import${quote}./`, `import(${quote}./`].some((begin) =>
        text.includes(`${begin}${worker}${quote}`),
      ),
    );
  const found = scripts.flatMap((name) => {
    const text = readFileSync(join(folder, name), 'utf8');
    return workers.filter((worker) => asks(text, worker)).map((worker) => `${name} asks for ${worker}`);
  });
  expect(found).toEqual([]);
});
