/** Faults of the YAML itself, said in the words of this program. */
import { type Document, isScalar, type LineCounter, visit } from 'yaml';
import type { InputProblem } from './problem.ts';

type YamlError = Document['errors'][number];

interface Wording {
  readonly found: string;
  readonly expected: string;
  readonly repair: string | null;
}

/** What is said of the parser's codes that beginners meet. */
const WORDINGS: Readonly<Record<string, Wording>> = {
  TAB_AS_INDENT: { found: 'a tab', expected: 'spaces for indentation', repair: null },
  DUPLICATE_KEY: { found: 'a key that stands above already', expected: 'each key once', repair: null },
  BLOCK_AS_IMPLICIT_KEY: {
    found: '": " inside a text',
    expected: 'one ": ", after the key',
    repair: 'put quotes around the text',
  },
  MULTILINE_IMPLICIT_KEY: { found: 'a line without ": "', expected: 'a key and its value', repair: null },
  BAD_INDENT: {
    found: 'a line that is not indented like its neighbours, or a bracket that is not closed',
    expected: 'keys of one map under each other and every bracket closed',
    repair: null,
  },
  MISSING_CHAR: {
    found: 'a quote or bracket that is not closed',
    expected: 'its closing quote or bracket',
    repair: null,
  },
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

function plainMessage(error: YamlError): string {
  const line = error.message.split('\n')[0] ?? error.message;
  return line.replace(/ at line \d+, column \d+:?$/, '');
}

const ALIAS: Wording = {
  found: 'an alias ("*")',
  expected: 'the text itself: lessons have no aliases',
  repair: 'put quotes around a text that starts with "*"',
};

interface YamlFault {
  readonly offset: number;
  readonly wording: Wording;
}

function aliasFaults(document: Document): readonly YamlFault[] {
  const faults: YamlFault[] = [];
  visit(document, {
    Alias: (_, node) => {
      faults.push({ offset: node.range?.[0] ?? 0, wording: ALIAS });
    },
  });
  return faults;
}

function errorFault(document: Document, error: YamlError): YamlFault {
  const plain = { found: plainMessage(error), expected: 'a YAML file', repair: null };
  return { offset: openingOf(document, error), wording: WORDINGS[error.code] ?? plain };
}

/** Every fault of a document's YAML, located; an alias is one, so that what is read is what is written. */
export function yamlProblems(document: Document, lines: LineCounter, file: string): readonly InputProblem[] {
  const errors = document.errors.map((error) => errorFault(document, error));
  return [...errors, ...aliasFaults(document)].map(({ offset, wording }) => {
    const { line, col } = lines.linePos(offset);
    const place = { line: Math.max(1, line), column: Math.max(1, col) };
    return { code: 'yaml', severity: 'error', file, ...place, path: '', ...wording };
  });
}
