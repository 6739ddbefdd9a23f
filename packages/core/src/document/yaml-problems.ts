/** Faults of the YAML itself, as facts. */
import { type Document, isScalar, type LineCounter, visit } from 'yaml';
import type { LessonFact } from '../lesson/lesson-fact.ts';
import { type InputProblem, MOST_PROBLEMS } from './problem.ts';

type YamlError = Document['errors'][number];

interface Wording {
  readonly found: LessonFact;
  readonly expected: LessonFact;
  readonly repair: LessonFact | null;
}

/** A word that begins with one of the signs by which YAML marks what follows. */
const MARK: Wording = {
  found: { fact: 'yaml-mark' },
  expected: { fact: 'yaml-no-marks' },
  repair: { fact: 'quote-text' },
};

/** What is said of the parser's codes; of those that are not here, that something is out of place. */
const WORDINGS: Readonly<Record<string, Wording>> = {
  TAB_AS_INDENT: { found: { fact: 'yaml-tab' }, expected: { fact: 'yaml-spaces' }, repair: null },
  BLOCK_AS_IMPLICIT_KEY: {
    found: { fact: 'yaml-colon-in-text' },
    expected: { fact: 'yaml-one-colon' },
    repair: { fact: 'quote-text' },
  },
  MULTILINE_IMPLICIT_KEY: {
    found: { fact: 'yaml-no-colon' },
    expected: { fact: 'yaml-key-and-value' },
    repair: null,
  },
  BAD_INDENT: {
    found: { fact: 'yaml-indent' },
    expected: { fact: 'yaml-aligned-keys' },
    repair: null,
  },
  MISSING_CHAR: {
    found: { fact: 'yaml-not-closed' },
    expected: { fact: 'yaml-closing' },
    repair: null,
  },
  BAD_DQ_ESCAPE: {
    found: { fact: 'yaml-backslash' },
    expected: { fact: 'yaml-plain-backslash' },
    repair: null,
  },
  MULTIPLE_DOCS: {
    found: { fact: 'yaml-documents' },
    expected: { fact: 'yaml-one-document' },
    repair: null,
  },
  BAD_DIRECTIVE: MARK,
  TAG_RESOLVE_FAILED: MARK,
  MULTIPLE_TAGS: MARK,
  MULTIPLE_ANCHORS: MARK,
  BAD_PROP_ORDER: MARK,
};

const OUT_OF_PLACE: Wording = {
  found: { fact: 'yaml-out-of-place' },
  expected: { fact: 'yaml-file' },
  repair: { fact: 'quote-text' },
};

/** Where a quoted text that runs to the fault begins: that is what has to be closed. */
function openingOf(document: Document, error: YamlError): number {
  let opening = error.pos[0];
  if (error.code !== 'MISSING_CHAR') return opening;
  visit(document, {
    Scalar: (_, node) => {
      const quoted = isScalar(node) && (node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE');
      if (quoted && node.range && node.range[1] >= error.pos[0]) opening = node.range[0];
    },
  });
  return opening;
}

const ALIAS: Wording = {
  found: { fact: 'yaml-alias' },
  expected: { fact: 'yaml-no-aliases' },
  repair: { fact: 'quote-asterisk' },
};

const KEY_AGAIN: Wording = {
  found: { fact: 'yaml-key-again' },
  expected: { fact: 'each-key-once' },
  repair: null,
};

interface YamlFault {
  readonly offset: number;
  readonly wording: Wording;
}

/** Aliases, and keys that a map has already: the parser could say these too, but compares every key with every other. */
function faultsWithin(document: Document): readonly YamlFault[] {
  const faults: YamlFault[] = [];
  visit(document, {
    Alias: (_, { range }) => {
      faults.push({ offset: range?.[0] ?? 0, wording: ALIAS });
    },
    Map: (_, { items }) => {
      const seen = new Set<unknown>();
      for (const { key } of items) {
        if (!isScalar(key)) continue;
        if (seen.has(key.value)) faults.push({ offset: key.range?.[0] ?? 0, wording: KEY_AGAIN });
        seen.add(key.value);
      }
    },
  });
  return faults;
}

function errorFault(document: Document, error: YamlError): YamlFault {
  return { offset: openingOf(document, error), wording: WORDINGS[error.code] ?? OUT_OF_PLACE };
}

/** The faults of a document's YAML, the first ones where there are many, in order of place; an alias is one, so that what is read is what is written. */
export function yamlProblems(
  document: Document,
  lines: LineCounter,
  file: string,
): readonly InputProblem<LessonFact>[] {
  const errors = document.errors.slice(0, MOST_PROBLEMS).map((error) => errorFault(document, error));
  const faults = [...errors, ...faultsWithin(document)];
  return faults
    .toSorted((a, b) => a.offset - b.offset)
    .slice(0, MOST_PROBLEMS)
    .map(({ offset, wording }) => {
      const { line, col } = lines.linePos(offset);
      const place = { line: Math.max(1, line), column: Math.max(1, col) };
      return { code: 'yaml', severity: 'error', file, ...place, path: '', ...wording };
    });
}
