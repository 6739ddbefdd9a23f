export { createEngraver, type Engraver } from './tile/engraver.ts';
export { loadEngraver } from './tile/load-engraver.ts';
export type { Staff } from './tile/mei.ts';
export type { Tile, TileHead, TileRequest, TimemapEntry } from './tile/tile.ts';
export type { EngravingToolkit } from './tile/toolkit.ts';
