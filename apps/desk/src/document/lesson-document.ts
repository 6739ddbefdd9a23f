/**
 * A lesson while it is open: one text, its reading, its history, and a queue that keeps every change.
 *
 * Each change is shown at once and sent at once, one after another. A change that the server refuses because the
 * lesson was changed elsewhere stops the queue until somebody chooses. While the server cannot be reached the
 * changes wait here and, for the case of a reload, in the browser.
 */
import { type Lesson, type LessonReading, parseLesson } from '@shedbook/core';
import type { SaveCause, StoredLesson } from '@shedbook/routes';
import { readLesson, readStep, saveLesson } from './api.ts';
import type { Backup } from './backup.ts';
import { RefusedError, UnreachableError } from './client.ts';

/** How far the keeping of changes is. */
export type Keeping = 'kept' | 'keeping' | 'unreachable' | 'conflict' | 'refused' | 'notYours';

/** What is on screen. */
export interface DocumentState {
  readonly id: string;
  readonly text: string;
  readonly reading: LessonReading;
  /** The last reading without errors: what can be drawn while the text is being mended. */
  readonly lesson: Lesson | null;
  readonly keeping: Keeping;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** What was kept from elsewhere, while `keeping` is `conflict`. */
  readonly other: StoredLesson | null;
}

interface Change {
  readonly text: string;
  readonly cause: SaveCause;
}

/** Seconds between tries while the server cannot be reached. */
const RETRY_SECONDS = 2;

/** Name that problems carry for the text. */
const FILE = 'lesson';

/** An open lesson. */
export class LessonDocument {
  readonly id: string;
  readonly #backup: Backup;
  readonly #listeners = new Set<() => void>();
  readonly #steps = new Map<number, string>();
  #queue: readonly Change[] = [];
  #sending = false;
  #retry: ReturnType<typeof setTimeout> | undefined;
  #revision: number;
  #step: number;
  #lastStep: number;
  #state: DocumentState;

  constructor(stored: StoredLesson, backup: Backup) {
    this.id = stored.id;
    this.#backup = backup;
    this.#revision = stored.revision;
    this.#step = stored.step;
    this.#lastStep = stored.lastStep;
    this.#steps.set(stored.step, stored.text);
    this.#state = this.#stateFor(stored.text, 'kept', null);
    const waiting = backup.read(stored.id);
    if (waiting && waiting.text !== stored.text) this.#takeUp(waiting.text, waiting.revision);
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly state = (): DocumentState => this.#state;

  /** Whether everything is kept, so that the page may be left. */
  get settled(): boolean {
    return this.#queue.length === 0;
  }

  /** A new text; nothing happens when it is the one there is. */
  edit(text: string): void {
    if (text === this.#state.text) return;
    this.#step += 1;
    this.#lastStep = this.#step;
    this.#steps.set(this.#step, text);
    this.#push({ text, cause: 'edit' });
  }

  undo(): Promise<void> {
    return this.#move(-1, 'undo');
  }

  redo(): Promise<void> {
    return this.#move(1, 'redo');
  }

  /** Shows what was changed elsewhere, unless something waits here. @returns whether it was. */
  adopt(stored: StoredLesson): boolean {
    if (!this.settled || stored.revision === this.#revision) return false;
    this.#take(stored);
    return true;
  }

  /** Ends a conflict with this text; the other one stays a step of the history. */
  keepMine(): void {
    const { other, text } = this.#state;
    if (!other) return;
    this.#revision = other.revision;
    this.#steps.clear();
    this.#steps.set(other.step, other.text);
    this.#step = other.step + 1;
    this.#lastStep = this.#step;
    this.#steps.set(this.#step, text);
    this.#queue = [];
    this.#push({ text, cause: 'edit' });
  }

  /** Ends a conflict with the other text. */
  takeTheirs(): void {
    if (this.#state.other) this.#take(this.#state.other);
  }

  #take(stored: StoredLesson): void {
    this.#queue = [];
    this.#revision = stored.revision;
    this.#step = stored.step;
    this.#lastStep = stored.lastStep;
    this.#steps.clear();
    this.#steps.set(stored.step, stored.text);
    this.#backup.clear(this.id);
    this.#show(this.#stateFor(stored.text, 'kept', null));
  }

  /** Changes that were made before a reload and never reached the server. */
  #takeUp(text: string, revision: number): void {
    this.#revision = revision;
    this.edit(text);
  }

  async #move(by: -1 | 1, cause: 'undo' | 'redo'): Promise<void> {
    const target = this.#step + by;
    if (target < 0 || target > this.#lastStep) return;
    const text = this.#steps.get(target) ?? (await readStep(this.id, target)).text;
    this.#steps.set(target, text);
    this.#step = target;
    this.#push({ text, cause });
  }

  #push(change: Change): void {
    this.#queue = [...this.#queue, change];
    this.#backup.write(this.id, { text: change.text, revision: this.#revision });
    this.#show(
      this.#stateFor(change.text, this.#state.keeping === 'unreachable' ? 'unreachable' : 'keeping', null),
    );
    void this.#send();
  }

  async #send(): Promise<void> {
    if (this.#sending) return;
    this.#sending = true;
    try {
      for (let next = this.#queue[0]; next; next = this.#queue[0]) {
        if (!(await this.#sendOne(next))) return;
      }
    } finally {
      this.#sending = false;
    }
  }

  async #sendOne(change: Change): Promise<boolean> {
    try {
      const reply = await saveLesson(this.id, { ...change, revision: this.#revision });
      const lostAnswer = reply.kind === 'conflict' && reply.kept.text === change.text;
      if (reply.kind === 'conflict' && !lostAnswer) {
        this.#show({ ...this.#state, keeping: 'conflict', other: reply.kept });
        return false;
      }
      this.#acknowledge(reply.kind === 'saved' ? reply.lesson : reply.kept);
      return true;
    } catch (error) {
      const isOthers = error instanceof RefusedError && error.code === 'not-yours';
      const stored = isOthers ? await readLesson(this.id).catch(() => null) : null;
      if (stored) {
        this.#take(stored);
        this.#show({ ...this.#state, keeping: 'notYours' });
        return false;
      }
      const unreachable = error instanceof UnreachableError;
      this.#show({ ...this.#state, keeping: unreachable ? 'unreachable' : 'refused' });
      if (unreachable) this.#tryAgain();
      return false;
    }
  }

  /** One try is on its way, however many changes wait. */
  #tryAgain(): void {
    clearTimeout(this.#retry);
    this.#retry = setTimeout(() => void this.#send(), RETRY_SECONDS * 1000);
  }

  #acknowledge(kept: StoredLesson): void {
    this.#revision = kept.revision;
    this.#queue = this.#queue.slice(1);
    if (this.settled) this.#backup.clear(this.id);
    else this.#backup.write(this.id, { text: this.#state.text, revision: kept.revision });
    this.#show({ ...this.#state, keeping: this.settled ? 'kept' : 'keeping' });
  }

  #stateFor(text: string, keeping: Keeping, other: StoredLesson | null): DocumentState {
    const reading = text === this.#state?.text ? this.#state.reading : parseLesson(text, FILE);
    const lesson = reading.lesson ?? this.#state?.lesson ?? null;
    const canUndo = this.#step > 0;
    const canRedo = this.#step < this.#lastStep;
    return { id: this.id, text, reading, lesson, keeping, canUndo, canRedo, other };
  }

  #show(state: DocumentState): void {
    this.#state = state;
    for (const listener of this.#listeners) listener();
  }
}
