/** The text fonts of printed sheets, from the installed packages. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { createFonts, FONT_MODULES, type Fonts } from '@shedbook/engrave';

/** Loads the fonts. */
export async function loadFonts(): Promise<Fonts> {
  const { resolve } = createRequire(import.meta.url);
  const read = (specifier: string) => readFile(resolve(specifier));
  const [regular, bold, italic] = await Promise.all([
    read(FONT_MODULES.regular),
    read(FONT_MODULES.bold),
    read(FONT_MODULES.italic),
  ]);
  return createFonts({ regular, bold, italic });
}
