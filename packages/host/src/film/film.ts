/** Films on disk: beside the rest of the room, since whoever makes none is not to load what they are made of. */
export { estimateDemonstrationBytes, makeDemonstrations } from './demonstrations.ts';
export { endingHere } from './encoder.ts';
export {
  type HeardPerformances,
  type HearOrder,
  hearPerformances,
  NotPlayedError,
  type PerformanceFile,
  type TakeHeard,
} from './hear-performances.ts';
export {
  estimatePictureBytes,
  type FilmFile,
  type FilmOrder,
  type FilmProgress,
  filmEndingOf,
  makeFilm,
} from './make-film.ts';
export { loadRasteriser } from './rasterise.ts';
