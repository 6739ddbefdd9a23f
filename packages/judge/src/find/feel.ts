/**
 * A straight feel where the lesson swings, and the other way round: of two parts of a beat, or of half of one, the second
 * in the middle where it should come late, or late where it should come in the middle.
 *
 * Conventions: a share is where in its pair the second part lies, 0.5 in the middle; 2:1 swing is 2/3.
 */
import { bentPhase, groupBy, type Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import { askedShare, BEAT, dividedIn, type Pair, pairOf } from '../loop/pairs.ts';
import type { LoopTask, TaskStroke } from '../loop/task.ts';
import type { Due, PhaseOf } from '../take/due.ts';
import { type HeardRound, latenessIn, latenessOfVoices } from '../take/hearing.ts';
import { surfaceOf } from '../take/match.ts';
import type { Finding } from '../verdict/finding.ts';

const STRAIGHT = 0.5;
/** As a triplet swings. */
const TRIPLET = 2 / 3;
/** A second part later than this swings. */
const SWINGS = 0.57;
/** Second parts are looked for so far towards the other feel, and so far away from it, as shares of their pairs. */
const TOWARDS = 0.28;
const AWAY = 0.12;
/** So many of them, and this share of those that were due, tell a feel. */
const FEWEST = 4;
const MOST = 0.5;

/** The other feel: which pairs it is told by, and where their second parts lie in it. */
interface OtherFeel {
  readonly what: 'straight-feel' | 'swung-feel';
  readonly share: number;
  /** Where they are asked. */
  readonly asked: number;
  readonly lasts: number;
  /** 1 where it comes later than what is asked, -1 where sooner. */
  readonly sign: 1 | -1;
  readonly pairOf: (stroke: TaskStroke) => Pair | null;
}

function otherFeel(task: LoopTask): OtherFeel {
  const lasts = dividedIn(task) === 'eighths' ? BEAT.lasts : BEAT.lasts / 2;
  const asked = task.strokes.flatMap((stroke) => {
    const pair = pairOf(task, stroke);
    return pair?.lasts === lasts ? [askedShare(task, stroke, pair)] : [];
  });
  const swings = asked.filter((share) => share >= SWINGS).length >= asked.length / 2;
  const isAsked = (share: number) => swings === share >= SWINGS;
  const ofThese = asked.filter(isAsked);
  const seconds = { lasts, asked: ofThese.length > 0 ? median(ofThese) : STRAIGHT };
  const ofFeel = (stroke: TaskStroke) => {
    const pair = pairOf(task, stroke);
    // a duplet of a dotted beat is even in every feel
    if (!pair || pair.lasts !== lasts || (!swings && task.meter.compound)) return null;
    return isAsked(askedShare(task, stroke, pair)) ? pair : null;
  };
  return swings
    ? { ...seconds, what: 'straight-feel', share: STRAIGHT, sign: -1, pairOf: ofFeel }
    : { ...seconds, what: 'swung-feel', share: TRIPLET, sign: 1, pairOf: ofFeel };
}

/** How late a voice is where beats begin, or where it strikes none there the lead: what is swung says nothing of it. */
function latenessOnBeats(round: HeardRound, lead: Voice): (due: Due) => number {
  const whole = latenessIn(round);
  const onBeats = round.match.pairs.filter(({ due }) => due.asked.written.slot === 1);
  const movedIn = (pairs: typeof onBeats) =>
    pairs.length === 0 ? 0 : median(pairs.map(({ due, lateSeconds }) => lateSeconds - whole(due)));
  const byVoice = groupBy(onBeats, ({ due }) => due.voice);
  const moved = new Map([...byVoice].map(([voice, own]) => [voice, movedIn(own)]));
  const others = moved.get(lead) ?? movedIn(onBeats);
  return (due) => whole(due) + (moved.get(due.voice) ?? others);
}

/** Where in its pair each second part of a round was played, with its place asked. */
function sharesIn(
  round: HeardRound,
  task: LoopTask,
  { what, sign, pairOf: ofFeel }: OtherFeel,
): readonly { readonly due: Due; readonly asked: number; readonly share: number | null }[] {
  const whole = what === 'swung-feel' ? latenessOnBeats(round, task.lead) : latenessIn(round);
  const byVoice = latenessOfVoices(round);
  // a voice that is early on its beats too is early, and not straight
  const onBeat = new Set(task.strokes.flatMap(({ voice, written }) => (written.slot === 1 ? [voice] : [])));
  const at = (due: Due) => (what === 'straight-feel' && onBeat.has(due.voice) ? byVoice(due) : whole(due));
  return round.due.flatMap((due) => {
    const pair = ofFeel(due.asked);
    if (!pair) return [];
    const asked = askedShare(task, due.asked, pair);
    const expected = due.seconds + at(due);
    const near = round.strokes
      .filter(({ voice }) => surfaceOf(voice) === surfaceOf(due.voice))
      .map(({ seconds }) => (sign * (seconds - expected)) / (due.beatSeconds * pair.lasts))
      .filter((away) => away > -AWAY && away < TOWARDS);
    const nearest = near.toSorted((a, b) => Math.abs(a - 1 / 12) - Math.abs(b - 1 / 12))[0];
    return [{ due, asked, share: nearest === undefined ? null : asked + sign * nearest }];
  });
}

/** The voices that were played in the other feel, those that tell a feel at all, and how it lies. */
export interface FeelHeard {
  readonly what: OtherFeel['what'];
  readonly voices: readonly Voice[];
  readonly all: readonly Voice[];
  readonly phaseOf: PhaseOf;
}

/** What is heard of the feel; null where it is the one asked. */
export function feelHeard(rounds: readonly HeardRound[], task: LoopTask): FeelHeard | null {
  const other = otherFeel(task);
  const shares = rounds.flatMap((round) => sharesIn(round, task, other));
  const byVoice = groupBy(shares, ({ due }) => due.voice);
  const told = [...byVoice].flatMap(([voice, own]) => {
    const found = own.flatMap(({ share }) => share ?? []);
    if (found.length < FEWEST || found.length < MOST * own.length) return [];
    const [played, asked] = [median(found), median(own.map((one) => one.asked))];
    const isOther = other.sign * (played - (other.share + asked) / 2) > 0;
    return isOther ? [{ voice, played }] : [];
  });
  const voices = told.map(({ voice }) => voice);
  const all = [...byVoice.keys()];
  // one limb that is late where the others are even is late; whoever swings does so with what leads
  if (other.what === 'swung-feel' && !voices.includes(task.lead) && voices.length < all.length) return null;
  if (voices.length === 0) return null;
  const share = other.what === 'swung-feel' ? median(told.map(({ played }) => played)) : other.share;
  return {
    what: other.what,
    voices,
    all,
    phaseOf: (stroke, phase) => {
      // where all that tell a feel are in this one, the others are taken to be
      if (voices.length < all.length && !voices.includes(stroke.voice)) return phase;
      const pair = other.pairOf(stroke);
      if (pair) return pair.starts + share * pair.lasts;
      // sixteenths go with the eighths round them
      return other.lasts === BEAT.lasts && stroke.slots === 4 ? bentPhase(phase, other.asked, share) : phase;
    },
  };
}

/** The finding, by itself where all that tells a feel is in the other one, else voice by voice. */
export function feelFindings({ what, voices, all }: FeelHeard): readonly Finding[] {
  if (voices.length === all.length) return [{ what, strength: 1 }];
  return voices.map((voice) => ({ what, voice, strength: 1 }));
}
