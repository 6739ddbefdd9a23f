export { decodeSmf } from './midi/decode.ts';
export { encodeSmf } from './midi/encode.ts';
export * from './midi/import.ts';
export { keyToVoice, voiceToKey } from './midi/key-map.ts';
export { type ByteProblem, formatByteProblem } from './midi/problem.ts';
export * from './midi/read.ts';
export * from './midi/smf.ts';
export { encodeVlq, VLQ_MAX } from './midi/vlq.ts';
export * from './midi/write.ts';
