/**
 * From what was heard to a verdict, for one loop and for a whole take alike: what was played before how it was played,
 * the pulse before any place, each limb by itself.
 *
 * Conventions: only what the student plays is judged. What cannot be known of the devices is found from the playing and
 * is no fault; what the ear cannot tell is neither praised nor blamed.
 */
import {
  Bpm,
  type Form,
  groupBy,
  inSection,
  type Lesson,
  type Milliseconds,
  type TakeReport,
  type Voice,
} from '@shedbook/core';
import type { RefusalFact } from '@shedbook/listen';
import { median } from '@shedbook/signal';
import { assess, ELSEWHERE_MS } from './find/assess.ts';
import type { Known } from './find/known.ts';
import { ownVoices } from './find/own-part.ts';
import { ALLOWANCES, type Level } from './level/levels.data.ts';
import { type LoopTask, loopTask, type TaskStroke } from './loop/task.ts';
import { type RoundStrokes, roundsOf } from './take/hearing.ts';
import { surfaceOf } from './take/match.ts';
import { type Played, playedIn } from './take/played.ts';
import { withoutShadows } from './take/shadows.ts';
import { strokeKey } from './take/stroke-key.ts';
import type { PraiseFact } from './verdict/fact.ts';
import { type Finding, inOrder, verdictOf } from './verdict/finding.ts';
import type { About, Verdict } from './verdict/verdict.ts';

/** What a student set out to play. */
export interface JudgeTask {
  readonly lesson: Lesson;
  /** Number of the exercise, or null for the groove alone. */
  readonly exercise: number | null;
  readonly form: Form;
  /** Layers of the groove that are asked for, from 1; all when left out. */
  readonly layers?: number;
  /** The tempo that is asked for where there is no click; when left out, any rung from the report's on to the goal. */
  readonly bpm?: Bpm;
  /** Voices that the student plays; all that are written when left out or empty. */
  readonly plays?: readonly Voice[];
  /** Voices that the page plays meanwhile, which a microphone may hear. */
  readonly sounding?: readonly Voice[];
}

/** What there is to judge: a report, or why there is none. */
export interface ToJudge {
  readonly report: TakeReport | null;
  readonly refusal?: RefusalFact | null;
}

/** What came of one time through the form. */
export interface JudgedRound {
  readonly bpm: Bpm;
  readonly verdict: Verdict;
}

/** What came of some playing, as a whole and round by round. */
export interface Judgement {
  readonly verdict: Verdict;
  readonly rounds: readonly JudgedRound[];
  /** What may be praised: nothing where the verdict is not clean. */
  readonly praise: readonly PraiseFact[];
  /** How late the playing is as a whole beside the click; null where there is none, or nobody was heard. */
  readonly wholeMs: Milliseconds | null;
  /** What was asked of the student. */
  readonly task: LoopTask;
}

/** The contract's fields, without the weight. */
function aboutOf({ strength: _, ...about }: Finding): About {
  return about;
}

function verdictFrom(findings: readonly Finding[], level: Level): Verdict {
  const ordered = inOrder(findings);
  return { level, is: verdictOf(ordered), about: ordered.map(aboutOf) };
}

const REFUSED: Readonly<Record<RefusalFact['fact'], About['what']>> = {
  'no-sound': 'nobody-played',
  'silent-recording': 'nobody-played',
  'no-drum-notes': 'nobody-played',
  'no-taps': 'nobody-played',
  'nothing-played': 'nobody-played',
  'only-the-loudspeaker': 'only-loudspeaker',
  'nothing-asked': 'nobody-played',
  'no-drums-followed': 'too-little-heard',
  'no-pulse-followed': 'too-little-heard',
  'no-beat-followed': 'too-little-heard',
  'sound-of-no-exercise': 'too-little-heard',
  'notes-of-no-exercise': 'too-little-heard',
};

