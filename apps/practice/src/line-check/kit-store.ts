/**
 * What line checks told of kits, kept on this device beside the log, and the one that the ear hears with.
 *
 * Conventions: a kit is kept under its name; one that is made again under the same name takes its place.
 */
import type { KnownKit } from '@shedbook/listen';
import { drop, keepMany, readPieces } from '../kept/database.ts';
import { rememberedOwn, rememberOwn } from '../kept/students.ts';
import { type KeptKit, readKeptKit } from './kept-kit.ts';

/** How the names of its rows begin. */
const BEGINNING = 'line check ';

/** The choice of the student. */
const KEY = 'line-check';

interface Row {
  readonly name: string;
  readonly kept?: unknown;
}

/** Every kit that is kept and can be read, by its name. @throws DOMException where nothing can be read here */
export async function listKits(): Promise<readonly KeptKit[]> {
  const kits: KeptKit[] = [];
  for await (const rows of readPieces<Row>('notes', BEGINNING))
    kits.push(...rows.flatMap(({ kept }) => readKeptKit(kept) ?? []));
  return kits;
}

/** Keeps a kit. @throws DOMException `QuotaExceededError` when there is no room */
export function keepKit(kept: KeptKit): Promise<void> {
  return keepMany('notes', [{ name: `${BEGINNING}${kept.kit.name}`, kept } satisfies Row]);
}

/** Name of the kit that the ear hears with; empty where it is none. */
export function chosenName(): string {
  return rememberedOwn(KEY) ?? '';
}

/** Has the ear hear with a kit, by its name, or with none. */
export function chooseKit(name: string): void {
  rememberOwn(KEY, name);
}

/** Forgets a kit; where the ear heard with it, it hears with none. */
export async function forgetKit(name: string): Promise<void> {
  await drop(['notes'], `${BEGINNING}${name}`);
  if (chosenName() === name) chooseKit('');
}

/** Gives a kit another name, under which none is kept. */
export async function renameKit({ kit, voices }: KeptKit, name: string): Promise<void> {
  const wasChosen = chosenName() === kit.name;
  await keepKit({ kit: { ...kit, name }, voices });
  await forgetKit(kit.name);
  if (wasChosen) chooseKit(name);
}

/** What is known of the kit that the ear hears with, or null. */
export async function chosenKit(): Promise<KnownKit | null> {
  const name = chosenName();
  if (name === '') return null;
  return (await listKits()).find(({ kit }) => kit.name === name)?.kit ?? null;
}
