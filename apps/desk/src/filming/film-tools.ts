/// <reference types="vite/client" />
/** What films are engraved and drawn with, in a browser. */

import regular from '@expo-google-fonts/fira-sans/400Regular/FiraSans_400Regular.ttf?url';
import italic from '@expo-google-fonts/fira-sans/400Regular_Italic/FiraSans_400Regular_Italic.ttf?url';
import bold from '@expo-google-fonts/fira-sans/600SemiBold/FiraSans_600SemiBold.ttf?url';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import resvgWasm from '@resvg/resvg-wasm/index_bg.wasm?url';
import { createFonts, type Engraver, type Fonts, loadEngraver } from '@shedbook/engrave';
import { createRasteriser, type Rasteriser } from '@shedbook/film';

/** An engraver, the fonts of the text, and what turns drawings into pixels. */
export interface FilmTools {
  readonly engraver: Engraver;
  readonly fonts: Fonts;
  readonly rasteriser: Rasteriser;
}

async function bytesAt(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${url}: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}

/** Loads them. @throws Error where one of them does not come */
export async function loadFilmTools(): Promise<FilmTools> {
  const [engraver, wasm, ...faces] = await Promise.all([
    loadEngraver(),
    bytesAt(resvgWasm),
    ...[regular, bold, italic].map(bytesAt),
  ]);
  await initWasm(wasm);
  const [plain, heavy, slanted] = faces as [Uint8Array, Uint8Array, Uint8Array];
  const fonts = createFonts({ regular: plain, bold: heavy, italic: slanted });
  return { engraver, fonts, rasteriser: createRasteriser(Resvg) };
}
