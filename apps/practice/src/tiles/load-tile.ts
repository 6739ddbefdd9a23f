/** Reading the SVG of tiles, each once. */
import { fetchKept } from '../page/fetch-kept.ts';

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
  const loading = fetchKept(path).then(async (response) => {
    if (!response.ok) throw new Error(`${path}: ${response.status}`);
    return readTile(await response.text());
  });
  loading.catch(() => tiles.delete(path));
  tiles.set(path, loading);
  return loading;
}
