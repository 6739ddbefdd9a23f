/** SVG documents as pixels, by resvg, which whoever makes films has loaded. */
import type { Rasterise } from './painter.ts';

/** What turns SVG documents into pixels, and into PNG files. */
export interface Rasteriser {
  readonly rasterise: Rasterise;
  readonly toPng: (svg: string) => Uint8Array<ArrayBuffer>;
}

/** What of resvg is used: documents and images lie in its own memory until they are let go. */
interface Drawn {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
  asPng(): Uint8Array;
  free(): void;
}
type Resvg = new (svg: string) => { render(): Drawn; free(): void };

/** A rasteriser. @param Document resvg's class, its WebAssembly loaded */
export function createRasteriser(Document: Resvg): Rasteriser {
  const draw = <T>(svg: string, take: (image: Drawn) => T): T => {
    const document = new Document(svg);
    const image = document.render();
    const taken = take(image);
    image.free();
    document.free();
    return taken;
  };
  return {
    rasterise: (svg) => draw(svg, ({ width, height, pixels }) => ({ width, height, rgba: pixels })),
    toPng: (svg) => draw(svg, (image) => Uint8Array.from(image.asPng())),
  };
}
