/** Files of the teacher's own, for whoever keeps them and makes nothing of a lesson. */
export type { LessonMedia, LessonMedium } from './lesson-media.ts';
export { dataUri, type MediumFile, type MediumReading, readMedium } from './medium-file.ts';
export { MEDIUM_NAME } from './medium-name.ts';
export type { PixelSize } from './pixel-size.ts';
