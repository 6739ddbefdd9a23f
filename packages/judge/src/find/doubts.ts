/**
 * What can be held against a student of a limb that the ear calls hard to tell, or of which it heard nothing.
 *
 * Conventions: decibels relative to the lead voice; shares from 0 to 1. One principle: a limb that was heard plainly is
 * judged. One that was heard, but not plainly, is there, and is neither praised nor blamed. One of which hardly anything
 * was heard stayed out where its strokes stood in the open; else nobody knows, and that is said.
 */
import { groupBy, type TakeReport, type Voice, type WrittenPlace } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { LoopTask, TaskStroke } from '../loop/task.ts';
import { surfaceOf } from '../take/match.ts';
import type { Played } from '../take/played.ts';
import { strokeKey } from '../take/stroke-key.ts';
import { ownVoices } from './own-part.ts';
import { SURE } from './strokes.ts';

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
 * Hardly anything was heard of a limb under this share of its strokes. Of the lead voice and of the exercise's own, which
 * are loud, more would have been heard.
 */
const HARDLY = { loud: 0.4, other: 0.1 } as const;

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

/**
 * A voice whose strokes were heard away from where they are written, so many of those that were heard and of those that
 * were due, was elsewhere: an ear that takes other voices for it takes them at its places.
 */
const AWAY = { ofHeard: 0.65, ofDue: 0.3 } as const;
/** As much as this share of a voice's strokes on something that is written nowhere is that voice. */
const ELSEWHERE_SHARE = 0.75;

/** So many strokes in the open show that a limb stayed out; fewer say nothing about places either. */
const FEWEST = 4;
/** Strokes nearer than this are one moment, in seconds: those of one slot differ by rounding only. */
const SAME_MOMENT_SECONDS = 1e-6;

/** What can be held against a student, by voice. */
export interface Doubts {
  /** Voices that are not judged. */
  readonly untold: ReadonlySet<Voice>;
  /** Those of them of which nobody can say whether they were played at all. */
  readonly unheard: ReadonlySet<Voice>;
  /** Voices that the ear took for what others sound like: their strokes were not struck. */
  readonly shadows: ReadonlySet<Voice>;
  /** Voices that the ear says can hardly be told from the others. */
  readonly hard: ReadonlySet<Voice>;
  /** Voices of which nobody can say that all of their strokes are there. */
  readonly doubted: ReadonlySet<Voice>;
  /** Voices that were told so well that not one stroke of theirs is the ear's. */
  readonly plain: ReadonlySet<Voice>;
}

function askedDb(task: LoopTask, voice: Voice): number {
  return median(task.strokes.flatMap((stroke) => (stroke.voice === voice ? [stroke.levelDb] : [])));
}

