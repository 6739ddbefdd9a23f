import { TooMuchError } from '@shedbook/host';
import type { SaveCause, StoredLesson } from '@shedbook/routes';
import fc from 'fast-check';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createLessonStore, type LessonStore } from '../../src/store/lessons.ts';
import { type Summary, type SumUp, summarise } from '../../src/store/summary.ts';
import type { TestStore } from '../stores.ts';
import { temporaryFolder } from '../temporary.ts';

/** Lessons, in whichever database it lies. */
export function lessonsSuite({ open }: TestStore): void {
  const LONG_AGO = new Date('2031-03-01T09:00:00Z');

  async function openStore(): Promise<LessonStore> {
    const store = createLessonStore(await open(temporaryFolder()), () => LONG_AGO);
    onTestFinished(() => store.close());
    return store;
  }

  async function saved(store: LessonStore, from: StoredLesson, text: string, cause: SaveCause = 'edit') {
    const outcome = await store.save(from.id, { text, revision: from.revision, cause });
    if (outcome.kind !== 'saved') throw new Error(`expected a save, got ${outcome.kind}`);
    return outcome.lesson;
  }

  describe('store of lessons', () => {
    it('[SE5000] goes on while a new lesson is read, and keeps nothing of one that takes too much', async () => {
      let finish: (summary: Summary) => void = () => undefined;
      let isTooMuch = false;
      const sumUp: SumUp = (text) =>
        isTooMuch
          ? Promise.reject(new TooMuchError())
          : new Promise((resolve) => {
              finish = () => resolve(summarise(text));
            });
      const database = await open(temporaryFolder());
      const clock = () => LONG_AGO;
      const [store, quick] = [
        createLessonStore(database, clock, clock, sumUp),
        createLessonStore(database, clock),
      ];
      onTestFinished(() => store.close());
      const creating = store.create('title: Long');
      const short = await quick.create('title: Short');
      expect((await saved(quick, short, 'title: Shorter')).revision).toBe(2);
      finish(summarise(''));
      const long = await creating;
      isTooMuch = true;
      await expect(store.create('title: Endless')).rejects.toThrow(TooMuchError);
      const shelf = await store.shelf();
      // definition: one of the two was read as it is now; of the other its title is told
      expect(shelf.map(({ summary: { title, errors } }) => [title, errors]).toSorted()).toEqual([
        ['Long', 0],
        ['Shorter', 1],
      ]);
      expect((await quick.shelf()).map(({ summary }) => summary.errors)).toEqual([0, 0]);
      expect(await store.summary(long)).toMatchObject({ title: 'Long' });
    });

    it('[SE1] keeps the text letter for letter', async () => {
      const store = await openStore();
      const text = '# Oda’s\ttabs & “quotes” \u{1F941}\r\ntitle: x\n\n\n';
      const lesson = await store.create(text);
      expect(lesson).toMatchObject({ text, revision: 1, step: 0, lastStep: 0 });
      expect(await store.read(lesson.id)).toEqual(lesson);
    });

    it('[SE2] raises the revision with every save', async () => {
      const store = await openStore();
      const first = await store.create('a');
      const second = await saved(store, first, 'b');
      expect(second).toMatchObject({ text: 'b', revision: 2, step: 1, lastStep: 1 });
      expect(await store.read(first.id)).toEqual(second);
    });

    it('[SE3] refuses a stale save, gives what is kept and writes nothing', async () => {
      const store = await openStore();
      const first = await store.create('a');
      const kept = await saved(store, first, 'b');
      const outcome = await store.save(first.id, { text: 'c', revision: 1, cause: 'edit' });
      expect(outcome).toEqual({ kind: 'conflict', kept });
      expect(await store.read(first.id)).toEqual(kept);
    });

    it('[SE4] walks back and forth over the whole history as a list of texts does', async () => {
      const move = fc.oneof(
        {
          weight: 3,
          arbitrary: fc.string({ maxLength: 8 }).map((text) => ({ cause: 'edit' as const, text })),
        },
        { weight: 2, arbitrary: fc.constant({ cause: 'undo' as const, text: '' }) },
        { weight: 2, arbitrary: fc.constant({ cause: 'redo' as const, text: '' }) },
      );
      const store = await openStore();
      const property = fc.asyncProperty(fc.array(move, { maxLength: 24 }), async (moves) => {
        let lesson = await store.create('start');
        // definition: undo and redo over a list of texts and a place in it
        let texts = ['start'];
        let at = 0;
        for (const { cause, text } of moves) {
          if (cause === 'edit') {
            texts = [...texts.slice(0, at + 1), text];
            at += 1;
          } else {
            at = Math.min(texts.length - 1, Math.max(0, at + (cause === 'undo' ? -1 : 1)));
            if (at === lesson.step) continue;
          }
          const wanted = (await store.readStep(lesson.id, at))?.text ?? text;
          lesson = await saved(store, lesson, cause === 'edit' ? text : wanted, cause);
          expect([lesson.text, lesson.step, lesson.lastStep]).toEqual([texts[at], at, texts.length - 1]);
        }
      });
      await fc.assert(property, { numRuns: 30, seed: 5 });
    });

    it('[SE4] keeps three hundred steps', async () => {
      const store = await openStore();
      let lesson = await store.create('0');
      for (let n = 1; n <= 300; n += 1) lesson = await saved(store, lesson, String(n));
      expect(await store.readStep(lesson.id, 0)).toEqual({ step: 0, text: '0' });
      expect(await store.readStep(lesson.id, 150)).toEqual({ step: 150, text: '150' });
      expect(await store.readStep(lesson.id, 301)).toBeNull();
    });

    it('[SE5] removes and brings back with history', async () => {
      const store = await openStore();
      const lesson = await saved(store, await store.create('a'), 'b');
      expect(await store.remove(lesson.id)).toBe(true);
      expect(await store.list()).toEqual([]);
      expect(await store.read(lesson.id)).toBeNull();
      expect(await store.remove(lesson.id)).toBe(false);
      expect(await store.restore(lesson.id)).toEqual(lesson);
      expect(await store.readStep(lesson.id, 0)).toEqual({ step: 0, text: 'a' });
    });

    it('[SE6] forgets what was removed before a time and keeps the rest', async () => {
      const store = await openStore();
      const thrown = await store.create('a');
      const kept = await store.create('b');
      await store.remove(thrown.id);
      await store.forgetRemovedBefore(LONG_AGO);
      expect(await store.restore(thrown.id)).toMatchObject({ id: thrown.id });
      await store.remove(thrown.id);
      await store.forgetRemovedBefore(new Date(LONG_AGO.getTime() + 1));
      expect(await store.restore(thrown.id)).toBeNull();
      expect((await store.list()).map((each) => each.id)).toEqual([kept.id]);
    });
  });
}
