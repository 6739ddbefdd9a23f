/** The picture of a report: a page of its own, so that who draws one carries no engraver. */
export { drawReport } from './picture.ts';
export type { PictureText, PictureWords } from './picture-words.ts';
