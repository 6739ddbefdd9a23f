/**
 * Chapters in WebM files. What writes them here knows none, so it keeps their place with a tag as long as they are, and
 * they are put there afterwards: no other byte of the file moves.
 *
 * Source: RFC 8794 (EBML: numbers of elements, lengths, Void); RFC 9559 (Matroska), 5.1.7 (Chapters), 5.1.8 (Tags).
 */
import type { Chapter } from '@shedbook/film';

/** Numbers of elements, as RFC 8794 and RFC 9559 give them. */
const ID = {
  segment: 0x18538067,
  tags: 0x1254c367,
  tag: 0x7373,
  targets: 0x63c0,
  simpleTag: 0x67c8,
  tagName: 0x45a3,
  tagString: 0x4487,
  chapters: 0x1043a770,
  editionEntry: 0x45b9,
  chapterAtom: 0xb6,
  chapterUid: 0x73c4,
  chapterTimeStart: 0x91,
  chapterTimeEnd: 0x92,
  chapterDisplay: 0x80,
  chapString: 0x85,
  chapLanguage: 0x437c,
  void: 0xec,
} as const;

const LENGTH_BYTES = 4;
const NANOSECONDS = 1_000_000_000;

function bigEndian(value: number | bigint, bytes: number): readonly number[] {
  const whole = BigInt(value);
  return Array.from({ length: bytes }, (_, i) => Number((whole >> BigInt(8 * (bytes - 1 - i))) & 0xffn));
}

function idBytes(id: number): readonly number[] {
  return bigEndian(id, Math.ceil(Math.log2(id + 1) / 8));
}

/** An element; its length is always told in four bytes. */
function element(id: number, content: readonly number[]): readonly number[] {
  return [...idBytes(id), ...bigEndian(0x10000000 + content.length, LENGTH_BYTES), ...content];
}

const text = (id: number, value: string) => element(id, [...new TextEncoder().encode(value)]);
const moment = (id: number, seconds: number) => element(id, bigEndian(Math.round(seconds * NANOSECONDS), 8));

function atom({ fromSeconds, toSeconds, title }: Chapter, index: number): readonly number[] {
  return element(ID.chapterAtom, [
    ...element(ID.chapterUid, bigEndian(index + 1, LENGTH_BYTES)),
    ...moment(ID.chapterTimeStart, fromSeconds),
    ...moment(ID.chapterTimeEnd, toSeconds),
    // Source: ISO 639-2, "und": undetermined
    ...element(ID.chapterDisplay, [...text(ID.chapString, title), ...text(ID.chapLanguage, 'und')]),
  ]);
}

function titleTag(title: string): readonly number[] {
  const own = [...text(ID.tagName, 'TITLE'), ...text(ID.tagString, title)];
  return element(ID.tags, element(ID.tag, [...element(ID.targets, []), ...element(ID.simpleTag, own)]));
}

/** What a film is called and its chapters. */
export interface Headed {
  readonly title: string;
  readonly chapters: readonly Chapter[];
}

function headBytes({ title, chapters }: Headed): readonly number[] {
  const edition = element(ID.editionEntry, chapters.flatMap(atom));
  return [...titleTag(title), ...element(ID.chapters, edition)];
}

/** A tag that keeps the place of title and chapters until {@link putChapters}. */
export function placeFor(headed: Headed): Uint8Array {
  return new Uint8Array(headBytes(headed).length);
}

/** Where elements begin and end, whatever is in them. */
interface Span {
  readonly id: number;
  /** First byte, first byte of the content, and the byte after the last. */
  readonly at: number;
  readonly content: number;
  readonly end: number;
}

/** How many bytes a number of EBML has, by its first. */
function widthOf(first: number): number {
  return Math.clz32(first) - 23;
}

function spanAt(file: Uint8Array, at: number): Span {
  const number = (from: number, width: number, first: number) =>
    file.subarray(from + 1, from + width).reduce((value, byte) => 256 * value + byte, first);
  const idWidth = widthOf(file[at] as number);
  const id = number(at, idWidth, file[at] as number);
  const length = at + idWidth;
  const width = widthOf(file[length] as number);
  const content = length + width;
  // The first byte without the mark of the width; a length of ones only is one that nobody knows.
  const size = number(length, width, (file[length] as number) & (0xff >> width));
  return { id, at, content, end: size === 2 ** (7 * width) - 1 ? file.length : content + size };
}

/** The first element with a number among those that follow each other. */
function find(file: Uint8Array, id: number, from: number, to: number): Span {
  for (let at = from; at < to; ) {
    const span = spanAt(file, at);
    if (span.id === id) return span;
    at = span.end;
  }
  throw new Error('Internal error: a film without a place for its chapters');
}

/** Puts title and chapters into the place that a tag of {@link placeFor} keeps in a file. */
export function putChapters(file: Uint8Array, headed: Headed): void {
  const segment = find(file, ID.segment, 0, file.length);
  const place = find(file, ID.tags, segment.content, segment.end);
  const head = headBytes(headed);
  const left = place.end - place.at - head.length - idBytes(ID.void).length - LENGTH_BYTES;
  file.set(
    [
      ...head,
      ...element(
        ID.void,
        Array.from({ length: left }, () => 0),
      ),
    ],
    place.at,
  );
}
