import {
  Bpm,
  type FullReport,
  LeadDb,
  parseLesson,
  perform,
  Seconds,
  seededRandom,
  TakeDb,
  type Unheard,
  VOICES,
  type Voice,
} from '@shedbook/core';
import { isPraise, LEVELS, type Remark, type RemarkFact, remarksOn } from '@shedbook/judge';
import { listenToNotes } from '@shedbook/listen';
import { describe, expect, it } from 'vitest';
import {
  asked,
  notesSent,
  playNotes,
  reportOfNotes,
  type TrueNote,
} from '../../../../internal/testing/played-notes.ts';
import { LANGUAGE_TAGS } from '../language/languages.ts';
import { REPORTS } from './catalogue.ts';
import { sayRemark, teacherSentences } from './say.ts';
import { unheardSentences, withSentences } from './unheard.ts';

const late = (note: TrueNote, seconds: number): TrueNote => ({
  ...note,
  timeSeconds: Seconds(note.timeSeconds + seconds),
});
const at = ({ written }: TrueNote, beat: number, slot: number) =>
  written.beat === beat && written.slot === slot;

/** The report on exercise 1 at 100, with what was done to it. */
const reportAfter = (change: (note: TrueNote) => TrueNote | null) => reportOfNotes(playNotes(1, 100, change));

const english = (change: (note: TrueNote) => TrueNote | null, level: 'beginner' | 'advanced' = 'advanced') =>
  teacherSentences(reportAfter(change), { level, language: 'en' });

describe('what is noticed', () => {
  it('[LI30] is said to a beginner only when it is coarse', () => {
    const bent = reportAfter((note) =>
      note.voice === 'snare' && at(note, 3, 3) ? late(note, -0.035) : note,
    );
    const faults = LEVELS.map((level) =>
      remarksOn(bent, level)
        .filter((remark) => !isPraise(remark))
        .map(({ kind }) => kind),
    );
    // definition: the slot lasts 200 ms at 100, so 6 ms are noticed: 35 ms are over two and 3.5 times that, and over five
    expect(faults).toEqual([['early'], ['early'], ['early']]);
    const slightly = reportAfter((note) =>
      note.voice === 'snare' && at(note, 3, 3) ? late(note, -0.018) : note,
    );
    expect(remarksOn(slightly, 'beginner').every(isPraise)).toBe(true);
    expect(remarksOn(slightly, 'advanced')[0]?.kind).toBe('early');
  });
});

