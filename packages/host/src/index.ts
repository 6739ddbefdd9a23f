/** What the Node programs share; whatever is heavy is loaded when it is first asked for. */
export type { BackupFacts, Restored, WrittenBackup } from './backup-facts.ts';
export { readPracticePage } from './built-pages.ts';
export { decodeSound } from './decode/decode-sound.ts';
export type { DecodedSound } from './decode/decoded-sound.ts';
export { type EngravingTools, loadEngravingTools } from './engraving-tools.ts';
export type { Examination, Saved } from './examination.ts';
export { DEMO_DIR, DESK_DIR, houseOf, PRACTICE_DIR } from './house.ts';
export { InputError, reasonOf, type SayIn } from './input-error.ts';
export { loadKit } from './kit.ts';
export { makeFolder } from './make-folder.ts';
export { type FindFile, fileIn, lookAtFiles, readMedia } from './media/read-media.ts';
export type { Outside, OutsideKind } from './outside/outside-messages.ts';
export { type OutsideFile, readOutside, unreadableFile } from './outside/read-outside.ts';
export { readUpTo } from './outside/read-up-to.ts';
export { loadSpokenWords } from './spoken-words.ts';
export {
  createThread,
  type OrderTerms,
  type Thread,
  type ThreadLimits,
  TooMuchError,
} from './thread/thread.ts';
export { threadFile } from './thread/thread-file.ts';
