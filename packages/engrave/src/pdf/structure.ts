/**
 * What a PDF says to those who listen to it: headings, paragraphs and pictures in the order of reading, everything else
 * marked as an aside.
 *
 * Source: ISO 32000-1, 14.7 (logical structure), 14.8 (tagged PDF); ISO 14289-1 (PDF/UA): all content is either in the
 * structure or an artifact, pictures have a text, headings begin with the first level and leave none out.
 */
import type PDFDocument from 'pdfkit';
import type { GroupItem, Item } from '../sheet/item.ts';

/** An element of the structure, as pdfkit makes it. */
export interface StructureElement {
  add(child: unknown): StructureElement;
  end(): void;
}

/** How something is tagged: its type and the text that stands for it, or null for an aside. */
interface Tag {
  readonly type: string;
  readonly alt?: string;
}

function tagOf(item: Exclude<Item, GroupItem>): Tag | null {
  if (item.kind === 'text') return item.role === 'aside' ? null : { type: item.role ?? 'P' };
  if (item.kind === 'image') return { type: 'Figure', alt: item.alt };
  if (item.kind === 'tile' && item.tile.title !== '') {
    const { title, description } = item.tile;
    return { type: 'Figure', alt: description === '' ? title : `${title}. ${description}` };
  }
  return null;
}

/** Draws items under their tags, one after another. */
export class Structure {
  readonly #document: PDFDocument;
  readonly #root: StructureElement;
  readonly #draw: (item: Exclude<Item, GroupItem>, x: number, y: number) => void;

  constructor(document: PDFDocument, draw: (item: Exclude<Item, GroupItem>, x: number, y: number) => void) {
    this.#document = document;
    this.#draw = draw;
    this.#root = document.struct('Document', {}) as StructureElement;
    document.addStructure(this.#root);
  }

  /** Draws items; a group is a part of the document with its own name. */
  add(items: readonly Item[], x = 0, y = 0, into: StructureElement = this.#root): void {
    for (const item of items) {
      if (item.kind !== 'group') this.#leaf(item, x, y, into);
      else {
        const part = this.#document.struct('Sect', { title: item.label }) as StructureElement;
        into.add(part);
        this.add(item.items, x + item.x, y + item.y, part);
        part.end();
      }
    }
  }

  #leaf(item: Exclude<Item, GroupItem>, x: number, y: number, into: StructureElement): void {
    const tag = tagOf(item);
    const draw = () => this.#draw(item, x, y);
    if (tag === null) {
      this.#document.markContent('Artifact', { type: 'Layout' });
      draw();
      this.#document.endMarkedContent();
      return;
    }
    const { type, ...options } = tag;
    into.add(this.#document.struct(type, options, draw));
  }

  /** Closes the structure. */
  end(): void {
    this.#root.end();
  }
}
