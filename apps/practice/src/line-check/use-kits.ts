/** The kits that are kept, which of them the ear hears with, and which were learnt with earlier weights. */
import { useEffect, useState } from 'react';
import type { Hearing } from '../ear/hearing.ts';
import type { KeptKit } from './kept-kit.ts';
import { chooseKit, chosenName, forgetKit, keepKit, listKits, renameKit } from './kit-store.ts';
import { oldOnes } from './learn.ts';

interface Kits {
  readonly all: readonly KeptKit[];
  readonly chosen: KeptKit | null;
}

/** The kits, and what can be done with them; the ear hears with what is chosen from its next start on. */
export function useKits(hearing: Hearing) {
  const [kits, setKits] = useState<Kits>({ all: [], chosen: null });
  const [old, setOld] = useState<ReadonlySet<string>>(new Set());
  const look = async () => {
    const all = await listKits().catch(() => []);
    const chosen = all.find(({ kit }) => kit.name === chosenName()) ?? null;
    setKits({ all, chosen });
    return chosen;
  };
  const lookAndHear = async () => hearing.ear.hearWith((await look())?.kit ?? null);
  useEffect(() => void look(), []);
  useEffect(() => {
    if (kits.all.length === 0) return;
    const leaving = new AbortController();
    oldOnes(
      kits.all.map(({ kit }) => kit),
      leaving.signal,
    ).then(setOld, () => undefined);
    return () => leaving.abort();
  }, [kits.all]);
  return {
    ...kits,
    isOld: (name: string) => old.has(name),
    choose: (name: string) => {
      chooseKit(name);
      void lookAndHear();
    },
    /** Keeps a kit and hears with it. @throws DOMException where there is no room */
    keep: async (kept: KeptKit) => {
      await keepKit(kept);
      chooseKit(kept.kit.name);
      await lookAndHear();
    },
    rename: (kept: KeptKit, name: string) => void renameKit(kept, name).then(lookAndHear, () => undefined),
    forget: (name: string) => void forgetKit(name).then(lookAndHear, () => undefined),
  };
}

/** What {@link useKits} gives. */
export type KitsView = ReturnType<typeof useKits>;
