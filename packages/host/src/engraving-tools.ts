/** What a sheet is engraved with, loaded from the installed packages. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Engraver, Fonts } from '@shedbook/engrave';

/** An engraver and the fonts of the text. */
export interface EngravingTools {
  readonly engraver: Engraver;
  readonly fonts: Fonts;
}

async function load(): Promise<EngravingTools> {
  const { loadEngraver, loadFonts } = await import('@shedbook/engrave');
  const { resolve } = createRequire(import.meta.url);
  const [engraver, fonts] = await Promise.all([
    loadEngraver(),
    loadFonts((specifier) => readFile(resolve(specifier))),
  ]);
  return { engraver, fonts };
}

let tools: Promise<EngravingTools> | null = null;

/**
 * Loads them, once in a process: that takes a second or so. The fonts are those that the engraving room was designed
 * with.
 */
export function loadEngravingTools(): Promise<EngravingTools> {
  tools ??= load();
  return tools;
}
