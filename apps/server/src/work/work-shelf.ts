/**
 * Where work lies that is to be done, in the folder of the store or in its database: what a queue needs of either.
 *
 * Conventions: whoever does a piece of work holds it, and says so again and again; what nobody holds any more, since its
 * server was killed, is there for the next. A shelf knows the number of a piece of work and how far it is, and nothing
 * that anybody wrote.
 */

/** How a piece of work is. */
export type WorkAt = 'waiting' | 'begun' | 'done' | 'failed';

/** A piece of work that is ordered. */
export interface NewWork {
  /** A random UUID. */
  readonly id: string;
  /** What is to be made. */
  readonly kind: string;
  /** Whose it is: a lesson. */
  readonly of: string;
}

/** A piece of work on the shelf. */
export interface Work extends NewWork {
  readonly at: WorkAt;
  /** What was told of it last, by whoever does it; null for nothing. */
  readonly told: string | null;
  /** Milliseconds since somebody asked after it. */
  readonly idleMs: number;
}

/** The shelf. */
export interface WorkShelf {
  add(work: NewWork): Promise<void>;
  find(id: string): Promise<Work | null>;
  list(): Promise<readonly Work[]>;
  /** Notes that somebody asks after it. */
  ask(id: string): Promise<void>;
  /** Notes that somebody asks after all of it: nobody could while no server ran. */
  askAll(): Promise<void>;
  /** Takes the first piece of work of a kind that nobody holds; null for none. */
  take(kind: string, holder: string): Promise<NewWork | null>;
  /** Goes on holding a piece of work, and notes how far it is. @returns whether it is still there, and held */
  hold(id: string, holder: string, told: string | null): Promise<boolean>;
  /** Ends a piece of work; nothing where it is no longer held. */
  end(
    id: string,
    holder: string,
    end: { readonly at: 'done' | 'failed'; readonly told: string | null },
  ): Promise<void>;
  /** Lets go of a piece of work, for the next. */
  letGo(id: string, holder: string): Promise<void>;
  /** Takes it away. @returns whether it was there */
  remove(id: string): Promise<boolean>;
  close(): Promise<void>;
}

/** Milliseconds for which work is held after it was last said to be. */
export const HELD_MS = 15_000;

/** Times that work is begun at most: what ends a server each time is not tried for ever. */
export const MOST_TRIES = 5;
