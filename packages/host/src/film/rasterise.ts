/** SVG documents as pixels, by resvg. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { createRasteriser, type Rasteriser } from '@shedbook/film';

async function load(): Promise<Rasteriser> {
  const { initWasm, Resvg } = await import('@resvg/resvg-wasm');
  const { resolve } = createRequire(import.meta.url);
  await initWasm(await readFile(resolve('@resvg/resvg-wasm/index_bg.wasm')));
  return createRasteriser(Resvg);
}

let loaded: Promise<Rasteriser> | null = null;

/** Loads it, once in a process. */
export function loadRasteriser(): Promise<Rasteriser> {
  loaded ??= load();
  return loaded;
}