/** Whether a voice was heard, only not where the ear looked for it: its doubts are about those moments. */
function isHeardElsewhere({ strokes }: TakeReport, voice: Voice, due: number): boolean {
  const own = strokes.filter((each) => each.voice === voice && !each.from);
  const away = own.filter(
    ({ written, offsetMs }) => written === null || Math.abs(offsetMs ?? 0) > ELSEWHERE_MS,
  );
  return away.length >= AWAY.ofHeard * own.length && away.length >= AWAY.ofDue * due;
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

/** Whether a louder stroke of another limb than the lead one covers a stroke of a softer voice at its moment. */
function isCovered(stroke: TaskStroke, { strokes, lead }: LoopTask): boolean {
  return strokes.some(
    ({ voice, timeSeconds, levelDb }) =>
      voice !== lead &&
      surfaceOf(voice) !== surfaceOf(stroke.voice) &&
      Math.abs(timeSeconds - stroke.timeSeconds) <= SAME_MOMENT_SECONDS &&
      levelDb >= stroke.levelDb,
  );
}

/**
 * Whether enough strokes of a voice stood in the open, so that what was not heard of it was not struck. A hi-hat foot
 * that always falls with the snare looks the same to the ear whether it is played or not (waltz 12 and slow twelve 1
 * of the tests' kit); with the ride alone above it every foot that was played was heard, and none that stayed out.
 */
function wouldBeHeard({ voice, due, askedDb: db }: Heard, task: LoopTask): boolean {
  if (db <= SOFT_DB) return false;
  const own = task.strokes.filter((stroke) => stroke.voice === voice);
  const open = own.filter((stroke) => !isCovered(stroke, task));
  return (due * open.length) / own.length >= FEWEST;
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

/** What is to be done with a voice that the ear is in doubt about. */
type Ruling = 'judged' | 'shadow' | 'blurred' | 'unheard';

interface Case {
  readonly report: TakeReport;
  readonly played: Played;
  readonly task: LoopTask;
  readonly all: readonly Heard[];
  readonly isOwn: boolean;
}

/** Whether a voice is loud enough by what it is: the lead voice and the exercise's own. */
function isLoud({ voice }: Heard, { task, isOwn }: Case): boolean {
  return isOwn || voice === task.lead;
}

function isHeardPlainly(one: Heard, { report, played, task, isOwn }: Case): boolean {
  const { voice, due, strokes, isPlain } = one;
  if (!isPlain) return false;
  return isOwn || strokes.length >= MOSTLY_THERE * due || isMissingByPlace(report, voice, task, played);
}

function rulingOn(one: Heard, given: Case): Ruling {
  const { strokes, due } = one;
  if (isHeardPlainly(one, given)) return 'judged';
  // on a drum that is heard plainly with another voice, a softer stroke may be that voice
  if (isOnPlainDrum(one, given.all)) return 'blurred';
  if (strokes.length > 0 && median(strokes.map(({ levelDb }) => levelDb)) < one.askedDb - SHADOW_DB)
    return 'shadow';
  const isChief = isLoud(one, given);
  // what an ear that heard nothing at its places takes for it elsewhere, and is not sure of, is nothing
  const isNothing = given.report.unheard?.some(
    ({ reason, ...of }) => reason === 'not-heard' && 'voice' in of && of.voice === one.voice,
  );
  const heard = isNothing ? strokes.filter(({ confidence }) => confidence >= SURE) : strokes;
  if (heard.length > (isChief ? HARDLY.loud : HARDLY.other) * due) return 'blurred';
  const asked = given.task.strokes.filter(({ voice }) => voice === one.voice);
  const isUntold = ({ voice, written }: TaskStroke) => given.task.covered?.has(strokeKey(voice, written));
  if (asked.every(isUntold)) return 'unheard';
  const isOut = isChief || isOnAnother(given.played, given.task, due) || wouldBeHeard(one, given.task);
  return isOut ? 'judged' : 'unheard';
}

/** The doubts about a take; none about what a kit has sent. */
export function doubtsOf(report: TakeReport, played: Played, task: LoopTask): Doubts {
  const sets = {
    untold: new Set<Voice>(),
    unheard: new Set<Voice>(),
    shadows: new Set<Voice>(),
    hard: new Set<Voice>(),
    doubted: new Set<Voice>(),
  };
  const own = ownVoices(task);
  const all = heardOf(played, task);
  const doubted = report.take.kind === 'midi' ? [] : (report.unheard ?? []);
  const isRather = report.exercise?.rather !== undefined;
  for (const said of doubted) {
    const one = 'voice' in said ? all.find(({ voice }) => voice === said.voice) : undefined;
    if (!one) continue;
    const { voice, due, isPlain } = one;
    if (said.reason === 'under-others') {
      sets.doubted.add(voice);
      continue;
    }
    const isOwn = own.has(voice);
    if (isHeardElsewhere(report, voice, due) || (isRather && isOwn)) continue;
    const ruling = rulingOn(one, { report, played, task, all, isOwn });
    const isBelieved = isPlain && ruling === 'judged';
    const isHard = said.reason === 'hard-to-tell';
    if (isHard && !(isBelieved && due < FEW)) sets.hard.add(voice);
    if (isHard && !(isBelieved && isOwn)) sets.doubted.add(voice);
    if (ruling === 'shadow') sets.shadows.add(voice);
    if (ruling === 'blurred' || ruling === 'unheard') sets.untold.add(voice);
    if (ruling === 'unheard') sets.unheard.add(voice);
  }
  const plain = all.filter(({ voice, due, strokes, isPlain }) => {
    if (isPlain && isMissingByPlace(report, voice, task, played)) return true;
    return own.has(voice) && due < FEW && strokes.every(({ confidence }) => confidence >= PLAIN);
  });
  return { ...sets, plain: new Set(plain.map(({ voice }) => voice)) };
}
