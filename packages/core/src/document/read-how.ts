/** Reading how limbs play: words of the list, and a teacher's own. */
import { HOW_KINDS, HOW_OF, HOW_WORDS, isHowWord } from '../kit/how.data.ts';
import { isVoice, type Voice } from '../kit/voice.ts';
import type { How, HowByVoice } from '../lesson/how.ts';
import { didYouMean, quoted } from '../lesson/value-fact.ts';
import type { Report } from './fault.ts';
import type { FieldPath } from './field-path.ts';
import { nearest } from './nearest.ts';
import type { RawLesson } from './schema.ts';

type RawExercise = Exclude<NonNullable<NonNullable<RawLesson['exercises']>[number]>, string>;

/** One word, and where it begins in its text. */
interface Word {
  readonly text: string;
  readonly offset: number;
}

/** What is written between commas. */
function wordsOf(text: string): readonly Word[] {
  return [...text.matchAll(/[^,]+/g)].flatMap((match) => {
    const word = match[0].trim();
    const offset = match.index + match[0].indexOf(word);
    return word === '' ? [] : [{ text: word.replaceAll(/\s+/g, ' '), offset }];
  });
}

/** A word that is like one of the list is warned of, and kept as the teacher's own. */
function checkOwn({ text, offset }: Word, path: FieldPath, report: Report): void {
  const near = nearest(text, HOW_WORDS);
  if (isHowWord(text) || near === null) return;
  report({
    code: 'like-a-word',
    severity: 'warning',
    path,
    offset,
    found: quoted(text),
    expected: { fact: 'one-of', words: HOW_WORDS },
    repair: didYouMean(near),
  });
}

/** Whether a word goes with one of some voices; where not, that is told. */
function fits({ text, offset }: Word, voices: readonly Voice[], path: FieldPath, report: Report): boolean {
  const known = [...new Set(voices.flatMap((voice) => HOW_OF[voice]))];
  if (!isHowWord(text) || known.includes(text)) return true;
  const expected = { fact: 'how-of-voices', voices, words: known } as const;
  report({ code: 'how', path, offset, found: quoted(text), expected });
  return false;
}

/** Whether no word before this one says another thing of the same kind. */
function isAlone(word: Word, before: readonly Word[], path: FieldPath, report: Report): boolean {
  const { text, offset } = word;
  const other = before.find((each) =>
    isHowWord(each.text) && isHowWord(text) ? HOW_KINDS[each.text] === HOW_KINDS[text] : each.text === text,
  );
  if (!other) return true;
  const expected = { fact: 'how-once', word: other.text } as const;
  report({ code: 'how', path, offset, found: quoted(text), expected });
  return false;
}

/** The words of one text that go with one of some voices. */
function readWords(
  text: string,
  voices: readonly Voice[],
  path: FieldPath,
  report: Report,
): readonly string[] {
  const kept: Word[] = [];
  for (const word of wordsOf(text)) {
    checkOwn(word, path, report);
    if (fits(word, voices, path, report) && isAlone(word, kept, path, report)) kept.push(word);
  }
  return kept.map((word) => word.text);
}

/** Those of the words that a voice can be played with: its own, and the teacher's. */
function onVoice(words: How, voice: Voice): How {
  return words.filter((word) => !isHowWord(word) || HOW_OF[voice].includes(word));
}

function withoutEmpty(entries: readonly (readonly [Voice, How])[]): HowByVoice {
  return Object.fromEntries(entries.filter(([, words]) => words.length > 0)) as HowByVoice;
}

function readByVoice(
  raw: Readonly<Partial<Record<Voice, string | undefined>>>,
  path: FieldPath,
  report: Report,
): HowByVoice {
  const entries = Object.entries(raw).flatMap(([voice, text]) =>
    text === undefined || !isVoice(voice)
      ? []
      : [[voice, readWords(text, [voice], [...path, voice], report)] as const],
  );
  return withoutEmpty(entries);
}

/** How the voices of a lesson or a section are played: as its groove says, else as `how` does. */
export function readHow(raw: RawLesson, report: Report): HowByVoice {
  const inGroove = Object.entries(raw.groove ?? {}).flatMap(([voice, part]) => {
    if (part === undefined || typeof part === 'string' || part.how === undefined || !isVoice(voice))
      return [];
    return [[voice, readWords(part.how, [voice], ['groove', voice, 'how'], report)] as const];
  });
  return { ...withoutEmpty(inGroove), ...readByVoice(raw.how ?? {}, ['how'], report) };
}

/** How voices are played while an exercise does; null where it says nothing. A text is of the voices that it plays. */
export function readExerciseHow(
  raw: RawExercise['how'],
  plays: readonly Voice[],
  path: FieldPath,
  report: Report,
): HowByVoice | null {
  if (raw === undefined) return null;
  if (typeof raw !== 'string') return readByVoice(raw, path, report);
  const words = readWords(raw, plays, path, report);
  return withoutEmpty(plays.map((voice) => [voice, onVoice(words, voice)] as const));
}
