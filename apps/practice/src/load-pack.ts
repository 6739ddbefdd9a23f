/** Reading the pack that the page lies in. */
import type { Pack } from '@shedbook/server';

/** The format that this page reads. */
const FORMAT = 1;

/** What the page lies in. @throws Error when it is not there or not of this format. */
export async function loadPack(): Promise<Pack> {
  const response = await fetch('pack.json');
  if (!response.ok) throw new Error(`pack.json: ${response.status}`);
  const pack = (await response.json()) as Pack;
  if (pack.format !== FORMAT) throw new Error(`pack.json: found format ${pack.format}, expected ${FORMAT}`);
  return pack;
}

const tiles = new Map<string, Promise<Element>>();

/** Reads a tile: its size becomes a number of units, so that it can stand inside a picture in millimetres. */
function readTile(text: string): Element {
  const root = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  for (const side of ['width', 'height'])
    root.setAttribute(side, String(parseFloat(root.getAttribute(side) ?? '0')));
  return root;
}

/** The SVG of a tile; take a copy of it. */
export function loadTile(path: string): Promise<Element> {
  const known = tiles.get(path);
  if (known) return known;
  const loading = fetch(path).then(async (response) => {
    if (!response.ok) throw new Error(`${path}: ${response.status}`);
    return readTile(await response.text());
  });
  loading.catch(() => tiles.delete(path));
  tiles.set(path, loading);
  return loading;
}
