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
  inSection,
  type Lesson,
  type Milliseconds,
  type TakeReport,
  type Voice,
} from '@shedbook/core';
import type { RefusalFact } from '@shedbook/listen';
import { median } from '@shedbook/signal';
import { assess } from './find/assess.ts';
import { doubtsOf } from './find/doubts.ts';
import type { Known } from './find/known.ts';
import { recurringIn, withRecurring } from './find/recurring.ts';
import { type Told, toldOf } from './find/told.ts';
import { ALLOWANCES, type Level } from './level/levels.data.ts';
import { type LoopTask, loopTask, type TaskStroke } from './loop/task.ts';
import { hearRound, type RoundStrokes, roundsOf } from './take/hearing.ts';
import { joinedReports } from './take/joined.ts';
import { surfaceOf } from './take/match.ts';
import { type Played, type PlayedStroke, playedIn } from './take/played.ts';
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
  /** The tempo that is asked for where there is no click; when left out, any from the report's on to the goal. */
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
  /** Which stroke of the report is which; null where nothing was judged at its place. */
  readonly told: Told | null;
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

function knownOf(
  task: JudgeTask,
  report: TakeReport,
  played: Played,
  level: Level,
  isSomebody: boolean,
): Known {
  const { covered } = played;
  const whole = { ...taskAt(task, task.exercise, askedBpm(task, report)), covered };
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
    sounding: soundingIn(played, task),
    isToldByEar: played.isToldByEar,
    hidden: hiddenVoices(report),
    isLoudspeakerHeard: played.isLoudspeakerHeard,
    isSomebody,
    ...doubtsOf(report, played, whole),
    rather: task.exercise === null ? null : (report.exercise?.rather ?? null),
    ladder: {
      ...{ goalBpm: task.lesson.tempo.goalBpm, askedBpm: whole.bpm },
      isTold: task.bpm !== undefined,
    },
  };
}

/** What was played without what an ear takes for strokes and is none; a kit sends what was struck. */
function withoutDoubtful(
  played: Played,
  task: LoopTask,
  sounding: readonly Voice[],
  before: readonly PlayedStroke[],
): Played {
  if (played.kind === 'midi') return played;
  const isPlain = (voice: Voice) => {
    const levels = task.strokes.flatMap((stroke) => (stroke.voice === voice ? [stroke.levelDb] : []));
    return Math.max(...levels) === Math.min(...levels);
  };
  // beside a loudspeaker the ear may well be sure, and of the loudspeaker's stroke
  const isTrusted = (voice: Voice) => !sounding.includes(voice);
  return { ...played, strokes: withoutShadows(played.strokes, { isPlain, isTrusted }, before) };
}

/** The voices that a loudspeaker plays, as the report says or as the task has it. */
function soundingIn(played: Played, task: JudgeTask): readonly Voice[] {
  return played.playing ?? task.sounding ?? [];
}

/** Voices that the ear could not tell from the loudspeaker's. */
function hiddenVoices({ unheard = [] }: TakeReport): ReadonlySet<Voice> {
  return new Set(unheard.flatMap((one) => (one.reason === 'from-loudspeaker' ? [one.voice] : [])));
}

function askedBpm({ bpm, lesson }: JudgeTask, report: TakeReport): Bpm {
  const asked = (report as { asked?: { bpm?: Bpm } }).asked?.bpm;
  return bpm ?? asked ?? lesson.tempo.startBpm;
}

/** The strokes of a report that may be the student's, and what is written. */
function ofReport({ strokes }: Played, asked: LoopTask, { isHeard }: Known) {
  return {
    strokes: strokes.filter(({ voice }) => isHeard(voice)),
    written: new Set(asked.strokes.map(({ voice }) => surfaceOf(voice))),
  };
}

/** The voices that the ear said were hard to tell, and that were judged all the same: of those something is told. */
function sureOf(
  { unheard = [] }: TakeReport,
  { hard, doubted, untold, shadows }: Known,
  findings: readonly Finding[],
): readonly Voice[] {
  const said = unheard.flatMap((one) => (one.reason === 'hard-to-tell' ? [one.voice] : []));
  const isTold = (voice: Voice) => findings.some((finding) => finding.voice === voice);
  return said.filter((voice) => {
    if (untold.has(voice) || shadows.has(voice)) return false;
    return isTold(voice) || (!hard.has(voice) && !doubted.has(voice));
  });
}

