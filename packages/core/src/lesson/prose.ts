/**
 * What a teacher writes to a lesson or a section, in a small part of Markdown: paragraphs, lists, emphasis, strong
 * emphasis, links and pictures. All else is what it is, letter by letter, so that nothing that is written is lost.
 *
 * Conventions: a blank line ends a paragraph; a single line break is a space. A list item begins with `- `, `* ` or
 * `1. `, and goes on in lines that are set in. A picture stands in a line of its own, and may be a sound or a video.
 * Source: CommonMark 0.31.2, sections 2.4 (backslash escapes), 4.8 (paragraphs), 5.2 (list items), 6.2 (emphasis), 6.3
 * (links) and 6.4 (images).
 * Differs from the source: no headings, code, quotes, HTML, nor lists within lists; no picture among words; a list needs
 * no blank line before it; links are whole addresses on the web.
 */

import type { Medium } from './media.data.ts';

/** Words that are set alike. */
export interface ProseRun {
  readonly text: string;
  /** Set in italics. */
  readonly emphasis: boolean;
  /** Set in bold. */
  readonly strong: boolean;
  /** Address on the web, or null. */
  readonly link: string | null;
}

/** A paragraph, a list of items, or a picture, sound or video. */
export type ProseBlock =
  | { readonly kind: 'medium'; readonly medium: Medium }
  | { readonly kind: 'paragraph'; readonly runs: readonly ProseRun[] }
  | {
      readonly kind: 'list';
      readonly isNumbered: boolean;
      readonly items: readonly (readonly ProseRun[])[];
    };

type Manner = Omit<ProseRun, 'text'>;

const PLAIN: Manner = { emphasis: false, strong: false, link: null };

/** How words inside a pair of marks are set. */
const INLINE: readonly {
  readonly at: RegExp;
  readonly manner: (match: RegExpExecArray) => Partial<Manner>;
}[] = [
  { at: /^\*\*(?=\S)((?:\\.|[^\\])+?)(?<=\S)\*\*/su, manner: () => ({ strong: true }) },
  { at: /^\*(?=[^\s*])((?:\\.|[^\\])+?)(?<=[^\s*])\*(?!\*)/su, manner: () => ({ emphasis: true }) },
  {
    at: /^_(?=[^\s_])((?:\\.|[^\\])+?)(?<=[^\s_])_(?![\p{L}\p{N}])/su,
    manner: () => ({ emphasis: true }),
  },
  {
    at: /^\[((?:\\.|[^\]\\])+)\]\((https?:\/\/[^\s()]+)\)/su,
    manner: ([, , link]) => ({ link: link as string }),
  },
];

const ESCAPED = /^\\([!-/:-@[-`{-~])/u;

/** What stands at the start of a text, and how much of the text it takes; null where a letter stands for itself. */
function inlineAt(text: string, before: string, manner: Manner) {
  const escaped = ESCAPED.exec(text);
  if (escaped) return { length: 2, runs: [{ ...manner, text: escaped[1] as string }] };
  // An underline inside a word is part of the word.
  if (text.startsWith('_') && /[\p{L}\p{N}]$/u.test(before)) return null;
  for (const { at, manner: of } of INLINE) {
    const match = at.exec(text);
    if (match)
      return { length: match[0].length, runs: inlineRuns(match[1] as string, { ...manner, ...of(match) }) };
  }
  return null;
}

function isAlike(a: ProseRun, b: ProseRun): boolean {
  return a.emphasis === b.emphasis && a.strong === b.strong && a.link === b.link;
}

/** Runs with neighbours that are set alike as one. */
function joined(runs: readonly ProseRun[]): readonly ProseRun[] {
  const all: ProseRun[] = [];
  for (const run of runs) {
    const last = all.at(-1);
    if (last && isAlike(last, run)) all[all.length - 1] = { ...last, text: last.text + run.text };
    else all.push(run);
  }
  return all;
}

function inlineRuns(text: string, manner: Manner): readonly ProseRun[] {
  const runs: ProseRun[] = [];
  for (let at = 0; at < text.length; ) {
    const found = inlineAt(text.slice(at), text.slice(0, at), manner);
    if (found) runs.push(...found.runs);
    else runs.push({ ...manner, text: text[at] as string });
    at += found?.length ?? 1;
  }
  return joined(runs);
}

const ITEM = /^ {0,3}(?:[-*]|(\d{1,9})[.)]) +(\S.*)$/u;

/** A line that shows a file: what it says of it, and its path, in angle brackets where it has spaces. */
const SHOWN = /^\s*!\[((?:\\.|[^\]\\])*)\]\((?:<([^<>]+)>|([^\s()<>]+))\)\s*$/u;

/** Lines that belong together, and what they are. */
interface Gathered {
  readonly kind: 'paragraph' | 'bullet' | 'number' | 'medium';
  readonly lines: string[];
}

function gather(text: string): readonly Gathered[] {
  const all: Gathered[] = [];
  let open: Gathered | null = null;
  for (const line of text.split(/\r?\n/)) {
    const item = ITEM.exec(line);
    if (SHOWN.test(line)) {
      all.push({ kind: 'medium', lines: [line] });
      open = null;
    } else if (item) {
      open = { kind: item[1] === undefined ? 'bullet' : 'number', lines: [item[2] as string] };
      all.push(open);
    } else if (line.trim() === '') open = null;
    else if (open) open.lines.push(line.trim());
    else {
      open = { kind: 'paragraph', lines: [line.trim()] };
      all.push(open);
    }
  }
  return all;
}

function mediumOf(line: string): Medium {
  const [, says = '', inBrackets, plain] = SHOWN.exec(line) ?? [];
  const said = inlineRuns(says, PLAIN).map(({ text }) => text);
  return { path: (inBrackets ?? plain ?? '').trim(), says: said.join('').trim() || null };
}

/** Where the files that a text shows are named: each path, and how many characters stand before it. */
export function mediaPlaces(text: string): readonly { readonly path: string; readonly offset: number }[] {
  let start = 0;
  return text.split('\n').flatMap((line) => {
    const from = start;
    start += line.length + 1;
    if (!SHOWN.test(line)) return [];
    const { path } = mediumOf(line);
    return [{ path, offset: from + line.lastIndexOf(path) }];
  });
}

/**
 * Reads what a teacher wrote.
 * @example readProse('So *softly*.')[0]?.kind // 'paragraph'
 * @returns paragraphs and lists in order; none for a text of white space.
 */
export function readProse(text: string): readonly ProseBlock[] {
  const blocks: ProseBlock[] = [];
  for (const { kind, lines } of gather(text)) {
    if (kind === 'medium') {
      blocks.push({ kind, medium: mediumOf(lines[0] as string) });
      continue;
    }
    const runs = inlineRuns(lines.map((line) => line.trim()).join(' '), PLAIN);
    const isNumbered = kind === 'number';
    const last = blocks.at(-1);
    if (kind === 'paragraph') blocks.push({ kind, runs });
    else if (last?.kind === 'list' && last.isNumbered === isNumbered) {
      blocks[blocks.length - 1] = { ...last, items: [...last.items, runs] };
    } else blocks.push({ kind: 'list', isNumbered, items: [runs] });
  }
  return blocks;
}

/** A text without its marks, each block a line. */
export function plainProse(text: string): string {
  const plain = (runs: readonly ProseRun[]) => runs.map((run) => run.text).join('');
  return readProse(text)
    .flatMap((block) => {
      if (block.kind === 'medium') return block.medium.says ?? [];
      return block.kind === 'list' ? block.items.map(plain) : [plain(block.runs)];
    })
    .join('\n');
}
