import { expect, it } from 'vitest';
import { fonts } from '../../test/setup.ts';
import { boxOf, type Item } from '../sheet/item.ts';
import { type Handout, layOutHandout } from './handout.ts';

const LINE = {
  text: 'Slow twelve 2',
  right: 'up to 80 beats a minute, for 6 December',
  under: 'Clean at 70.',
};

function handout(lines: number, text = LINE.text): Handout {
  const part = {
    heading: 'To practise now',
    lines: Array.from({ length: lines }, () => ({ ...LINE, text })),
  };
  return {
    title: 'Søren: how practice is going',
    lead: 'Four weeks.',
    parts: [part],
    foot: ['Take breaks.'],
  };
}

function textsOf(items: readonly Item[]): readonly string[] {
  return items.flatMap((item) => (item.kind === 'text' ? [item.runs.map(({ text }) => text).join('')] : []));
}

it('[EN3000] a handout is on as many pages as it needs, numbered, and reaches over no margin', () => {
  for (const paper of ['A4', 'Letter', 'A5'] as const) {
    const [only, ...others] = layOutHandout(handout(3), { fonts, paper });
    expect(others).toEqual([]);
    expect(textsOf(only?.items ?? []).filter((text) => text === 'Slow twelve 2')).toHaveLength(3);
    const pages = layOutHandout(handout(90, `${'A very long name of an exercise, '.repeat(6)}2`), {
      fonts,
      paper,
    });
    expect(pages.length).toBeGreaterThan(2);
    for (const [index, { items, margins }] of pages.entries()) {
      expect(textsOf(items)).toContain(`${index + 1} / ${pages.length}`);
      for (const box of items.map(boxOf)) {
        expect(box.x).toBeGreaterThanOrEqual(margins.x - 0.01);
        expect(box.x + box.width).toBeLessThanOrEqual(margins.x + margins.width + 0.5);
        expect(box.y + box.height).toBeLessThanOrEqual(margins.y + margins.height + 0.01);
      }
    }
  }
});
