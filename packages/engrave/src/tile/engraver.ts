/** The engraver: verovio's toolkit, made ready once and used for every tile. */
import { engraveTile, type Tile, type TileRequest } from './tile.ts';
import type { EngravingToolkit } from './toolkit.ts';

/** Makes tiles. */
export interface Engraver {
  /** Engraves one line of bars. */
  readonly engraveTile: (request: TileRequest) => Tile;
}

/** Tiles that are kept, at most: those of a few long sheets. A sheet has its legend, and most of its lines, again. */
const KEPT = 300;

/** An engraver on a toolkit that the caller has loaded; what it engraved lately it need not engrave again. */
export function createEngraver(toolkit: EngravingToolkit): Engraver {
  const kept = new Map<string, Tile>();
  return {
    engraveTile: (request) => {
      const key = JSON.stringify(request);
      const tile = kept.get(key) ?? engraveTile(toolkit, request);
      // What was asked for last stands last, and goes last.
      kept.delete(key);
      kept.set(key, tile);
      const [oldest] = kept.keys();
      if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest);
      return tile;
    },
  };
}
