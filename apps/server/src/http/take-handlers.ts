/** Takes: sent and taken back by a student's private link, listened to and answered on the desk. */

import { mayRecord } from '@shedbook/routes';
import type { ImportMaker } from '../files/import-maker.ts';
import type { StudentStore } from '../store/students.ts';
import type { TakeName } from '../store/take-files.ts';
import { STUDENT_BYTES, type TakeStore } from '../store/takes.ts';
import type { Door } from '../week/door.ts';
import { answer, type Handlers, refuse, teacherOf } from './handlers.ts';

/** What answers about takes are made with. */
export interface TakeParts {
  readonly door: Door;
  readonly students: StudentStore;
  readonly takes: TakeStore;
  /** Reads what takes say of themselves. */
  readonly imports: ImportMaker;
}

/** A name for the reader's disk. */
function nameOf(take: string): string {
  return `${take.replace(/[^\w-]+/g, '-')}.zip`;
}

/** Whether a file begins as MP3 files do. Source: ISO/IEC 11172-3, the syncword of a frame; ID3v2, its tag. */
function isMp3(content: Uint8Array): boolean {
  const [first = 0, second = 0, third = 0] = content;
  const isTagged = first === 0x49 && second === 0x44 && third === 0x33;
  return isTagged || (first === 0xff && (second & 0xe0) === 0xe0);
}

/** Answers the routes of takes. */
export function takeHandlers({ door, students, takes, imports }: TakeParts) {
  const voiceOf = async (name: TakeName, bar: number | null) => {
    const content = await takes.voice(name, bar);
    return content ? answer({ name: 'voice.mp3', type: 'audio/mpeg', content }) : refuse('no-such-take', {});
  };
  return {
    readInbox: async ({ query: { playedBefore } }, _signal, caller) => {
      const { id } = teacherOf(caller);
      const away = await students.away(new Date(playedBefore), id);
      return answer({ ...(await takes.unheard(id)), ...away });
    },
    listTakes: async ({ params: { id } }) => answer(await takes.of(id)),
    readTake: async ({ params: { id, take } }) => {
      const content = (await students.read(id)) && (await takes.read({ student: id, take }));
      if (!content) return refuse('no-such-take', {});
      return answer({ name: nameOf(take), type: 'application/zip', content });
    },
    answerTake: async ({ params: { id, take }, body }) => {
      const kept = await takes.answer({ student: id, take }, body);
      return kept ? answer(kept) : refuse('no-such-take', {});
    },
    keepTake: async ({ params: { id, take }, body: { isKept } }) => {
      const kept = await takes.keepByHand({ student: id, take }, isKept);
      return kept ? answer(kept) : refuse('no-such-take', {});
    },
    readKeeping: async (_asked, _signal, caller) => answer(await takes.keeping(teacherOf(caller).id)),
    saveKeeping: async ({ body }, _signal, caller) =>
      answer(await takes.setKeeping(body, teacherOf(caller).id)),
    sayVoice: async ({ params: { id, take }, query: { bar = null }, body }) => {
      if (!isMp3(body)) return refuse('not-a-voice-note', {});
      const kept = await takes.say({ student: id, take }, body, bar);
      return kept ? answer(kept) : refuse('no-such-take', {});
    },
    hearVoice: async ({ params: { id, take }, query: { bar = null } }) => voiceOf({ student: id, take }, bar),
    unsayVoice: async ({ params: { id, take }, query: { bar = null } }) =>
      (await takes.unsay({ student: id, take }, bar)) ? answer(null) : refuse('no-such-take', {}),
    hearAnswer: async ({ params: { token, take }, query: { bar = null } }, _signal, { ip }) => {
      const opening = await door(token, ip);
      return opening.kind === 'refused' ? opening : voiceOf({ student: opening.student.id, take }, bar);
    },
    sendTake: async ({ params: { token, take }, query: { asks }, body }, signal, { ip }) => {
      const opening = await door(token, ip);
      if (opening.kind === 'refused') return opening;
      if (!mayRecord(opening.student.minority)) return refuse('no-consent', {});
      const facts = await imports.readTake(body, { of: opening.student.id, signal });
      if (facts?.id !== take) return refuse('not-a-take', {});
      const coming = { student: opening.student.id, facts, asks: asks === 'yes', content: body };
      const kept = await takes.keep(coming);
      return kept ? answer(kept) : refuse('no-room', { mostBytes: STUDENT_BYTES });
    },
    takeBack: async ({ params: { token, take } }, _signal, { ip }) => {
      const opening = await door(token, ip);
      if (opening.kind === 'refused') return opening;
      const isGone = await takes.remove({ student: opening.student.id, take });
      return isGone ? { ...answer(null), about: opening.student.id } : refuse('no-such-take', {});
    },
  } satisfies Partial<Handlers>;
}
