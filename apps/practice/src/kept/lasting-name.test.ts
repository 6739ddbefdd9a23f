import { expect, it } from 'vitest';
import { type KnownPack, lastingName } from './lasting-name.ts';

const oda = { id: 'first-swing', title: 'First swing', by: 'Oda', address: '/oda/' };
const other = { id: 'first-swing', title: 'Swing, part one', by: 'Kaito', address: '/kaito/' };

/** Opens packs one after the other. @returns the lasting name of each */
function open(packs: readonly Omit<KnownPack, 'lasting'>[]): readonly string[] {
  let known: readonly KnownPack[] = [];
  return packs.map((pack) => {
    const named = lastingName(known, pack);
    ({ known } = named);
    return named.lasting;
  });
}

it('[ST147] two packs of one name on one host are kept apart, a renewed and a moved one found again', () => {
  const renewed = { ...oda, title: 'First swing, second printing' };
  const moved = { ...other, address: '/lessons/' };
  expect(open([oda, other, renewed, moved, oda])).toEqual([
    'first-swing',
    'first-swing 2',
    'first-swing',
    'first-swing 2',
    'first-swing',
  ]);
});
