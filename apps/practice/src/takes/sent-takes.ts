/**
 * Takes that the student sends to the teacher, where the page was opened by a private link.
 *
 * Conventions: nothing is sent that the student did not send. What was sent without a network goes when there is one; a
 * take that goes twice counts once.
 */
import type { SentTake } from '@shedbook/routes';
import { useSyncExternalStore } from 'react';
import { rememberedOwn, rememberOwn } from '../kept/students.ts';
import { lastWeek } from '../week/read-week.ts';
import { alsoSend } from '../week/sending.ts';

/** What is to go: takes by their ids. */
type Wanted = Readonly<Record<string, { readonly asks: boolean }>>;

/** How the takes stand. */
export interface SentTakes {
  readonly wanted: Wanted;
  /** Those that the teacher has, by their ids. */
  readonly sent: ReadonlyMap<string, SentTake>;
  /** Those that the teacher's desk does not take. */
  readonly refused: ReadonlySet<string>;
}

const WANTED = 'week.takes';

/** Takes that the teacher said anything about, the newest answer first. */
export function answeredTakes(sent: SentTakes['sent']): readonly SentTake[] {
  // What was last seen may come from a server that knew neither marks nor voice notes.
  const isAnswered = ({ answer, marks = [], notes = [] }: Partial<SentTake>) =>
    answer !== null || marks.length > 0 || notes.length > 0;
  return [...sent.values()]
    .filter(isAnswered)
    .toSorted((a, b) => ((a.answeredAt ?? '') < (b.answeredAt ?? '') ? 1 : -1));
}

function keptWanted(): Wanted {
  try {
    const kept: unknown = JSON.parse(rememberedOwn(WANTED) ?? '{}');
    return kept !== null && typeof kept === 'object' ? (kept as Wanted) : {};
  } catch {
    return {};
  }
}

let now: SentTakes | null = null;
const listeners = new Set<() => void>();

function current(): SentTakes {
  now ??= {
    wanted: keptWanted(),
    sent: new Map((lastWeek()?.takes ?? []).map((take) => [take.facts.id, take])),
    refused: new Set(),
  };
  return now;
}

function show(next: Partial<SentTakes>): void {
  now = { ...current(), ...next };
  if (next.wanted) rememberOwn(WANTED, JSON.stringify(next.wanted));
  for (const listener of listeners) listener();
}

function addressOf(id: string): string {
  return `../takes/${encodeURIComponent(id)}`;
}

function without(id: string): Wanted {
  const { [id]: _, ...others } = current().wanted;
  return others;
}

/** Sends one take. @returns whether it need not be tried again */
async function sendOne(id: string, asks: boolean): Promise<boolean> {
  const { takeFile } = await import('./take-to-send.ts');
  const body = await takeFile(id).catch(() => null);
  if (!body) {
    show({ wanted: without(id) });
    return true;
  }
  try {
    const response = await fetch(`${addressOf(id)}?asks=${asks ? 'yes' : 'no'}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/octet-stream' },
      body,
    });
    if (response.ok) {
      const taken = (await response.json()) as SentTake;
      show({ wanted: without(id), sent: new Map([...current().sent, [id, taken]]) });
      return true;
    }
    if (response.status === 429 || (response.status >= 500 && response.status !== 507)) return false;
    show({ wanted: without(id), refused: new Set([...current().refused, id]) });
    return true;
  } catch {
    return false;
  }
}

async function sendWanted(): Promise<boolean> {
  let isDone = true;
  for (const [id, { asks }] of Object.entries(current().wanted)) isDone = (await sendOne(id, asks)) && isDone;
  return isDone;
}

/** Lets what was to be sent go; called where the page was opened by a private link. */
export const startSendingTakes = alsoSend(sendWanted);

/** Sends a take. @param asks whether the student wants to know what the teacher thinks */
export function sendTake(id: string, asks: boolean): void {
  const refused = new Set([...current().refused].filter((each) => each !== id));
  show({ wanted: { ...current().wanted, [id]: { asks } }, refused });
  startSendingTakes();
}

/** Takes back a take that was sent or waits to be. @returns whether that was possible */
export async function takeBack(id: string): Promise<boolean> {
  show({ wanted: without(id) });
  const response = await fetch(addressOf(id), { method: 'DELETE' }).catch(() => null);
  const isGone = response !== null && (response.ok || response.status === 404);
  if (isGone) show({ sent: new Map([...current().sent].filter(([each]) => each !== id)) });
  return isGone;
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** How the takes stand, as it changes. */
export function useSentTakes(): SentTakes {
  return useSyncExternalStore(subscribe, current);
}
