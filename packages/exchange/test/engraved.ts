/** What verovio, an independent engraver, makes of a MusicXML text: its notes with time, place and head. */
import { childrenOf, readXml, type XmlElement } from '@shedbook/core';

interface TimemapEntry {
  readonly qstamp: number;
  readonly measureOn?: string;
  readonly on?: readonly string[];
}

interface Toolkit {
  setOptions(options: Readonly<Record<string, unknown>>): void;
  loadData(data: string): boolean;
  getMEI(): string;
  renderToTimemap(options: Readonly<Record<string, unknown>>): readonly TimemapEntry[];
}

/** A note as engraved. */
export interface EngravedNote {
  /** From 0. */
  readonly bar: number;
  /** In quarter notes from the bar line. */
  readonly quarters: number;
  /** Lines and spaces from the bottom line, which is 0. */
  readonly loc: number;
  readonly head: string;
  readonly parentheses: boolean;
  readonly grace: boolean;
  readonly accent: boolean;
}

/** verovio ships no types, so it is loaded by name. */
const [WASM, ESM] = ['verovio/wasm', 'verovio/esm'];

async function createToolkit(): Promise<Toolkit> {
  const { default: createModule } = await import(WASM as string);
  const { VerovioToolkit } = await import(ESM as string);
  return new VerovioToolkit(await createModule());
}

interface NoteInScore {
  readonly note: XmlElement;
  readonly chord: XmlElement | null;
  readonly bar: number;
}

/** Every note under an element, by id. */
function notesUnder(element: XmlElement, bar: number): readonly (readonly [string, NoteInScore])[] {
  return element.children.flatMap((child) => {
    if (child.name !== 'note') return notesUnder(child, bar);
    const chord = element.name === 'chord' ? element : null;
    return [[child.attributes['id'] ?? '', { note: child, chord, bar }] as const];
  });
}

function elementsNamed(element: XmlElement | null, name: string): readonly XmlElement[] {
  if (!element) return [];
  return element.name === name ? [element] : element.children.flatMap((child) => elementsNamed(child, name));
}

function isAccented({ note, chord }: NoteInScore): boolean {
  const articulations = [...childrenOf(note, 'artic'), ...(chord ? childrenOf(chord, 'artic') : [])];
  return articulations.some((each) => each.attributes['artic'] === 'acc');
}

/** A function that gives a MusicXML text as the MEI that verovio makes of it. */
export async function createMeiWriter(): Promise<(musicXml: string) => string> {
  const toolkit = await createToolkit();
  return (musicXml) => {
    toolkit.setOptions({ xmlIdSeed: 1 });
    if (!toolkit.loadData(musicXml)) throw new Error('verovio did not load the score');
    return toolkit.getMEI();
  };
}

/** A function that engraves a MusicXML text. */
export async function createEngraver(): Promise<(musicXml: string) => readonly EngravedNote[]> {
  const toolkit = await createToolkit();
  return (musicXml) => {
    toolkit.setOptions({ xmlIdSeed: 1 });
    if (!toolkit.loadData(musicXml)) throw new Error('verovio did not load the score');
    const measures = elementsNamed(readXml(toolkit.getMEI()).root, 'measure');
    const notes = new Map(measures.flatMap((measure, bar) => notesUnder(measure, bar)));
    const timemap = toolkit.renderToTimemap({ includeMeasures: true });
    const barlines = new Map(timemap.map(({ measureOn = '', qstamp }) => [measureOn, qstamp]));
    return timemap.flatMap(({ qstamp, on = [] }) =>
      on.flatMap((id): EngravedNote[] => {
        const found = notes.get(id);
        if (!found) return [];
        const { note, chord, bar } = found;
        return [
          {
            bar,
            quarters: qstamp - (barlines.get(measures[bar]?.attributes['id'] ?? '') ?? Number.NaN),
            loc: Number(note.attributes['loc']),
            head: note.attributes['head.shape'] ?? 'normal',
            parentheses: note.attributes['head.mod'] === 'paren',
            grace: (note.attributes['grace'] ?? chord?.attributes['grace']) !== undefined,
            accent: isAccented(found),
          },
        ];
      }),
    );
  };
}
