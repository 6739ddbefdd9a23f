export { type BookRequest, type PrintedBook, printBook } from './files/book.ts';
export { codeOption, drawCode } from './files/code.ts';
export { type FileKind, type LessonFile, type PackFile, textFile } from './files/file.ts';
export { FILE_FORMATS, type FileFormat } from './files/formats.data.ts';
export {
  type Handout,
  type HandoutLine,
  type HandoutPart,
  type HandoutRequest,
  printHandout,
} from './files/handout.ts';
export { printedMedia } from './files/printed-media.ts';
export {
  AUDIO_FORMATS,
  type AudioFormat,
  makeRecording,
  type PlannedRecording,
  planRecordings,
  RECORDING_RATE_HZ,
  type RecordingRequest,
} from './files/recordings.ts';
export { drawPages, makeSheet, printSheet } from './files/sheet.ts';
export {
  type StandardFileOptions,
  writeStandardFiles,
  writeStandardSheet,
} from './files/standard-files.ts';
export { type BookLesson, type BookPackRequest, makeBookPack } from './page/book-pack.ts';
export { CONTENT_POLICY, policyOf } from './page/content-policy.ts';
export {
  type ExerciseFilm,
  makePack,
  type PackRequest,
  type RecordedDemonstration,
} from './page/make-pack.ts';
export * from './page/pack.ts';
export { PACK_FOLDER, zipFiles, zipPack } from './page/zip.ts';
