/**
 * What can be held against a student of a voice that the ear calls hard to tell, or did not hear.
 *
 * Conventions: decibels relative to the lead voice; shares from 0 to 1. What nobody can tell is neither praised nor
 * blamed; but a voice that a recording would have shown, and that is not in it, was not played.
 */
import { groupBy, type TakeReport, type Voice, type WrittenPlace } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { LoopTask } from '../loop/task.ts';
import { surfaceOf } from '../take/match.ts';
import type { Played } from '../take/played.ts';
import { ownVoices } from './own-part.ts';

/**
 * An ear that expects strokes looks for them where they are written: a performance this late as a whole, in ms, it has
 * not listened for where it was, so that what it missed of the groove is not held against the student.
 */
export const ELSEWHERE_MS = 60;

/** A voice asked for this far under the lead voice may be too soft for a microphone: not heard is not missing. */
const SOFT_DB = -12;
/** A voice that can hardly be told, and this much softer than asked, is what others sound like, and was not struck. */
const SHADOW_DB = 10;

/**
 * The lead voice or the exercise's own, where it can hardly be told and fewer strokes than this share were heard, was
 * not struck: such voices are loud. Another limb that can hardly be told is not blamed.
 */
const HARDLY_SHARE = 0.4;

/**
 * Strokes of a voice that can hardly be told are believed where the ear is this sure of half of them: of a few strokes
 * that always come with others no rank test can tell, and yet each may be plain. Of 16 exercises rendered with the
 * snare, without it and on a tom, those of a snare came at 1.00 and those of a tom at 0.81 at most.
 */
const PLAIN = 0.95;
/** Of another limb than the exercise's own at least this share must be there: what is missing may be the ear's miss. */
const MOSTLY_THERE = 0.9;
/** Of fewer strokes than these the ear says by itself that they can hardly be told. */
const FEW = 9;

/** A voice of which this share of its strokes was heard away from where it is written was told well: it was elsewhere. */
const ELSEWHERE_SHARE = 0.75;

/**
 * A limb that was due so often, and of which no more than this share was heard, stayed out where a voice that is no
 * louder was heard plainly: a recording that shows the soft one would have shown the other, too.
 */
const OFTEN = 8;
/** What one microphone makes of a level, in dB: a voice is no louder than another within it. */
const LEVEL_DB = 3;
const SILENT_SHARE = 0.1;
/** Fewer strokes say nothing about places. */
const FEWEST = 4;

/** What can be held against a student, by voice. */
export interface Doubts {
  /** Voices that the ear could not hear well enough to judge. */
  readonly untold: ReadonlySet<Voice>;
  /** Voices that it took for what others sound like: their strokes were not struck. */
  readonly shadows: ReadonlySet<Voice>;
  /** Voices that the ear says can hardly be told from the others. */
  readonly hard: ReadonlySet<Voice>;
  /** Voices of which nobody can say that all of their strokes are there. */
  readonly doubted: ReadonlySet<Voice>;
  /** Voices of which nothing was heard that another recording would have shown: neither there nor surely out. */
  readonly silent: ReadonlySet<Voice>;
  /** Voices that were told so well that not one stroke of theirs is the ear's. */
  readonly plain: ReadonlySet<Voice>;
}

function askedDb(task: LoopTask, voice: Voice): number {
  return median(task.strokes.flatMap((stroke) => (stroke.voice === voice ? [stroke.levelDb] : [])));
}

/** Whether a voice was heard well, only not where the ear looked for it: its doubts are about those moments. */
function isHeardElsewhere({ strokes }: TakeReport, voice: Voice, due: number): boolean {
  const away = strokes.filter(
    (each) =>
      each.voice === voice &&
      !each.from &&
      (each.written === null || Math.abs(each.offsetMs ?? 0) > ELSEWHERE_MS),
  );
  return away.length >= ELSEWHERE_SHARE * due;
}

/** Whether as much was struck on something that is written nowhere: then a voice that was not heard was played there. */
function isOnAnother({ strokes }: Played, task: LoopTask, due: number): boolean {
  const written = new Set(task.strokes.map(({ voice }) => surfaceOf(voice)));
  const strange = groupBy(
    strokes.filter(({ voice }) => !written.has(surfaceOf(voice))),
    ({ voice }) => voice,
  );
  return [...strange.values()].some((own) => own.length >= ELSEWHERE_SHARE * due);
}

/** A voice as it was heard, beside how often it was due. */
interface Heard {
  readonly voice: Voice;
  readonly due: number;
  readonly strokes: Played['strokes'];
  readonly askedDb: number;
  /** Whether half of the strokes are plain. */
  readonly isPlain: boolean;
}

function heardOf(played: Played, task: LoopTask): readonly Heard[] {
  const rounds = played.bars.length / task.bars;
  return [...groupBy(task.strokes, ({ voice }) => voice)].map(([voice, asked]) => {
    const strokes = played.strokes.filter((stroke) => stroke.voice === voice);
    const sure = strokes.map(({ confidence }) => confidence);
    const isPlain = strokes.length > 0 && median(sure) >= PLAIN;
    return { voice, due: rounds * asked.length, strokes, askedDb: askedDb(task, voice), isPlain };
  });
}

