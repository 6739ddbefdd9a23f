/** Reading what a lesson shows: files by their names, and the files themselves where somebody has them. */
import type { LessonFact } from '../lesson/lesson-fact.ts';
import { MEDIUM_BYTES, MEDIUM_TYPES, type Medium } from '../lesson/media.data.ts';
import {
  type LookAtMedium,
  type MediumFault,
  type MediumPathFault,
  mediumPathFault,
  mediumType,
} from '../lesson/media.ts';
import { mediaPlaces } from '../lesson/prose.ts';
import { quoted } from '../lesson/value-fact.ts';
import type { Report } from './fault.ts';
import type { FieldPath } from './field-path.ts';
import type { RawSection } from './schema.ts';

type RawMedia = RawSection['media'];

/** Checks the file that a path names; false where there is a fault, which is reported. */
export type CheckMedium = (path: string, at: FieldPath, offset?: number) => boolean;

const ENDINGS = Object.keys(MEDIUM_TYPES).map((ending) => `.${ending}`);

function expectedOf(fault: MediumFault | MediumPathFault, path: string): LessonFact {
  switch (fault) {
    case 'outside':
      return { fact: 'a-path-inside' };
    case 'other-kind':
      return { fact: 'one-of', words: ENDINGS };
    case 'missing':
      return { fact: 'a-file-there' };
    case 'too-large':
      return { fact: 'megabytes-up-to', most: MEDIUM_BYTES[mediumType(path)?.kind ?? 'picture'] / 1e6 };
    case 'other-content':
      return { fact: 'a-file-as-it-ends' };
    case 'scripts':
      return { fact: 'a-picture-alone' };
    default:
      return fault satisfies never;
  }
}

/** A check that reports its faults, and looks at each file once. */
export function createMediumCheck(look: LookAtMedium, report: Report): CheckMedium {
  return (path, at, offset = 0) => {
    const fault = mediumPathFault(path) ?? look(path);
    if (fault === null) return true;
    report({
      code: `medium-${fault}`,
      path: at,
      offset,
      found: quoted(path),
      expected: expectedOf(fault, path),
    });
    return false;
  };
}

/** The files that stand beside something; those with a fault are left out. */
export function readMedia(
  raw: RawMedia,
  at: FieldPath,
  check: CheckMedium,
): { readonly media?: readonly Medium[] } {
  const listed = Array.isArray(raw) ? raw : raw === undefined ? [] : [raw];
  const media = listed.flatMap((each, index): readonly Medium[] => {
    if (each === undefined) return [];
    const place = Array.isArray(raw) ? [...at, index] : at;
    if (typeof each === 'string') return check(each, place) ? [{ path: each, says: null }] : [];
    const { file, says = null } = each;
    return check(file, [...place, 'file']) ? [{ path: file, says }] : [];
  });
  return media.length === 0 ? {} : { media };
}

/** Checks the files that a text shows. */
export function checkMediaIn(text: string | undefined, at: FieldPath, check: CheckMedium): void {
  for (const { path, offset } of mediaPlaces(text ?? '')) check(path, at, offset);
}