/** A judgement with what it rests on. */
interface Judged {
  readonly judgement: Judgement;
  readonly findings: readonly Finding[];
  /** What the last round has of that which comes back. */
  readonly back: readonly Finding[];
}

/** What rounds before these tell. */
interface Before {
  readonly reports: readonly TakeReport[];
  readonly isSomebody: boolean;
}

const NOTHING_BEFORE: Before = { reports: [], isSomebody: false };

/** Whether nothing can be said of some rounds as a whole, though something was heard. */
function isTooLittle([first]: readonly Finding[]): boolean {
  return first?.what === 'too-little-heard' && first.voice === undefined;
}

function judged(
  given: JudgeTask,
  { report, refusal }: ToJudge,
  level: Level,
  before: Before = NOTHING_BEFORE,
): Judged {
  const task = inSection(given);
  const asked = taskAt(task, task.exercise, task.bpm ?? task.lesson.tempo.startBpm);
  if (!report) {
    const findings = [refused(refusal)];
    const verdict = verdictFrom(findings, level);
    return {
      judgement: { verdict, rounds: [], praise: [], wholeMs: null, task: asked, told: null },
      ...{ findings, back: [] },
    };
  }
  const all = playedIn(report, asked);
  const earlier = before.reports.flatMap((one) => playedIn(one, asked).strokes);
  const played = withoutDoubtful(all, asked, soundingIn(all, task), earlier);
  const known = knownOf(task, report, played, level, before.isSomebody);
  const alone = roundsOf(played, asked).map((round) => ({
    round,
    bpm: bpmOf(round, asked.quartersInBar),
    assessed: assess([round], known),
  }));
  const heard = alone.filter(({ assessed }) => assessed.findings[0]?.what !== 'nobody-played');
  const whoPlayed = (heard.length > 0 ? heard : alone).map(({ round }) => round);
  const whole = alone.length === 1 && alone[0] ? alone[0].assessed : assess(whoPlayed, known);
  // one bar alone may be chance; where the whole is none, it is none either
  const isSomebody = whole.judged !== null;
  const each = alone.map((one) =>
    isSomebody && isTooLittle(one.assessed.findings)
      ? { ...one, assessed: assess([one.round], { ...known, isSomebody }) }
      : one,
  );
  const verdict = verdictFrom(whole.findings, level);
  const again = recurringIn(
    each.map(({ round }) => hearRound(round, known.task, known.isAlongClick)),
    each.length > 1 ? whole.findings : [],
  );
  const rounds = each.map(({ bpm, assessed }, index) => ({
    bpm,
    verdict: verdictFrom(withRecurring(assessed.findings, again[index] ?? []), level),
  }));
  return {
    judgement: {
      ...{ verdict, rounds, task: known.task },
      praise: verdict.is === 'clean' ? whole.praise : [],
      wholeMs: verdict.is === 'not judged' ? null : whole.wholeMs,
      told:
        whole.judged &&
        toldOf(whole.judged, { ...ofReport(all, asked, known), sure: sureOf(report, known, whole.findings) }),
    },
    ...{ findings: whole.findings, back: again.at(-1) ?? [] },
  };
}

/**
 * The verdict on what was heard, for a student of a level.
 * @throws RangeError when the lesson does not have the exercise.
 */
export function judge(given: JudgeTask, heard: ToJudge, level: Level): Judgement {
  return judged(given, heard, level).judgement;
}

/**
 * The verdict on one round, with the rounds before it in mind: what was wrong at the same place in them is wrong here
 * too, though one round by itself would leave it open.
 * @param before reports of the rounds before it, at the same tempo and on one clock, the latest last
 * @throws RangeError when the lesson does not have the exercise.
 */
export function judgeInTurn(
  given: JudgeTask,
  heard: ToJudge,
  before: readonly TakeReport[],
  level: Level,
): Judgement {
  const first = judged(given, heard, level, { reports: before, isSomebody: false });
  if (!heard.report || before.length === 0) return first.judgement;
  const all = judged(given, { report: joinedReports(before, heard.report) }, level);
  const isSomebody = all.judgement.told !== null && isTooLittle(first.findings);
  const { judgement, findings } = isSomebody
    ? judged(given, heard, level, { reports: before, isSomebody })
    : first;
  const [round] = judgement.rounds;
  if (!round || judgement.verdict.is === 'not judged') return judgement;
  const verdict = verdictFrom(withRecurring(findings, all.back), level);
  const praise = verdict.is === 'clean' ? judgement.praise : [];
  return { ...judgement, verdict, praise, rounds: [{ ...round, verdict }] };
}
