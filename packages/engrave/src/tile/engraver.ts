/** The engraver: verovio's toolkit, made ready once and used for every tile. */
import { engraveTile, type Tile, type TileRequest } from './tile.ts';
import type { EngravingToolkit } from './toolkit.ts';

/** Makes tiles. */
export interface Engraver {
  /** Engraves one line of bars. */
  readonly engraveTile: (request: TileRequest) => Tile;
}

/** An engraver on a toolkit that the caller has loaded. */
export function createEngraver(toolkit: EngravingToolkit): Engraver {
  return { engraveTile: (request) => engraveTile(toolkit, request) };
}
