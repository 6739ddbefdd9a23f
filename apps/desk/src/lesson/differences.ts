/** Which lines of two texts differ, by their longest common subsequence. */

/** A line and whether the other text lacks it. */
export interface MarkedLine {
  readonly text: string;
  readonly differs: boolean;
}

/** A stretch of lines: shown, or left out because both texts have them. */
export type Stretch =
  | { readonly kind: 'shown'; readonly lines: readonly MarkedLine[] }
  | { readonly kind: 'left out'; readonly count: number };

/** The lines that differ with so many lines around each of them; long stretches of equal lines are left out. */
export function shortened(lines: readonly MarkedLine[], around: number): readonly Stretch[] {
  const isNear = (index: number) =>
    lines.slice(Math.max(0, index - around), index + around + 1).some((line) => line.differs);
  return lines.reduce<readonly Stretch[]>((stretches, line, index) => {
    const last = stretches.at(-1);
    if (isNear(index)) {
      const before = last?.kind === 'shown' ? last.lines : [];
      const kept = last?.kind === 'shown' ? stretches.slice(0, -1) : stretches;
      return [...kept, { kind: 'shown', lines: [...before, line] }];
    }
    const count = last?.kind === 'left out' ? last.count + 1 : 1;
    return [...(last?.kind === 'left out' ? stretches.slice(0, -1) : stretches), { kind: 'left out', count }];
  }, []);
}

function commonLengths(a: readonly string[], b: readonly string[]): readonly (readonly number[])[] {
  const table = Array.from({ length: a.length + 1 }, () => new Array<number>(b.length + 1).fill(0));
  for (let i = a.length - 1; i >= 0; i -= 1) {
    const row = table[i] as number[];
    const below = table[i + 1] as number[];
    for (let j = b.length - 1; j >= 0; j -= 1) {
      row[j] =
        a[i] === b[j] ? (below[j + 1] as number) + 1 : Math.max(below[j] as number, row[j + 1] as number);
    }
  }
  return table;
}

/** Both texts line by line, each line marked where the other text does not have it in its place. */
export function markDifferences(
  mine: string,
  theirs: string,
): { readonly mine: readonly MarkedLine[]; readonly theirs: readonly MarkedLine[] } {
  const a = mine.split('\n');
  const b = theirs.split('\n');
  const table = commonLengths(a, b);
  const left: MarkedLine[] = [];
  const right: MarkedLine[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    if (i < a.length && j < b.length && a[i] === b[j]) {
      left.push({ text: a[i] as string, differs: false });
      right.push({ text: b[j] as string, differs: false });
      i += 1;
      j += 1;
    } else if (j >= b.length || (i < a.length && (table[i + 1]?.[j] ?? 0) >= (table[i]?.[j + 1] ?? 0))) {
      left.push({ text: a[i] as string, differs: true });
      i += 1;
    } else {
      right.push({ text: b[j] as string, differs: true });
      j += 1;
    }
  }
  return { mine: left, theirs: right };
}