/** What is to be said where there is no report. */
function refused(refusal: RefusalFact | null | undefined): Finding {
  const what = refusal ? REFUSED[refusal.fact] : 'nobody-played';
  return { what, strength: 1 };
}

function taskAt({ lesson, form, layers }: JudgeTask, exercise: number | null, bpm: Bpm): LoopTask {
  return loopTask(lesson, { exercise, form, bpm, ...(layers === undefined ? {} : { layers }) });
}

/** A task of some strokes only. */
function only(task: LoopTask, isAsked: (stroke: TaskStroke) => boolean): LoopTask {
  return { ...task, strokes: task.strokes.filter(isAsked) };
}

/** Whether a voice is the student's, by what they say that they play. */
function mineBy(plays: readonly Voice[]): (voice: Voice) => boolean {
  if (plays.length === 0) return () => true;
  const surfaces = new Set(plays.map(surfaceOf));
  return (voice) => surfaces.has(surfaceOf(voice));
}

/** Quarter notes a minute of the bar lines of a round. */
function bpmOf({ bars }: RoundStrokes, quartersInBar: number): Bpm {
  return Bpm((60 * quartersInBar) / median(bars.map(({ barSeconds }) => barSeconds)));
}

/** A voice asked for this far under the lead voice may be too soft for a microphone: not heard is not missing. */
const SOFT_DB = -12;
/** A voice that can hardly be told, and this much softer than asked, is what others sound like, and was not struck. */
const SHADOW_DB = 10;

function askedDb(task: LoopTask, voice: Voice): number {
  return median(task.strokes.flatMap((stroke) => (stroke.voice === voice ? [stroke.levelDb] : [])));
}

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

/** Voices that the ear could not hear well enough to judge, those it took for what others sound like, and doubts. */
function doubtful(report: TakeReport, played: Played, task: LoopTask) {
  const { strokes, bars } = played;
  const { take, unheard = [], exercise } = report;
  const isRather = exercise?.rather !== undefined;
  const untold = new Set<Voice>();
  const shadows = new Set<Voice>();
  const hard = new Set<Voice>();
  const doubted = new Set<Voice>();
  const ownPart = ownVoices(task);
  const isChief = (voice: Voice) => ownPart.has(voice) || voice === task.lead;
  const rounds = bars.length / task.bars;
  for (const one of take.kind === 'midi' ? [] : unheard) {
    if (!('voice' in one) || !task.strokes.some(({ voice }) => voice === one.voice)) continue;
    const asked = askedDb(task, one.voice);
    const due = rounds * task.strokes.filter(({ voice }) => voice === one.voice).length;
    if (isHeardElsewhere(report, one.voice, due) || (isRather && ownPart.has(one.voice))) continue;
    const own = strokes.filter(({ voice }) => voice === one.voice);
    const heard = own.map(({ levelDb }) => levelDb);
    const isHard = one.reason === 'hard-to-tell';
    const isThere = own.length > 0 && (ownPart.has(one.voice) || own.length >= MOSTLY_THERE * due);
    const isPlain = isThere && median(own.map(({ confidence }) => confidence)) >= PLAIN;
    if (isHard && !(isPlain && due < FEW)) hard.add(one.voice);
    if (isHard && !(isPlain && ownPart.has(one.voice))) doubted.add(one.voice);
    if (isHard && isPlain) continue;
    const isFeathered = asked <= SOFT_DB && !ownPart.has(one.voice) && !isOnAnother(played, task, due);
    if (isHard && heard.length > 0 && median(heard) < asked - SHADOW_DB) shadows.add(one.voice);
    else if (isHard ? heard.length >= HARDLY_SHARE * due || !isChief(one.voice) : isFeathered)
      untold.add(one.voice);
  }
  return { untold, shadows, hard, doubted };
}

