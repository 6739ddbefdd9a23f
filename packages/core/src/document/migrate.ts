/**
 * Older versions of the lesson document brought up to date, one step at a time.
 *
 * Conventions: a migration takes the plain data of one version and returns that of the next; it never changes
 * what it is given.
 */
export type LessonData = Readonly<Record<string, unknown>>;

/** A step from version `from` to `from + 1`. */
export interface Migration {
  /** Number of the version that it starts from. */
  readonly from: number;
  readonly up: (data: LessonData) => LessonData;
}

/**
 * Every step there is, in order. Version 2 added sections, text and lasting names of exercises and took nothing away:
 * a lesson of version 1 means what it meant, a lesson that is not divided.
 */
export const MIGRATIONS: readonly Migration[] = [{ from: 1, up: (data) => data }];

/**
 * Brings data up to `to`.
 * @returns the data with its `version` set, or as it is when it is of that version or later.
 * @throws RangeError when a step is missing.
 */
export function migrate(
  data: LessonData,
  to: number,
  migrations: readonly Migration[] = MIGRATIONS,
): LessonData {
  let current = data;
  for (let version = Number(data.version ?? to); version < to; version += 1) {
    const step = migrations.find((each) => each.from === version);
    if (!step) throw new RangeError(`Internal error: no migration from lesson version ${version}`);
    current = { ...step.up(current), version: version + 1 };
  }
  return current;
}
