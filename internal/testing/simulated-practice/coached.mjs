/** The coach as a plan of the simulation: its own log, its own plan of the day, its own tempi. */
import { planPractice } from '@shedbook/coach';
import { exerciseKey } from '@shedbook/core';

const LESSON = 'sheet';
const FIRST_DAY_MS = Date.UTC(2026, 0, 5, 17);
const DAY_MS = 86_400_000;

function momentOf(day) {
  return new Date(FIRST_DAY_MS + day * DAY_MS).toISOString();
}

/** The skills of the model that a part of an exercise practises, or null for the whole. */
function idsOf(lesson, index, part) {
  if (part === null || part.kind === 'slower') return null;
  const [{ voice, pattern }] = lesson.exercises[index].parts;
  const ids = new Set();
  for (const bar of pattern.bars) {
    const texts = bar.map(({ text }) => text.toLowerCase());
    const at = part.beat - 1;
    if (part.kind === 'cell alone') ids.add(`${voice} ${texts[at]}`);
    else if (part.kind === 'move alone') ids.add(`${voice} ${texts.at(at - 1)}>${texts[at]}`);
    else if (part.kind === 'two limbs') {
      texts.forEach((text, beat) => {
        ids.add(`${voice} ${text}`);
        ids.add(`${voice} ${texts.at(beat - 1)}>${text}`);
      });
    }
  }
  return ids;
}

/** The beats, from 1, at which a skill of the model stands in an exercise. */
function faultsOf(lesson, index, weakest) {
  if (!weakest) return [];
  const [, text] = weakest.id.split(' ');
  const to = text.split('>').at(-1);
  for (const { voice, pattern } of lesson.exercises[index].parts) {
    if (!weakest.id.startsWith(`${voice} `)) continue;
    for (const [bar, cells] of pattern.bars.entries()) {
      const beat = cells.findIndex((cell) => cell.text.toLowerCase() === to);
      if (beat < 0) continue;
      const slot =
        1 +
        Math.max(
          0,
          [...to].findIndex((mark) => mark !== '.'),
        );
      return [{ kind: 'missed', voice, place: { bar: bar + 1, beat: beat + 1, slot }, amount: 1 }];
    }
  }
  return [];
}

/** The plan that the coach makes from what an ear heard. */
export function coachPlan(lesson, _random, planner = planPractice) {
  const shelf = [{ id: LESSON, lesson }];
  const keys = lesson.exercises.map(exerciseKey);
  const entries = [];
  const today = new Map();
  /** @type {ReturnType<typeof planPractice> | null} */
  let last = null;
  return {
    planDay: ({ day, minutes }) => {
      today.clear();
      const log = { version: 1, entries, removed: [] };
      const plan = planner({ shelf, log, now: momentOf(day), minutes, assignments: [], seed: 1 });
      last = plan;
      return plan.items.map((item) => ({
        exercise: item.exercise === null ? null : keys.indexOf(item.exercise),
        minutes: item.minutes,
        item,
        isKnown: item.kind !== 'new',
        ids: item.exercise === null ? null : idsOf(lesson, keys.indexOf(item.exercise), item.part),
      }));
    },
    /** Later on the same day it goes on half a step below where it ended. */
    fromBpm: ({ exercise, item }) => {
      const before = item.part === null ? today.get(exercise) : undefined;
      return before === undefined ? item.tempo.fromBpm : before - lesson.tempo.stepBpm / 2;
    },
    visited: ({ exercise, item }, { loops, bpm }, day) => {
      if (item.part === null) today.set(exercise, bpm);
      entries.push({
        id: `${day} ${entries.length}`,
        device: 'simulated',
        startedAt: momentOf(day),
        durationSeconds: item.minutes * 60,
        lesson: LESSON,
        exercise: keys[exercise],
        form: item.part?.kind ?? 'loop',
        heardBy: 'ear',
        loops: loops.map(({ bpm: at, verdict, weakest }) => ({
          bpm: at,
          verdict,
          faults: faultsOf(lesson, exercise, weakest),
        })),
      });
    },
    lastPlan: () => last,
  };
}