/** Whether another voice of the same drum was heard plainly. */
function isOnPlainDrum({ voice }: Heard, all: readonly Heard[]): boolean {
  return all.some(
    (other) => other.voice !== voice && other.isPlain && surfaceOf(other.voice) === surfaceOf(voice),
  );
}

/** Whether another voice, no louder than this one should be, was heard plainly. */
function wouldBeHeard({ voice, askedDb: db }: Heard, all: readonly Heard[]): boolean {
  return all.some(
    (other) =>
      other.voice !== voice &&
      other.isPlain &&
      other.strokes.length >= MOSTLY_THERE * other.due &&
      median(other.strokes.map(({ levelDb }) => levelDb)) <= db + LEVEL_DB,
  );
}

/**
 * Whether what is missing of a voice is missing at the same places each time, and nothing elsewhere: an ear that misses
 * strokes misses them anywhere.
 */
function isMissingByPlace({ strokes }: TakeReport, voice: Voice, task: LoopTask, { bars }: Played): boolean {
  const nameOf = ({ beat, slot }: WrittenPlace) => `${beat}.${slot}`;
  const isOf = (each: { readonly voice: Voice }) => each.voice === voice;
  const heard = groupBy(
    strokes.filter(isOf).flatMap(({ written }) => (written ? [written] : [])),
    nameOf,
  );
  const due = groupBy(
    bars.flatMap(({ bar }) => task.strokes.filter((each) => isOf(each) && each.written.bar === bar)),
    ({ written }) => nameOf(written),
  );
  let [never, sometimes, there] = [0, 0, 0];
  for (const [name, all] of due) {
    const found = Math.min(heard.get(name)?.length ?? 0, all.length);
    if (found === 0) never += all.length;
    else sometimes += all.length - found;
    there += found;
  }
  return never >= FEWEST && there >= FEWEST && there >= MOSTLY_THERE * (there + sometimes);
}

/** What is to be done with a voice of which the ear said that it can hardly be told, or that it was not heard. */
type Ruling = 'judged' | 'shadow' | 'untold' | 'silent';

interface Case {
  readonly report: TakeReport;
  readonly played: Played;
  readonly task: LoopTask;
  readonly all: readonly Heard[];
  readonly isOwn: boolean;
  readonly isHard: boolean;
}

function rulingOn(one: Heard, { report, played, task, all, isOwn, isHard }: Case): Ruling {
  const { voice, due, strokes } = one;
  const isFeathered = one.askedDb <= SOFT_DB && !isOwn && !isOnAnother(played, task, due);
  const isChief = isOwn || voice === task.lead;
  if (!isHard) {
    if (isFeathered) return 'untold';
    return isChief || due >= OFTEN || wouldBeHeard(one, all) ? 'judged' : 'silent';
  }
  const isThere =
    isOwn || strokes.length >= MOSTLY_THERE * due || isMissingByPlace(report, voice, task, played);
  if (one.isPlain && isThere) return 'judged';
  // on a drum that is heard plainly with another voice, a softer stroke may be that voice
  if (isOnPlainDrum(one, all)) return 'untold';
  if (strokes.length > 0 && median(strokes.map(({ levelDb }) => levelDb)) < one.askedDb - SHADOW_DB)
    return 'shadow';
  if (isChief) return strokes.length >= HARDLY_SHARE * due ? 'untold' : 'judged';
  if (strokes.length > SILENT_SHARE * due) return 'untold';
  if (due >= OFTEN && wouldBeHeard(one, all)) return 'judged';
  return isFeathered ? 'untold' : 'silent';
}

/** The doubts about a take; none about what a kit has sent. */
export function doubtsOf(report: TakeReport, played: Played, task: LoopTask): Doubts {
  const sets = {
    untold: new Set<Voice>(),
    shadows: new Set<Voice>(),
    hard: new Set<Voice>(),
    doubted: new Set<Voice>(),
    silent: new Set<Voice>(),
  };
  const own = ownVoices(task);
  const all = heardOf(played, task);
  const unheard = report.take.kind === 'midi' ? [] : (report.unheard ?? []);
  const isRather = report.exercise?.rather !== undefined;
  for (const said of unheard) {
    const one = 'voice' in said ? all.find(({ voice }) => voice === said.voice) : undefined;
    if (!one) continue;
    const { voice, due, isPlain } = one;
    const isOwn = own.has(voice);
    if (isHeardElsewhere(report, voice, due) || (isRather && isOwn)) continue;
    const isHard = said.reason === 'hard-to-tell';
    const ruling = rulingOn(one, { report, played, task, all, isOwn, isHard });
    const isBelieved = isPlain && ruling === 'judged';
    if (isHard && !(isBelieved && due < FEW)) sets.hard.add(voice);
    if (isHard && !(isBelieved && isOwn)) sets.doubted.add(voice);
    if (ruling === 'shadow') sets.shadows.add(voice);
    if (ruling === 'untold' || ruling === 'silent') sets.untold.add(voice);
    if (ruling === 'silent') sets.silent.add(voice);
  }
  const plain = all.filter(({ voice, due, strokes, isPlain }) => {
    if (isPlain && isMissingByPlace(report, voice, task, played)) return true;
    return own.has(voice) && due < FEW && strokes.every(({ confidence }) => confidence >= PLAIN);
  });
  return { ...sets, plain: new Set(plain.map(({ voice }) => voice)) };
}