describe('what a teacher says', () => {
  it('[LI31] names the place, the direction and how often, strongest first, in three sentences', () => {
    const sentences = english((note) => {
      if (note.voice === 'hihat-foot' && at(note, 4, 1)) return null;
      if (note.voice === 'snare' && at(note, 3, 3) && note.written.bar <= 6) return late(note, -0.024);
      if (note.voice === 'bass') return { ...late(note, 0.03), levelDb: TakeDb(note.levelDb + 9) };
      return note;
    });
    expect(sentences).toEqual([
      'The hi-hat foot on 4 is missing every time.',
      'The bass drum comes 30 ms after the ride: one hears two strokes instead of one.',
      'The bass drum is 9 dB too loud beside the ride.',
    ]);
    expect(
      english((note) =>
        note.voice === 'snare' && at(note, 3, 3) && note.written.bar <= 6 ? late(note, -0.024) : note,
      )[0],
    ).toBe('The snare on the last triplet of 3 comes 24 ms early, 6 of 8 times.');
  });

  it('[LI31] speaks of tempo, swing, steadiness and evenness', () => {
    // definition: the tempo is 4 % over 100 at the start and 4 % under it at the end of 21 s
    const slowing = english((note) => {
      const share = note.timeSeconds / 21;
      return { ...note, timeSeconds: Seconds(21 * (share - 0.04 * share * (1 - share))) };
    });
    expect(slowing[0]).toMatch(/^It slows down from 10\d to 9\d\.$/);
    const flat = english((note) =>
      note.voice === 'ride' && note.written.slot === 3 ? late(note, -0.06) : note,
    );
    // definition: the off-beat at 0.4 s less 60 ms of a beat of 0.6 s: 0.34 to 0.26
    expect(flat).toContain('The swing is too even: 1.3:1 instead of 2.0:1.');
    const random = seededRandom('hands');
    const loose = english((note) =>
      note.voice === 'bass' ? late(note, 0.05 * (random.next() - 0.5)) : note,
    );
    expect(loose[0]).toMatch(/^The bass drum is unsteady: its strokes lie ±\d\d ms around their place\.$/);
    const uneven = english((note) =>
      note.voice === 'snare' ? { ...note, levelDb: TakeDb(note.levelDb + (note.written.bar % 2) * 8) } : note,
    );
    expect(uneven[0]).toMatch(/^The snare is uneven: its plain strokes differ by ±\d dB\.$/);
  });

  it('[LI39] compares balance with what the lesson asks, and leaves a microphone its margin', () => {
    const plain = reportAfter((note) => note);
    const heard = (bassDb: number) => ({
      ...plain,
      take: { ...plain.take, kind: 'audio' as const },
      balanceDb: { ...plain.balanceDb, ride: LeadDb(0), bass: LeadDb(bassDb) },
    });
    const asked = plain.lessonBalanceDb.bass! - plain.lessonBalanceDb.ride!;
    // definition: an advanced student is allowed 4 dB, a microphone 4 more
    const says = (overDb: number) => remarksOn(heard(asked + overDb), 'advanced').map(({ kind }) => kind);
    expect(says(7)).not.toContain('loud');
    expect(says(9)).toContain('loud');
  });

  it('[LI39] asks of ghost notes what is asked of ghost notes', () => {
    const text = `title: Ghosts
exercises: [...g X... ..g. X..g]
groove: {hihat: xx xx xx xx}
`;
    const { lesson } = parseLesson(text, 'ghosts.lesson.yaml');
    if (!lesson) throw new Error('no lesson');
    const form = { ...asked.form, countInBars: 0 };
    const { strokes, durationSeconds } = perform(lesson, { exercise: 1, form });
    const notes = notesSent(strokes);
    const { report } = listenToNotes(notes, durationSeconds, { lesson, exercise: 1, form });
    // definition: played as written
    expect(remarksOn(report as NonNullable<typeof report>, 'advanced').every(isPraise)).toBe(true);
  });

  it('[LI32] praises a take in which nothing is wrong', () => {
    expect(english((note) => note)).toEqual([
      // definition: eight bars of 6 ride, 2 hi-hat foot, 4 bass drum and 5 snare strokes
      'All 136 strokes are there, and no others.',
      'The tempo holds at 100.',
      'The ride is steady: half of its strokes lie within 1 ms of their place.',
    ]);
  });

  it('[LI33] says everything in English and in German', () => {
    const place = { beat: 2, slot: 3, slots: 4, bar: 2 };
    const often = { times: 2, of: 3 };
    const facts: readonly RemarkFact[] = VOICES.flatMap((voice): readonly RemarkFact[] => [
      { kind: 'missing', voice, place, ...often },
      { kind: 'left-out', voice, ...often },
      { kind: 'added', voice, count: 3 },
      { kind: 'early', voice, place, ms: 12, ...often },
      { kind: 'late', voice, place, ms: 12, ...often },
      { kind: 'before', voice, lead: voice, ms: 30, apart: true },
      { kind: 'after', voice, lead: voice, ms: 30, apart: false },
      { kind: 'unsteady', voice, ms: 20 },
      { kind: 'slows', fromBpm: 100, toBpm: 90 },
      { kind: 'hurries', fromBpm: 90, toBpm: 100 },
      { kind: 'wanders', percent: 4.2 },
      { kind: 'slower', bpm: Bpm(90), askedBpm: 100 },
      { kind: 'faster', bpm: Bpm(100), askedBpm: 90 },
      { kind: 'flat-swing', ratio: 1.2, askedRatio: 2 },
      { kind: 'sharp-swing', ratio: 3, askedRatio: 2 },
      { kind: 'loud', voice, lead: voice, db: 5 },
      { kind: 'quiet', voice, lead: voice, db: 5 },
      { kind: 'uneven', voice, db: 5 },
      { kind: 'complete', count: 64 },
      { kind: 'steady', voice, ms: 4 },
      { kind: 'holds', bpm: Bpm(100) },
      { kind: 'balanced' },
    ]);
    for (const language of LANGUAGE_TAGS) {
      const said = facts.map((fact) => sayRemark({ ...fact, strength: 1 } as Remark, language));
      for (const sentence of said) expect(sentence).toMatch(/^[A-ZÄÖÜ][^\n]{10,110}\.$/);
      expect(said.join(' ')).not.toMatch(/undefined|NaN|\[object/);
    }
    const german = (fact: RemarkFact) => sayRemark({ ...fact, strength: 1 } as Remark, 'de');
    expect(german({ kind: 'early', voice: 'snare', place: { ...place, bar: null }, ms: 24, ...often })).toBe(
      'Die Snare auf dem „und“ der 2 kommt 24 ms zu früh, 2 von 3 Mal.',
    );
    expect(german({ kind: 'flat-swing', ratio: 1.3, askedRatio: 2 })).toBe(
      'Der Swing ist zu gerade: 1,3:1 statt 2,0:1.',
    );
  });

  it('[LI34] leaves a voice that a microphone did not hear to what was not heard', () => {
    const silent = reportAfter((note) => (note.voice === 'bass' ? null : note));
    expect(teacherSentences(silent, { level: 'beginner', language: 'en' })[0]).toBe(
      'The bass drum is not played at all.',
    );
    const recorded = { ...silent, take: { ...silent.take, kind: 'audio' as const } };
    expect(remarksOn(recorded, 'advanced').every(isPraise)).toBe(true);
  });

  /** As a microphone would have it, some voices hard to tell. */
  const blurred = (report: FullReport, ...voices: readonly Voice[]): FullReport => {
    const unheard = voices.map((voice): Unheard => ({ reason: 'hard-to-tell', voice }));
    return { ...report, take: { ...report.take, kind: 'audio' }, unheard };
  };
  const kinds = (report: FullReport) => remarksOn(report, 'advanced').map(({ kind }) => kind);

  it('[LI34] neither blames nor praises a voice that can hardly be told from the others', () => {
    const random = seededRandom('feet');
    const bent = reportAfter((note) => {
      if (note.voice !== 'bass') return note;
      if (at(note, 4, 1)) return null;
      return { ...late(note, 0.04 + 0.06 * (random.next() - 0.5)), levelDb: TakeDb(note.levelDb + 20) };
    });
    const ofBass = (report: FullReport) =>
      remarksOn(report, 'advanced').filter((remark) => 'voice' in remark && remark.voice === 'bass');
    // definition: a stroke of each bar is left out, the others are late, unsteady and far too loud
    expect(ofBass(blurred(bent)).map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['missing', 'loud', 'after']),
    );
    expect(ofBass(blurred(bent, 'bass'))).toEqual([]);
    // definition: nothing is wrong, so what is left of the praise is the tempo and a voice that is told
    const right = reportAfter((note) => note);
    expect(kinds(blurred(right))).toEqual(['complete', 'holds', 'steady', 'balanced']);
    expect(kinds(blurred(right, 'bass'))).toEqual(['holds', 'steady']);
    expect(kinds(blurred(right, ...VOICES))).toEqual(['holds']);
  });

  it('[LI34] says nothing by a lead voice that can hardly be told', () => {
    const flat = reportAfter((note) => {
      if (note.voice === 'ride' && note.written.slot === 3) return late(note, -0.06);
      return note.voice === 'snare' ? { ...late(note, 0.03), levelDb: TakeDb(note.levelDb + 12) } : note;
    });
    expect(kinds(blurred(flat))).toEqual(expect.arrayContaining(['flat-swing', 'after', 'loud']));
    // the tempo and the feet are heard without the ride
    expect(kinds(blurred(flat, 'ride'))).toEqual(['holds', 'steady']);
    const wandering = { ...reportAfter((note) => note), barToBarPercent: 6 };
    expect(kinds(blurred(wandering))).toContain('wanders');
    // what looks like wandering is not blamed, but enough not to praise the tempo
    const doubtful = kinds(blurred(wandering, 'ride'));
    expect(doubtful).not.toContain('wanders');
    expect(doubtful).not.toContain('holds');
  });

  it('[LI46] says what cannot be told in English and in German, and keeps the English in the report', () => {
    const unheard = VOICES.flatMap((voice): readonly Unheard[] => [
      { reason: 'not-heard', voice },
      { reason: 'hard-to-tell', voice },
      { reason: 'other-tempo', bpm: Bpm(91.4), askedBpm: Bpm(100) },
      { reason: 'partly-recognised' },
    ]);
    for (const language of LANGUAGE_TAGS) {
      const said = unheardSentences({ unheard }, REPORTS[language].language);
      for (const sentence of said) expect(sentence).toMatch(/^[A-ZÄÖÜ][^\n]{10,150}\.$/);
      expect(said.join(' ')).not.toMatch(/undefined|NaN|\[object/);
    }
    const report = withSentences({ ...reportAfter((note) => note), unheard: unheard.slice(0, 4) });
    expect(report.unheard).toEqual(unheard.slice(0, 4));
    expect(report.notHeard).toEqual([
      'The ride was not heard at all: not played, or too soft for this microphone.',
      'The ride is hard to tell from the other voices in this recording; its strokes are a guess.',
      'It was played at 91 beats a minute, not at 100.',
      'Only part of the exercise was recognised; read the figures with care.',
    ]);
    expect(unheardSentences(report, REPORTS.en.language)).toEqual(report.notHeard);
    expect(unheardSentences(report, REPORTS.de.language)).toEqual([
      'Das Ride war nicht zu hören: nicht gespielt oder zu leise für dieses Mikrofon.',
      'Das Ride ist in dieser Aufnahme kaum von den anderen Stimmen zu unterscheiden; diese Schläge sind geraten.',
      'Gespielt wurde mit 91 Vierteln in der Minute, nicht mit 100.',
      'Nur ein Teil der Übung wurde erkannt; die Zahlen sind mit Vorsicht zu lesen.',
    ]);
    // a report that was kept before there were reasons
    const { unheard: _, ...kept } = report;
    expect(unheardSentences(kept, REPORTS.de.language)).toEqual(report.notHeard);
  });
});
