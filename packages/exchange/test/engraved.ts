/** What verovio, an independent engraver, makes of a MusicXML text: its notes with time, place and head. */
import { childrenOf, type ReadElement, readXml } from '../src/xml/read-xml.ts';

interface Toolkit {
  setOptions(options: Readonly<Record<string, unknown>>): void;
  loadData(data: string): boolean;
  getMEI(): string;
  renderToTimemap(): readonly { readonly qstamp: number; readonly on?: readonly string[] }[];
}

/** A note as engraved. */
export interface EngravedNote {
  /** In quarter notes from the start. */
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

function notesUnder(
  element: ReadElement,
  found: Map<string, { note: ReadElement; chord: ReadElement | null }>,
): void {
  for (const child of element.children) {
    if (child.name === 'note') {
      const chord = element.name === 'chord' ? element : null;
      found.set(child.attributes['id'] ?? '', { note: child, chord });
    } else notesUnder(child, found);
  }
}

/** A function that engraves a MusicXML text. */
export async function createEngraver(): Promise<(musicXml: string) => readonly EngravedNote[]> {
  const toolkit = await createToolkit();
  return (musicXml) => {
    toolkit.setOptions({ xmlIdSeed: 1 });
    if (!toolkit.loadData(musicXml)) throw new Error('verovio did not load the score');
    const { root } = readXml(toolkit.getMEI(), 'engraved.mei');
    const notes = new Map<string, { note: ReadElement; chord: ReadElement | null }>();
    if (root) notesUnder(root, notes);
    return toolkit.renderToTimemap().flatMap(({ qstamp, on = [] }) =>
      on.flatMap((id): EngravedNote[] => {
        const found = notes.get(id);
        if (!found) return [];
        const { note, chord } = found;
        const articulations = [...childrenOf(note, 'artic'), ...(chord ? childrenOf(chord, 'artic') : [])];
        return [
          {
            quarters: qstamp,
            loc: Number(note.attributes['loc']),
            head: note.attributes['head.shape'] ?? 'normal',
            parentheses: note.attributes['head.mod'] === 'paren',
            grace: (note.attributes['grace'] ?? chord?.attributes['grace']) !== undefined,
            accent: articulations.some((each) => each.attributes['artic'] === 'acc'),
          },
        ];
      }),
    );
  };
}
