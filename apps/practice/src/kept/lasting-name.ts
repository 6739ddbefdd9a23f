/**
 * Under which name a lesson is kept where several packs lie on one host: packs of two teachers may call themselves the
 * same.
 *
 * Conventions: the first pack of a name has it; another with that name gets a number after it. A pack that was renewed
 * lies at the address of the old one, one that was moved has its title and its author.
 */

/** A pack that was opened on this device. */
export interface KnownPack {
  /** What the pack calls itself. */
  readonly id: string;
  /** What is kept of it carries this name. */
  readonly lasting: string;
  readonly title: string;
  readonly by: string;
  /** Lasting name of its lesson, which copies of it name; left out by pages before this one. */
  readonly key?: string;
  /** Folder that it lies in. */
  readonly address: string;
}

/** The lasting name of a pack, and the packs that are known with it. */
export function lastingName(
  known: readonly KnownPack[],
  pack: Omit<KnownPack, 'lasting'>,
): { readonly lasting: string; readonly known: readonly KnownPack[] } {
  const same = known.filter(({ id }) => id === pack.id);
  const before =
    same.find(({ address }) => address === pack.address) ??
    same.find(({ title, by }) => title === pack.title && by === pack.by);
  const lasting = before?.lasting ?? (same.length === 0 ? pack.id : `${pack.id} ${same.length + 1}`);
  return { lasting, known: [...known.filter((each) => each !== before), { ...pack, lasting }] };
}
