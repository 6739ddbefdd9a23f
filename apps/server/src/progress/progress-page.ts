/**
 * The progress page of one student, for parents and students: what was practised, passed and set, and what comes next.
 *
 * Conventions: plain words, no notation; days by the student's own calendar; tempi in beats of the meter. Nothing of
 * the teacher's notes is on it.
 */
import {
  type Assignment,
  aimBpmOf,
  findExercise,
  momentOf,
  nameOf,
  passedSince,
  practiceWeeks,
  type StudentFile,
  standExercises,
  summariseStudent,
} from '@shedbook/coach';
import { countedTempo } from '@shedbook/core';
import type { Handout, HandoutLine, HandoutPart } from '@shedbook/pack';
import { CLI, type LanguageTag } from '@shedbook/words';

/** What the page is made with. */
export interface ProgressRequest {
  readonly student: StudentFile;
  /** A moment. */
  readonly now: string;
  /** How many weeks it looks back. */
  readonly weeks: number;
  readonly language: LanguageTag;
}

type Words = (typeof CLI)[LanguageTag]['words']['progressPage'];

interface Saying extends ProgressRequest {
  readonly words: Words;
  /** Says a day, ISO 8601 without a time. */
  readonly dayOf: (day: string, withYear?: 'year') => string;
}

function sayingOf(request: ProgressRequest): Saying {
  const { language } = request;
  const plain = { day: 'numeric', month: 'long', timeZone: 'UTC' } as const;
  const short = new Intl.DateTimeFormat(language, plain);
  const long = new Intl.DateTimeFormat(language, { ...plain, year: 'numeric' });
  const dayOf: Saying['dayOf'] = (day, withYear) =>
    (withYear ? long : short).format(new Date(`${day}T12:00:00Z`));
  return { ...request, words: CLI[language].words.progressPage, dayOf };
}

function practicePart({ words, dayOf, student, now, weeks }: Saying): HandoutPart {
  const lines = practiceWeeks(student.log, now, weeks).map(({ from, to, days, minutes }): HandoutLine => {
    const text = words.week({ from: dayOf(from), to: dayOf(to) });
    return { text, right: days === 0 ? words.noDay : words.played({ days, minutes }) };
  });
  return { heading: words.practice, lines };
}

function passedPart({ words, dayOf, student, now, weeks }: Saying): HandoutPart {
  const [first] = practiceWeeks(student.log, now, weeks);
  const lines = passedSince(student, first?.from ?? '').map(({ exercise, bpm, day }): HandoutLine => {
    const counted = countedTempo(exercise.lesson.meter, bpm);
    return { text: nameOf(exercise), right: words.passedAt({ bpm: counted, day: dayOf(day) }) };
  });
  return { heading: words.passed, lines: lines.length > 0 ? lines : [{ text: words.nothingPassed }] };
}

/** How far something that is set has come. */
function soFar({ words, student, now }: Saying, assignment: Assignment): string {
  const item = findExercise(student.shelf, assignment.lesson, assignment.exercise)?.item;
  const standing = standExercises(student.shelf, student.log, momentOf(now).day).find(
    (each) => each.item === item,
  );
  if (!standing || standing.standing === 'new') return words.notPlayed;
  const { cleanBpm, lesson } = standing;
  if (cleanBpm === null) return words.notClean;
  return words.soFar({ bpm: countedTempo(lesson.meter, cleanBpm) });
}

function setPart(saying: Saying): HandoutPart {
  const { words, dayOf, student } = saying;
  const lines = student.assignments.flatMap((assignment): HandoutLine[] => {
    const found = findExercise(student.shelf, assignment.lesson, assignment.exercise);
    if (!found) return [];
    const bpm = countedTempo(found.lesson.meter, aimBpmOf(assignment, found));
    const { by, note } = assignment;
    const right = by ? words.setFor({ bpm, day: dayOf(by) }) : words.setTo({ bpm });
    const under = [soFar(saying, assignment), note].filter(Boolean).join(' ');
    return [{ text: nameOf(found), right, under }];
  });
  return { heading: words.set, lines: lines.length > 0 ? lines : [{ text: words.nothingSet }] };
}

function holdsPart({ words, student, now }: Saying): readonly HandoutPart[] {
  const { firm } = summariseStudent(student, now);
  const lines = firm.map((each): HandoutLine => {
    const bpm = countedTempo(each.lesson.meter, each.cleanBpm ?? each.lesson.tempo.goalBpm);
    return { text: nameOf(each), right: words.holdsAt({ bpm }) };
  });
  return lines.length > 0 ? [{ heading: words.holds, lines }] : [];
}

function nextPart({ words, student, now }: Saying): readonly HandoutPart[] {
  const { next } = summariseStudent(student, now);
  return next ? [{ heading: words.next, lines: [{ text: nameOf(next.exercise) }] }] : [];
}

/** What the page says. */
export function progressPage(request: ProgressRequest): Handout {
  const saying = sayingOf(request);
  const { words, dayOf, student, now, weeks } = saying;
  const all = practiceWeeks(student.log, now, weeks);
  const [days, minutes] = all.reduce(
    ([sumOfDays, sum], week) => [sumOfDays + week.days, sum + week.minutes],
    [0, 0],
  );
  const span = { from: dayOf(all[0]?.from ?? '', 'year'), to: dayOf(all.at(-1)?.to ?? '', 'year') };
  return {
    title: words.title({ name: student.name }),
    lead: words.lead({ ...span, days, minutes }),
    parts: [
      practicePart(saying),
      passedPart(saying),
      setPart(saying),
      ...nextPart(saying),
      ...holdsPart(saying),
    ],
    foot: [words.meaning, words.care],
  };
}
