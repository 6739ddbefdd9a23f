/** SVG documents as pixels, by resvg. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Rasterise } from '@shedbook/film';

/** What turns SVG documents into pixels, and into PNG files. */
export interface Rasteriser {
  readonly rasterise: Rasterise;
  readonly toPng: (svg: string) => Uint8Array;
}

async function load(): Promise<Rasteriser> {
  const { initWasm, Resvg } = await import('@resvg/resvg-wasm');
  const { resolve } = createRequire(import.meta.url);
  await initWasm(await readFile(resolve('@resvg/resvg-wasm/index_bg.wasm')));
  const draw = <T>(
    svg: string,
    take: (image: InstanceType<typeof Resvg>['render'] extends () => infer R ? R : never) => T,
  ): T => {
    const document = new Resvg(svg);
    const image = document.render();
    const taken = take(image);
    image.free();
    document.free();
    return taken;
  };
  return {
    rasterise: (svg) => draw(svg, ({ width, height, pixels }) => ({ width, height, rgba: pixels })),
    toPng: (svg) => draw(svg, (image) => image.asPng()),
  };
}

let loaded: Promise<Rasteriser> | null = null;

/** Loads it, once in a process. */
export function loadRasteriser(): Promise<Rasteriser> {
  loaded ??= load();
  return loaded;
}