function knownOf(task: JudgeTask, report: TakeReport, played: Played, level: Level): Known {
  const whole = taskAt(task, task.exercise, askedBpm(task, report));
  const isMine = mineBy(task.plays ?? report.plays ?? []);
  const written = new Set(whole.strokes.map(({ voice }) => surfaceOf(voice)));
  const others = task.lesson.exercises.filter(({ number }) => number !== task.exercise);
  return {
    task: only(
      whole,
      ({ voice, written: place }) => isMine(voice) && !played.unknown.has(strokeKey(voice, place)),
    ),
    others: () =>
      task.exercise === null
        ? []
        : others.map(({ number }) => ({
            exercise: number,
            task: only(taskAt(task, number, whole.bpm), ({ voice }) => isMine(voice)),
          })),
    limits: ALLOWANCES[level],
    kind: played.kind,
    isAlongClick: played.isAlongClick,
    isMine,
    isHeard: (voice) => isMine(voice) || !written.has(surfaceOf(voice)),
    sounding: played.playing ?? task.sounding ?? [],
    isToldByEar: played.isToldByEar,
    hidden: hiddenVoices(report, played),
    isLoudspeakerHeard: played.isLoudspeakerHeard,
    ...doubtful(report, played, whole),
    rather: task.exercise === null ? null : (report.exercise?.rather ?? null),
    ladder: { ...task.lesson.tempo, askedBpm: whole.bpm, isTold: task.bpm !== undefined },
  };
}

/** What was played without what an ear takes for strokes and is none; a kit sends what was struck. */
function withoutDoubtful(played: Played, task: LoopTask): Played {
  if (played.kind === 'midi') return played;
  const isPlain = (voice: Voice) => {
    const levels = task.strokes.flatMap((stroke) => (stroke.voice === voice ? [stroke.levelDb] : []));
    return Math.max(...levels) === Math.min(...levels);
  };
  return { ...played, strokes: withoutShadows(played.strokes, isPlain) };
}

/** Voices that the ear could not tell from the loudspeaker's. */
function hiddenVoices({ unheard = [] }: TakeReport, { isToldByEar }: Played): ReadonlySet<Voice> {
  if (!isToldByEar) return new Set();
  return new Set(unheard.flatMap((one) => (one.reason === 'from-loudspeaker' ? [one.voice] : [])));
}

function askedBpm({ bpm, lesson }: JudgeTask, report: TakeReport): Bpm {
  const asked = (report as { asked?: { bpm?: Bpm } }).asked?.bpm;
  return bpm ?? asked ?? lesson.tempo.startBpm;
}

/**
 * The verdict on what was heard, for a student of a level.
 * @throws RangeError when the lesson does not have the exercise.
 */
export function judge(given: JudgeTask, { report, refusal }: ToJudge, level: Level): Judgement {
  const task = inSection(given);
  const asked = taskAt(task, task.exercise, task.bpm ?? task.lesson.tempo.startBpm);
  if (!report)
    return {
      verdict: verdictFrom([refused(refusal)], level),
      rounds: [],
      praise: [],
      wholeMs: null,
      task: asked,
    };
  const played = withoutDoubtful(playedIn(report, asked), asked);
  const known = knownOf(task, report, played, level);
  const judged = roundsOf(played, asked).map((round) => ({
    round,
    bpm: bpmOf(round, asked.quartersInBar),
    assessed: assess([round], known),
  }));
  const heard = judged.filter(({ assessed }) => assessed.findings[0]?.what !== 'nobody-played');
  const rounds = (heard.length > 0 ? heard : judged).map(({ round }) => round);
  const whole = judged.length === 1 && judged[0] ? judged[0].assessed : assess(rounds, known);
  const verdict = verdictFrom(whole.findings, level);
  return {
    verdict,
    rounds: judged.map(({ bpm, assessed }) => ({ bpm, verdict: verdictFrom(assessed.findings, level) })),
    praise: verdict.is === 'clean' ? whole.praise : [],
    wholeMs: verdict.is === 'not judged' ? null : whole.wholeMs,
    task: known.task,
  };
}
